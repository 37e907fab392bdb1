import type { Design } from '../design/design.js';
import type { VentCurve } from '../study/air/ventCurve.js';
import type { EstimateResult } from '../study/estimate/result.js';
import type { UnitSystem } from '../units/index.js';
import { sayAlone, sayIn } from '../words/quantity.js';
import { rangeOf } from '../words/quantityWords.js';
import type { TableData } from './text/table.js';

/** What the vents do: where it settles with the intakes open by so much. */
export function ventCurveData(
  { open, thermometer_K, leanest_K, richest_K, fire_W }: VentCurve,
  { wood }: Design,
  system: UnitSystem,
): TableData {
  const say = sayIn(system);
  const alone = (kelvin: number) => sayAlone(system)('temperature', kelvin);
  const told = (value: number | null, words: (value: number) => string) => (value === null ? 'no draft' : words(value));
  return {
    head: ['intakes open', 'thermometer', 'between', 'fire', 'wood'],
    rows: open.map((share, i) => [
      say('share', share),
      told(thermometer_K[i], (kelvin) => say('temperature', kelvin)),
      [leanest_K[i], richest_K[i]].includes(null) ? '' : rangeOf(alone(leanest_K[i]!), alone(richest_K[i]!)),
      told(fire_W[i], (power) => say('power', power)),
      told(fire_W[i], (power) => say('massFlow', power / wood.heat)),
    ]),
  };
}

/** What the table of the vents rests on. */
export function ventNote({ ratios: { likely, low, high } }: VentCurve): string {
  return `The bed burns what the air allows at ${likely} times the air its wood needs (between: ${high} and ${low} times), up to the full fire that the file or the bed gives.`;
}

/** How fast it answers, in a sentence; empty where that was not followed. */
export function ventTurnText({ ventTurn }: EstimateResult, system: UnitSystem): string {
  if (!ventTurn) return '';
  const say = sayAlone(system);
  const { from, to, settles_K, answers_s } = ventTurn;
  const share = (open: number) => say('share', open, { digits: 2 });
  return `Turned from ${share(from)}, where it holds, to ${share(to)} it settles at ${say('temperature', settles_K)}; two thirds of that way it has gone after ${say('time', answers_s)}, the bed answering its air at once.`;
}
