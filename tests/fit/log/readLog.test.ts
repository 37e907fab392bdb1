import { describe, expect, it } from 'vitest';
import { STATIONS } from '../../../src/design/stations.js';
import { stationLabel } from '../../../src/words/labels.js';
import { columnOf } from '../../../src/design/logHeaders.js';
import { formatLogFaults } from '../../../src/fit/log/readLog.js';
import { designOf, PLAIN } from '../../design/designFiles.js';
import {
  DESIGN,
  DOOR,
  faultsOf,
  GOOD,
  goodRows,
  HEADER,
  kelvin,
  logOf,
  note,
  ROWS,
  STEP,
  textOf,
  WITH_UPRIGHT,
  withTimes,
} from './logTexts.js';

/** Twenty minutes of one thermometer, enough to be a log, under any header. */
function oneColumn(header: string, cell: (i: number) => string = (i) => String(200 + (i % 7))): string {
  return textOf(
    Array.from({ length: 25 }, (_, i) => [String(60 * i), cell(i)]),
    ['time [s]', header],
  );
}

describe('a good log', () => {
  const log = logOf(textOf(GOOD));

  it('is read whole, in SI, without a word', () => {
    expect(log.notes).toEqual([]);
    expect(log).toMatchObject({ name: 'cook.csv', rows: ROWS, interval_s: STEP, length_s: STEP * (ROWS - 1) });
    expect(log.channels.map(({ station, measured, header }) => [station, measured, header])).toEqual([
      ['fireEnd', 'thermometer', 'fire end [°F]'],
      ['middle', 'thermometer', 'middle [°F]'],
      ['firebox', 'steel', 'firebox steel [°F]'],
    ]);
    for (const [c, channel] of log.channels.entries()) {
      expect(channel.time_s).toHaveLength(ROWS);
      channel.value_K.forEach((value, i) => expect(value).toBeCloseTo(kelvin(Number(GOOD[i][c + 1])), 6));
      expect(channel.resolution_K).toBeCloseTo((0.1 * 5) / 9, 6);
    }
  });

  it('keeps the fall at an open door, and says when it stood open', () => {
    expect(log.door).toEqual([{ from_s: DOOR, to_s: DOOR + 60 }]);
    const middle = log.channels[1];
    const at = (time: number): number => middle.value_K[middle.time_s.indexOf(time)];
    expect(at(DOOR) - at(DOOR + 60)).toBeGreaterThan(30);
  });

  it('keeps that fall without a door column and without other probes', () => {
    const text = textOf(
      GOOD.map((row) => [row[0], row[1]]),
      ['time [s]', 'fire end [°F]'],
    );
    expect(logOf(text).notes).toEqual([]);
  });

  it('sums up wood by the time it is laid on', () => {
    expect(log.wood?.map(({ time_s }) => time_s)).toEqual([0, 2700, 5400, 8100]);
    expect(log.wood?.[1].mass_kg).toBeCloseTo(4.5 * 0.45359237, 9);
  });

  it('holds none of what it has no column for', () => {
    expect(log).toMatchObject({ fire: null, air: null, wind: null, intakes: null, damper: null });
  });

  it('keeps the long equal runs of a logger of whole degrees, and a cold start', () => {
    const rows = GOOD.map((row) =>
      row.map((cell, c) => ([1, 2, 3].includes(c) ? String(Math.round(Number(cell))) : cell)),
    );
    const cold = Array.from({ length: 180 }, (_, i) => [String(STEP * i), '70', '70', '70', '', 'shut']);
    const later = rows.map(([time, ...rest]) => [String(Number(time) + 1800), ...rest]);
    const whole = logOf(textOf([...cold, ...later]));
    expect(whole.notes).toEqual([]);
    expect(whole.channels.every(({ time_s }) => time_s.length === ROWS + 180)).toBe(true);
    expect(whole.channels[1].resolution_K).toBeCloseTo(5 / 9, 6);
  });
});

