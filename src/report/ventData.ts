import type { Design } from '../design/design.js';
import type { VentCurve } from '../study/air/ventCurve.js';
import type { EstimateResult } from '../study/estimate/result.js';
import type { UnitSystem } from '../units/index.js';
import { sayAlone, sayIn } from '../words/quantity.js';
import type { TableData } from './text/table.js';

/** What the vents do: where it settles with the intakes open by so much. */
export function ventCurveData(
  { open, thermometer_K, fire_W }: VentCurve,
  { wood }: Design,
  system: UnitSystem,
): TableData {
  const say = sayIn(system);
  const told = (value: number | null, words: (value: number) => string) => (value === null ? 'no draft' : words(value));
  return {
    head: ['intakes open', 'thermometer', 'fire', 'wood'],
    rows: open.map((share, i) => [
      say('share', share),
      told(thermometer_K[i], (kelvin) => say('temperature', kelvin)),
      told(fire_W[i], (power) => say('power', power)),
      told(fire_W[i], (power) => say('massFlow', power / wood.heat)),
    ]),
  };
}

/** How fast it answers, in a sentence; empty where that was not followed. */
export function ventTurnText({ ventTurn }: EstimateResult, system: UnitSystem): string {
  if (!ventTurn) return '';
  const say = sayAlone(system);
  const { from, to, settles_K, answers_s } = ventTurn;
  const share = (open: number) => say('share', open, { digits: 2 });
  return `Turned from ${share(from)}, where it holds, to ${share(to)} it settles at ${say('temperature', settles_K)}; two thirds of that way it has gone after ${say('time', answers_s)}, the bed answering its air at once.`;
}
