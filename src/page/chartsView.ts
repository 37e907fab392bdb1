import { plainText } from '../words/plainText.js';
import type { Scene } from '../draw/scene.js';
import { chartCsv, chartPng, chartSvg } from './chartFiles.js';
import { Hairline } from './hairline.js';
import { CHART_LABELS } from './chartLabels.js';
import { chartCells, chartTable } from './chartTable.js';
import { element, part, setText, tableRows } from './dom.js';
import { saveFile } from './files.js';
import { pageColour } from './look.js';
import type { ChartId, Pictured, PictureRequest, Plot } from './protocol.js';
import { sceneElement, swatch } from './sceneView.js';
import { systemOf } from '../units/choice.js';
import { toldOf } from './option.js';
import { type Workbench } from './workbench.js';

/** Names with more letters get wider switches. */
const LONG = 16;

const TYPES = { svg: 'image/svg+xml', png: 'image/png', csv: 'text/csv' };

/**
 * A picture without the names of its curves under the plot, which are for a file: beside it they stand on the switches.
 */
function withoutNames(scene: Scene, plot: Plot | null): Scene {
  const below = plot?.names ?? scene.height;
  const shapes = scene.shapes.filter((shape) => shape.kind !== 'text' || shape.y < below);
  return { ...scene, shapes, height: below };
}

/** The curves of the current option, or of all, as a picture, as a table and as a file. */
export class ChartsView {
  chosen: ChartId = 'thermometer';
  /** what is in sight, whole */
  private scene: Scene | null = null;
  /** curves that are switched off, by their names */
  private readonly hidden = new Set<string>();
  private readonly picture = part('chart');
  private readonly details = part<HTMLDetailsElement>('chart-details');
  private readonly hairline: Hairline;
  private shown: ChartId | null = null;

  /** @param needs told what a chart can't be drawn without */
  constructor(
    private readonly bench: Workbench,
    private readonly ask: (request: PictureRequest) => void,
    private readonly needs: (what: 'vents') => void,
  ) {
    const values = (told: (string | null)[] | null) => this.showValues(told);
    this.hairline = new Hairline(this.picture, values, () => systemOf(bench.units));
    const choices = (Object.keys(CHART_LABELS) as ChartId[]).map((id) => {
      const pressed = id === this.chosen;
      const button = element('button', { type: 'button', 'aria-pressed': pressed, 'data-chart': id }, CHART_LABELS[id]);
      button.addEventListener('click', () => {
        this.chosen = id;
        for (const each of choices) each.setAttribute('aria-pressed', String(each === button));
        if (id === 'vents') this.needs('vents');
        this.update();
      });
      return button;
    });
    part('chart-choice').append(...choices);
    this.details.addEventListener('toggle', () => this.tabulate());
    for (const kind of ['svg', 'png', 'csv'] as const) {
      part(`chart-${kind}`).addEventListener('click', () => void this.save(kind));
    }
  }

  /** Has the curves drawn as the options are now; they come a moment later. */
  update(): void {
    this.tabulate();
    const result = toldOf(this.bench.current);
    if (!result) return;
    const { chosen: chart, picture, bench } = this;
    if (chart === 'vents' && !result.ventCurve) {
      setText(part('chart-caption'), 'Followed once nothing has been changed for a moment.');
      return picture.classList.add('waiting');
    }
    const width = Math.max(280, Math.floor(picture.clientWidth));
    const options = chart === 'options' ? bench.pictured : [];
    this.ask({ kind: 'chart', chart, width, result, options, units: bench.units, hidden: [...this.hidden] });
  }

  show({ chart, scene, plot, caption }: Pictured<'chart'>): void {
    // a picture of what was chosen before comes too late
    if (chart !== this.chosen) return;
    this.scene = scene;
    setText(part('chart-caption'), caption);
    this.picture.classList.remove('waiting');
    const seen = scene && withoutNames(scene, plot);
    this.picture.replaceChildren(
      seen ? sceneElement(seen, pageColour) : element('p', {}, 'There is nothing to draw: the warnings say why.'),
    );
    this.showSwitches(plot);
    this.hairline.over(seen, plot, chart === this.shown);
    this.shown = chart;
  }

  /** Says that there is none by our fault. */
  fail(fault: string): void {
    setText(part('chart-caption'), `Our fault, not yours: no picture (${plainText(fault, 200)}).`);
  }

  /** A switch a curve, on which stands what it is under the hairline. */
  private showSwitches(plot: Plot | null): void {
    const curves = plot?.curves ?? [];
    const root = part('chart-curves');
    const signature = JSON.stringify(curves.map(({ label, colour }) => [label, colour]));
    if (root.dataset.curves !== signature) {
      root.dataset.curves = signature;
      root.classList.toggle('wide', curves.length < 3 || curves.some(({ label }) => label.length > LONG));
      root.replaceChildren(
        ...curves.map(({ label, colour, dash }) => {
          const button = element(
            'button',
            { type: 'button' },
            swatch(pageColour(colour), dash),
            element('span', {}, plainText(label, 40)),
            element('b', {}),
          );
          button.addEventListener('click', () => {
            if (!this.hidden.delete(label)) this.hidden.add(label);
            this.update();
          });
          return button;
        }),
      );
    }
    curves.forEach(({ hidden }, i) => root.children[i].setAttribute('aria-pressed', String(!hidden)));
  }

  private showValues(values: (string | null)[] | null): void {
    for (const [i, button] of [...part('chart-curves').children].entries()) {
      setText(button.querySelector('b')!, values?.[i] ?? '');
    }
  }

  /** Fills the table when it is open. */
  private tabulate(): void {
    if (!this.details.open) return;
    const [head = [], ...body] = this.rows(chartTable);
    part('chart-table').replaceChildren(...tableRows(head, body));
  }

  private rows(read: typeof chartTable): string[][] {
    const { current, pictured } = this.bench;
    const told = toldOf(current);
    return told ? read(this.chosen, pictured, told, systemOf(this.bench.units)) : [];
  }

  /** The chart in sight as a file: as it is on paper, or all its numbers. */
  private async save(kind: keyof typeof TYPES): Promise<void> {
    const { scene, chosen } = this;
    if (!scene) return;
    const name = `${this.bench.current.design.name} ${CHART_LABELS[chosen]}`;
    const made = { svg: () => chartSvg(scene), png: () => chartPng(scene), csv: () => chartCsv(this.rows(chartCells)) };
    saveFile({ text: await made[kind](), name, ending: kind, type: TYPES[kind] });
  }
}
