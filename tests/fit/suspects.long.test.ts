import { beforeAll, describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/design.js';
import type { FitResult } from '../../src/fit/fitResult.js';
import { predictsWorse } from '../../src/fit/fitWarnings.js';
import { blankLog, chance, drawnTruth, measured } from './syntheticLog.js';
import {
  design,
  header,
  FREE,
  FIRE_END,
  MIDDLE,
  STACK_END,
  STEEL,
  WOOD,
  AIR,
  type Change,
  logOf,
  made,
  exchanged,
  fitted,
  codes,
  headline,
  TO_CELSIUS,
  THREE,
  MADE_WITH,
  expectBlamed,
} from './suspectLogs.js';

const OF_CELSIUS = (value: number) => 1.8 * value + 32;

describe('one probe far off', () => {
  it('is blamed and left out, and no neighbour; the others tell what the log was made with', () => {
    const { parameters } = expectBlamed(THREE, STACK_END, TO_CELSIUS);
    for (const [path, value] of Object.entries(MADE_WITH)) {
      const { low, high, told } = parameters.find((each) => each.path === path)!;
      expect(low).toBeLessThan(value);
      expect(high).toBeGreaterThan(value);
      expect(told).toBe(true);
    }
  });

  it.each([
    ['30 °F high', THREE, FIRE_END, (value: number) => value + 30],
    ['30 °F high', THREE, MIDDLE, (value: number) => value + 30],
    ['30 °F high', THREE, STACK_END, (value: number) => value + 30],
    ['150 °F high', THREE, MIDDLE, (value: number) => value + 150],
    ['stretched by a fifth', THREE, FIRE_END, (value: number) => 70 + 1.2 * (value - 70)],
    ['60 °F high', [FIRE_END, MIDDLE], FIRE_END, (value: number) => value + 60],
    ['40 °F low', [MIDDLE, STACK_END], STACK_END, (value: number) => value - 40],
    ['in °C', THREE, STACK_END, TO_CELSIUS],
    ['in °C', [FIRE_END, MIDDLE], MIDDLE, TO_CELSIUS],
    ['60 °F high', [...THREE, STEEL], STEEL, (value: number) => value + 60],
    ['of °C, and so too high', [...THREE, STEEL], MIDDLE, OF_CELSIUS],
  ])(
    '%s is blamed and left out, and no neighbour (%j, %i)',
    (_, probes, bad, make) => void expectBlamed(probes, bad, make),
  );

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
        made([MIDDLE], (value) => 70 + 1.25 * (value - 70)),
      ),
    );
    const torn = result.warnings.find(({ code }) => code === 'probes-disagree')!;
    for (const k of [FIRE_END, MIDDLE]) expect(torn.where).toContain(header[k]);
    expect(codes(result).filter((each) => each.startsWith('probe-reads-off'))).toEqual([]);
    expect(result.cooks[0].channels.some(({ leftOut }) => leftOut)).toBe(false);
  });
});

describe('columns that are not what they say', () => {
  it('a copy of another is named by the reader and in front of the fit', () => {
    const log = logOf(THREE, (cells) => cells.map((cell, k) => (k === STACK_END ? cells[MIDDLE] : cell)));
    expect(log.notes.map(({ code, where }) => [code, where])).toContainEqual(['copied-probe', header[STACK_END]]);
    const result = fitted(log);
    expect(codes(result)).toContain(`copied-probe: ${header[STACK_END]}`);
    expect(codes(result)).toContain(`probe-reads-off: ${header[STACK_END]}`);
  });

  it.each([
    ['two neighbours exchanged', THREE, MIDDLE, STACK_END],
    ['fire end and stack end exchanged', THREE, FIRE_END, STACK_END],
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
