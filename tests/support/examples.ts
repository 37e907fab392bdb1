import { readFileSync, readdirSync } from 'node:fs';
import type { Design } from '../../src/design/design.js';
import { readDesign } from '../../src/design/read.js';

const folder = new URL('../../examples/', import.meta.url);

/** Names of the example designs. */
export const exampleNames = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .sort();

/** One way through and an upright: for every day, all others for the long tests. */
export const everydayExamples = ['plain-24.yaml', 'insulated-upright.yaml'];
export const longExamples = exampleNames.filter((name) => !everydayExamples.includes(name));

/** An example's text, changed by a function where given, read into a design; a fault fails the test. */
export function exampleDesign(name: string, change: (text: string) => string = (text) => text): Design {
  const text = change(readFileSync(new URL(name, folder), 'utf8'));
  const read = readDesign(text, { fileName: name });
  if ('faults' in read) throw new Error(`${name}: ${JSON.stringify(read.faults)}`);
  return read.design;
}
