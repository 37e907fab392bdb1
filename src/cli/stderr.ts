import { performance } from 'node:perf_hooks';

/** Everything that isn't the requested output goes here. */
export function tell(message: string): void {
  process.stderr.write(`${message}\n`);
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
