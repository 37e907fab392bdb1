/** A cook's day in a line: what a split does, and how long it takes from the match. */
import { sinks } from '../study/events/swing.js';
import type { EstimateResult } from '../study/estimate/result.js';
import type { UnitSystem } from '../units/index.js';
import { isNeverLit, litTime } from './headline.js';
import { sayAlone } from './quantity.js';
import { rangeOf } from './quantityWords.js';

/**
 * @returns `A 2 lb split every 31 min: reads 224 to 276 °F. From the match it takes 19 min (5.8 to 27 min).`; empty as
 * long as nobody has followed it
 */
export function cookLine(result: EstimateResult | null, system: UnitSystem): string {
  if (!result?.steady) return '';
  const { splits, lit, design } = result;
  const say = sayAlone(system);
  const degrees = (kelvin: number) => say('temperature', kelvin);
  const lines: string[] = [];
  if (splits && splits.wood_kg !== null) {
    const { fire } = design;
    const split = `${say('mass', splits.wood_kg, { digits: 2 })} split`;
    const every = `every ${say('time', splits.period_s, { digits: 2 })}`;
    const line = fire.target + fire.cook.line;
    const span = rangeOf(degrees(splits.lowest_K), degrees(splits.highest_K));
    if (sinks(splits, fire)) lines.push(`On a ${split} at a time its bed gets too little air.`);
    else if (splits.highest_K < line) {
      lines.push(`On a ${split} at a time it never gets back to ${degrees(line)}: reads ${span}.`);
    } else lines.push(`A ${split} ${every}: reads ${span}.`);
  }
  if (isNeverLit(result)) lines.push('From the match it takes a larger fire.');
  if (lit) {
    lines.push(`From the match it takes ${litTime(lit, system)}.`);
  }
  return lines.join(' ');
}
