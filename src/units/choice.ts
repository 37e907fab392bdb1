import type { UnitSystem } from './format.js';

/** Units that numbers are read in: shop units, SI, or shop units with SI beside them where there is room. */
export type UnitChoice = UnitSystem | 'both';

/** The first of them, or the one there is. */
export function systemOf(choice: UnitChoice): UnitSystem {
  return choice === 'si' ? 'si' : 'shop';
}
