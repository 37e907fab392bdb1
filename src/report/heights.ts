/** Where it cooks and how hot it is by height, as tables. */
import { PLACES, placeLabel, stationLabel } from '../words/labels.js';
import type { SteadyState } from '../study/estimate/result.js';
import type { UnitSystem } from '../units/index.js';
import { sayIn } from '../words/quantity.js';
import type { TableData } from './text/table.js';

/** Grates and racks: how high, what gas is there, what a stem or the food reads. */
export function placesData({ places }: SteadyState, system: UnitSystem): TableData {
  const say = sayIn(system);
  return {
    head: ['', 'above ground', 'gas', 'thermometer'],
    rows: places.map((place) => [
      placeLabel(place),
      say('length', place.height_m, { shop: 'in' }),
      say('temperature', place.gas_K),
      say('temperature', place.thermometer_K),
    ]),
  };
}

/** Gas and walls of the chamber by height, from the roof down. */
export function byHeightData({ stations }: SteadyState, system: UnitSystem): TableData {
  const say = sayIn(system);
  const cut = stations.filter(({ name, layers }) => layers.length > 1 && !name.startsWith('upright'));
  const middle = ({ from_m, to_m }: SteadyState['stations'][number]['layers'][number]) => 0.5 * (from_m + to_m);
  const walls = (['roof', 'upper', 'lower', 'floor'] as const).map((place, i) => [
    `steel, ${Object.values(PLACES)[i]}`,
    ...cut.map(({ steelBy }) => say('temperature', steelBy[`${place}_K`])),
  ]);
  const gas = [...(cut[0]?.layers ?? [])]
    .reverse()
    .map((layer, i, all) => [
      `gas, ${say('length', middle(layer), { shop: 'in' })} above ground`,
      ...cut.map(({ layers }) => say('temperature', layers[all.length - 1 - i].gas_K)),
    ]);
  return { head: ['', ...cut.map(({ name }) => stationLabel(name))], rows: cut.length > 0 ? [...gas, ...walls] : [] };
}
