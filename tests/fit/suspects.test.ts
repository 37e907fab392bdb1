import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { formatLogFaults, readLog } from '../../src/fit/log/readLog.js';
import { fitText } from '../../src/report/text/fitText.js';
import { fit } from '../../src/fit/fit.js';
import type { FitResult } from '../../src/fit/fitResult.js';
import { predictsWorse } from '../../src/fit/fitWarnings.js';
import { checkWood } from '../../src/fit/woodCheck.js';
import { exampleDesign } from '../support/examples.js';
import { blankLog, chance, drawnTruth, measured } from './syntheticLog.js';

/** Short logs in which one thing is wrong: it must be named, and nothing beside it. */
const design = exampleDesign('plain-24.yaml');
const rows = readFileSync(new URL('../../examples/yard-cook.csv', import.meta.url), 'utf8').split('\n');
const header = rows[1].split(',');
const table = rows.slice(2, 302).filter((row, i) => row !== '' && (i % 2 === 0 || row.split(',')[5] !== ''));
const FREE = ['innerConvection', 'fire.radiant', 'wood.heat', 'estimates.stemFill'];
const [FIRE_END, MIDDLE, STACK_END, STEEL, WOOD, AIR] = [1, 2, 3, 4, 5, 8];

type Change = (cells: string[], row: number) => string[];

/** The log with some of its probes, changed cell by cell and under other headers. */
function logOf(probes: number[], change: Change = (cells) => cells, heads: Record<number, string> = {}) {
  const columns = [0, ...probes, WOOD, 6, 7, AIR, 9];
  const pick = (cells: string[]) => columns.map((k) => cells[k]).join(',');
  const head = header.map((each, k) => heads[k] ?? each);
  const text = [pick(head), ...table.map((row, i) => pick(change(row.split(','), i))), ''].join('\n');
  const read = readLog(text, { fileName: 'cook.csv', design });
  if (read.faults) throw new Error(formatLogFaults(read.faults));
  return read.log;
}

/** Numbers of some columns as something makes them. */
const made =
  (columns: number[], make: (value: number, row: number) => number): Change =>
  (cells, row) =>
    cells.map((cell, k) => (columns.includes(k) && /^-?\d/.test(cell) ? make(Number(cell), row).toFixed(1) : cell));
const exchanged =
  (a: number, b: number): Change =>
  (cells) =>
    cells.map((cell, k) => (k === a ? cells[b] : k === b ? cells[a] : cell));

function fitted(log: ReturnType<typeof logOf>, paths = FREE): FitResult {
  return fit(design, [{ log, hash: 'a' }], { paths, heldBack: 0.3, accuracy: 2 / 1.8 })!;
}

const codes = ({ warnings }: FitResult) => warnings.map(({ code, where }) => `${code}: ${where}`);
/** What the text says before its first number. */
const headline = (result: FitResult) => fitText(result, 'shop').split('\n\n')[1].replace(/\s+/g, ' ');

const TO_CELSIUS = (value: number) => (value - 32) / 1.8;
const OF_CELSIUS = (value: number) => 1.8 * value + 32;
const THREE = [FIRE_END, MIDDLE, STACK_END];

