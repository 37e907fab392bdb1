import { expect, test } from 'vitest';
import { outsideValidity, VALIDITY, type RelationName } from '../../src/physics/validity.js';

const names = Object.keys(VALIDITY) as RelationName[];

test.each(names)('%s has a range with a source, and is inside it at both ends', (name) => {
  const { low, high, source } = VALIDITY[name];
  expect(low).toBeLessThan(high);
  expect(source).toMatch(/\d{4}/);
  expect(outsideValidity(name, low)).toBeUndefined();
  expect(outsideValidity(name, high)).toBeUndefined();
  expect(outsideValidity(name, low - 1)).toBe(VALIDITY[name]);
});

test('says which range a value leaves', () => {
  expect(outsideValidity('gasEmissivity', 350)).toMatchObject({ low: 400, unit: 'K' });
  expect(outsideValidity('nusseltPlateDown', 2e9)).toMatchObject({ high: 1e9 });
});
