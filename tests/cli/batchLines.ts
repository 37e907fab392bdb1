import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { parse } from 'yaml';
import { example, pitwright } from './support/run.js';

export type Tree = Record<string, any>; // eslint-disable-line @typescript-eslint/no-explicit-any -- results are looked into freely

export const plain = example('plain-24.yaml');
export const drawn: Tree = parse(readFileSync(plain, 'utf8'));
export const designs = ['plain-24', 'reverse-flow', 'insulated-upright'].map((name): Tree =>
  parse(readFileSync(example(`${name}.yaml`), 'utf8')),
);
export const ndjson = (trees: unknown[]) => trees.map((tree) => `${JSON.stringify(tree)}\n`).join('');
export const linesOf = (text: string) => text.split('\n').slice(0, -1);
export const read = (text: string): Tree[] => linesOf(text).map((line) => JSON.parse(line));

/** So many designs with other stacks, and faults of all kinds between them. */
export function mixedLines(count: number): string {
  const lines = Array.from({ length: count }, (_, i) => {
    const tree = structuredClone(designs[i % designs.length]);
    tree.name = `pit ${i + 1}`;
    tree.stacks[0].height = `${28 + i} in`;
    return JSON.stringify(tree);
  });
  lines.splice(2, 0, '');
  lines.splice(4, 0, '{"schema":1,"name":"half a');
  lines.splice(9, 0, JSON.stringify({ ...drawn, chamber: { ...drawn.chamber, plaet: '1/4 in' }, name: 'misspelt' }));
  return `${lines.join('\n')}\n`;
}

/**
 * A line of a batch has the numbers of `estimate --json`, but for the curves and for what is followed for one design at
 * a time.
 */
export async function expectAsEstimated(tree: Tree, result: Tree): Promise<void> {
  const one = await pitwright(['estimate', '-', '--json'], { stdin: JSON.stringify(tree) });
  expectNumbersOf(JSON.parse(one.stdout), tree, result);
}

/** A line of a batch has the numbers of that estimate. */
export function expectNumbersOf(estimate: Tree, tree: Tree, result: Tree): void {
  const { design, lit, splits, vents, coldSmoke, ...expected } = estimate;
  expect(lit).not.toBeUndefined();
  expect(splits).not.toBeUndefined();
  expect(vents).not.toBeUndefined();
  expect(coldSmoke !== undefined).toBe('upright' in tree);
  expect(expected.warmUp.series.time_s.length).toBeGreaterThan(10);
  delete expected.warmUp.series;
  expect(result).toEqual({ name: design.name, ...expected });
}