describe('headers', () => {
  it.each([
    ['Middle [°F]', 'middle', 'thermometer'],
    ['MIDDLE (F)', 'middle', 'thermometer'],
    ['stack end [degF]', 'stackEnd', 'thermometer'],
    ['stackEnd[°F]', 'stackEnd', 'thermometer'],
    ['Stack_End temp [°F]', 'stackEnd', 'thermometer'],
    ['fireEnd [°F]', 'fireEnd', 'thermometer'],
    ['upright upper [°F]', 'uprightUpper', 'thermometer'],
    ['Upright, lower (°F)', 'uprightLower', 'thermometer'],
    ['middle gas [°F]', 'middle', 'gas'],
    ['gas middle [°F]', 'middle', 'gas'],
    ['firebox steel [°F]', 'firebox', 'steel'],
    ['Steel Firebox temperature [°F]', 'firebox', 'steel'],
    ['gauge [°F]', 'uprightUpper', 'thermometer'],
  ])('%s is %s, %s', (header, station, measured) => {
    const { channels } = logOf(oneColumn(`"${header}"`), { ...WITH_UPRIGHT, gauge: 'uprightUpper' });
    expect(channels).toMatchObject([{ station, measured, header }]);
    expect(channels[0].value_K[0]).toBeCloseTo(kelvin(200), 6);
  });

  it('takes every name of a station, as a design file and as the charts have it', () => {
    for (const station of STATIONS) {
      expect(columnOf(`${station} [°F]`)).toMatchObject({ station });
      expect(columnOf(`${stationLabel(station)} [°C]`)).toMatchObject({ station, unit: '°C' });
    }
  });

  it('reads each unit that fits', () => {
    expect(logOf(oneColumn('middle [°C]', (i) => String(100 + i))).channels[0].value_K[0]).toBeCloseTo(373.15, 6);
    expect(logOf(oneColumn('middle [K]', (i) => String(400 + i))).channels[0].value_K[0]).toBeCloseTo(400, 6);
  });

  it('takes the unit from the cells where they carry it', () => {
    const { channels } = logOf(oneColumn('middle', (i) => (i === 3 ? '110 °C' : `${225 + i} °F`)));
    expect(channels[0].value_K[0]).toBeCloseTo(kelvin(225), 6);
    expect(channels[0].value_K[3]).toBeCloseTo(383.15, 6);
  });

  it.each([
    ['midle [°F]', 'unknown-name', 'middle [°F]'],
    ['fierbox steel [°C]', 'unknown-name', 'firebox steel [°C]'],
    ['middle °F', 'unknown-name', 'middle [°F]'],
    ['middle_F', 'unknown-name', 'middle [F]'],
    ['middle', 'no-unit', 'middle [°F]'],
    ['middle [F°]', 'unknown-unit', 'middle [°F]'],
    ['wnd [mph]', 'unknown-name', 'wind [mph]'],
  ])('%s is a fault that knows better', (header, code, nearest) => {
    const text = textOf(
      GOOD.map((row) => [row[0], row[1], row[2]]),
      ['time [s]', 'fire end [°F]', header],
    );
    const [fault, ...more] = faultsOf(text);
    expect(more).toEqual([]);
    expect(fault).toMatchObject({ code, path: header, file: 'cook.csv', line: 1, column: 24, nearest });
    expect(formatLogFaults([fault])).toContain(`did you mean '${nearest}'?`);
    expect(fault.allowed).toMatch(/°F|middle/);
  });

  it('tells what it does not use', () => {
    const text = textOf(
      GOOD.map((row) => [...row, '1', '']),
      [...HEADER, 'Food [°F]', ''],
    );
    const log = logOf(text);
    expect(log.notes).toHaveLength(1);
    expect(log.notes[0]).toMatchObject({ code: 'unused-column', where: 'Food [°F]', line: 1, count: ROWS });
  });

  it('refuses a station that the pit has not', () => {
    const [fault] = faultsOf(oneColumn('upright upper [°F]'));
    expect(fault).toMatchObject({ code: 'unknown-name', path: 'upright upper [°F]' });
    expect(fault.allowed).toBe('firebox, fire end, middle, stack end');
  });

  it('refuses a header that stands twice, and two columns of what there is one of', () => {
    const twice = textOf(
      GOOD.map((row) => [row[0], row[1], row[2]]),
      ['time [s]', 'middle [°F]', 'middle [°F]'],
    );
    expect(faultsOf(twice)).toMatchObject([{ code: 'duplicate-key', path: 'middle [°F]', column: 22 }]);
    const clocks = textOf(
      GOOD.map((row) => [row[0], row[1], row[0]]),
      ['time [s]', 'middle [°F]', 'elapsed [s]'],
    );
    expect(faultsOf(clocks)).toMatchObject([{ code: 'duplicate-key', path: 'elapsed [s]' }]);
  });

  it('asks for a time and for a temperature', () => {
    const noTime = textOf(
      GOOD.map((row) => [row[1], row[2]]),
      ['fire end [°F]', 'middle [°F]'],
    );
    expect(faultsOf(noTime)).toMatchObject([{ code: 'missing', message: 'names no time', line: 1 }]);
    const noHeat = textOf(
      GOOD.map((row) => [row[0], '3']),
      ['time [s]', 'wind [mph]'],
    );
    expect(faultsOf(noHeat)).toMatchObject([{ code: 'missing', message: 'names no temperature of the pit' }]);
  });

  it('goes by the map of the design file', () => {
    const design = designOf(`${PLAIN}log:
  columns: { Probe 1: 'middle [°F]', T3: 'firebox steel [°C]', Bat: ignore, Gone: 'fire end [°F]', p2: stack end }
  accuracy: 3 °F
`);
    expect(design.log?.accuracy).toBeCloseTo(5 / 3, 9);
    const rows = Array.from({ length: 25 }, (_, i) => [String(60 * i), String(200 + i), String(150 + i), '4.1', '99']);
    const log = logOf(textOf(rows, ['time [s]', 'PROBE 1', 't3', 'Bat', 'P2 (°C)']), design);
    expect(log.channels.map(({ header, station, measured }) => [header, station, measured])).toEqual([
      ['PROBE 1', 'middle', 'thermometer'],
      ['t3', 'firebox', 'steel'],
      ['P2 (°C)', 'stackEnd', 'thermometer'],
    ]);
    expect(log.channels[1].value_K[0]).toBeCloseTo(423.15, 6);
    expect(log.channels[2].value_K[0]).toBeCloseTo(372.15, 6);
    expect(log.notes.map(({ code, where }) => [code, where])).toEqual([['unmatched-map', 'Gone']]);
  });
});

