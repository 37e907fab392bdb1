import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { readDesign } from '../../../src/design/read.js';
import { assemble } from '../../../src/study/compare/compare.js';
import { planComparison } from '../../../src/study/compare/compareSpread.js';
import { correlated, normalQuantile, withFittedCorrelation } from '../../../src/study/spread/correlate.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { unknownsUsed } from '../../../src/study/estimate/unknownsUsed.js';
import { seededRandom } from '../../../src/study/spread/random.js';
import { ranks } from '../../../src/study/spread/rankRegression.js';
import { latinHypercube, triangleOfInterval, triangularQuantile } from '../../../src/study/spread/sampling.js';
import { USUAL_SETTINGS } from '../../../src/study/compare/studyOption.js';
import { planSpread } from '../../../src/study/spread/uncertainty.js';
import { fitUnknownsOf, movedDesign, pathsOf, unknownsOf, type Unknown } from '../../../src/study/spread/unknowns.js';
import { designOf, PLAIN } from '../../design/designFiles.js';
import { FITTED, fittedOf } from '../../design/fittedFiles.js';

const plain = designOf(PLAIN);
const fitted = designOf(PLAIN + FITTED);
const find = (unknowns: Unknown[], path: string) => unknowns.find((each) => each.path === path);
const at = (design: Design, path: string, probability: number) => movedDesign(design, [path], [probability]);

/** Pearson's coefficient. */
function correlation(a: number[], b: number[]): number {
  const mean = (values: number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;
  const [from, of] = [mean(a), mean(b)];
  const product = (x: number[], y: number[], p: number, q: number) =>
    x.reduce((sum, each, i) => sum + (each - p) * (y[i] - q), 0);
  return product(a, b, from, of) / Math.sqrt(product(a, a, from, from) * product(b, b, of, of));
}

describe('the triangle of a 90 % interval', () => {
  it('a symmetric one in closed form: half width d/(1 - sqrt(0.1))', () => {
    // derived: P(below mode - d) = (1 - d/w)²/2 = 0.05
    const { low, high } = triangleOfInterval('triangular', { low: 8, mode: 10, high: 12 });
    const half = 2 / (1 - Math.sqrt(0.1));
    expect(low).toBeCloseTo(10 - half, 9);
    expect(high).toBeCloseTo(10 + half, 9);
  });

  it.each(['triangular', 'log-triangular'] as const)('%s: its 5 and 95 % points are the interval', (distribution) => {
    const side = fc.oneof(fc.constant(0), fc.double({ min: 0.001, max: 0.9, noNaN: true }));
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 10, noNaN: true }), side, side, (mode, below, above) => {
        fc.pre(below + above > 0);
        const interval = { low: mode * (1 - below), mode, high: mode * (1 + above) };
        const triangle = triangleOfInterval(distribution, interval);
        expect(triangularQuantile(distribution, triangle, 0.05)).toBeCloseTo(interval.low, 7);
        expect(triangularQuantile(distribution, triangle, 0.95)).toBeCloseTo(interval.high, 7);
        expect(triangle.low).toBeLessThanOrEqual(interval.low);
        expect(triangle.high).toBeGreaterThanOrEqual(interval.high);
      }),
    );
  });

  it('of no width has no room', () => {
    expect(triangleOfInterval('triangular', { low: 2, mode: 2, high: 2 })).toEqual({ low: 2, mode: 2, high: 2 });
  });
});

