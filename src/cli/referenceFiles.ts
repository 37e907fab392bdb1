import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { EvidenceFiles, NamedText } from '../verify/evidence.js';
import { exit, Stop } from './exit.js';

const MISSES = 'misses.csv';

/**
 * The folder of published values, which goes with the package.
 *
 * @throws Stop when it's not there
 */
export function referenceFolder(): string {
  for (let at = dirname(fileURLToPath(import.meta.url)); ; at = dirname(at)) {
    const folder = join(at, 'reference');
    if (existsSync(join(folder, MISSES))) return folder;
    if (at === dirname(at)) break;
  }
  throw new Stop(exit.ourFault, 'the published values that go with pitwright are missing; install it again.');
}

/** Whether the folder stands in a clone of the repository, where its report may be renewed. */
export function inRepository(folder: string): boolean {
  return existsSync(join(dirname(folder), 'src', 'verify'));
}

/** Everything the evidence is made from, in the order of the file names. */
export function readReference(folder: string): EvidenceFiles {
  const read = (file: string): NamedText => ({ file, text: readFileSync(join(folder, file), 'utf8') });
  const names = readdirSync(folder)
    .filter((name) => /^cases-.*\.csv$/.test(name))
    .sort();
  return {
    cases: names.map(read),
    misses: read(MISSES),
    steckler: read('vent-flow-steckler.csv'),
    steelRoom: read('steel-room-sp.csv'),
    corridor: read('corridor-nbs.csv'),
    box: read('box-nist-1994.csv'),
  };
}
