import { expect } from 'vitest';

/** What the plain pit's text says, wherever it is written. */
export function expectToldPlain(text: string): void {
  expect(text).toMatch(/first reads 250 °F\s+after \d+ min/);
  expect(text).toMatch(/middle \(gauge\) +\d+ °F \(\d+ °C\) +250 °F \(121 °C\)/);
  expect(text).not.toMatch(/NaN|undefined|Infinity/);
}