describe('unknowns of a design that rests on a log', () => {
  it('a fitted one: the applied value, drawn so that the interval is its 5 and 95 % points, with its log', () => {
    const own = find(unknownsOf(fitted), 'innerConvection')!;
    expect(own).toMatchObject({
      value: 1.31,
      distribution: 'triangular',
      source: 'fitted to yard-cook.csv',
      fitted: { low: 1.22, high: 1.4 },
    });
    expect(at(fitted, 'innerConvection', 0.05).innerConvection).toBeCloseTo(1.22, 9);
    expect(at(fitted, 'innerConvection', 0.95).innerConvection).toBeCloseTo(1.4, 9);
  });

  it('a factor: the design’s own times the interval', () => {
    const square = 2 * 0.0254 ** 2;
    expect(find(unknownsOf(fitted), 'chamber.doorGap')!.value).toBeCloseTo(1.43 * square, 12);
    expect(at(fitted, 'chamber.doorGap', 0.05).chamber!.doorGap).toBeCloseTo(1.2 * square, 10);
    expect(at(fitted, 'chamber.doorGap', 0.95).chamber!.doorGap).toBeCloseTo(1.7 * square, 10);
  });

  it('all others stay as they are without a log', () => {
    const others = (design: Design) =>
      unknownsUsed(design).filter(({ path }) => !['innerConvection', 'chamber.doorGap'].includes(path));
    expect(others(fitted)).toEqual(others(plain));
    expect(unknownsUsed(plain).some((each) => 'fitted' in each)).toBe(false);
  });

  it('one that the design does not use keeps its usual spread', () => {
    const own = designOf(`${PLAIN}innerConvection: 1.3\n${FITTED}`);
    expect(find(unknownsOf(own), 'innerConvection')).toMatchObject({ value: 1.3, low: 0.8, high: 1.5 });
    expect(find(unknownsOf(own), 'innerConvection')!.fitted).toBeUndefined();
  });

  it('draws beyond what a design may have are held at its limit; the interval stays', () => {
    const edge = designOf(
      PLAIN + fittedOf('field: fire.soot, is: 0.05 per m, low: 0 per m, high: 0.2 per m, was: 0.5 per m'),
    );
    expect(at(edge, 'fire.soot', 0.001).fire.soot).toBe(0);
    expect(at(edge, 'fire.soot', 0.95).fire.soot).toBeCloseTo(0.2, 9);
    expect(find(unknownsOf(edge), 'fire.soot')!.low).toBe(0);
  });

  it('a fit also takes the heat of the wood and how a split burns; a design only where they are fitted', () => {
    const paths = (unknowns: Unknown[]) => unknowns.map(({ path }) => path);
    const only = ['wood.heat', 'fire.splits.flame', 'fire.splits.charcoal', 'fire.splits.glow'];
    expect(paths(unknownsOf(plain))).not.toEqual(expect.arrayContaining([expect.stringMatching(/splits|wood\.heat/)]));
    expect(paths(fitUnknownsOf(plain))).toEqual([...paths(unknownsOf(plain)), ...only]);
    expect(find(fitUnknownsOf(plain), 'fire.splits.glow')).toMatchObject({
      value: 2400,
      low: 1200,
      high: 4800,
      distribution: 'log-triangular',
      scale: 'times',
    });
    expect(find(fitUnknownsOf(plain), 'fire.splits.charcoal')).toMatchObject({ low: 0.25, high: 0.4, scale: 'is' });
    const heat = find(fitUnknownsOf(plain), 'wood.heat')!;
    expect([heat.low / heat.value, heat.high / heat.value]).toEqual([0.8, 1.25]);
  });

  it('fitted heat of the wood takes the place of its moisture, so that neither counts twice', () => {
    const wood = designOf(PLAIN + fittedOf('field: wood.heat, times: 0.9, low: 0.85, high: 0.95, was: 6325 BTU/lb'));
    const paths = unknownsOf(wood).map(({ path }) => path);
    expect(paths).toContain('wood.heat');
    expect(paths).not.toContain('wood.moisture');
    expect(fitUnknownsOf(wood).map(({ path }) => path)).toContain('wood.moisture');
  });

  it('several logs are named, a long list by its first', () => {
    const log = FITTED.split('\n')[2];
    const logs = [1, 2, 3, 4, 5].map((n) => log.replace('yard-cook', `cook-${n}`).replace('0123', `000${n}`));
    const many = designOf(PLAIN + FITTED.replace(log, logs.join('\n')));
    expect(find(unknownsOf(many), 'innerConvection')!.source).toBe(
      'fitted to cook-1.csv, cook-2.csv, cook-3.csv and 2 more',
    );
  });
});

