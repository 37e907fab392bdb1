import type { Scene } from '../draw/scene.js';
import { format, siIn, type UnitSystem } from '../units/index.js';
import { STEP } from './chartPlot.js';
import { pageColour } from './look.js';
import type { Plot } from './protocol.js';
import { make } from './sceneView.js';

/** Values of the curves at a place, and the words for it; null: the line stands nowhere. */
type Told = (values: (string | null)[] | null) => void;

/** Half of a text beside the line, about, and how far it keeps from the picture's edge [px]. */
const HALF_TEXT = 44;

/** A text higher than this would stand out of the picture [px]. */
const HIGH = 12;

/**
 * A line through all curves of a chart under a pointer, a finger or the arrow keys; what they are there is told where
 * it covers none.
 */
export class Hairline {
  private plot: Plot | null = null;
  private size = { width: 1, height: 1 };
  /** where it stands, as a place of the curves; null: nowhere */
  private place: number | null = null;
  private readonly line = make('g', {});

  /** @param root holds the picture */
  constructor(
    private readonly root: HTMLElement,
    private readonly told: Told,
    private readonly system: () => UnitSystem,
  ) {
    root.tabIndex = 0;
    root.addEventListener('pointermove', (event) => this.follow(event));
    root.addEventListener('pointerdown', (event) => this.follow(event));
    root.addEventListener('pointerleave', ({ pointerType }) => {
      // who has lifted a finger still wants to read
      if (pointerType === 'mouse') this.stand(null);
    });
    root.addEventListener('blur', () => this.stand(null));
    root.addEventListener('keydown', (event) => {
      const way = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
      if (event.key === 'Escape') this.stand(null);
      if (!way || !this.plot) return;
      event.preventDefault();
      const stride = 'names' in this.plot.across ? 1 : 5;
      this.stand(this.place === null ? 0 : this.place + way * stride);
    });
  }

  /** Another picture lies under it. @param same of the same chart */
  over(scene: Scene | null, plot: Plot | null, same: boolean): void {
    this.plot = scene && plot;
    if (scene) this.size = scene;
    this.root.querySelector('svg')?.append(this.line);
    this.stand(same ? this.place : null);
  }

  private follow({ clientX }: PointerEvent): void {
    const svg = this.root.querySelector('svg');
    const { plot } = this;
    if (!plot || !svg) return;
    const { left, width } = svg.getBoundingClientRect();
    const x = ((clientX - left) * this.size.width) / width;
    if (x < plot.left - 8 || x > plot.right + 8) return this.stand(null);
    if (!('names' in plot.across)) return this.stand(Math.round((x - plot.left) / STEP));
    const off = plot.across.x.map((each) => Math.abs(each - x));
    this.stand(off.indexOf(Math.min(...off)));
  }

  private stand(place: number | null): void {
    const { plot, line } = this;
    const last = plot ? Math.max(0, ...plot.curves.map(({ at }) => at.findLastIndex((each) => each !== null))) : 0;
    this.place = place === null || !plot ? null : Math.min(last, Math.max(0, place));
    line.replaceChildren();
    if (this.place === null || !plot) return this.told(null);
    const at = this.place;
    const x = 'names' in plot.across ? plot.across.x[at] : plot.left + at * STEP;
    const ink = { stroke: 'var(--ink)', 'stroke-width': '1' };
    line.append(make('path', { d: `M${x} ${plot.top}V${plot.bottom}`, ...ink }));
    for (const { at: all, colour } of plot.curves) {
      const found = all[at];
      if (found)
        line.append(make('circle', { cx: `${x}`, cy: `${found[0]}`, r: '3.5', fill: pageColour(colour), ...ink }));
    }
    const middle = Math.min(this.size.width - HALF_TEXT, Math.max(HALF_TEXT, x));
    const text = make('text', {
      x: `${middle}`,
      y: `${Math.max(HIGH, plot.top - 5)}`,
      'text-anchor': 'middle',
      'font-size': '13',
    });
    text.setAttribute('fill', 'var(--ink)');
    text.setAttribute('font-weight', '600');
    text.textContent = this.whereWords(plot, at);
    line.append(text);
    const digits = plot.kind === 'pressure' ? { digits: 2 } : {};
    this.told(
      plot.curves.map((curve) => {
        const found = curve.at[at];
        return found ? format(plot.kind, found[1], this.system(), digits) : null;
      }),
    );
  }

  private whereWords({ across, left, right }: Plot, place: number): string {
    if ('names' in across) return across.names[place];
    const value = across.from + ((place * STEP) / (right - left)) * (across.to - across.from);
    return across.what === 'time' ? format('time', siIn('time', value, across.unit)) : `${Math.round(value)} % open`;
  }
}