describe('times', () => {
  const pad = (value: number): string => String(value).padStart(2, '0');
  const clock = (seconds: number): string =>
    `${pad(Math.floor(seconds / 3600) % 24)}:${pad(Math.floor(seconds / 60) % 60)}:${pad(seconds % 60)}`;
  const half = (seconds: number): string => {
    const hour = Math.floor(seconds / 3600) % 24;
    return `${hour % 12 || 12}:${pad(Math.floor(seconds / 60) % 60)}:${pad(seconds % 60)} ${hour < 12 ? 'am' : 'PM'}`;
  };
  const day = (seconds: number, from = Date.UTC(2026, 6, 3)): string => new Date(from + 1000 * seconds).toISOString();
  const late = 22.5 * 3600;

  const forms: [string, string, (seconds: number, i: number) => string, string?][] = [
    ['minutes', 'time [min]', (s) => (s / 60).toFixed(6)],
    ['hours', 'Elapsed (h)', (s) => (s / 3600).toFixed(8)],
    ['cells with their unit', 'time', (s) => `${s} s`],
    ['clock times', 'clock', (s) => clock(s + 36_000)],
    ['clock times over midnight', 'time', (s) => clock(s + late), 'midnight'],
    ['AM and PM over midnight', 'time', (s) => half(s + late), 'midnight'],
    ['AM and PM over noon', 'time', (s) => half(s + 40_000)],
    ['twelve hours without AM and PM', 'time', (s) => half(s + 40_000).slice(0, -3), 'twelve-hour-clock'],
    ['elapsed h:mm:ss', 'elapsed', (s) => `${Math.floor(s / 3600)}:${pad(Math.floor(s / 60) % 60)}:${pad(s % 60)}`],
    [
      'elapsed above 24 h',
      'time [h:mm:ss]',
      (s) => `${23 + Math.floor(s / 3600)}:${pad(Math.floor(s / 60) % 60)}:${pad(s % 60)}`,
    ],
    ['elapsed minutes and seconds', 'time [mm:ss]', (s) => `${Math.floor(s / 60)}:${pad(s % 60)}`],
    ['ISO 8601 with T and Z', 'timestamp', (s) => day(s + late)],
    [
      'ISO 8601 with a space',
      'time',
      (s) =>
        day(s + late)
          .replace('T', ' ')
          .slice(0, 19),
    ],
    ['ISO 8601 with an offset', 'time', (s) => `${day(s + late).slice(0, 19)}-05:00`],
    [
      'basic ISO 8601',
      'time',
      (s) =>
        day(s + late)
          .slice(0, 19)
          .replace(/[-:]/g, ''),
    ],
    ['month first, by the day', 'time', (s) => `7/${s + late < 86_400 ? 30 : 31}/2026 ${clock(s + late)}`],
    ['day first, by the marks', 'time', (s) => `${s + late < 86_400 ? 3 : 4}.7.2026 ${clock(s + late)}`],
    ['month first, as the days run on', 'time', (s) => `7/${s + late < 86_400 ? 3 : 4}/26 ${half(s + late)}`],
  ];

  it.each(forms)('%s', (_, header, timeOf, code) => {
    const log = logOf(withTimes(timeOf, header));
    expect(log.channels[0].time_s).toHaveLength(ROWS);
    log.channels[0].time_s.forEach((time, i) => expect(time).toBeCloseTo(STEP * i, 1));
    expect(log.notes.map((each) => each.code)).toEqual(code ? [code] : []);
  });

  it('joins a date and a clock time in two columns', () => {
    const rows = GOOD.map(([time, ...rest]) => [
      day(Number(time) + late).slice(0, 10),
      clock(Number(time) + late),
      ...rest,
    ]);
    const log = logOf(textOf(rows, ['Date', 'Time', ...HEADER.slice(1)]));
    expect(log.length_s).toBe(STEP * (ROWS - 1));
    expect(log.notes).toEqual([]);
  });

  it('takes what stands behind the name of clock times for a remark', () => {
    const log = logOf(withTimes((s) => clock(s + 36_000), 'Time (EST)'));
    expect(log.length_s).toBe(STEP * (ROWS - 1));
    expect(faultsOf(withTimes(String, 'time (EST)'))).toMatchObject([{ code: 'unknown-unit', path: 'time (EST)' }]);
  });

  it('tells a date that is not needed', () => {
    const rows = GOOD.map((row) => ['2026-07-04', ...row]);
    const log = logOf(textOf(rows, ['date', ...HEADER]));
    expect(log.notes).toMatchObject([{ code: 'unused-column', where: 'date', count: ROWS }]);
  });

  it('refuses dates that may be either', () => {
    const text = withTimes((s) => `${s < 6000 ? '5/4' : '4/5'}/2026 ${clock(s)}`);
    expect(faultsOf(text)).toMatchObject([
      { path: 'time', message: expect.stringMatching(/day first or month first/) },
    ]);
  });

  it('asks for the unit of a plain number', () => {
    expect(faultsOf(withTimes(String))).toMatchObject([
      { code: 'no-unit', line: 2, path: 'time', value: '0', message: 'has no unit', nearest: 'time [s]' },
    ]);
  });

  it('refuses a column that holds no times', () => {
    const [fault] = faultsOf(withTimes(() => 'noon'));
    expect(fault).toMatchObject({ code: 'not-a-quantity', line: 2, path: 'time', value: 'noon' });
    expect(fault.allowed).toMatch(/10:15/);
  });

  it('leaves out rows whose time can’t be read', () => {
    const rows = goodRows();
    rows[100][0] = '10:0x';
    rows[101][0] = '';
    const log = logOf(textOf(rows));
    expect(log.notes).toMatchObject([
      { code: 'unreadable-time', where: 'time [s]', line: 102, count: 2, leftOut: 'rows' },
    ]);
    expect(log.channels[0].time_s).toHaveLength(ROWS - 2);
  });

  it('counts from the first row, and knows negative times', () => {
    const log = logOf(withTimes((s) => String(s - 500), 'time [s]'));
    expect(log.channels[0].time_s.slice(0, 2)).toEqual([0, 10]);
  });
});

