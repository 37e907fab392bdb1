import { describe, expect, it } from 'vitest';
import { sameTime, tellingOf, timesStep } from '../../../src/study/compare/told.js';
import { formatTime, timeStep } from '../../../src/units/index.js';
import { generator } from '../../design/randomDesign.js';
import { readPrinted } from '../../support/printed.js';
import { expectToldAsPrinted, KINDS } from './toldDraws.js';

describe('numbers beside each other', () => {
  it.each(KINDS)('%s: a printed difference is that of the printed numbers, and of the full ones to a digit', (kind) =>
    expectToldAsPrinted(kind, 300),
  );

  it('have so fine a last digit that rounding makes less than a fifth of a difference worth telling', () => {
    const next = generator(11);
    for (let i = 0; i < 3000; i++) {
      const base = 10 ** (7 * next() - 3);
      const value = base * (1 + (next() < 0.5 ? -1 : 1) * (0.011 + 0.5 * next()));
      const pairs = [base, value].map((each) => ({ baseline: base, value: each, none: false }));
      const telling = tellingOf({ kind: 'power' }, pairs, 'si');
      const printed = readPrinted(telling.difference(pairs[1]));
      expect(Math.abs(printed / ((value - base) / 1000) - 1), `${base} ${value}`).toBeLessThan(0.2);
    }
  });

  it('without a number are never the same', () => {
    const pairs = [
      { baseline: null, value: null, none: false },
      { baseline: null, value: 60, none: false },
      { baseline: 60, value: null, none: false },
    ];
    const telling = tellingOf({ kind: 'time', missing: 'never' }, pairs, 'shop');
    expect(pairs.map((pair) => telling.difference(pair))).toEqual(['', '–', '–']);
    expect(pairs.map((pair) => telling.percent(pair))).toEqual(['', '', '']);
    expect(pairs.map(({ value }) => telling.number(value))).toEqual(['never', '60 s', 'never']);
  });

  it('have no percentage of nothing', () => {
    const pairs = [0, 1000].map((value) => ({ baseline: 0, value, none: value === 0 }));
    const telling = tellingOf({ kind: 'power' }, pairs, 'si');
    expect([telling.number(0), telling.difference(pairs[1]), telling.percent(pairs[1])]).toEqual(['0.00', '+1.00', '']);
  });
});

describe('times', () => {
  it('read back to the digit they are told to, in one style from a second to days', () => {
    const next = generator(3);
    for (let i = 0; i < 5000; i++) {
      const time = 10 ** (6.2 * next());
      const text = formatTime(time);
      expect(Math.abs(readPrinted(text) - time), text).toBeLessThanOrEqual(0.5 * timeStep(time) + 1e-6);
      expect(text).toMatch(/^(\d+ s|\d+ min( \d+ s)?|\d+ h( \d+ min)?|[\d.]+ h)$/);
    }
    expect([0.2, 59.7, 119.6, 460, 599.8, 5399, 93_600, 188_280].map((time) => formatTime(time))).toEqual([
      '0 s',
      '60 s',
      '2 min',
      '7 min 40 s',
      '10 min',
      '1 h 30 min',
      '26 h',
      '52.3 h',
    ]);
    expect([-0.2, -90, -5400].map((time) => formatTime(time))).toEqual(['0 s', '-90 s', '-1 h 30 min']);
  });

  it('that stand side by side share their last digit, which is fine enough for the shortest', () => {
    expect(
      [
        [45, 3000],
        [200, 3000],
        [400, 800],
        [400, 3000],
        [200, 9000],
        [700, 9000],
        [200_000, 300_000],
        [0, 0],
      ].map(timesStep),
    ).toEqual([1, 1, 1, 60, 60, 60, 360, 1]);
    expect(sameTime(44 * 60 + 40, 45 * 60 + 20, [2680, 2720])).toBe(true);
    expect(sameTime(44 * 60 + 40, 45 * 60 + 20, [2680, 2720, 100])).toBe(false);
  });
});

it('money is told plainly: whole from a hundred on, else to the cent', () => {
  const told = (amounts: number[], currency: string) => {
    const pairs = amounts.map((value) => ({ baseline: amounts[0], value, none: false }));
    return amounts.map((amount) => tellingOf({ kind: 'money' }, pairs, 'shop', currency).quantity(amount));
  };
  expect(told([0.5, 99.4, -12, -0.001], '$')).toEqual(['$0.50', '$99.40', '-$12.00', '$0.00']);
  expect(told([1234.5, 101], '$')).toEqual(['$1,235', '$101']);
  expect(told([12], 'EUR')).toEqual(['12.00 EUR']);
});

it.each([
  [0, 'at once', 'at once'],
  [7, '7', '7 cooks'],
  [83, '83', '83 cooks'],
  [1234, '1,200', '1,200 cooks'],
  [Infinity, 'never', 'never'],
  [-41, 'gone after 41', 'gone after 41'],
  [null, '–', '–'],
])('%s cooks is told as %s', (value, number, quantity) => {
  const telling = tellingOf({ kind: 'cooks' }, [], 'shop');
  expect([telling.number(value), telling.quantity(value)]).toEqual([number, quantity]);
});

it('what is counted to an end is told there as that and more', () => {
  const telling = tellingOf({ kind: 'number', rough: true, most: 1000 }, [], 'shop');
  expect([12, 999, 1000].map(telling.number)).toEqual(['12', '999', '1,000+']);
  const against = (baseline: number, value: number) => ({ baseline, value, none: false });
  expect([against(12, 20), against(12, 1000), against(1000, 12)].map(telling.difference)).toEqual(['+8', '–', '–']);
  expect([against(10, 20), against(10, 1000)].map(telling.percent)).toEqual(['+100 %', '']);
});
