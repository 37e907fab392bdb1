import { drawingScene } from '../draw/drawingScene.js';
import { stationLabel } from '../words/labels.js';
import { plainTexts } from '../words/plainText.js';
import { colourScale, heatShare, SCALE_HEIGHT } from '../draw/pit/colourScale.js';
import { pitDrawing } from '../draw/pit/pitDrawing.js';
import { temperatureNotes } from '../draw/pit/temperatureNotes.js';
import type { Design } from '../design/design.js';
import { PARTS } from '../design/stations.js';
import type { EstimateResult, SteadyState } from '../study/estimate/result.js';
import { shortfallOf } from '../study/estimate/shortfall.js';
import { format, formatPlate, type UnitSystem } from '../units/index.js';
import { element, part, setText } from './dom.js';
import { gripBoxes } from './grips.js';
import { GripsView, type GripActions } from './gripsView.js';
import { PAGE_PAINT } from './look.js';
import { sceneElement } from './sceneView.js';
import { noteTime } from './timing.js';
import { systemOf } from '../units/choice.js';
import type { Workbench } from './workbench.js';

/** Below this width the end view goes under the side view [px]. */
const NARROW = 500;

/** A box without a height is one that isn't laid out yet [px]. */
const LEAST_HEIGHT = 300;

/** The pit to scale with its title and its title block. */
export class DrawingView {
  private frame = 0;
  readonly grips: GripsView;

  constructor(
    private readonly bench: Workbench,
    actions: GripActions,
  ) {
    this.grips = new GripsView(actions);
  }

  /** Draws with the next frame, once for all that changes before it. */
  drawSoon(): void {
    this.frame ||= requestAnimationFrame(() => {
      const start = performance.now();
      this.frame = 0;
      const { design, result } = this.bench.current;
      const system = systemOf(this.bench.units);
      setText(part('drawing-title'), drawingTitle(design, result, system));
      showDrawing(part('drawing'), design, result, { grips: this.grips, system });
      part('title-block').replaceChildren(
        ...titleBlock(design, result, system).map((text) => element('span', {}, text)),
      );
      noteTime('draw', performance.now() - start);
    });
  }
}

/**
 * What the drawing and the answer show of a result: the fire that holds the target where this pit has it, else what its
 * full fire settles at.
 */
export function shownState(result: EstimateResult | null): { state: SteadyState; holds: boolean } | null {
  if (!result) return null;
  const { steady, assumed } = result;
  // a fire larger than the full one holds nothing in this pit
  const holds = steady !== null && shortfallOf(result)?.code !== 'not-reached';
  const state = holds ? steady : assumed;
  return state && { state, holds };
}

/** What the drawing is headed, by what its thermometers show. */
export function drawingTitle({ fire }: Design, result: EstimateResult | null, system: UnitSystem = 'shop'): string {
  const shown = shownState(result);
  if (!shown) return 'Drawing to scale';
  const target = format('temperature', fire.target, system);
  return shown.holds
    ? `Drawing to scale, with thermometers while it holds ${target}`
    : `Drawing to scale, with thermometers under the full fire, which does not hold ${target}`;
}

/**
 * The pit to scale, coloured by its gas while it holds the target, or else under the full fire; with what thermometers
 * read.
 */
function showDrawing(
  root: HTMLElement,
  design: Design,
  result: EstimateResult | null,
  { grips, system }: { grips: GripsView; system: UnitSystem },
): void {
  const width = Math.max(280, Math.floor(root.clientWidth));
  const narrow = width < NARROW;
  const state = shownState(result)?.state;
  const drawing = pitDrawing(design, {
    width,
    arrange: narrow ? 'column' : 'row',
    lettering: 12,
    // the style sheet sets how high it may be
    maxHeight: Math.max(LEAST_HEIGHT, root.clientHeight) - SCALE_HEIGHT,
    system,
    over: (side) => gripBoxes(design, side),
    notes: state ? temperatureNotes(design, state, heatShare, system) : {},
  });
  const scene = drawingScene(drawing, {
    title: 'Scale drawing of the pit, side and end view',
    description: describe(design, result, system),
    paint: PAGE_PAINT,
  });
  const side = narrow ? 0.08 : 0.15;
  const place = { left: width * side, right: width * (0.97 - side), top: scene.height + 4 };
  const shapes = [...scene.shapes, ...colourScale(place, PAGE_PAINT)];
  const all = { ...scene, height: scene.height + SCALE_HEIGHT, shapes };
  // the box stays where it is, and the drawing stands in its middle
  const top = Math.max(0, (root.clientHeight - all.height) / 2);
  root.querySelector('svg')?.remove();
  const picture = sceneElement(all);
  picture.style.transform = `translateY(${top.toFixed(1)}px)`;
  grips.root.prepend(picture);
  if (!grips.root.isConnected) root.append(grips.root);
  grips.over(design, { ...drawing.side, ground: drawing.side.ground + top }, system);
}

/** What a drawing's title block says beside it. */
function titleBlock(design: Design, result: EstimateResult | null, system: UnitSystem): string[] {
  const plate = (thickness: number) => (system === 'si' ? format('plate', thickness, 'si') : formatPlate(thickness));
  const plates = PARTS.flatMap((name) => {
    const part = design[name];
    if (!part) return [];
    const { insulation } = part;
    const wrap =
      insulation && insulation.thickness > 0
        ? `, wrapped in ${format('length', insulation.thickness, system)} of ${insulation.material}`
        : '';
    return [`${name} ${plate(part.plate)} plate${wrap}`];
  });
  const weight = result ? [`all steel ${format('mass', result.geometry.totalSteelMass_kg, system)}`] : [];
  return [
    ...plainTexts([design.shop, design.job], 60),
    ...plates,
    ...weight,
    'outside sizes, heights above the ground',
  ];
}

function describe(design: Design, result: EstimateResult | null, system: UnitSystem): string {
  const size = (metres: number) => format('length', metres, system);
  const shown = shownState(result);
  const state = shown?.state;
  const parts = PARTS.flatMap((name) => {
    const part = design[name];
    if (!part) return [];
    const long = 'length' in part ? `, ${size(part.length)} long` : `, ${size(part.depth)} deep`;
    return [`${name} ${size(part.width)} wide, ${size(part.height)} high${long}`];
  });
  const readings = state?.stations.map(
    ({ name, thermometer_K }) => `${stationLabel(name)} ${format('temperature', thermometer_K, system)}`,
  );
  return (
    parts.join('; ') +
    (readings
      ? `. Thermometers ${shown?.holds ? 'holding the target' : 'under the full fire, which does not hold the target'}: ${readings.join(', ')}`
      : '')
  );
}
