import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { example, type Run } from './support/run.js';

/** What a terminal obeys: C0 but for line ends (those of CSV are two characters) and tabs, delete, C1, line separators, and what turns the reading direction. */
export const OBEYED =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]|\r(?!\n)/;

const codes = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCharCode(from + i)).join('');
const ALL =
  codes(0, 0x1f) + codes(0x7f, 0x9f) + codes(0x2028, 0x202e) + codes(0x2066, 0x2069) + '\u061c\u200e\u200f\ufffe\uffff';
export const NAME = `Pit\u001b[2J${ALL}end`;
/** A file's name may hold all but these. */
export const FILE = NAME.replace(/[\0/]/g, '');

export const tree = {
  ...parse(readFileSync(example('plain-24.yaml'), 'utf8')),
  name: NAME,
  shop: `Shop ${NAME}`,
  job: `Job ${NAME}`,
  cook: { load: [{ name: NAME, mass: '14 lb', area: '2.5 ft^2', start: '40 °F' }], tend: '2 h' },
};
export const design = JSON.stringify(tree);

export const file = `${FILE}/${FILE}.json`;
export const shown = ({ stdout, stderr }: Run) => OBEYED.exec(stdout + stderr)?.[0] ?? 'nothing';
