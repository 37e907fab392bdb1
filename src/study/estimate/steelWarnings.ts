/** Steel too hot to last: which plates scale or creep under a fire. */
import { STEELS, strengthLeft } from '../../design/catalog/index.js';
import type { Steel } from '../../design/design.js';
import { amount, told } from '../../units/index.js';
import { isSteel } from '../../network/materials.js';
import type { Pit } from '../../network/pit.js';
import type { Warning, WhichFire } from './result.js';

/** Plates that a warning names beside the hottest. */
const MOST_NAMED = 4;

interface HotPlate {
  name: string;
  steel: Steel;
  temperature: number;
}

/** A settled state, and the fire that it belongs to. */
interface Fired {
  fire: WhichFire;
  x: Float64Array;
}

/**
 * A warning for each steel under each fire that is hotter than it stands, plates ranked: first what scales, then what
 * creeps, the hottest first. A plate that scales counts there alone.
 */
export function steelWarnings(pit: Pit, states: readonly Fired[]): Warning[] {
  const found = states.flatMap(({ fire, x }) => {
    const plates = platesOf(pit, x);
    return (['carbon', 'stainless'] as const).flatMap((steel) => {
      const { scaling, creep } = STEELS[steel];
      const own = plates.filter((plate) => plate.steel === steel);
      const scales = own.filter(({ temperature }) => temperature > scaling.limit);
      const creeps = own.filter(({ temperature: T }) => T > creep.limit && T <= scaling.limit);
      return [...aboveLimit('scaling', steel, scales, fire), ...aboveLimit('creep', steel, creeps, fire)];
    });
  });
  const isCreep = ({ code }: Warning) => Number(code === 'steel-above-creep-limit');
  return found.sort((a, b) => isCreep(a) - isCreep(b) || b.value! - a.value!);
}

function aboveLimit(what: 'scaling' | 'creep', steel: Steel, plates: HotPlate[], fire: WhichFire): Warning[] {
  if (plates.length === 0) return [];
  const { limit, source } = STEELS[steel][what];
  const [hottest, ...others] = [...plates].sort((a, b) => b.temperature - a.temperature);
  const degrees = (kelvin: number) => amount('temperature', kelvin);
  const named = others.slice(0, MOST_NAMED).map(({ name, temperature }) => told`${name} ${degrees(temperature)}`);
  if (others.length > MOST_NAMED) named.push(`${others.length - MOST_NAMED} more`);
  const list = named.flatMap((each, i) => (i > 0 ? [', ', each] : [each]));
  const also = named.length > 0 ? told` (also too hot: ${list})` : '';
  const kept =
    steel === 'carbon' ? `; it keeps ${Math.round(100 * strengthLeft(hottest.temperature))} % of its strength` : '';
  const happens =
    what === 'scaling'
      ? told`above ${degrees(limit)} ${steel} steel scales away in air`
      : told`above ${degrees(limit)} ${steel} steel creeps: it sags and warps for good`;
  const remedy =
    what === 'scaling' && steel === 'carbon'
      ? 'line it with brick, wrap it less, make it of stainless, or burn less'
      : 'line it with brick, wrap it less, stiffen it, or burn less';
  return [
    {
      code: `steel-above-${what}-limit`,
      message: told`it runs at ${degrees(hottest.temperature)}; ${happens}${kept}: ${remedy}${also}`,
      where: hottest.name,
      fire,
      value: hottest.temperature,
      limits: { high: limit, unit: 'K', source },
    },
  ];
}

/** Every face, skin, shared plate, stack and rack of steel with its hottest cell. */
function platesOf({ model }: Pit, x: Float64Array): HotPlate[] {
  const plates = new Map<string, HotPlate>();
  model.network.nodes.forEach(({ body: name, material: steel }, i) => {
    if (!isSteel(steel) || name === undefined) return;
    const known = plates.get(name);
    if (!known || x[i] > known.temperature) plates.set(name, { name, steel, temperature: x[i] });
  });
  return [...plates.values()];
}
