import type { Readings } from './readings.js';
import { counted, type Report } from './report.js';

/** Readings in common that it takes, and the share of them that must be the same to the last digit. */
const LEAST = 20;
const SAME = 0.98;
/**
 * And they must move [K]: two probes of a pit that is cold, or holds, may well read alike on a logger of whole degrees.
 */
const MOVES = 30;

/** Tells of two columns that hold the same readings: probes in two places never agree to the digit all the way up. */
export function tellCopies(channels: readonly Readings[], report: Report): void {
  channels.forEach((channel, i) => {
    for (const other of channels.slice(i + 1)) {
      const theirs = new Map(other.time_s.map((t, k) => [t, other.value[k]]));
      const both = channel.time_s.flatMap((t, k) => (theirs.has(t) ? [[channel.value[k], theirs.get(t)!]] : []));
      const same = both.filter(([a, b]) => Math.abs(a - b) < 1e-6);
      const low = same.reduce((least, [a]) => Math.min(least, a), Infinity);
      const high = same.reduce((most, [a]) => Math.max(most, a), -Infinity);
      if (both.length < LEAST || same.length < SAME * both.length || high - low < MOVES) continue;
      report.note({
        code: 'copied-probe',
        message: `It holds the same readings as ${channel.column.header}, to the last digit (${counted(same.length, 'row')}): one of them is a copy.`,
        where: other.column.header,
        line: other.line[0],
        count: same.length,
      });
    }
  });
}