describe('order', () => {
  it('sorts a few rows that stand out of order', () => {
    const rows = goodRows();
    [rows[50], rows[53]] = [rows[53], rows[50]];
    const log = logOf(textOf(rows));
    expect(log.channels).toEqual(logOf(textOf(GOOD)).channels);
    expect(log.notes).toHaveLength(1);
    expect(note(log, 'unordered-time')).toMatchObject({ where: 'log' });
  });

  it('refuses many', () => {
    const rows = [...goodRows()].sort((a, b) => (Number(a[0]) % 370) - (Number(b[0]) % 370));
    expect(faultsOf(textOf(rows))).toMatchObject([{ message: expect.stringMatching(/run backwards/) }]);
    const setBack = withTimes((s) => new Date(Date.UTC(2026, 10, 1) + 1000 * (s < 7000 ? s : s - 3600)).toISOString());
    expect(faultsOf(setBack)[0].allowed).toMatch(/zone/);
  });

  it('leaves out a time far from all others', () => {
    const rows = goodRows();
    rows[30][0] = '999999';
    const log = logOf(textOf(rows));
    expect(log.length_s).toBe(STEP * (ROWS - 1));
    expect(log.notes).toMatchObject([{ code: 'stray-time', line: 32, count: 1, leftOut: 'rows' }]);
  });

  it('counts equal rows once and averages readings of one time', () => {
    const rows = goodRows();
    const other = [...rows[40]];
    other[2] = (Number(other[2]) + 1).toFixed(1);
    rows.splice(41, 0, [...rows[40]], other);
    const log = logOf(textOf(rows));
    expect(note(log, 'repeated-row')).toMatchObject({ count: 1, leftOut: 'rows' });
    expect(note(log, 'repeated-time')).toMatchObject({ count: 1, leftOut: 'rows' });
    expect(log.channels[1].time_s).toHaveLength(ROWS);
    expect(log.channels[1].value_K[40]).toBeCloseTo(kelvin(Number(GOOD[40][2]) + 0.5), 6);
  });

  it('tells gaps', () => {
    const rows = goodRows().filter((_, i) => (i < 200 || i >= 260) && (i < 500 || i >= 506));
    const log = logOf(textOf(rows));
    expect(log.notes).toMatchObject([{ code: 'gap', count: 2, line: 202 }]);
    expect(log.notes[0].message).toMatch(/10 min/);
  });

  it('leaves out what follows a restart', () => {
    const rows = goodRows().map((row, i) => (i < 800 ? row : [String(STEP * (i - 800)), ...row.slice(1)]));
    const log = logOf(textOf(rows));
    expect(note(log, 'restart')).toMatchObject({ where: 'log', line: 802, count: 280, leftOut: 'rows' });
    expect(note(log, 'restart')?.message).toMatch(/ISO 8601/);
    expect(log.channels[0].time_s).toHaveLength(800);
    expect(note(log, 'lost-wood')).toMatchObject({ count: 1, where: 'wood [lb]' });
  });

  it('keeps the longer part when the restart comes early', () => {
    const rows = goodRows().map((row, i) => (i < 20 ? row : [String(STEP * (i - 20)), ...row.slice(1)]));
    const log = logOf(textOf(rows));
    expect(note(log, 'restart')).toMatchObject({ line: 2, count: 20 });
    expect(log.channels[0].value_K[0]).toBeCloseTo(kelvin(Number(GOOD[20][1])), 6);
  });

  it('keeps one of two cooks in a file', () => {
    const log = logOf(withTimes((s) => String(s < 2000 ? s : s + 200_000), 'time [s]'));
    expect(note(log, 'long-gap')).toMatchObject({ line: 2, count: 200, leftOut: 'rows' });
    expect(log.length_s).toBe(STEP * (ROWS - 201));
  });

  it('refuses a log of weeks, and one of minutes', () => {
    expect(faultsOf(withTimes(String, 'time [h]'))).toMatchObject([{ message: expect.stringMatching(/spans 450 d/) }]);
    const short = textOf(GOOD.slice(0, 40));
    expect(faultsOf(short)).toMatchObject([{ allowed: expect.stringMatching(/at least 10 min/) }]);
    const few = textOf(GOOD.filter((_, i) => i % 200 === 0));
    expect(faultsOf(few)).toMatchObject([
      { message: expect.stringMatching(/gives 18 .*readings/), allowed: 'at least 20' },
    ]);
  });
});

