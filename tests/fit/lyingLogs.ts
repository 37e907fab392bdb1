import { readFileSync } from 'node:fs';
import { readLog } from '../../src/fit/log/readLog.js';
import { fit } from '../../src/fit/fit.js';
import { exampleDesign } from '../support/examples.js';

/**
 * Logs that read well and are wrong: a unit, a header or a weight slipped. A fit must not go along with them and keep
 * silent: either the reader refuses them, or a warning says that the pit and the log don't belong together.
 */
const design = exampleDesign('plain-24.yaml');
const cook = readFileSync(new URL('../../examples/yard-cook.csv', import.meta.url), 'utf8');
const rows = cook.split('\n');
export const header = rows[1];
export const table = rows.slice(2).filter((row) => row !== '');

/** Every second row, up to four hours: a wrong log shows as well in half of its rows. */
export function written(head: string, change: (cells: string[], row: number) => string[] = (cells) => cells): string {
  const lines = table
    .filter((row, i) => i < 480 && (i % 2 === 0 || row.split(',')[5] !== ''))
    .map((row, i) => change(row.split(','), i).join(','));
  return [head, ...lines, ''].join('\n');
}

const TELLING = ['more-than-noise', 'at-edge-of-spread', 'probe-reads-off', 'moves-what-is-not-fitted'];
const FREE = ['innerConvection', 'fire.radiant', 'wood.heat', 'estimates.stemFill'];

/** Codes of what the reader or the fit says against a log. */
export function saidOf(text: string): { refused: boolean; codes: string[]; error_K: number } {
  const read = readLog(text, { fileName: 'cook.csv', design });
  if (read.faults) return { refused: true, codes: read.faults.map(({ code }) => code), error_K: Infinity };
  const result = fit(design, [{ log: read.log, hash: 'a' }], { paths: FREE, heldBack: 0.3, accuracy: 2 / 1.8 })!;
  const codes = result.warnings.map(({ code }) => code).filter((code) => TELLING.includes(code));
  return { refused: false, codes, error_K: result.quality.heldBack_K! };
}
