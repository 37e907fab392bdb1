import { availableParallelism } from 'node:os';
import { Tinypool } from 'tinypool';
import type { Slice } from './worker.js';

/** Cases handed to a thread at a time: few enough that none waits long for the last one. */
const SLICE = 5;

/** Threads when the command line names none: as many as the machine runs at once. */
export function defaultWorkers(): number {
  return availableParallelism();
}

/**
 * All cases of a job, worked off by a pool of threads. What comes back is in the order of the cases, whoever ran which.
 *
 * @param job plain data
 * @param count cases of it
 * @param options threads, and what to call when some more cases are done
 */
export async function runCases<T>(
  job: Slice['job'],
  count: number,
  options: { workers: number; done: (cases: number) => void },
): Promise<T[]> {
  const slices = Math.ceil(count / SLICE);
  const threads = Math.min(options.workers, slices);
  const pool = new Tinypool({
    // this module ends up in dist/chunks, the worker beside the command
    filename: new URL('../worker.js', import.meta.url).href,
    minThreads: threads,
    maxThreads: threads,
  });
  let finished = 0;
  try {
    const results = await Promise.all(
      Array.from({ length: slices }, async (_, i): Promise<T[]> => {
        const slice: Slice = { job, from: i * SLICE, to: Math.min(count, (i + 1) * SLICE) };
        const cases: T[] = await pool.run(slice);
        finished += cases.length;
        options.done(finished);
        return cases;
      }),
    );
    return results.flat();
  } finally {
    await pool.destroy();
  }
}
