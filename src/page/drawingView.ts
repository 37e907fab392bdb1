import { drawingScene } from '../draw/drawingScene.js';
import { stationLabel } from '../words/labels.js';
import { plainTexts } from '../words/plainText.js';
import { pitDrawing, type PitNotes } from '../draw/pit/pitDrawing.js';
import type { Design } from '../design/design.js';
import { PARTS } from '../design/stations.js';
import type { EstimateResult, SteadyState } from '../study/estimate/result.js';
import { shortfallOf } from '../study/estimate/shortfall.js';
import { format, formatPlate } from '../units/index.js';
import { element, part, setText } from './dom.js';
import { PAGE_PAINT } from './look.js';
import { sceneElement } from './sceneView.js';
import { noteTime } from './timing.js';
import type { Workbench } from './workbench.js';

/** Below this width the end view goes under the side view [px]. */
const NARROW = 500;

/** A box without a height is one that isn't laid out yet [px]. */
const LEAST_HEIGHT = 300;

/** The pit to scale with its title and its title block. */
export class DrawingView {
  private frame = 0;

  constructor(private readonly bench: Workbench) {}

  /** Draws with the next frame, once for all that changes before it. */
  drawSoon(): void {
    this.frame ||= requestAnimationFrame(() => {
      const start = performance.now();
      this.frame = 0;
      const { design, result } = this.bench.current;
      setText(part('drawing-title'), drawingTitle(design, result));
      showDrawing(part('drawing'), design, result);
      part('title-block').replaceChildren(...titleBlock(design, result).map((text) => element('span', {}, text)));
      noteTime('draw', performance.now() - start);
    });
  }
}

/** What the drawing shows of a result: the fire that holds the target where this pit has it, else what its full fire settles at. */
function shownState(result: EstimateResult | null): { state: SteadyState; holds: boolean } | null {
  if (!result) return null;
  const { steady, assumed } = result;
  // a fire larger than the full one holds nothing in this pit
  const holds = steady !== null && shortfallOf(result)?.code !== 'not-reached';
  const state = holds ? steady : assumed;
  return state && { state, holds };
}

/** What the drawing is headed, by what its thermometers show. */
export function drawingTitle({ fire }: Design, result: EstimateResult | null): string {
  const shown = shownState(result);
  if (!shown) return 'Drawing to scale';
  const target = format('temperature', fire.target);
  return shown.holds
    ? `Drawing to scale, with thermometers while it holds ${target}`
    : `Drawing to scale, with thermometers under the full fire, which does not hold ${target}`;
}

/** The pit to scale, coloured by what thermometers read along it while it holds the target, or else under the full fire. */
function showDrawing(root: HTMLElement, design: Design, result: EstimateResult | null): void {
  const width = Math.max(280, Math.floor(root.clientWidth));
  const narrow = width < NARROW;
  const drawing = pitDrawing(design, {
    width,
    arrange: narrow ? 'column' : 'row',
    lettering: narrow ? 12 : 13,
    // the style sheet sets how high it may be
    maxHeight: Math.max(LEAST_HEIGHT, root.clientHeight),
    notes: notesOf(design, result),
  });
  const scene = drawingScene(drawing, {
    title: 'Scale drawing of the pit, side and end view',
    description: describe(design, result),
    paint: PAGE_PAINT,
  });
  root.replaceChildren(sceneElement(scene));
}

/** What a drawing's title block says beside it. */
function titleBlock(design: Design, result: EstimateResult | null): string[] {
  const plates = PARTS.flatMap((name) => {
    const part = design[name];
    if (!part) return [];
    const { insulation } = part;
    const wrap =
      insulation && insulation.thickness > 0
        ? `, wrapped in ${format('length', insulation.thickness)} of ${insulation.material}`
        : '';
    return [`${name} ${formatPlate(part.plate)} plate${wrap}`];
  });
  const weight = result ? [`all steel ${format('mass', result.geometry.totalSteelMass_kg)}`] : [];
  return [
    ...plainTexts([design.shop, design.job], 60),
    ...plates,
    ...weight,
    'outside sizes, heights above the ground',
  ];
}

function notesOf(design: Design, result: EstimateResult | null): PitNotes {
  const state = shownState(result)?.state;
  if (!state) return {};
  const low = design.site.air;
  const high = Math.max(...state.stations.map((station) => station.thermometer_K));
  return {
    stations: state.stations.map(({ name, thermometer_K, steel_K }) => ({
      name,
      share: high > low ? (thermometer_K - low) / (high - low) : 0,
      lines: [format('temperature', thermometer_K), `steel ${format('temperature', steel_K)}`],
    })),
  };
}

function describe(design: Design, result: EstimateResult | null): string {
  const shown = shownState(result);
  const state = shown?.state;
  const parts = PARTS.flatMap((name) => {
    const part = design[name];
    if (!part) return [];
    const long =
      'length' in part ? `, ${format('length', part.length)} long` : `, ${format('length', part.depth)} deep`;
    return [`${name} ${format('length', part.width)} wide, ${format('length', part.height)} high${long}`];
  });
  const readings = state?.stations.map(
    ({ name, thermometer_K }) => `${stationLabel(name)} ${format('temperature', thermometer_K)}`,
  );
  return (
    parts.join('; ') +
    (readings
      ? `. Thermometers ${shown?.holds ? 'holding the target' : 'under the full fire, which does not hold the target'}: ${readings.join(', ')}`
      : '')
  );
}
