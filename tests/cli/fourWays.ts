import { readFileSync, writeFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import { eachScratch, example } from './support/run.js';

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
