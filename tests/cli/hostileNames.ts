import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, expect } from 'vitest';
import { parse, stringify } from 'yaml';
import { example, pitwright, type Run, scratch } from './support/run.js';

/**
 * What a terminal obeys: C0 but for line ends (those of CSV are two characters) and tabs, delete, C1, line separators,
 * and what turns the reading direction.
 */
export const OBEYED =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]|\r(?!\n)/;

const codes = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCharCode(from + i)).join('');
const ALL =
  codes(0, 0x1f) + codes(0x7f, 0x9f) + codes(0x2028, 0x202e) + codes(0x2066, 0x2069) + '\u061c\u200e\u200f\ufffe\uffff';
export const NAME = `Pit\u001b[2J${ALL}end`;
/** A file's name may hold all but these. */
export const FILE = NAME.replace(/[\0/]/g, '');

const tree = {
  ...parse(readFileSync(example('plain-24.yaml'), 'utf8')),
  name: NAME,
  shop: `Shop ${NAME}`,
  job: `Job ${NAME}`,
  cook: { load: [{ name: NAME, mass: '14 lb', area: '2.5 ft^2', start: '40 °F' }], tend: '2 h' },
};
const design = JSON.stringify(tree);

export const file = `${FILE}/${FILE}.json`;
export const shown = ({ stdout, stderr }: Run) => OBEYED.exec(stdout + stderr)?.[0] ?? 'nothing';

/** A folder full of such names for the tests of a file, and how the command is run in it. */
export function useHostileFolder() {
  const folder = scratch();
  beforeAll(() => {
    mkdirSync(folder.at(FILE));
    writeFileSync(folder.at(`${FILE}/${FILE}.json`), design);
    writeFileSync(folder.at(`${FILE}/broken.yaml`), stringify({ ...tree, [NAME]: 1, gauge: NAME, fitted: NAME }));
    writeFileSync(
      folder.at(`${FILE}/${FILE}.csv`),
      `time [s],${FILE.replace(/[\n\r"]/g, '')} [°F],middle [°F]\n0,70,70\n60,80,x\u001by\n`,
    );
  });
  afterAll(() => folder.remove());
  return { folder, run: (...args: string[]) => pitwright(args, { cwd: folder.path, stdin: design }) };
}

/** What ends as it should, says enough, and none of it what a terminal obeys. */
export function expectHarmless(ran: Run, code: number): void {
  expect({ code: ran.code, shown: shown(ran) }).toEqual({ code, shown: 'nothing' });
  // without them it's a text all the same
  expect((ran.stdout + ran.stderr).length).toBeGreaterThan(60);
}
