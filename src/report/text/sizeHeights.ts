/** What other heights of stack foot and throat do, in words. */
import type { HeightOption } from '../../study/size/heights.js';
import { format, type UnitSystem } from '../../units/index.js';
import { listed } from '../../units/listed.js';

/** Differences below these are none that a cook sees: of temperatures [K], of wood and draft by share, of smoke. */
const NONE = { temperature: 1, wood: 0.02, draft: 0.05, smoke: 1e-3 } as const;

/** A line for each height that was asked about, held against the chosen one. */
export function heightLines([chosen, ...others]: readonly HeightOption[], system: UnitSystem): string[] {
  if (!chosen?.state) return [];
  const { state: here } = chosen;
  return others.map(({ of, height_m, state }) => {
    const what = `${of === 'base' ? 'The stack’s foot' : 'The throat'} at ${format('length', height_m, system)}`;
    if (!state) return `${what} can't be built, or holds with no clean fire.`;
    const degrees = (value: number) =>
      format('temperatureDifference', Math.abs(value), system, { digits: Math.abs(value) < 5 ? 1 : 2 });
    const warmer = (name: string, a: number | null, b: number | null) => {
      const by = a === null || b === null ? 0 : a - b;
      return Math.abs(by) < NONE.temperature ? [] : [`${name} ${degrees(by)} ${by > 0 ? 'hotter' : 'cooler'}`];
    };
    const apart = (state.apart_K ?? 0) - (here.apart_K ?? 0);
    const wood = state.wood_kg_per_s - here.wood_kg_per_s;
    const draft = state.draft_Pa - here.draft_Pa;
    const differences = [
      ...warmer('the grate', state.grate_K, here.grate_K),
      ...(Math.abs(apart) < NONE.temperature
        ? []
        : [`the grate's ends ${degrees(apart)} ${apart > 0 ? 'further apart' : 'nearer to each other'}`]),
      ...warmer('the lid', state.lid_K, here.lid_K),
      ...warmer('the floor', state.floor_K, here.floor_K),
      ...(Math.abs(wood) < NONE.wood * here.wood_kg_per_s
        ? []
        : [`${format('massFlow', Math.abs(wood), system, { digits: 2 })} ${wood > 0 ? 'more' : 'less'} wood`]),
      ...(Math.abs(draft) < NONE.draft * Math.abs(here.draft_Pa)
        ? []
        : [
            `${format('pressure', Math.abs(draft), system, { digits: 1 })} ${draft > 0 ? 'more' : 'less'} draft under the stack`,
          ]),
      ...(state.smokeShare > NONE.smoke && state.smokeShare > here.smokeShare
        ? [`${(100 * state.smokeShare).toPrecision(2)} % of the smoke out of door gaps`]
        : []),
    ];
    return `${what}: ${differences.length > 0 ? listed(differences) : 'no difference that a cook sees'}.`;
  });
}
