import type { Design } from '../design/design.js';
import { geometryOf } from '../design/geometryOf.js';
import { spotOf, type CookLog } from './log/log.js';
import { makePit } from '../network/pit.js';
import { solveUnderFire, solveHoldFire } from '../study/estimate/steady.js';

/** A thermometer that first reads less than this above outdoors says that the pit was cold [K]. */
const COLD = 15;
/** What a hot start leaves behind is forgotten by then: earlier readings are left out of a fit [s]. */
export const FORGOTTEN = 3600;

interface HotStart {
  /** unknowns of the pit as it is taken to have been at the log's first row */
  x: Float64Array;
  /** the fire that held it there [W] */
  embers: number;
  /** what its thermometer read [K] */
  reading: number;
}

/**
 * How hot a log begins: first reading of the gauge's thermometer, else of any; null where the pit was cold [K]. One
 * probe that is far off makes no hot pit: half of them must say so, both of two.
 */
export function firstReading({ site, gauge }: Design, log: CookLog): number | null {
  const stems = log.channels.filter(({ measured, value_K }) => measured === 'thermometer' && value_K.length > 0);
  const first = stems.find((channel) => spotOf(channel) === gauge) ?? stems[0];
  if (!first) return null;
  const readings = stems.map(({ value_K }) => value_K[0]).sort((a, b) => a - b);
  const usual = readings[(readings.length - 1) >> 1];
  return usual - (log.air?.value[0] ?? site.air) > COLD ? first.value_K[0] : null;
}

/**
 * Where a log begins with a hot pit: taken as settled at what its gauge, or else its first thermometer, reads then;
 * where no fire holds that, with all plates as hot as it reads and no fire.
 *
 * @returns null: it begins cold
 */
export function hotStart(design: Design, log: CookLog): HotStart | null {
  const reading = firstReading(design, log);
  if (reading === null) return null;
  const stems = log.channels.filter(({ measured }) => measured === 'thermometer');
  const own = stems.find((channel) => spotOf(channel) === design.gauge) ?? stems[0];
  const asked = { ...design, gauge: spotOf(own) };
  const pit = makePit(asked, geometryOf(asked));
  const full = solveUnderFire(pit, design.fire.heat);
  const { solved } = full.outcome.converged ? solveHoldFire(pit, reading, full) : { solved: null };
  const { balances, model, solver } = pit;
  if (!solved) {
    const plates = new Float64Array(model.size).fill(reading);
    return { x: solver.burningState(0, plates), embers: 0, reading };
  }
  const x = solved.x.slice();
  balances.evaluate(x, { mode: 'release', heat: solved.asked });
  for (let i = 0; i < model.stemCount; i++) x[model.nodeCount + i] = balances.stems.settled(x, i);
  return { x, embers: x[model.fire], reading };
}
