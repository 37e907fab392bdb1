import { expect, it } from 'vitest';
import { balanceWords } from '../../src/words/balanceWords.js';

it('tells how heat and air add up without powers of ten', () => {
  const told = (energyError: number, massError_kg_per_s: number) => balanceWords({ energyError, massError_kg_per_s });
  expect(told(6e-7, 6e-13)).toBe(
    'the heat adds up within 0.00006 % of the fire, and the air within a millionth of a gram a second',
  );
  expect(told(1e-12, 2e-6)).toBe('the heat adds up within 0.000001 % of the fire, and the air within 0.002 g/s');
});
