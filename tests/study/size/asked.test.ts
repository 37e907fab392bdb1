import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { constraintsOf, missedAsDrawn, variantTries } from '../../../src/study/size/constraints.js';
import { limitOf } from '../../../src/study/size/limits.js';
import { ranked, type Ranked } from '../../../src/study/size/rank.js';
import { changed, designOf, PLAIN } from '../../design/designFiles.js';
import { firstFields } from './firstFields.js';

const inch = 0.0254;
const asked = (size: string, text = PLAIN) => `${text}size: ${size}\n`;
const triesOf = (size: string, text = PLAIN) => variantTries(designOf(asked(size, text))).filter(({ of }) => of === 0);

describe('stacks to try', () => {
  it('end between their bounds, whatever they count from', () => {
    for (const [over, from] of [
      ['lid', 52],
      ['head', 72],
      ['ground', 0],
    ] as const) {
      const [least, most] = [76 - from, 88 - from];
      const tries = triesOf(`{ stack: { least: ${least} in, most: ${most} in, over: ${over} } }`);
      const tops = tries.map(({ height }) => 42 + height!.value / inch);
      expect([Math.min(...tops), Math.max(...tops)]).toEqual([76, 88]);
    }
  });

  it('are of the shapes asked for, or as drawn', () => {
    const shapes = (size: string, text?: string) =>
      [...new Set(triesOf(size, text).map(({ stack }) => stack.section.shape ?? 'round'))].sort();
    expect(shapes('{ stack: { shapes: [square] } }')).toEqual(['square']);
    expect(shapes('{ stack: { shapes: [round, square] } }')).toEqual(['round', 'square']);
    expect(shapes('{ keep: [throat] }')).toEqual(['round']);
    const square = changed(['diameter: 6 in, height', 'shape: square, width: 6 in, height']);
    expect(shapes('{ keep: [throat] }', square)).toEqual(['square']);
  });

  it('are what is on hand, no longer than the piece', () => {
    const tries = triesOf('{ onHand: [6 in tube 11 ga, "5 in pipe, 40 in long"] }');
    const longest = (name: string) =>
      Math.max(...tries.filter(({ stack }) => stack.name.startsWith(name)).map(({ height }) => height!.value / inch));
    expect(new Set(tries.map(({ stack }) => stack.name)).size).toBe(2);
    expect(longest('5 in pipe')).toBeCloseTo(40, 9);
    expect(longest('6 in tube')).toBeGreaterThan(60);
  });

  it('are the drawn one where it stays', () => {
    expect(triesOf('{ keep: [stack] }')).toMatchObject([{ height: null, stack: { section: {} } }]);
  });

  it('are tried once for all that is asked for', () => {
    const design = designOf(asked('{ stack: { least: 30 in, most: 36 in }, onHand: [6 in tube 11 ga] }'));
    const tries = variantTries(design).map(({ stack, height }) => `${stack.name} ${height!.text}`);
    expect(new Set(tries).size).toBe(tries.length);
    expect(constraintsOf(design)).toEqual(['least', 'most', 'onHand']);
  });
});

describe('the drawing', () => {
  it.each([
    ['{ stack: { least: 24 in, most: 30 in } }', []],
    ['{ stack: { least: 30 in } }', ['least']],
    ['{ stack: { most: 20 in } }', ['most']],
    ['{ stack: { shapes: [square] } }', ['shapes']],
    ['{ onHand: [6 in tube 11 ga] }', []],
    ['{ onHand: [6 in pipe, 6 in tube 16 ga, 6 in square tube 11 ga] }', ['onHand']],
    ['{ onHand: ["6 in tube 11 ga, 30 in long"] }', ['onHand']],
    ['{ keep: [throat] }', []],
  ])('held against %s misses %j', (size, missed) => {
    expect(missedAsDrawn(designOf(asked(size)))).toEqual(missed);
  });
});

describe('limits', () => {
  it('have a row for every warning that an estimate gives', () => {
    const folders = ['estimate', 'carry', 'events'].map((each) => join('src/study', each));
    const files = folders.flatMap((folder) => readdirSync(folder).map((file) => join(folder, file)));
    const codes = files.flatMap((file) =>
      [...readFileSync(file, 'utf8').matchAll(/code: ['`]([^'`]+)['`],\s*message/g)].map(([, code]) => code),
    );
    expect(codes.length).toBeGreaterThan(15);
    const all = codes.flatMap((code) =>
      code.includes('${what}') ? ['scaling', 'creep'].map((what) => code.replace('${what}', what)) : [code],
    );
    expect(all.filter((code) => limitOf(code) === 'others')).toEqual([]);
  });
});

describe('the order of sizes', () => {
  const size = (change: Partial<Ranked['weighed']> & { score?: number; works?: number }): Ranked => {
    const { score = 0.5, works = 4, ...weighed } = change;
    return { score, works, weighed: { windSwing: 1.5, wood_kg_per_s: 4e-4, stack_kg: 10, overLid_m: 0.8, ...weighed } };
  };
  const first = (...sizes: Ranked[]) => ranked(sizes)[0];

  it('a stub is not taken because it is light', () => {
    expect(first(size({ stack_kg: 4, windSwing: 2 }), size({ stack_kg: 14, windSwing: 1.5 }))).toBe(1);
  });

  it.each([
    ['limits', size({ score: -0.1 }), size({ stack_kg: 90, windSwing: 3 })],
    ['weather', size({ works: 3 }), size({ stack_kg: 90, windSwing: 3 })],
    ['a quarter in hand', size({ score: 0.1 }), size({ score: 0.25, stack_kg: 90, windSwing: 3 })],
    ['wind, before wood', size({ windSwing: 1.8 }), size({ wood_kg_per_s: 9e-4 })],
    ['wood, before weight', size({ wood_kg_per_s: 5e-4 }), size({ stack_kg: 90 })],
    ['weight, where all else is alike', size({ stack_kg: 12 }), size({ windSwing: 1.52, wood_kg_per_s: 4.2e-4 })],
  ])('%s: the other one first', (_, one, other) => {
    expect(first(one, other)).toBe(1);
    expect(first(other, one)).toBe(0);
  });

  it('what has a little more in hand is no better for it', () => {
    expect(first(size({ score: 0.11, wood_kg_per_s: 5.7e-4 }), size({ score: 0.09 }))).toBe(1);
  });

  it('what has more in hand than a quarter is no better for it', () => {
    expect(first(size({ score: 3 }), size({ stack_kg: 9 }))).toBe(1);
  });
});

describe('what stays', () => {
  it('throat and stack: as they stand in the file', async () => {
    const { tree, fields } = await firstFields(asked('{ keep: [throat, stack] }'));
    expect(fields.stacks).toEqual(tree.stacks);
    expect(fields.throat).toEqual(tree.throat);
  });
});
