import { expect } from 'vitest';
import { tellingOf, timesStep, type Row } from '../../../src/study/compare/told.js';
import { generator } from '../../design/randomDesign.js';
import { readPrinted } from '../../support/printed.js';

export const KINDS: Row['kind'][] = [
  'time',
  'mass',
  'massFlow',
  'power',
  'temperature',
  'temperatureDifference',
  'pressure',
  'number',
  'share',
  'money',
];

/** Of so many triples of numbers, drawn at random, a printed difference is that of the printed numbers. */
export function expectToldAsPrinted(kind: Row['kind'], draws: number): void {
  const next = generator(7);
  for (let i = 0; i < draws; i++) {
    const size = 10 ** (6 * next() - 2);
    const values = Array.from({ length: 3 }, () => {
      if (next() < 0.05) return 0;
      // close ones and far ones
      const value = next() < 0.5 ? size * (1 + 0.06 * next()) : size * 10 ** (2 * next() - 1);
      return kind === 'temperature' ? 250 + 300 * next() : next() < 0.1 ? -value : value;
    });
    const pairs = values.map((value) => ({
      baseline: values[0],
      value,
      none: Math.abs(value - values[0]) <= 0.01 * Math.abs(values[0]),
    }));
    for (const system of ['shop', 'si'] as const) {
      const telling = tellingOf({ kind }, pairs, system);
      const [from, to] = [values[0], values[1]].map((value) => readPrinted(telling.number(value)));
      expect([from, to].every(Number.isFinite), `${kind} ${values.join()}`).toBe(true);
      const [difference, percent] = [telling.difference(pairs[1]), telling.percent(pairs[1])];
      const told = `${kind} ${telling.number(values[0])} ${telling.number(values[1])} ${difference} ${percent}`;
      expect(told).not.toMatch(/(^|\s)[+-]0(\.0+)?($|\s)/);
      if (difference === 'same') {
        expect(pairs[1].none || from === to, told).toBe(true);
        expect(percent, told).toBe('');
        continue;
      }
      expect(readPrinted(difference), told).toBeCloseTo(to - from, 6);
      expect(Math.sign(readPrinted(difference)), told).toBe(Math.sign(values[1] - values[0]));
      const alone = readPrinted(telling.signed(values[1] - values[0]));
      const digit = Math.max(Math.abs(from), Math.abs(to)) * 1e-9 + lastDigit(kind, telling.number(values[1]), values);
      expect(Math.abs(alone - (to - from)), told).toBeLessThanOrEqual(digit);
      if (percent === '') continue;
      expect(from, told).not.toBe(0);
      expect(
        Math.abs(readPrinted(percent.replace(' %', '')) - (100 * (to - from)) / Math.abs(from)),
        told,
      ).toBeLessThanOrEqual(0.5 + 1e-9);
    }
  }
}

/** The last digit that a number is told to, in its printed unit. */
function lastDigit(kind: Row['kind'], text: string, values: number[]): number {
  if (kind === 'time') return timesStep(values);
  const decimals = text.split('.')[1]?.length ?? 0;
  // whole numbers may end in zeros that say nothing
  const zeros = decimals === 0 ? (/0*$/.exec(text.replace(/,/g, ''))?.[0].length ?? 0) : 0;
  return 10 ** (zeros - decimals);
}
