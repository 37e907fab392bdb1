/** What a state adds to the side view: gas by height with its colours, and what is read at dials, grates and racks. */
import type { Design } from '../../design/design.js';
import { dialsOf, gaugePlace, type Place } from '../../design/places.js';
import type { SteadyState } from '../../study/estimate/result.js';
import { format, type UnitSystem } from '../../units/index.js';
import type { PitNotes, PlaceMark } from './pitDrawing.js';

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
  const isGauge = ({ part, along, height }: Pick<Place, 'part' | 'along' | 'height'>) =>
    part === gauge.part && along === gauge.along && height === gauge.height;
  const dials = dialsOf(design).flatMap((dial) => {
    const own = state.stations.find(({ name }) => name === dial.station);
    return own ? [{ ...dial, thermometer_K: own.thermometer_K, drawn: false }] : [];
  });
  const places = state.places.map((place) => ({
    ...place,
    height: place.height_m,
    drawn: place.kind === 'thermometer',
  }));
  return [...places, ...dials]
    .map(({ kind, part, along, height, thermometer_K, drawn }) => ({
      part,
      along,
      height,
      text: reads(thermometer_K),
      mark: markOf(kind, drawn || isGauge({ part, along, height })),
    }))
    .sort((a, b) => Number(isGauge(b)) - Number(isGauge(a)));
}

function markOf(kind: Place['kind'], drawn: boolean): PlaceMark {
  if (drawn) return 'drawn';
  return kind === 'thermometer' ? 'asked' : 'none';
}