describe('tables', () => {
  const good = logOf(textOf(GOOD));

  it.each([
    ['semicolons', textOf(GOOD, HEADER, ';')],
    ['tabs', textOf(GOOD, HEADER, '\t')],
    ['a byte order mark and CRLF', `\uFEFF${textOf(GOOD).replace(/\n/g, '\r\n')}`],
    ['CR alone', textOf(GOOD).replace(/\n/g, '\r')],
    [
      'quoted cells',
      textOf(
        GOOD.map((row) => row.map((cell) => `"${cell}"`)),
        HEADER.map((cell) => `"${cell}"`),
      ),
    ],
    ['spaces round the marks', textOf(GOOD, HEADER, ' , ')],
    ['quotes behind spaces', textOf(GOOD.map((row) => row.map((cell) => ` "${cell}" `)))],
    [
      'trailing marks',
      textOf(
        GOOD.map((row) => [...row, '']),
        [...HEADER, ''],
      ),
    ],
    ['empty lines at the end', `${textOf(GOOD)}\n\n , , , , ,\n\n`],
    ['empty lines between', textOf(GOOD).replace(/\n/g, '\n\n')],
    ['comments', textOf(GOOD).replace(/\n30,/, '\n# a split laid on\n30,')],
    ['no line break at the end', textOf(GOOD).trimEnd()],
    ['a header behind a hash', `#${textOf(GOOD)}`],
  ])('reads %s alike', (_, text) => {
    expect(logOf(text)).toEqual(good);
  });

  it.each([
    [';', 'decimal commas with semicolons'],
    ['\t', 'decimal commas with tabs'],
  ])('with %j: %s', (mark) => {
    const rows = GOOD.map((row) => row.map((cell) => cell.replace('.', ',')));
    expect(logOf(textOf(rows, HEADER, mark))).toEqual(good);
    const thousandths = GOOD.map((row) => [row[0], `${Number(row[1]).toFixed(3)}`.replace('.', ',')]);
    const log = logOf(textOf(thousandths, ['time [s]', 'fire end [°F]'], mark));
    expect(log.channels[0].value_K).toEqual(good.channels[0].value_K);
  });

  it('reads decimal commas in quotes', () => {
    const rows = GOOD.map((row) => row.map((cell) => (cell.includes('.') ? `"${cell.replace('.', ',')}"` : cell)));
    expect(logOf(textOf(rows))).toEqual(good);
  });

  it('does not guess at a comma where both styles stand', () => {
    const rows = goodRows();
    rows[10][1] = '1,250';
    rows[11][1] = '99,5';
    const log = logOf(textOf(rows, HEADER, ';'));
    expect(note(log, 'unreadable-cell', 'fire end [°F]')).toMatchObject({ line: 12, count: 1 });
    expect(log.channels[0].value_K[10]).toBeCloseTo(kelvin(99.5), 6);
  });

  it('finds the header behind a logger’s own lines, and tells them', () => {
    const preamble = 'Yard logger, unit 2\nDate: 2026-07-04\n\nSerial,0012\n';
    const log = logOf(preamble + textOf(GOOD));
    expect(log.channels).toEqual(good.channels);
    expect(log.notes).toMatchObject([{ code: 'preamble', count: 3, line: 1 }]);
  });

  it('names faults by their line behind a preamble', () => {
    const text = `logger\nof the yard\n${textOf(GOOD, ['time [s]', 'fire end [°F]', 'midle [°F]', ...HEADER.slice(3)])}`;
    expect(faultsOf(text)).toMatchObject([{ line: 3, column: 24, nearest: 'middle [°F]' }]);
  });

  it('leaves out rows that don’t fit, by line', () => {
    const lines = textOf(GOOD).split('\n');
    lines[20] = lines[20].slice(0, 12);
    lines[21] += ',7';
    lines[22] = `"${lines[22]}`;
    lines[500] = lines[0];
    const log = logOf(lines.join('\n'));
    expect(note(log, 'broken-row')).toMatchObject({ line: 21, count: 3, leftOut: 'rows' });
    expect(note(log, 'broken-row')?.message).toMatch(/1 with too few cells, 1 with too many, 1 with a quote/);
    expect(note(log, 'repeated-header')).toMatchObject({ line: 501, count: 1, leftOut: 'rows' });
    expect(log.channels[0].time_s).toHaveLength(ROWS - 4);
  });

  it('refuses a table of which more than a third does not fit', () => {
    const rows = GOOD.map((row, i) => (i % 2 ? row : row.slice(0, 3)));
    expect(faultsOf(textOf(rows))).toMatchObject([
      { code: 'syntax', line: 2, message: expect.stringMatching(/540 of 1,080/) },
    ]);
  });

  it('does not use a last cell that may be cut short', () => {
    const rows = GOOD.map((row) => row.slice(0, 3));
    const text = textOf(rows, HEADER.slice(0, 3));
    const cut = logOf(text.slice(0, -4));
    expect(note(cut, 'cut-short')).toMatchObject({ line: ROWS + 1 });
    expect(cut.channels[1].time_s).toHaveLength(ROWS - 1);
    expect(cut.channels[0].time_s).toHaveLength(ROWS);
  });

  it.each([
    ['nothing', '', /empty/],
    ['white space', ' \n\t\n', /empty/],
    ['bytes', `PK\u0003\u0004${'\u0000\u0001\uFFFDx'.repeat(50)}`, /not text/],
    ['one line', 'a', /no header/],
    ['prose', 'We lit the pit at noon.\nIt was cold.\n', /no header/],
    ['a header alone', `${HEADER.join(',')}\n`, /0 rows/],
    ['numbers alone', '1,2\n3,4\n', /no header/],
    ['headers of another trade', 'price,amount\n1,2\n3,4\n', /names no time/],
  ])('refuses %s', (_, text, message) => {
    const faults = faultsOf(text);
    expect(faults[0].message).toMatch(message);
    expect(formatLogFaults(faults)).toMatch(/^cook\.csv:\d+:\d+: /);
  });
});

