import { describe, expect, it } from 'vitest';
import { formatFault } from '../../src/design/faults.js';
import { columnOf, columnProblem, nearestColumn } from '../../src/design/logHeaders.js';
import { LOG_COLUMNS } from '../../src/design/logColumns.js';
import { designOf, faultsOf, PLAIN } from './designFiles.js';

const withLog = (block: string): string => `${PLAIN}log:\n${block}`;

describe('log block', () => {
  it('is read as written, accuracy in kelvin', () => {
    const { log } = designOf(withLog("  columns:\n    Probe 1: 'middle [°F]'\n    Bat: ignore\n  accuracy: 3 °F\n"));
    expect(log?.columns).toEqual({ 'Probe 1': 'middle [°F]', Bat: 'ignore' });
    expect(log?.accuracy).toBeCloseTo(5 / 3, 9);
  });

  it('may be left out, and so may all in it', () => {
    expect(designOf(PLAIN).log).toBeUndefined();
    const { log } = designOf(withLog('  columns: {}\n'));
    expect(log?.columns).toEqual({});
    expect(log?.accuracy).toBeCloseTo(10 / 9, 9);
  });

  it.each([
    ["  columns: { P1: 'midle [°F]' }\n", 'log.columns.P1', 'unknown-name', 'middle [°F]', /no column/],
    ["  columns: { P1: 'middle [°G]' }\n", 'log.columns.P1', 'unknown-unit', 'middle [°F]', /does not fit/],
    ["  columns: { P1: 'upright upper [°F]' }\n", 'log.columns.P1', 'unknown-name', null, /this pit has not/],
    ['  columns: { P1: brisket }\n', 'log.columns.P1', 'unknown-name', null, /no column/],
    ["  columns: { P1: 'middle [°F]', p 1: ignore }\n", 'log.columns.p 1', 'duplicate-key', null, /same header/],
    ['  columns: { P1: 3 }\n', 'log.columns.P1', 'wrong-type', null, /plain number/],
    ['  columns: middle\n', 'log.columns', 'wrong-type', null, /text/],
    ['  colums: {}\n', 'log.colums', 'unknown-key', 'columns', /no field/],
    ['  accuracy: 3\n', 'log.accuracy', 'no-unit', '3 °F', /no unit/],
    ['  accuracy: 30 °F\n', 'log.accuracy', 'out-of-range', null, /too large/],
  ])('%j is a fault at %s', (block, path, code, nearest, message) => {
    const text = withLog(block);
    const faults = faultsOf(text);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ path, code, nearest, line: text.split('\n').length - 1 });
    expect(formatFault(faults[0])).toMatch(message);
  });
});

describe('columns of a log', () => {
  it.each(LOG_COLUMNS.map((row) => [row.example, row] as const))('%s is what its row says', (example, row) => {
    expect(columnOf(example)?.kind).toBe(row.kind);
    expect(columnProblem(example, ['middle'])).toBeUndefined();
    for (const name of row.names) expect(columnOf(name)).toMatchObject({ kind: row.kind });
  });

  it.each(['Food [°F]', 'Lid', 'Bat', 'T3', 'Probe 1', 'humidity [%]', 'Set point [°F]', 'Meat (°F)', '#', ''])(
    '%s is no slip of any',
    (header) => {
      expect(columnOf(header)).toBeUndefined();
      expect(nearestColumn(header)).toBeUndefined();
    },
  );

  it.each([
    ['tiem [s]', 'time [s]'],
    ['stak end (F)', 'stack end [F]'],
    ['uprigth lower gas [°C]', 'upright lower gas [°C]'],
    ['dampr [%]', 'damper [%]'],
    ['wood lb', 'wood [lb]'],
  ])('%s is a slip of %s', (header, nearest) => {
    expect(nearestColumn(header)).toBe(nearest);
  });
});
