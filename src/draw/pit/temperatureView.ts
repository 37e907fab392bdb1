import type { EstimateResult, SteadyState } from '../../study/estimate/result.js';
import { convert, format } from '../../units/index.js';
import { roundTicks } from '../ticks.js';
import { drawingScene } from '../drawingScene.js';
import { colourScale, SCALE_HEIGHT } from './colourScale.js';
import { temperatureNotes } from './temperatureNotes.js';
import { stationLabel } from '../../words/labels.js';
import { pitDrawing } from './pitDrawing.js';
import type { Scene } from '../scene.js';

/**
 * Gas temperatures and flows on the side view: a station's colour and number are its gas, with thermometer and steel under it;
 * below, the colour scale, light to dark so that a grey print reads too.
 *
 * @param options.range lowest and highest temperature of the scale [K]: the same for pictures that stand side by side
 */
export function temperatureView(
  { design }: EstimateResult,
  state: SteadyState,
  options: { width: number; maxHeight: number; title: string; range: { low: number; high: number } },
): Scene {
  const { width, maxHeight, title } = options;
  const degrees = (kelvin: number) => convert('temperature', kelvin, 'shop');
  const ticks = roundTicks(degrees(options.range.low), degrees(options.range.high), 7);
  const [low, high] = [ticks[0], ticks[ticks.length - 1]];
  const share = (kelvin: number) => (degrees(kelvin) - low) / (high - low);
  const flow = (kilograms: number) => format('massFlow', kilograms, 'shop', { digits: 2 });
  const up = state.openings.filter(({ role }) => role === 'stackExit').reduce((sum, o) => sum + o.flow_kg_per_s, 0);
  const drawing = pitDrawing(design, {
    width,
    arrange: 'side',
    lettering: 11,
    maxHeight: maxHeight - SCALE_HEIGHT,
    notes: {
      ...temperatureNotes(design, state, share),
      flows: { intake: `${flow(state.air_kg_per_s)} air`, stack: `${flow(up)} gas` },
    },
  });
  const told = state.stations
    .map(({ name, gas_K }) => `${stationLabel(name)} ${format('temperature', gas_K)}`)
    .join(', ');
  const scene = drawingScene(drawing, {
    title,
    description: `Gas: ${told}. Air in ${flow(state.air_kg_per_s)}, gas out ${flow(up)}.`,
  });
  return {
    ...scene,
    height: scene.height + SCALE_HEIGHT,
    shapes: [
      ...scene.shapes,
      ...colourScale(ticks, { left: width * 0.15, right: width * 0.85, top: scene.height + 6 }),
    ],
  };
}
