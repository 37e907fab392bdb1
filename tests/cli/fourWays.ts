import { readFileSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';
import { parse, stringify } from 'yaml';
import { eachScratch, example, pitwright } from './support/run.js';

export const FOUR_WAYS = example('four-ways.yaml');
export const LABELS = ['as drawn', '3/16 plate', '3/8 plate', 'wrapped firebox'];

type Tree = Record<string, Record<string, unknown>>;

/** A folder of its own for each test, and in it the example with four options as a file of its own, changed. */
export function eachFourWays() {
  const folder = eachScratch();
  function fileOf(name: string, change: (tree: Tree) => void): string {
    const tree = parse(readFileSync(FOUR_WAYS, 'utf8')) as Tree;
    change(tree);
    writeFileSync(folder.at(name), stringify(tree));
    return folder.at(name);
  }
  return { folder, fileOf };
}

/** A faulty option is refused by a command, at its place. */
export async function expectRefused({ folder, fileOf }: ReturnType<typeof eachFourWays>, command: string) {
  const file = fileOf('bad.yaml', (tree) => {
    tree.options = [{ name: 'thin', changes: { 'chamber.plat': '1/8 in' } }] as never;
  });
  const { code, stdout, stderr } = await pitwright([command, file, '-o', folder.at('out')]);
  expect({ code, stdout }).toEqual({ code: 3, stdout: '' });
  expect(stderr).toMatch(/bad\.yaml:\d+:\d+: options\[0\]\.changes\.chamber\.plat: .*'plate'/);
}
