import type { EstimateResult, SteadyState } from '../../study/estimate/result.js';
import { format } from '../../units/index.js';
import { drawingScene } from '../drawingScene.js';
import { colourScale, heatShare, SCALE_HEIGHT } from './colourScale.js';
import { temperatureNotes } from './temperatureNotes.js';
import { stationLabel } from '../../words/labels.js';
import { pitDrawing } from './pitDrawing.js';
import type { Scene } from '../scene.js';

/**
 * Gas temperatures and flows on the side view: a station's colour and number are its gas, with thermometer and steel
 * under it; below, the colour scale, light to dark so that a grey print reads too.
 */
export function temperatureView(
  { design }: EstimateResult,
  state: SteadyState,
  options: { width: number; maxHeight: number; title: string },
): Scene {
  const { width, maxHeight, title } = options;
  const flow = (kilograms: number) => format('massFlow', kilograms, 'shop', { digits: 2 });
  const up = state.openings.filter(({ role }) => role === 'stackExit').reduce((sum, o) => sum + o.flow_kg_per_s, 0);
  const drawing = pitDrawing(design, {
    width,
    arrange: 'side',
    lettering: 11,
    maxHeight: maxHeight - SCALE_HEIGHT,
    notes: {
      ...temperatureNotes(design, state, heatShare),
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
    shapes: [...scene.shapes, ...colourScale({ left: width * 0.15, right: width * 0.85, top: scene.height + 6 })],
  };
}
