import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readLog } from '../../src/fit/log/readLog.js';
import { fit } from '../../src/fit/fit.js';
import { exampleDesign } from '../support/examples.js';

/**
 * Logs that read well and are wrong: a unit, a header or a weight slipped. A fit must not go along with them and keep silent:
 * either the reader refuses them, or a warning says that the pit and the log don't belong together.
 */
const design = exampleDesign('plain-24.yaml');
const cook = readFileSync(new URL('../../examples/yard-cook.csv', import.meta.url), 'utf8');
const rows = cook.split('\n');
const header = rows[1];
const table = rows.slice(2).filter((row) => row !== '');
const columns = header.split(',');

/** Every second row, up to four hours: a wrong log shows as well in half of its rows. */
function written(head: string, change: (cells: string[], row: number) => string[] = (cells) => cells): string {
  const lines = table
    .filter((row, i) => i < 480 && (i % 2 === 0 || row.split(',')[5] !== ''))
    .map((row, i) => change(row.split(','), i).join(','));
  return [head, ...lines, ''].join('\n');
}

const TELLING = ['more-than-noise', 'at-edge-of-spread', 'probe-reads-off', 'moves-what-is-not-fitted'];
const FREE = ['innerConvection', 'fire.radiant', 'wood.heat', 'estimates.stemFill'];

/** Codes of what the reader or the fit says against a log. */
function saidOf(text: string): { refused: boolean; codes: string[]; error_K: number } {
  const read = readLog(text, { fileName: 'cook.csv', design });
  if (read.faults) return { refused: true, codes: read.faults.map(({ code }) => code), error_K: Infinity };
  const result = fit(design, [{ log: read.log, hash: 'a' }], { paths: FREE, heldBack: 0.3, accuracy: 2 / 1.8 })!;
  const codes = result.warnings.map(({ code }) => code).filter((code) => TELLING.includes(code));
  return { refused: false, codes, error_K: result.quality.heldBack_K! };
}

describe('a log that is right', () => {
  it('fits, with nothing said against it', () => {
    const { refused, error_K, codes } = saidOf(written(header));
    expect(refused).toBe(false);
    expect(1.8 * error_K).toBeLessThan(3);
    expect(codes).toEqual([]);
  });
});

describe('a log that lies', () => {
  it.each([
    ['wood in kilograms that was pounds', written(header.replace('wood [lb]', 'wood [kg]'))],
    ['thermometers in °C that were °F', written(header.replaceAll('[°F]', '[°C]'))],
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
