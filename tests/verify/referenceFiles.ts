import { readdirSync, readFileSync } from 'node:fs';
import type { EvidenceFiles } from '../../src/verify/evidence.js';

const folder = new URL('../../reference/', import.meta.url);

export const readReference = (file: string): string => readFileSync(new URL(file, folder), 'utf8');

/** The repository's own evidence, as the command reads it. */
export function reference(): EvidenceFiles {
  const named = (file: string) => ({ file, text: readReference(file) });
  return {
    cases: readdirSync(folder)
      .filter((name) => /^cases-.*\.csv$/.test(name))
      .sort()
      .map(named),
    misses: named('misses.csv'),
    steckler: named('vent-flow-steckler.csv'),
    steelRoom: named('steel-room-sp.csv'),
    corridor: named('corridor-nbs.csv'),
    box: named('box-nist-1994.csv'),
  };
}
