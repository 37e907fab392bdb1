/** What a state adds to the side view: gas by height with its colours, and what is read at dials, grates and racks. */
import type { Design } from '../../design/design.js';
import { dialsOf, gaugePlace } from '../../design/places.js';
import type { SteadyState } from '../../study/estimate/result.js';
import { format, type UnitSystem } from '../../units/index.js';
import type { PitNotes } from './pitDrawing.js';

/** @param share where a temperature [K] lies on the colour scale, 0..1 */
export function temperatureNotes(
  design: Design,
  state: SteadyState,
  share: (kelvin: number) => number,
  system: UnitSystem = 'shop',
): PitNotes {
  const say = (kelvin: number) => format('temperature', kelvin, system);
  return {
    stations: state.stations.map(({ name, gas_K, thermometer_K, steel_K, layers }) => ({
      name,
      share: share(gas_K),
      lines: [`gas ${say(gas_K)}`, `reads ${say(thermometer_K)}`, `steel ${say(steel_K)}`],
      layers: layers.map(({ from_m, to_m, gas_K: layer }) => ({
        low: from_m,
        high: to_m,
        share: share(layer),
        text: say(layer),
      })),
    })),
    places: readings(design, state, say),
  };
}

/** What dials, grates and racks read, the one that is steered by first. */
function readings(
  design: Design,
  state: SteadyState,
  reads: (kelvin: number) => string,
): NonNullable<PitNotes['places']> {
  const gauge = gaugePlace(design);
  const dials = dialsOf(design).flatMap(({ part, along, height, station }) => {
    const own = state.stations.find(({ name }) => name === station);
    return own ? [{ part, along, height, text: reads(own.thermometer_K), dial: true }] : [];
  });
  const places = state.places.map(({ kind, part, along, height_m, thermometer_K }) => ({
    part,
    along,
    height: height_m,
    text: reads(thermometer_K),
    dial: kind === 'thermometer',
  }));
  const isGauge = ({ part, along, height }: (typeof dials)[number]) =>
    part === gauge.part && along === gauge.along && height === gauge.height;
  return [...places, ...dials].sort((a, b) => Number(isGauge(b)) - Number(isGauge(a)));
}
