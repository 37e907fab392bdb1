/** What throats of other sizes do, in words. */
import type { SizeChoice, SizeResult } from '../../study/size/size.js';
import type { ThroatTry } from '../../study/size/throat.js';
import { format, type UnitSystem } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import type { TableData } from './table.js';

/** By what a throat is chosen. */
export const THROAT_BY =
  'The throat comes first, by the pit as drawn while a clean fire holds it: of those with a quarter of their greatest speed in hand the ones ' +
  'that leave the grate evenest, of these the ones that take least wood, a tenth counting alike in each, and of these the smallest';

/** How uneven a grate is, to the digits that are known. */
const unevenness = (apart: number | null, system: UnitSystem) =>
  format('temperatureDifference', apart, system, { digits: 2 });

/** The chosen throat beside one of about half and one of about half as much again; none where it stays as drawn. */
export function throatWords({ throats }: SizeResult, { throat }: SizeChoice, system: UnitSystem): string[] {
  if (throat.kept) return [];
  const near = (area: number) =>
    throats.reduce<ThroatTry | undefined>(
      (best, each) =>
        best && Math.abs(Math.log(best.area_m2 / area)) <= Math.abs(Math.log(each.area_m2 / area)) ? best : each,
      undefined,
    );
  const tried = [...new Set([1, 0.5, 1.5].map((share) => near(share * throat.area_m2)))].filter((each) => each);
  if (tried.length < 2) return [];
  const told = tried.map((each) => {
    const { area_m2, apart_K, wood_kg_per_s } = each!;
    const apart = apart_K === null ? '' : `the grate ${unevenness(apart_K, system)} end to end and `;
    return `with ${format('area', area_m2, system)} ${apart}${format('massFlow', wood_kg_per_s, system, { digits: 2 })} of wood`;
  });
  return [`What the throat does, in the pit as drawn: ${listed(told)}.`];
}

/** Every throat that was tried as a table, the smallest first. */
export function throatData({ throats }: SizeResult, system: UnitSystem): TableData {
  const wood = (value: number) => format('massFlow', value, system, { digits: 2 });
  return {
    head: ['throat', 'end to end', 'grate', wood(1).replace(/^\S+ /, ''), 'a quarter of its speed in hand'],
    align: ['right', 'right', 'right', 'right', 'left'],
    rows: throats.map((each) => [
      format('area', each.area_m2, system),
      unevenness(each.apart_K, system),
      format('temperature', each.grate_K, system),
      wood(each.wood_kg_per_s).replace(/ .*/, ''),
      each.roomy ? 'yes' : 'no',
    ]),
  };
}
