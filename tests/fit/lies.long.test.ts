import { describe, expect, it } from 'vitest';
import { header, written, saidOf, table } from './lyingLogs.js';

const columns = header.split(',');

describe('a log that lies', () => {
  it.each([
    ['thermometers in °C that were °F', written(header.replaceAll('[°F]', '[°C]'))],
    ['wood in kilograms that was pounds', written(header.replace('wood [lb]', 'wood [kg]'))],
    [
      'time in minutes that was half minutes',
      written(header.replace('time', 'time [min]'), (c, i) => [`${2 * i}`, ...c.slice(1)]),
    ],
    [
      'the fire end for the stack end',
      written(header.replace('fire end', 'x').replace('stack end', 'fire end').replace('x', 'stack end')),
    ],
    ['a thermometer that is steel', written(header.replace('middle [', 'middle steel ['))],
    [
      'a piece of wood forgotten',
      written(header, (c) => (c[0] === '11:18:00' ? c.map((cell, k) => (k === 5 ? '' : cell)) : c)),
    ],
    [
      'every second piece of wood forgotten',
      written(header, (c, i) => (i % 4 === 0 && i > 0 ? c.map((cell, k) => (k === 5 ? '' : cell)) : c)),
    ],
    [
      'a probe that drifts away by 1 °F every 5 min',
      written(header, (c, i) =>
        c.map((cell, k) => (k === 2 && /^\d/.test(cell) ? (Number(cell) + i / 5).toFixed(1) : cell)),
      ),
    ],
  ])('%s: is refused or spoken against', (_, text) => {
    const { refused, codes } = saidOf(text);
    expect(refused || codes.length > 0).toBe(true);
  });

  it('was changed in each of these cases', () => {
    expect(columns).toContain('wood [lb]');
    expect(table.some((row) => row.startsWith('11:18:00') && row.split(',')[5] !== '')).toBe(true);
  });
});

describe('a log that is right', () => {
  it('fits, with nothing said against it', () => {
    const { refused, error_K, codes } = saidOf(written(header));
    expect(refused).toBe(false);
    expect(1.8 * error_K).toBeLessThan(3);
    expect(codes).toEqual([]);
  });
});
