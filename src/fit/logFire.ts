import type { Design } from '../design/design.js';
import { interpolate } from '../solve/interpolate.js';
import { Bed } from '../study/events/bed.js';
import type { CookLog, WoodAdded } from './log/log.js';

/** How closely a bed is followed [s]. */
const STEP = 15;

/**
 * Heat of a fire that is fed as a log says, against time [W].
 *
 * Wood laid on burns as splits do on a bed, in a usual draft. A log of the fire's heat is taken as it is. Where a log tells
 * neither, the design's assumed fire burns from its first row on.
 *
 * @param embers heat of what already burned at the first row [W]; it goes out as charcoal does
 */
export function fireOfLog(design: Design, log: CookLog, embers = 0): (t: number) => number {
  const { fire, wood } = design;
  if (log.fire) {
    const { time_s, value } = log.fire;
    return (t) => Math.max(0, interpolate(time_s, value, t));
  }
  if (log.wood) return burning(design, log.wood, wood.heat, log.length_s, embers);
  return (t) => fire.heat * (1 - Math.exp(-Math.max(0, t) / fire.rise));
}

/** The bed followed once through the log, straight between its moments. */
function burning(
  { fire }: Design,
  laid: readonly WoodAdded[],
  heat: number,
  length: number,
  embers: number,
): (t: number) => number {
  const bed = new Bed(fire.splits);
  bed.layCoals(embers * fire.splits.glow);
  const count = Math.ceil(length / STEP) + 1;
  const power = new Float64Array(count + 1);
  let next = 0;
  for (let i = 0; i <= count; i++) {
    while (next < laid.length && laid[next].time_s <= i * STEP)
      bed.lay(laid[next].mass_kg * heat, i * STEP - laid[next++].time_s);
    power[i] = bed.power(0);
    bed.burn(STEP, (STEP * (power[i] + 4 * bed.power(STEP / 2) + bed.power(STEP))) / 6);
  }
  return (t) => {
    const at = Math.min(count - 1, Math.max(0, Math.floor(t / STEP)));
    return power[at] + (power[at + 1] - power[at]) * Math.min(1, Math.max(0, t / STEP - at));
  };
}
