import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { IN_FILE } from '../../src/design/fields.js';
import { readDesign } from '../../src/design/read.js';
import { compared, documentFrom } from './support/reports.js';

/** A field as a design file names it: `chamber.plate`, `stacks[0].base`, `chamber.door.plate`. */
export const PATH = new RegExp(`\\b(?:${Object.keys(IN_FILE).join('|')})(?:\\[\\d+\\])?\\.[a-z]\\w*`, 'g');
/** Sheets of the shop that list what is in the file, by its names. */
const OF_THE_FILE = /^Every input as read|^Estimates, warnings|^Options/;

/** None of them before a buyer, nor on a sheet of the shop that is not about the file. */
export function expectNoPaths(name: string): void {
  const read = readDesign(readFileSync(`examples/${name}`, 'utf8'), { fileName: name });
  if (read.faults) throw new Error(`${name} has faults`);
  const { design, warnings, options } = read;
  const comparison = compared([
    { label: 'as drawn', changes: [], design },
    ...options.map((each) => ({ label: each.name, changes: each.changes, design: each.design })),
  ]);
  comparison.options[0].result.warnings.unshift(...warnings);
  const { sheets } = documentFrom(comparison);
  const [buyer, ...shop] = sheets;
  expect(JSON.stringify(buyer).match(PATH)).toBeNull();
  for (const sheet of shop.filter(({ title }) => !OF_THE_FILE.test(title))) {
    expect([sheet.title, JSON.stringify(sheet).match(PATH)]).toEqual([sheet.title, null]);
  }
}
