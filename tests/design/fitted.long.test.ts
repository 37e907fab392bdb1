import { it } from 'vitest';
import { anyFitPasses, damagedNeverThrows } from './fittedFuzz.js';

it('any fit passes its own reader, within rounding', () => anyFitPasses(300));

it('a damaged file never throws', () => damagedNeverThrows(300));