describe('cells', () => {
  it('leaves out cells without a reading, and tells them from cells that can’t be read', () => {
    const rows = goodRows();
    ['---', 'NaN', 'OL', 'ERR', '', 'n/a', '22x', '#####'].forEach((cell, i) => (rows[100 + i][1] = cell));
    const log = logOf(textOf(rows));
    expect(note(log, 'no-reading')).toMatchObject({ where: HEADER[1], line: 102, count: 6, leftOut: 'readings' });
    expect(note(log, 'unreadable-cell')).toMatchObject({ where: HEADER[1], line: 108, count: 1, leftOut: 'readings' });
    expect(note(log, 'blank-cell')).toMatchObject({ count: 1 });
    expect(log.channels[0].time_s).toHaveLength(ROWS - 8);
    expect(log.channels[1].time_s).toHaveLength(ROWS);
  });

  it('leaves out readings that nothing can have', () => {
    const rows = goodRows();
    rows[200][2] = '2500';
    rows[201][2] = '-196';
    const log = logOf(textOf(rows));
    expect(log.notes).toMatchObject([
      { code: 'out-of-range', where: HEADER[2], line: 202, count: 2, leftOut: 'readings' },
    ]);
  });

  it('reads weather, vents and fire', () => {
    const extra = ['air [°C]', 'wind [km/h]', 'intakes [%]', 'stack damper', 'fire [lb/h]'];
    const rows = GOOD.map((row, i) => [
      row[0],
      row[1],
      '20',
      '18',
      i === 0 ? '50' : i === 300 ? '25 %' : '',
      i < 600 ? '1' : '0.5',
      '10',
    ]);
    const log = logOf(textOf(rows, [HEADER[0], HEADER[1], ...extra]));
    expect(log.air?.value[0]).toBeCloseTo(293.15, 9);
    expect(log.wind?.value[0]).toBeCloseTo(5, 9);
    expect(log.intakes).toEqual({ time_s: [0, 3000], value: [0.5, 0.25] });
    expect(log.damper).toEqual({ time_s: [0, 6000], value: [1, 0.5] });
    expect(log.fire?.value[5]).toBeCloseTo(((10 * 0.45359237) / 3600) * DESIGN.wood.heat, 3);
    expect(log.fire?.time_s).toHaveLength(ROWS);
  });

  it('asks whether 50 is percent', () => {
    const rows = GOOD.map((row) => [row[0], row[1], '50']);
    expect(faultsOf(textOf(rows, [HEADER[0], HEADER[1], 'intakes']))).toMatchObject([
      { code: 'no-unit', line: 2, value: '50', nearest: 'intakes [%]' },
    ]);
  });

  it('leaves out a storm and a frost that no design may have', () => {
    const rows = GOOD.map((row, i) => [row[0], row[1], i === 7 ? '80' : '4', i === 9 ? '200' : '70']);
    const log = logOf(textOf(rows, [HEADER[0], HEADER[1], 'wind [m/s]', 'outdoor [°F]']));
    expect(note(log, 'out-of-range', 'wind [m/s]')).toMatchObject({ line: 9, count: 1 });
    expect(note(log, 'out-of-range', 'outdoor [°F]')).toMatchObject({ line: 11, count: 1 });
    expect(log.wind?.time_s).toHaveLength(ROWS - 1);
  });

  it.each([
    ['4500', 'out-of-range'],
    ['-3', 'out-of-range'],
    ['two splits', 'not-a-quantity'],
  ])('refuses %s as wood', (cell, code) => {
    const rows = goodRows();
    rows[10][4] = cell;
    expect(faultsOf(textOf(rows))).toMatchObject([{ code, line: 12, path: 'wood [lb]', value: cell }]);
  });

  it('reads wood in fractions and in units of its own', () => {
    const rows = goodRows();
    rows[1][4] = '3 1/2';
    rows[2][4] = '2 kg';
    rows[3][4] = '0';
    const { wood } = logOf(textOf(rows));
    expect(wood?.[1].mass_kg).toBeCloseTo(3.5 * 0.45359237, 9);
    expect(wood?.[2].mass_kg).toBe(2);
    expect(wood).toHaveLength(6);
  });

  it.each([
    ['1', '0'],
    ['yes', 'no'],
    ['TRUE', 'False'],
    ['Open', 'closed'],
    ['open', ''],
  ])('reads %s and %s as a door', (open, shut) => {
    const rows = GOOD.map((row, i) => [...row.slice(0, 5), i === 100 ? open : i === 130 || shut ? shut || 'shut' : '']);
    const log = logOf(textOf(rows));
    expect(log.door).toEqual([{ from_s: 1000, to_s: shut ? 1010 : 1300 }]);
  });

  it('tells a door that is neither, and holds it', () => {
    const rows = goodRows();
    rows[603][5] = 'ajar';
    const log = logOf(textOf(rows));
    expect(log.notes).toMatchObject([{ code: 'unreadable-cell', where: 'door', line: 605, count: 1 }]);
    expect(log.door).toEqual([{ from_s: DOOR, to_s: DOOR + 60 }]);
  });
});

