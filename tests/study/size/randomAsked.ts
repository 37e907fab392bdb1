/** Random shop designs with random things asked of their sizes, and what must hold of every answer. */
import { expect } from 'vitest';
import { readDesign } from '../../../src/design/read.js';
import { KEPT } from '../../../src/design/fields/size.js';
import { lidOf, OVER_HEAD } from '../../../src/design/stackBounds.js';
import { sizeText } from '../../../src/report/text/sizeText.js';
import { LIMIT, limitOf } from '../../../src/study/size/limits.js';
import type { SizeResult } from '../../../src/study/size/size.js';
import { generator, type Tree } from '../../design/seeded.js';
import { shopDesign } from '../../design/shopDesign.js';
import { fedBack, sizesFor } from './asked.js';

const TUBES = [
  '4 in tube 11 ga',
  '5 in pipe',
  '6 in tube 11 ga',
  '8 in tube 14 ga',
  '5 in square tube 11 ga',
  '6 in x 4 in square tube 3/16 in',
];

/** What a builder might ask: few tubes and a narrow band, so that few sizes have to be tried. */
function randomAsked(seed: number): Tree {
  const next = generator(seed + 0x517e);
  const chance = (p: number) => next() < p;
  const inches = (low: number, high: number) => Math.round(2 * (low + (high - low) * next())) / 2;
  const over = ['lid', 'head', 'ground'][Math.floor(3 * next())];
  const from = { lid: 12, head: 0, ground: 72 }[over]!;
  const least = inches(from, from + 36);
  const keep = KEPT.filter(() => chance(0.25)).slice(0, 2);
  if (keep.includes('stack')) return { keep };
  const tubes = TUBES.filter(() => chance(0.3)).slice(0, 2);
  const onHand = tubes.map((each) => (chance(0.4) ? `${each}, ${inches(24, 80)} in long` : each));
  const [lower, upper] = [chance(0.7), chance(0.7)];
  const stack = {
    over,
    ...(lower ? { least: `${least} in` } : {}),
    ...(upper ? { most: `${least + inches(0, 8)} in` } : {}),
    ...(tubes.length === 0 && chance(0.5)
      ? { shapes: [['round'], ['square'], ['round', 'square']][Math.floor(3 * next())] }
      : {}),
  };
  return { ...(keep.length > 0 ? { keep } : {}), stack, ...(onHand.length > 0 ? { onHand } : {}) };
}

/** The design of a seed with what is asked of it; null where that can't be asked of it. */
export function askedDesign(seed: number): string | null {
  const tree = shopDesign(seed);
  // a firebox that is as good as tight: through a leaky one nothing that is chosen would hold
  const firebox = { ...(tree.firebox as Tree), doorGap: '0.3 in²' };
  const text = JSON.stringify({ ...tree, firebox, size: randomAsked(seed) });
  return readDesign(text, { fileName: `${seed}` }).faults ? null : text;
}

function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : [];
}

const SIXTEENTH = 0.0016;

/** Every choice keeps to what is asked. */
function expectAsked({ design, choices }: SizeResult): void {
  const { keep = [], stack = { over: 'lid' as const }, onHand } = design.size ?? {};
  for (const choice of choices) {
    expect(choice.intakes.kept ?? false).toBe(keep.includes('intakes'));
    expect(choice.throat.kept ?? false).toBe(keep.includes('throat'));
    expect(choice.stack.kept ?? false).toBe(keep.includes('stack'));
    if (choice.stack.kept) continue;
    for (const each of design.stacks) {
      const from = { lid: lidOf(design, each), head: OVER_HEAD, ground: 0 }[stack.over];
      const over = each.base + choice.stack.height_m - from;
      expect(over).toBeGreaterThan((stack.least ?? -Infinity) - SIXTEENTH);
      expect(over).toBeLessThan((stack.most ?? Infinity) + SIXTEENTH);
    }
    const shape = choice.stack.shape ?? 'round';
    if (stack.shapes) expect(stack.shapes).toContain(shape);
    const piece = onHand?.find(({ name }) => name === choice.stack.name);
    if (onHand) expect(choice.stack.height_m).toBeLessThan((piece!.long ?? Infinity) + SIXTEENTH);
  }
}

/** All that must hold of the sizes of a file, whatever it asks. */
export async function expectSound(text: string): Promise<SizeResult> {
  const { tree, result } = await sizesFor(text);
  const { choices, chosen, constraints, curves, ...rest } = result;
  expect(numbersOf({ choices, constraints, curves, rest: rest.asDrawn }).filter(Number.isNaN)).toEqual([]);
  expectAsked(result);
  expect(chosen).toBe(choices.some(({ ok }) => ok) ? 0 : null);
  for (const { binds, without } of constraints) {
    expect(without !== null).toBe(binds);
    if (without) expect(without.ok).toBe(true);
  }
  for (const units of ['shop', 'si'] as const) {
    const told = sizeText(result, units, { full: true });
    expect(told).not.toMatch(/NaN|undefined|Infinity|null/);
  }
  if (chosen === null) return result;
  const { estimated } = fedBack(tree, result);
  const { margins } = choices[chosen];
  expect(margins.filter(({ key, margin }) => !LIMIT[key].told && margin < 0)).toEqual([]);
  expect(estimated.warnings.filter(({ code }) => !LIMIT[limitOf(code)].told)).toEqual([]);
  for (const { code } of estimated.warnings) {
    expect(margins.find(({ key }) => key === limitOf(code))!.margin).toBeLessThan(0);
  }
  for (const state of [estimated.assumed!, estimated.steady!]) expect(state.draft.stackBase_Pa).toBeGreaterThan(0);
  return result;
}
