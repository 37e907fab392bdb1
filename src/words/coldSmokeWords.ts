/** Whether a pit smokes cold, in a sentence. */
import type { EstimateResult } from '../study/estimate/result.js';
import type { UnitSystem } from '../units/index.js';
import { sayAlone } from './quantity.js';

/**
 * `hardly, only 1.7 °F under 90 °F on a day of 70 °F ...`; null where it was not asked, as where there is no upright.
 */
export function coldSmokeWords({ coldSmoke: cold }: EstimateResult, system: UnitSystem): string | null {
  if (!cold) return null;
  const say = sayAlone(system);
  const ceiling = say('temperature', cold.ceiling_K);
  const day = `on a day of ${say('temperature', cold.air_K)}`;
  const apart = say('temperatureDifference', cold.inHand_K === null ? null : Math.abs(cold.inHand_K), { digits: 2 });
  const fire = cold.fire ? ` on the smallest steady fire, ${say('massFlow', cold.fire.wood_kg_per_s)} of wood` : '';
  const till =
    cold.hottestDay_K.likely === null
      ? ''
      : `; it can on days of up to ${say('temperature', cold.hottestDay_K.likely)}`;
  if (cold.possible) return `yes, ${apart} under ${ceiling} ${day}${fire}${till}`;
  switch (cold.why) {
    case 'air-too-warm':
      return `no, ${day} the air alone is at ${ceiling} or above it${till}`;
    case 'no-draft':
      return `no, ${day} no fire draws the right way and gets its air`;
    case 'nothing-in-hand':
      return `hardly, only ${apart} under ${ceiling} ${day}${fire}${till}`;
    default:
      return `no, ${apart} over ${ceiling} ${day}${fire}${till}`;
  }
}
