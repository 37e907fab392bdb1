import type { Design } from '../../design/design.js';
import { dialsOf, gaugePlace } from '../../design/places.js';
import type { EstimateResult, SteadyState } from '../../study/estimate/result.js';
import { convert, format } from '../../units/index.js';
import { roundTicks } from '../ticks.js';
import { drawingScene, heatColour } from '../drawingScene.js';
import { stationLabel } from '../../words/labels.js';
import { pitDrawing, type PitNotes } from './pitDrawing.js';
import { line, rectangle, type Scene, type SceneShape } from '../scene.js';
import { FAINT_INK, INK } from '../theme.js';

/** Height of the colour scale with its numbers [px]. */
const SCALE_HEIGHT = 46;
const BAR = 11;
const STRIPS = 60;

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
      stations: state.stations.map(({ name, gas_K, thermometer_K, steel_K, layers }) => ({
        name,
        share: share(gas_K),
        lines: [
          `gas ${format('temperature', gas_K)}`,
          `reads ${format('temperature', thermometer_K)}`,
          `steel ${format('temperature', steel_K)}`,
        ],
        layers: layers.map(({ from_m, to_m, gas_K: layer }) => ({
          low: from_m,
          high: to_m,
          share: share(layer),
          text: format('temperature', layer),
        })),
      })),
      places: readings(design, state),
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

/** What dials, grates and racks read, the one that is steered by first. */
function readings(design: Design, state: SteadyState): NonNullable<PitNotes['places']> {
  const gauge = gaugePlace(design);
  const reads = (kelvin: number) => format('temperature', kelvin);
  const dials = dialsOf(design).flatMap(({ part, along, height, station }) => {
    const own = state.stations.find(({ name }) => name === station);
    return own ? [{ part, along, height, text: reads(own.thermometer_K) }] : [];
  });
  const places = state.places.map(({ part, along, height_m, thermometer_K }) => ({
    part,
    along,
    height: height_m,
    text: reads(thermometer_K),
  }));
  const isGauge = ({ part, along, height }: (typeof dials)[number]) =>
    part === gauge.part && along === gauge.along && height === gauge.height;
  return [...places, ...dials].sort((a, b) => Number(isGauge(b)) - Number(isGauge(a)));
}

function colourScale(
  ticks: number[],
  { left, right, top }: { left: number; right: number; top: number },
): SceneShape[] {
  const [low, high] = [ticks[0], ticks[ticks.length - 1]];
  const strip = (right - left) / STRIPS;
  const at = (value: number) => left + ((value - low) / (high - low)) * (right - left);
  const text = (words: string, x: number, y: number, colour: string): SceneShape => ({
    kind: 'text',
    text: words,
    x,
    y,
    size: 10.5,
    weight: 400,
    anchor: 'middle',
    colour, // prettier-ignore
  });
  const celsius = (fahrenheit: number) => Math.round((fahrenheit - 32) / 1.8);
  return [
    // strips overlap by a hair, so that no paper shines between them
    ...Array.from({ length: STRIPS }, (_, i) =>
      rectangle(left + i * strip, top, strip + (i < STRIPS - 1 ? 0.6 : 0), BAR, {
        fill: heatColour((i + 0.5) / STRIPS),
      }),
    ),
    rectangle(left, top, right - left, BAR, { stroke: INK, width: 0.8 }),
    ...ticks.flatMap((tick) => [
      line(at(tick), top + BAR, at(tick), top + BAR + 3, { stroke: INK, width: 0.8 }),
      text(`${tick}`, at(tick), top + BAR + 14, INK),
      text(`${celsius(tick)}`, at(tick), top + BAR + 26, FAINT_INK),
    ]),
    { ...text('°F gas', right + 24, top + BAR + 14, INK), anchor: 'start' } as SceneShape,
    { ...text('°C', right + 24, top + BAR + 26, FAINT_INK), anchor: 'start' } as SceneShape,
  ];
}
