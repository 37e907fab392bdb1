import { availableParallelism } from 'node:os';
import { Tinypool } from 'tinypool';
import type { Job, Slice } from './worker.js';

/** Cases handed to a thread at a time: few enough that none waits long for the last one. */
const SLICE = 5;

/** Threads when the command line names none: as many as the machine runs at once. */
export function defaultWorkers(): number {
  return availableParallelism();
}

/**
 * Runs all cases of a job. What comes back is in the order of the cases, whoever ran which.
 *
 * @param count cases of the job
 * @param done told how many cases are done, some at a time
 */
export type RunCases = <T>(job: Job, count: number, done?: (cases: number) => void) => Promise<T[]>;

/** A pool of threads for as long as `use` takes. */
export async function withPool<R>(workers: number, use: (run: RunCases) => Promise<R>): Promise<R> {
  const pool = new Tinypool({
    // this module ends up in dist/chunks, the worker beside the command
    filename: new URL('../worker.js', import.meta.url).href,
    minThreads: workers,
    maxThreads: workers,
  });
  const run: RunCases = async <T>(job: Job, count: number, done?: (cases: number) => void) => {
    let finished = 0;
    const slices = Array.from({ length: Math.ceil(count / SLICE) }, async (_, i): Promise<T[]> => {
      const slice: Slice = { job, from: i * SLICE, to: Math.min(count, (i + 1) * SLICE) };
      const cases: T[] = await pool.run(slice);
      finished += cases.length;
      done?.(finished);
      return cases;
    });
    return (await Promise.all(slices)).flat();
  };
  try {
    return await use(run);
  } finally {
    await pool.destroy();
  }
}
