import { describe, expect, it } from 'vitest';
import { readLog, readLogAnyUnit } from '../../../src/fit/log/readLog.js';
import { DESIGN, faultsOf, GOOD, HEADER, logOf, textOf } from './logTexts.js';

describe('headers', () => {
  it('reads other legal units when asked to', async () => {
    const text = textOf(
      GOOD.map((row) => [row[0], row[1], '70000']),
      ['time [s]', 'middle [°F]', 'fire [kJ/h]'],
    );
    expect(faultsOf(text)).toMatchObject([{ code: 'unknown-unit', path: 'fire [kJ/h]' }]);
    const { log } = await readLogAnyUnit(text, { fileName: 'cook.csv', design: DESIGN });
    expect(log?.fire?.value[0]).toBeCloseTo(70e6 / 3600, 6);
  });
});

describe('size', () => {
  it.each([
    ['a cell of a million digits', `${textOf(GOOD)}10790,${'1'.repeat(1e6)}x,1,1,,\n`],
    ['a header of a million letters', textOf(GOOD, [...HEADER.slice(0, 5), 'a '.repeat(5e5)])],
    ['a line of a million cells', `${','.repeat(1e6)}\n${textOf(GOOD)}`],
    [
      'one time a hundred thousand times',
      `${textOf(GOOD)}${Array.from({ length: 1e5 }, (_, i) => `10790,${i % 1000},1,1,,`).join('\n')}\n`,
    ],
  ])('%s is read to its end, and told in few words', (_, text) => {
    const { log, faults } = readLog(text, { fileName: 'cook.csv', design: DESIGN });
    const told = faults ?? log.notes;
    expect(told).not.toEqual([]);
    expect(JSON.stringify(told).length).toBeLessThan(5000);
  });

  it('a day at one reading a second', () => {
    const rows = Array.from({ length: 86_400 }, (_, i) => [String(i), ...GOOD[Math.floor(i / 80)].slice(1)]);
    const log = logOf(textOf(rows));
    expect(log.channels[0].time_s).toHaveLength(86_400);
    expect(log.channels[0].time_s.at(-1)).toBe(86_399);
  });
});
