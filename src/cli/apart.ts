import { defaultWorkers, withThreads } from './pool.js';
import type { Job } from './worker.js';

/**
 * Computes a job in a thread of its own. All computing of a command goes through here or the pool: a thread that
 * computes hears no signal until it is done, so the one that listens for them computes nothing.
 *
 * @param job or a promise of it: the thread starts while it is made
 */
export async function apart<T>(job: Job | Promise<Job>): Promise<T> {
  const [result] = await withThreads(1, async (ask) => ask<T>({ job: await job, from: 0, to: 1 }));
  return result;
}

/** The same for a job of several cases, each handed to a thread by itself. */
export async function eachApart<T>(job: Job, count: number, workers = defaultWorkers()): Promise<T[]> {
  const done = await withThreads(Math.min(workers, count), (ask) =>
    Promise.all(Array.from({ length: count }, (_, i) => ask<T>({ job, from: i, to: i + 1 }))),
  );
  return done.flat();
}

/**
 * Between two pieces of work that can't be done apart (drawing, laying out): a signal that came meanwhile is heard
 * here.
 */
export function signalsHeard(): Promise<void> {
  return new Promise((done) => setImmediate(done));
}