describe('one probe far off', () => {
  it.each([
    ['30 °F high', THREE, FIRE_END, (value: number) => value + 30],
    ['30 °F high', THREE, MIDDLE, (value: number) => value + 30],
    ['30 °F high', THREE, STACK_END, (value: number) => value + 30],
    ['150 °F high', THREE, MIDDLE, (value: number) => value + 150],
    ['in °C', THREE, STACK_END, TO_CELSIUS],
    ['stretched by a fifth', THREE, FIRE_END, (value: number) => 70 + 1.2 * (value - 70)],
    ['60 °F high', [FIRE_END, MIDDLE], FIRE_END, (value: number) => value + 60],
    ['40 °F low', [MIDDLE, STACK_END], STACK_END, (value: number) => value - 40],
    ['in °C', [FIRE_END, MIDDLE], MIDDLE, TO_CELSIUS],
    ['60 °F high', [...THREE, STEEL], STEEL, (value: number) => value + 60],
    ['of °C, and so too high', [...THREE, STEEL], MIDDLE, OF_CELSIUS],
  ])('%s is blamed and left out, and no neighbour (%j, %i)', (_, probes, bad, make) => {
    const result = fitted(logOf(probes, made([bad], make)));
    expect(codes(result)).toEqual([`probe-reads-off: ${header[bad]}`]);
    expect(headline(result)).toContain(header[bad]);
    const channels = result.cooks[0].channels;
    expect(channels.filter(({ leftOut }) => leftOut).map((each) => each.header)).toEqual([header[bad]]);
    for (const { leftOut, fittedReadings, fitted: errors } of channels) {
      expect(fittedReadings > 0).toBe(!leftOut);
      if (!leftOut) expect(1.8 * errors.after!).toBeLessThan(3);
    }
    // the others tell of the pit as well as ever
    expect(1.8 * result.quality.heldBack_K!).toBeLessThan(3.5);
  });

  it('is blamed alone where most estimates are held as well', () => {
    const result = fitted(
      logOf(
        [...THREE, STEEL],
        made([MIDDLE], (value) => value + 90),
      ),
      ['innerConvection', 'wood.heat'],
    );
    expect(codes(result).filter((each) => each.startsWith('probe'))).toEqual([`probe-reads-off: ${header[MIDDLE]}`]);
  });

  it('tells by how much, and that it is a unit', () => {
    const high = fitted(
      logOf(
        THREE,
        made([MIDDLE], (value) => value + 60),
      ),
    );
    // made with 2.5 °F of its own
    expect(1.8 * high.warnings[0].value!).toBeGreaterThan(57);
    expect(1.8 * high.warnings[0].value!).toBeLessThan(68);
    const unit = fitted(logOf(THREE, made([MIDDLE], TO_CELSIUS)));
    expect(unit.warnings[0].message).toContain('°C');
  });

  it('of two that can both be the one: both are named, and neither is left out', () => {
    const result = fitted(
      logOf(
        [FIRE_END, MIDDLE],
        made([MIDDLE], (value) => 70 + 1.2 * (value - 70)),
      ),
    );
    const torn = result.warnings.find(({ code }) => code === 'probes-disagree')!;
    for (const k of [FIRE_END, MIDDLE]) expect(torn.where).toContain(header[k]);
    expect(codes(result).filter((each) => each.startsWith('probe-reads-off'))).toEqual([]);
    expect(result.cooks[0].channels.some(({ leftOut }) => leftOut)).toBe(false);
  });
});

