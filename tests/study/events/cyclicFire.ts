/** A pit under a fire that goes up and down by a fixed rule, again and again. */
import type { HeldPit } from '../../../src/study/events/heldPit.js';
import { Timeline } from '../../../src/study/events/timeline.js';

const CYCLES = 8;

/**
 * From lowest to highest of thermometer and steel in the last of several cycles [K]. @param breaks where the fire jumps
 */
export function swingUnder(held: HeldPit, period: number, heatAt: (t: number) => number, breaks: number[] = []) {
  const line = new Timeline(held.pit, held.x, { longestStep: period / 20 });
  const ends = [0, ...breaks, period];
  let from = 0;
  for (let cycle = 0; cycle < CYCLES; cycle++) {
    from = line.curve.time_s.length;
    for (let i = 1; i < ends.length; i++) {
      const [start, last] = [cycle * period, ends[i] * (1 - 1e-12)];
      const heat = (t: number) => heatAt(Math.min(Math.max(t - start, ends[i - 1]), last));
      if (!line.burn((t) => ({ mode: 'release', heat: heat(t) })) || !line.runTo(start + ends[i]))
        throw new Error('broke off');
    }
  }
  const apart = (values: number[]) => Math.max(...values.slice(from)) - Math.min(...values.slice(from));
  return { thermometer_K: apart(line.curve.thermometer_K), steel_K: apart(line.curve.steel_K) };
}
