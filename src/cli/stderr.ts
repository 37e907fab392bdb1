import { performance } from 'node:perf_hooks';
import { plainText, visible } from '../words/plainText.js';
import type { DesignWarning } from '../design/faults.js';
import { inWords } from '../units/index.js';

/** Everything that isn't the requested output goes here. */
export function tell(message: string): void {
  process.stderr.write(`${visible(message)}\n`);
}

/** What a design's reader had to say, for commands whose text has no place for it. */
export function tellWarnings(warnings: readonly DesignWarning[]): void {
  for (const { where, message } of warnings)
    tell(`pitwright: ${plainText(where)}: ${plainText(inWords(message), 600)}`);
}

/** Work shorter than this needs no word, unless somebody is watching. */
const PATIENCE_MS = 1000;

/**
 * Says on standard error what long work is doing: on a terminal at once, in a log only when the run has already
 * taken over a second.
 */
export function progress(doing: string): void {
  if (process.stderr.isTTY || performance.now() > PATIENCE_MS) tell(`pitwright: ${doing} ...`);
}

/** Time between two words on a long run at first [ms], and as a share of the time that it has taken. */
const BETWEEN_MS = 5000;
const BETWEEN_SHARE = 0.05;

/** Says how a stream of lines gets on: how many, how fast, how long; more rarely the longer it takes. */
export function rateTeller(): { soFar: (lines: number) => void; total: (lines: number) => string } {
  const start = performance.now();
  let said = start;
  const total = (lines: number) => {
    const seconds = (performance.now() - start) / 1000;
    const rate = seconds > 0 ? lines / seconds : 0;
    return `${lines} ${lines === 1 ? 'line' : 'lines'} in ${clock(seconds)}, ${rate.toPrecision(3)} a second`;
  };
  const soFar = (lines: number) => {
    const now = performance.now();
    if (now - said < Math.max(BETWEEN_MS, BETWEEN_SHARE * (now - start))) return;
    said = now;
    progress(total(lines));
  };
  return { soFar, total };
}

/** `48.2 s`, `12:05 min`, `3:12:05 h` */
function clock(seconds: number): string {
  if (seconds < 60) return `${seconds.toFixed(1)} s`;
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0');
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60)];
  if (hours === 0) return `${minutes}:${two(seconds % 60)} min`;
  return `${hours}:${two(minutes % 60)}:${two(seconds % 60)} h`;
}
