import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { formatFaults } from '../../src/design/faults.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { readDesign } from '../../src/design/read.js';
import { OVER, PLAIN, UPRIGHT } from './designFiles.js';
import { randomDesign } from './randomDesign.js';

const BASES = [PLAIN, UPRIGHT, OVER];

/** A list of faults or a design of finite numbers, never a throw; a hang runs into the test's timeout. */
export function mustStand(text: string): 'design' | 'faults' {
  const result = readDesign(text, { fileName: 'fuzz.yaml' });
  if (!result.faults) {
    const numbers = (value: unknown): boolean =>
      typeof value === 'number'
        ? Number.isFinite(value)
        : typeof value !== 'object' || value === null || Object.values(value).every(numbers);
    expect(numbers(result.design)).toBe(true);
    expect(numbers(geometryOf(result.design))).toBe(true);
    return 'design';
  }
  expect(result.faults.length).toBeGreaterThan(0);
  for (const fault of result.faults) {
    expect(fault.line).toBeGreaterThanOrEqual(1);
    expect(fault.column).toBeGreaterThanOrEqual(1);
    expect(fault.message).not.toBe('');
    expect(`${fault.message} ${fault.allowed ?? ''}`).not.toMatch(/NaN|undefined|\[object|Infinity in/);
  }
  expect(formatFaults(result.faults).split('\n')).toHaveLength(result.faults.length);
  return 'faults';
}

/** A text beyond the limits of a file, and one just within them, are refused alike. */
export function mustStandBoth(_: string, beyond: string, within: string): void {
  expect(mustStand(beyond)).toBe('faults');
  expect(mustStand(within)).toBe('faults');
}

const NASTY = fc.constantFrom<unknown>(
  null,
  true,
  false,
  0,
  -0,
  -1,
  1e308,
  -1e308,
  5e-324,
  2 ** 53,
  '',
  ' ',
  '-5 in',
  '1e400 in',
  '999999999999999999999999 in',
  '0 in',
  '1/0 in',
  'NaN in',
  'Infinity in',
  '24 in pipe, schedule 5000',
  '70,000',
  '__proto__',
  'constructor',
  'toString',
  '\u202e24 in',
  '24 in\u0000',
  '<script>alert(1)</script>',
  '=1+1',
  [],
  {},
  [[]],
  [null],
  { a: { b: {} } },
  'x'.repeat(5000),
);

type Place = (string | number)[];

/** Every field of a tree. */
function places(tree: unknown, at: Place = []): Place[] {
  if (typeof tree !== 'object' || tree === null) return [at];
  return [
    at,
    ...Object.entries(tree).flatMap(([key, value]) => places(value, [...at, Array.isArray(tree) ? Number(key) : key])),
  ];
}

function put(tree: unknown, place: Place, value: unknown): unknown {
  if (place.length === 0) return value;
  const copy = structuredClone(tree) as Record<string | number, unknown>;
  let block = copy;
  for (const part of place.slice(0, -1)) block = block[part] as Record<string | number, unknown>;
  block[place[place.length - 1]] = value;
  return copy;
}

/**
 * Texts and trees drawn at random, read as design files.
 *
 * @param share of all that are drawn by `npm run test:long`
 */
export function fuzz(share: number): void {
  describe('any text', () => {
    it('with characters changed, cut or doubled', () => {
      const seen = new Set<string>();
      fc.assert(
        fc.property(
          fc.constantFrom(...BASES),
          fc.array(
            fc.record({
              at: fc.double({ min: 0, max: 1, noNaN: true }),
              length: fc.nat(12),
              by: fc.oneof(
                fc.constantFrom(
                  '',
                  '\t',
                  ':',
                  ' : ',
                  '- ',
                  '[',
                  ']',
                  '{',
                  '}',
                  '"',
                  "'",
                  '&a ',
                  '*a',
                  '!!x ',
                  '|\n',
                  '#',
                  '%',
                  '\r',
                  '\n',
                  '? ',
                  '<<: ',
                  ',',
                ),
                fc.string({ maxLength: 6 }),
              ),
            }),
            { minLength: 1, maxLength: 6 },
          ),
          (base, edits) => {
            const text = edits.reduce((before, { at, length, by }) => {
              const start = Math.floor(at * before.length);
              return before.slice(0, start) + by + before.slice(start + length);
            }, base);
            seen.add(mustStand(text));
          },
        ),
        { seed: 31, numRuns: share * 1500 },
      );
      // of few, none is left sound
      expect([...seen].sort()).toEqual(share < 1 ? ['faults'] : ['design', 'faults']);
    });

    it('of any bytes', () => {
      fc.assert(
        fc.property(
          fc.oneof(fc.string({ unit: 'binary', maxLength: 400 }), fc.uint8Array({ maxLength: 400 })),
          (raw) => {
            expect(mustStand(typeof raw === 'string' ? raw : Buffer.from(raw).toString('utf8'))).toBe('faults');
          },
        ),
        { seed: 32, numRuns: share * 600 },
      );
    });
  });

  describe('any tree', () => {
    it('with wrong values put into right places', () => {
      const trees: unknown[] = [
        ...BASES.map((base): unknown => parse(base)),
        ...Array.from({ length: 10 }, (_, i) => randomDesign(i)),
      ];
      fc.assert(
        fc.property(
          fc.constantFrom(...trees),
          fc.array(fc.tuple(fc.nat(), NASTY), { minLength: 1, maxLength: 3 }),
          (tree, edits) => {
            const nasty = edits.reduce<unknown>((before, [n, value]) => {
              const all = places(before);
              return put(before, all[n % all.length], value);
            }, tree);
            mustStand(JSON.stringify(nasty));
          },
        ),
        { seed: 33, numRuns: share * 1500 },
      );
    });

    it('with values of other places put into them', () => {
      const trees: unknown[] = BASES.map((base): unknown => parse(base));
      fc.assert(
        fc.property(fc.constantFrom(...trees), fc.nat(), fc.nat(), (tree, from, to) => {
          const all = places(tree);
          const source = all[from % all.length];
          let value: unknown = tree;
          for (const part of source) value = (value as Record<string | number, unknown>)[part];
          mustStand(JSON.stringify(put(tree, all[to % all.length], structuredClone(value))));
        }),
        { seed: 34, numRuns: share * 800 },
      );
    });

    it('with quantities scaled out of all measure', () => {
      fc.assert(
        fc.property(
          fc.constantFrom(...BASES),
          fc.nat(),
          fc.oneof(fc.double(), fc.constantFrom(0, -1, 1e-12, 1e12, 1e300, 1e-300)),
          (base, n, factor) => {
            const numbers = [...base.matchAll(/(?<=[: ])\d[\d.,]*(?= [a-z°%])/gi)];
            const { index, 0: found } = numbers[n % numbers.length];
            mustStand(
              base.slice(0, index) +
                String(parseFloat(found.replace(/,/g, '')) * factor) +
                base.slice(index + found.length),
            );
          },
        ),
        { seed: 35, numRuns: share * 800 },
      );
    });
  });
}