describe('doubtful probes', () => {
  const spike = (at: number, ...heights: number[]): string => {
    const rows = goodRows();
    heights.forEach((height, i) => (rows[at + i][2] = (Number(rows[at + i][2]) + height).toFixed(1)));
    return textOf(rows);
  };

  it.each([
    ['one high reading', [45]],
    ['one low reading', [-60]],
    ['three readings', [400, 380, 420]],
    ['five readings', [90, 90, 95, 90, 99]],
  ])('leaves out %s that come back at once', (_, heights) => {
    const log = logOf(spike(400, ...heights));
    expect(log.notes).toMatchObject([
      { code: 'outlier', where: HEADER[2], line: 402, count: heights.length, leftOut: 'readings' },
    ]);
    expect(log.channels[1].value_K).toHaveLength(ROWS - heights.length);
    expect(log.channels[1].time_s).not.toContain(4000);
  });

  it.each([
    ['a small one', [15]],
    ['a step that stays', Array.from({ length: ROWS - 400 }, () => 40)],
    ['a fall that recovers slowly', [-40, -60, -45, -34, -25, -19, -14, -11, -8, -6, -4, -3]],
  ])('keeps %s', (_, heights) => {
    expect(logOf(spike(400, ...heights)).notes).toEqual([]);
  });

  it('keeps a spike of a probe as noisy as that', () => {
    const rows = GOOD.map((row, i) => [row[0], (Number(row[1]) + 25 * Math.sin(i * i * 1.7)).toFixed(1)]);
    expect(logOf(textOf(rows, [HEADER[0], 'fire end gas [°F]'])).notes).toEqual([]);
  });

  it('keeps a fall that other probes share', () => {
    const rows = goodRows();
    for (const c of [1, 2]) rows[400][c] = (Number(rows[400][c]) - 45).toFixed(1);
    expect(logOf(textOf(rows)).notes).toEqual([]);
  });

  it('keeps what a probe can do in five minutes', () => {
    const rows = GOOD.filter((_, i) => i % 30 === 0).map((row, i) => [row[0], i === 20 ? '160' : row[2]]);
    expect(logOf(textOf(rows, [HEADER[0], 'middle [°F]'])).notes).toEqual([]);
  });

  it('leaves out a stretch in which a probe is stuck while another moves', () => {
    const rows = goodRows();
    for (let i = 60; i < 300; i++) rows[i][2] = rows[60][2];
    const log = logOf(textOf(rows));
    expect(log.notes).toMatchObject([
      { code: 'dead-probe', where: HEADER[2], line: 62, count: 240, leftOut: 'readings' },
    ]);
    expect(log.channels[1].time_s).toHaveLength(ROWS - 240);
  });

  it.each(['70.0', '250.0', '32.0'])('leaves out a probe that reads %s all the time', (cell) => {
    const log = logOf(textOf(GOOD.map((row) => [row[0], row[1], cell, ...row.slice(3)])));
    expect(log.notes).toMatchObject([{ code: 'dead-probe', where: HEADER[2], count: ROWS, leftOut: 'readings' }]);
    expect(log.channels.map(({ station }) => station)).toEqual(['fireEnd', 'firebox']);
  });

  it('leaves out a probe that lies outside', () => {
    const rows = GOOD.map((row, i) => [row[0], row[1], (71 + 3 * Math.sin(i / 90)).toFixed(1), ...row.slice(3)]);
    expect(logOf(textOf(rows)).notes).toMatchObject([{ code: 'dead-probe', where: HEADER[2], count: ROWS }]);
  });

  it('keeps the cool skin of an insulated part', () => {
    const design = designOf(
      PLAIN.replace(
        '  length: 60 in\n',
        '  length: 60 in\n  insulation: { material: ceramic fibre, thickness: 2 in }\n',
      ),
    );
    const rows = GOOD.map((row, i) => [row[0], row[1], (71 + 3 * Math.sin(i / 90)).toFixed(1)]);
    const log = logOf(textOf(rows, [HEADER[0], HEADER[1], 'middle steel [°F]']), design);
    expect(log.notes).toEqual([]);
  });

  it('keeps a dial of 5 °F that holds while the fire swings', () => {
    const rows = Array.from({ length: ROWS }, (_, i) => [
      String(STEP * i),
      '250',
      (520 + 60 * Math.sin(i / 40)).toFixed(1),
    ]);
    rows[0][1] = '245';
    const log = logOf(textOf(rows, [HEADER[0], 'gauge [°F]', 'firebox gas [°F]']));
    expect(log.notes).toEqual([]);
    expect(log.channels[0].value_K).toHaveLength(ROWS);
  });

  it('leaves out a probe that is open all along', () => {
    const log = logOf(textOf(GOOD.map((row) => [row[0], row[1], '3276.7', ...row.slice(3)])));
    expect(log.notes).toMatchObject([{ code: 'out-of-range', where: HEADER[2], count: ROWS }]);
    expect(log.channels).toHaveLength(2);
  });
});