describe('columns that are not what they say', () => {
  it.each([
    ['fire end and stack end exchanged', THREE, FIRE_END, STACK_END],
    ['two neighbours exchanged', THREE, FIRE_END, MIDDLE],
    ['steel for a thermometer', [...THREE, STEEL], MIDDLE, STEEL],
  ])('%s are named', (_, probes, a, b) => {
    const result = fitted(logOf(probes, exchanged(a, b)));
    const { where } = result.warnings.find(({ code }) => code === 'probes-swapped')!;
    for (const k of [a, b]) expect(where).toContain(header[k]);
    expect(headline(result)).toMatch(/changed places/);
  });

  it.each([
    ['the other way round', [...THREE, STEEL], [STEEL, STACK_END, MIDDLE, FIRE_END]],
    ['one further on', THREE, [MIDDLE, STACK_END, FIRE_END]],
  ])('all of them %s are named', (_, probes, order) => {
    const mixed: Change = (cells) =>
      cells.map((cell, k) => (probes.includes(k) ? cells[order[probes.indexOf(k)]] : cell));
    const { where } = fitted(logOf(probes, mixed)).warnings.find(({ code }) => code === 'probes-swapped')!;
    for (const k of probes) expect(where).toContain(header[k]);
  });

  it('a copy of another is named by the reader and in front of the fit', () => {
    const log = logOf(THREE, (cells) => cells.map((cell, k) => (k === STACK_END ? cells[MIDDLE] : cell)));
    expect(log.notes.map(({ code, where }) => [code, where])).toContainEqual(['copied-probe', header[STACK_END]]);
    const result = fitted(log);
    expect(codes(result)).toContain(`copied-probe: ${header[STACK_END]}`);
    expect(codes(result)).toContain(`probe-reads-off: ${header[STACK_END]}`);
  });

  it('wood in pounds that was kilograms: the fire does not go with the heat, and no probe is blamed', () => {
    const result = fitted(
      logOf(
        THREE,
        made([WOOD], (value) => value / 2.2046),
      ),
    );
    const { value } = result.warnings.find(({ code }) => code === 'fire-does-not-fit')!;
    expect(value!).toBeGreaterThan(1.6);
    expect(value!).toBeLessThan(3);
    expect(codes(result).filter((each) => each.startsWith('probe'))).toEqual([]);
  });
});

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

  it('stands in front of the fit', () => {
    const result = fitted(logOf(THREE, day(0, TO_CELSIUS)), ['innerConvection']);
    expect(codes(result)).toContain(`air-unit: ${header[AIR]}`);
    expect(headline(result)).toContain(header[AIR]);
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

  it('is told in a fit too, in front', () => {
    const result = fitted(logOf(THREE, adding(false)), ['innerConvection']);
    const all = result.warnings.map(({ code }) => code);
    expect(all).toEqual(expect.arrayContaining(['more-wood-than-burns', 'running-total']));
    expect(headline(result)).toMatch(/running total/);
  });
});

describe('a log of another pit', () => {
  function ofPit(change: (pit: Design) => void): FitResult {
    const other = structuredClone(design);
    change(other);
    const draw = chance(4);
    const log = measured(other, blankLog({ every_s: 120, hours: 3 }, draw.uniform), { noise_K: 0.8 }, draw);
    return fitted(log, ['innerConvection', 'chamber.doorGap']);
  }

  it('shows in front where estimates run to their ends', () => {
    const result = ofPit((pit) => (pit.innerConvection = 2.6));
    const edges = result.parameters.filter(({ atEdge }) => atEdge).map(({ path }) => path);
    expect(edges).toContain('innerConvection');
    expect(headline(result)).toMatch(/^DOUBTFUL: .*runs? to the ends? of what/);
  });

  it.each([0.5, 2])('shows in front where no estimate makes up for a chamber %s times as long', (times) => {
    const result = ofPit((pit) => (pit.chamber!.length *= times));
    expect(headline(result)).toMatch(/^DOUBTFUL: .*another pit/);
  });
});

describe('honest logs', () => {
  const found: FitResult[] = [];
  beforeAll(() => {
    for (let seed = 31; seed <= 36; seed++) {
      const draw = chance(seed);
      const { truth } = drawnTruth(design, FREE, draw.uniform);
      const offsets_K = [0, 1, 2].map(() => (2 / 1.8) * draw.normal());
      const blank = blankLog({ every_s: 120, hours: 3 }, draw.uniform);
      found.push(fitted(measured(truth, blank, { noise_K: 3 / 1.8, offsets_K }, draw)));
    }
  }, 120_000);

  it('are believed, every probe of them, and predicted no worse than before', () => {
    for (const result of found) {
      expect(result.cooks[0].channels.some(({ leftOut }) => leftOut)).toBe(false);
      const against = [
        'probes-disagree',
        'probes-swapped',
        'fire-does-not-fit',
        'more-wood-than-burns',
        'less-wood-than-it-took',
      ];
      for (const { code } of result.warnings) expect(against).not.toContain(code);
      expect(predictsWorse(result.quality)).toBe(false);
    }
  });

  it('of the design as it is are not called worse for chance', () => {
    const draw = chance(5);
    const result = fitted(measured(design, blankLog({ every_s: 120, hours: 3 }, draw.uniform), { noise_K: 0.8 }, draw));
    expect(result.warnings).toEqual([]);
    expect(headline(result)).not.toMatch(/DOUBTFUL/);
  });
});
