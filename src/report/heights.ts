/** Where it cooks and how hot it is by height, as tables. */
import { middleOf } from '../design/places.js';
import { partOfStation } from '../design/stations.js';
import { plainText } from '../words/plainText.js';
import { PLACES, placeLabel, stationLabel } from '../words/labels.js';
import type { SteadyState } from '../study/estimate/result.js';
import type { UnitSystem } from '../units/index.js';
import { sayIn } from '../words/quantity.js';
import type { TableData } from './text/table.js';

/** Grates, racks and thermometers with names: how high, what gas is there, what a stem or the food reads. */
export function placesData({ places }: SteadyState, gauge: string, system: UnitSystem): TableData {
  const say = sayIn(system);
  const own = middleOf(places, gauge);
  return {
    head: ['', 'above ground', 'gas', 'thermometer'],
    rows: places.map((place) => [
      placeLabel(place) + (place === own ? ' (gauge)' : ''),
      say('length', place.height_m, { shop: 'in' }),
      say('temperature', place.gas_K),
      say('temperature', place.thermometer_K),
    ]),
  };
}

/** How even grates and racks are, in a sentence; empty where there is nothing to hold against each other. */
export function evennessText({ evenness, places }: SteadyState, system: UnitSystem): string {
  const say = (kelvin: number) => sayIn(system)('temperatureDifference', kelvin);
  const long = (name: string) => places.filter((place) => place.name === name).length > 1;
  const { grates, topToBottom_K, racks_K } = evenness;
  const told = [
    ...grates
      .filter(({ name }) => long(name))
      .map((each) => `${plainText(each.name)} ${say(each.endToEnd_K)} end to end`),
    ...(topToBottom_K === null ? [] : [`grates ${say(topToBottom_K)} from top to bottom`]),
    ...(racks_K === null ? [] : [`racks ${say(racks_K)} from the hottest to the coldest`]),
  ];
  return told.length > 0 ? `Apart: ${told.join('; ')}.` : '';
}

/** Gas and walls of the chamber by height, from the roof down. */
export function byHeightData({ stations }: SteadyState, system: UnitSystem): TableData {
  const say = sayIn(system);
  const cut = stations.filter(({ name, layers }) => layers.length > 1 && partOfStation(name) !== 'upright');
  const middle = ({ from_m, to_m }: SteadyState['stations'][number]['layers'][number]) => 0.5 * (from_m + to_m);
  const walls = (['roof', 'upper', 'lower', 'floor'] as const).map((place, i) => [
    `steel, ${Object.values(PLACES)[i]}`,
    ...cut.map(({ steelBy }) => say('temperature', steelBy[`${place}_K`])),
  ]);
  const gas = [...(cut[0]?.layers ?? [])]
    .reverse()
    .map((layer, i, all) => [
      `gas, ${say('length', middle(layer), { shop: 'in' })}`,
      ...cut.map(({ layers }) => say('temperature', layers[all.length - 1 - i].gas_K)),
    ]);
  return { head: ['', ...cut.map(({ name }) => stationLabel(name))], rows: cut.length > 0 ? [...gas, ...walls] : [] };
}
