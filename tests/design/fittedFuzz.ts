import fc from 'fast-check';
import { expect } from 'vitest';
import { FITTABLE, fittableField } from '../../src/design/unknownInputs.js';
import { formatFault } from '../../src/design/faults.js';
import type { Fitted } from '../../src/design/fitted.js';
import { readDesign, type ReadResult } from '../../src/design/read.js';
import { readFittedFile, type NamedFile } from '../../src/design/readFitted.js';
import { fittedYaml } from '../../src/report/fittedYaml.js';
import { designOf, PLAIN } from './designFiles.js';
import { FITTED } from './fittedFiles.js';

export const NAMES = 'fitted: yard.fitted.yaml\n';
export const fileOf =
  (text: string): NamedFile =>
  (name) => ({ text, fileName: name });
export const named = (design: string, fitted: string): ReadResult =>
  readDesign(design + NAMES, { fileName: 'pit.yaml', namedFile: fileOf(fitted) });

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

/** Written and read again. */
export const back = (fitted: Fitted): Fitted => {
  const read = readFittedFile(fittedYaml(fitted, designOf(PLAIN)), 'written.yaml');
  if (!read.fitted) throw new Error(read.faults.map(formatFault).join('\n'));
  return read.fitted;
};

/** Any Fitted that a fit could make: correlation from random factors, paths in any order. */
const fits = fc
  .record({
    paths: fc.shuffledSubarray([...FITTABLE], { minLength: 1, maxLength: 6 }),
    shares: fc.array(
      fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 0.5, noNaN: true })),
      {
        minLength: 6,
        maxLength: 6,
      },
    ),
    rows: fc.array(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 }), {
      minLength: 6,
      maxLength: 6,
    }),
    hash: fc.stringMatching(/^[0-9a-f]{16}$/),
    name: fc.string({ minLength: 1, maxLength: 30 }),
    error: fc.option(fc.double({ min: 0, max: 40, noNaN: true })),
  })
  .map(({ paths, shares, rows, hash, name, error }): Fitted => {
    const products = paths.map((_, i) =>
      paths.map((__, j) => rows[i].reduce((sum, each, k) => sum + each * rows[j][k], i === j ? 1e-3 : 0)),
    );
    return {
      logs: [{ name, hash, design: name, fitted_s: 15000, readings: 12, error_K: error }],
      values: paths.map((path, i) => {
        const { scale, range } = fittableField(path)!;
        const { min, max } = range;
        const [from, to] = scale === 'is' ? [min, max] : [0.2, 5];
        const value = from + shares[i][0] * (to - from);
        const half = shares[i][1] * Math.min(value - from, to - value);
        return { path, scale, value, low: value - half, high: value + half, was: min + shares[i][1] * (max - min) };
      }),
      correlation: products.map((row, i) => row.map((each, j) => each / Math.sqrt(products[i][i] * products[j][j]))),
    };
  });

/** So many fits pass their own reader, within rounding. */
export function anyFitPasses(runs: number): void {
  fc.assert(
    fc.property(fits, (fitted) => {
      const read = back(fitted);
      expect(read.logs[0].hash).toBe(fitted.logs[0].hash);
      read.values.forEach((value, i) => {
        const { path, scale, value: was, low, high } = fitted.values[i];
        expect({ path: value.path, scale: value.scale }).toEqual({ path, scale });
        const near = 0.005 * Math.abs(was) + 1e-6;
        expect(Math.abs(value.value - was)).toBeLessThanOrEqual(near);
        expect(Math.abs(value.low - low)).toBeLessThanOrEqual(near);
        expect(Math.abs(value.high - high)).toBeLessThanOrEqual(0.005 * Math.abs(high) + 1e-6);
        expect(Math.abs(value.was - fitted.values[i].was)).toBeLessThanOrEqual(5e-4 * fitted.values[i].was + 1e-6);
      });
      read.correlation.forEach((row, i) =>
        row.forEach((each, j) => expect(Math.abs(each - fitted.correlation[i][j])).toBeLessThanOrEqual(0.0051)),
      );
    }),
    { seed: 41, numRuns: runs },
  );
}

/** So many damaged files never throw: faults with a place, or a design with finite numbers. */
export function damagedNeverThrows(runs: number): void {
  fc.assert(
    fc.property(fc.nat(FITTED.length - 1), fc.nat(20), fc.string({ maxLength: 6 }), (at, cut, put) => {
      const result = named(PLAIN, FITTED.slice(0, at) + put + FITTED.slice(at + cut));
      if (result.faults) expect(result.faults.every(({ line, column }) => line >= 1 && column >= 1)).toBe(true);
      else expect(numbersIn(result.design).filter((each) => !Number.isFinite(each))).toEqual([]);
    }),
    { seed: 41, numRuns: runs },
  );
}