describe('draws that go together', () => {
  it('normal quantiles are those of the tables, within the published error', () => {
    // published: Abramowitz & Stegun, table 26.1: P(x) = 0.975 at 1.95996, 0.9 at 1.28155, 0.99 at 2.32635
    for (const [p, x] of [
      [0.975, 1.95996],
      [0.9, 1.28155],
      [0.99, 2.32635],
      [0.5, 0],
    ]) {
      expect(Math.abs(normalQuantile(p) - x)).toBeLessThan(4.5e-4);
      expect(Math.abs(normalQuantile(1 - p) + x)).toBeLessThan(4.5e-4);
    }
  });

  const wanted = [
    [1, 0.7, -0.3],
    [0.7, 1, 0.2],
    [-0.3, 0.2, 1],
  ];
  const samples = latinHypercube(400, 5, seededRandom(4));
  const columns = [3, 0, 4];

  it('columns keep their numbers, the other columns their order', () => {
    const out = correlated(samples, { columns, correlation: wanted });
    for (let d = 0; d < 5; d++) {
      const of = (rows: number[][]) => rows.map((row) => row[d]);
      if (columns.includes(d)) expect(of(out).sort()).toEqual(of(samples).sort());
      else expect(of(out)).toEqual(of(samples));
    }
    const slices = out.map((row) => Math.floor(row[3] * 400)).sort((a, b) => a - b);
    expect(slices).toEqual(slices.map((_, i) => i));
  });

  it('ranks correlate as wanted: (6/pi) asin(correlation/2) of normal scores', () => {
    const out = correlated(samples, { columns, correlation: wanted });
    const ranked = columns.map((d) => ranks(out.map((row) => row[d])));
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < i; j++) {
        // derived: Spearman's coefficient of a normal pair (Pearson 1907)
        const rank = (6 / Math.PI) * Math.asin(wanted[i][j] / 2);
        expect(Math.abs(correlation(ranked[i], ranked[j]) - rank)).toBeLessThan(0.02);
      }
  });

  it('a few draws do as well as they can', () => {
    const few = latinHypercube(2, 3, seededRandom(1));
    const out = correlated(few, { columns: [0, 1, 2], correlation: wanted });
    expect(out.flat().every((each) => each >= 0 && each < 1)).toBe(true);
    expect(out.map((row) => row[1]).sort()).toEqual(few.map((row) => row[1]).sort());
  });

  it('refuses a correlation that can’t be', () => {
    const one = [
      [1, 1],
      [1, 1],
    ];
    expect(() => correlated(samples, { columns: [0, 1], correlation: one })).toThrow(RangeError);
  });

  it('a plan for one design, and one for several, draw fitted unknowns together; without a log as before', () => {
    const cases = 1200;
    const rho = (plan: { paths: string[]; samples: number[][] }) => {
      const [a, b] = ['innerConvection', 'chamber.doorGap'].map((path) => plan.paths.indexOf(path));
      return correlation(
        plan.samples.map((row) => row[a]),
        plan.samples.map((row) => row[b]),
      );
    };
    const planned = (design: Design) =>
      planSpread(estimate(design, { steadyOnly: true }), { cases, seed: 1, random: seededRandom(1) });
    // derived: (6/pi) asin(-0.4/2) = -0.385
    expect(Math.abs(rho(planned(fitted)) + 0.385)).toBeLessThan(0.02);
    expect(planned(plain).samples).toEqual(latinHypercube(cases, pathsOf([plain]).length, seededRandom(1)));
    const options = [plain, fitted].map((design, i) => ({ label: `${i}`, changes: [], design }));
    const studies = options.map(({ design }) => ({ result: estimate(design, { steadyOnly: true }), studies: null }));
    const comparison = assemble(options, studies, USUAL_SETTINGS);
    const together = planComparison(comparison, { cases, seed: 1, random: seededRandom(1) });
    expect(Math.abs(rho(together) + 0.385)).toBeLessThan(0.02);
  });

  it('of different fits each goes by its own, the first that has a path', () => {
    const heat = 'field: wood.heat, times: 0.9, low: 0.85, high: 0.95, was: 6325 BTU/lb';
    const other = designOf(
      PLAIN +
        fittedOf(
          'field: innerConvection, is: 1.2, low: 1.1, high: 1.3, was: 1',
          heat,
          'field: fire.rise, times: 1, low: 0.9, high: 1.1, was: 10 min',
        )
          .replace('[[1, 0, 0], [0, 1, 0], [0, 0, 1]]', '[[1, 0, 0.9], [0, 1, 0.8], [0.9, 0.8, 1.0]]')
          .replace('[1, 0, 0.9]', '[1, 0.72, 0.9]')
          .replace('[0, 1, 0.8]', '[0.72, 1, 0.8]'),
    );
    const paths = pathsOf([fitted, other]);
    const drawn = latinHypercube(300, paths.length, seededRandom(2));
    const out = withFittedCorrelation(drawn, paths, [fitted, other]);
    const column = (path: string) => out.map((row) => row[paths.indexOf(path)]);
    expect(correlation(column('innerConvection'), column('chamber.doorGap'))).toBeCloseTo(-0.385, 1);
    expect(correlation(column('wood.heat'), column('fire.rise'))).toBeGreaterThan(0.75);
    expect(Math.abs(correlation(column('innerConvection'), column('wood.heat')))).toBeLessThan(0.2);
  });
});

describe('how sure a design is that rests on a log', () => {
  it('a design that reads by name is the same', () => {
    const read = readDesign(`${PLAIN}fitted: f.yaml\n`, {
      fileName: 'pit.yaml',
      namedFile: (name) => ({ text: FITTED, fileName: name }),
    });
    expect(unknownsOf(read.design!).map(({ path, value }) => [path, value])).toEqual(
      unknownsOf(fitted).map(({ path, value }) => [path, value]),
    );
  });
});
