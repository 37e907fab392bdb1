import { describe, expect, it } from 'vitest';
import { checkWood } from '../../src/fit/woodCheck.js';
import { design, MIDDLE, STACK_END, WOOD, AIR, type Change, logOf, made, TO_CELSIUS, THREE } from './suspectLogs.js';

describe('outdoor air against cold probes', () => {
  /** All temperatures shifted, as on another day [°F]. */
  const day = (shift: number, air: (value: number) => number): Change => {
    const probes = made(THREE, (value) => value + shift);
    const outdoors = made([AIR], (value) => air(value + shift));
    return (cells, row) => outdoors(probes(cells, row), row);
  };
  const told = (change: Change, head?: string) =>
    logOf(THREE, change, head ? { [AIR]: head } : {})
      .notes.map(({ code }) => code)
      .filter((code) => ['air-unit', 'colder-than-air'].includes(code));
  const same = (value: number) => value;

  it.each([
    ['in summer', 15],
    ['in spring', -10],
    ['in winter', -45],
  ])('%s: the right unit says nothing, the wrong one is told, either way round', (_, shift) => {
    expect(told(day(shift, same))).toEqual([]);
    expect(told(day(shift, TO_CELSIUS), 'air [°C]')).toEqual([]);
    expect(told(day(shift, same), 'air [°C]')).toEqual(['air-unit']);
    expect(told(day(shift, TO_CELSIUS))).toEqual(['air-unit']);
  });

  it('a pit that is colder than outdoors can be is told, whatever the unit', () => {
    expect(told(day(0, (value) => value + 25))).toEqual(['colder-than-air']);
  });

  it('one probe that lies makes no weather', () => {
    for (const probes of [THREE, [MIDDLE, STACK_END]]) {
      for (const make of [TO_CELSIUS, (value: number) => value + 60]) {
        const { notes } = logOf(probes, made([STACK_END], make));
        expect(notes.map(({ code }) => code)).not.toContain('air-unit');
        expect(notes.map(({ code }) => code)).not.toContain('colder-than-air');
      }
    }
  });
});

describe('wood against what the pit can burn', () => {
  let total = 0;
  const adding =
    (blank: boolean, resetAt = Infinity): Change =>
    (cells, row) => {
      if (row === 0 || row === resetAt) total = 0;
      total += Number(cells[WOOD]) || 0;
      return cells.map((cell, k) => (k === WOOD ? (blank && cell === '' ? '' : total.toFixed(1)) : cell));
    };
  const check = (log: ReturnType<typeof logOf>) => checkWood(design, log)!;
  const notes = (log: ReturnType<typeof logOf>) => log.notes.map(({ code }) => code);

  it('an honest log is within', () => {
    const log = logOf(THREE);
    const { laid_kg, most_kg, least_kg } = check(log);
    expect(laid_kg).toBeLessThan(0.7 * most_kg);
    expect(laid_kg).toBeGreaterThan(2 * least_kg);
    expect(notes(log)).not.toContain('running-total');
  });

  it('a running total in every row is far beyond, with or without a reset, and called so', () => {
    for (const resetAt of [Infinity, 80]) {
      const log = logOf(THREE, adding(false, resetAt));
      expect(check(log).laid_kg).toBeGreaterThan(2 * check(log).most_kg);
      expect(notes(log)).toContain('running-total');
    }
  });

  it('a running total where wood was laid on is called so', () => {
    expect(notes(logOf(THREE, adding(true)))).toContain('running-total');
  });

  it('the last piece held until the next is beyond, and no running total', () => {
    let held = '';
    const log = logOf(THREE, (cells) => cells.map((cell, k) => (k === WOOD ? (held = cell || held) : cell)));
    expect(check(log).laid_kg).toBeGreaterThan(check(log).most_kg);
    expect(notes(log)).not.toContain('running-total');
  });

  it('pounds that say grams or ounces are less than the heat took', () => {
    for (const unit of ['g', 'oz']) {
      const { laid_kg, least_kg } = check(logOf(THREE, undefined, { [WOOD]: `wood [${unit}]` }));
      expect(laid_kg).toBeLessThan(least_kg);
    }
  });
});
