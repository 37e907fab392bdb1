import { availableParallelism } from 'node:os';
import { Tinypool } from 'tinypool';
import type { Job, Slice } from './worker.js';

/** Cases handed to a thread at a time: few enough that none waits long for the last one. */
export const SLICE = 5;

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
type RunCases = <T>(job: Job, count: number, done?: (cases: number) => void) => Promise<T[]>;

/** Has a thread run a slice of a job; slices wait their turn. */
export type Ask = <T>(slice: Slice) => Promise<T[]>;

/**
 * Threads for as long as `use` takes. What they still work on when it ends is given up.
 *
 * @param heap limits of each thread's heap [MB], for work without end: V8 rather lets a heap grow than looks for
 * garbage
 */
export async function withThreads<R>(
  workers: number,
  use: (ask: Ask) => Promise<R>,
  heap?: { young: number; old: number },
): Promise<R> {
  const pool = new Tinypool({
    // this module ends up in dist/chunks, the worker beside the command
    filename: new URL('../worker.js', import.meta.url).href,
    minThreads: workers,
    maxThreads: workers,
    resourceLimits: heap && { maxYoungGenerationSizeMb: heap.young, maxOldGenerationSizeMb: heap.old },
  });
  const waiting = new Set<(error: Error) => void>();
  let early: Error | undefined;
  const endEarly = (error: Error) => {
    early ??= error;
    for (const fail of waiting) fail(early);
  };
  pool.on('error', endEarly);
  // of a thread that goes without an error the pool would never say a word
  for (const thread of pool.threads) {
    thread.on('error', endEarly);
    thread.once('exit', (code: number) =>
      endEarly(new Error(`a thread ended before its work was done (exit ${code})`)),
    );
  }
  const ask: Ask = <T>(slice: Slice) =>
    new Promise<T[]>((done, fail) => {
      if (early) return fail(early);
      waiting.add(fail);
      void (pool.run(slice) as Promise<T[]>).then(done, fail).finally(() => waiting.delete(fail));
    });
  try {
    return await use(ask);
  } finally {
    // the pool waits for its threads with events.once, which takes its listeners off again; they have no way to
    for (const thread of pool.threads) Object.assign(thread, { removeListener: () => thread });
    const destroyed = quietly(pool.destroy());
    // nor would it ever have seen that thread's end
    if (!early) await destroyed;
  }
}

/** The same for jobs whose cases are known from the start. */
export async function withPool<R>(workers: number, use: (run: RunCases) => Promise<R>): Promise<R> {
  return withThreads(workers, (ask) => use(sharingOut(ask)));
}

function sharingOut(ask: Ask): RunCases {
  return async <T>(job: Job, count: number, done?: (cases: number) => void) => {
    let finished = 0;
    const slices = Array.from({ length: Math.ceil(count / SLICE) }, async (_, i): Promise<T[]> => {
      const cases = await ask<T>({ job, from: i * SLICE, to: Math.min(count, (i + 1) * SLICE) });
      finished += cases.length;
      done?.(finished);
      return cases;
    });
    return (await Promise.all(slices)).flat();
  };
}

/**
 * What `ask` makes of a stream's items, in their order, with at most `most` of them under way or waiting for their
 * turn: however long the stream, no more is held. An answer whose turn it is never waits for the next item to arrive.
 */
export async function* inOrder<T, R>(
  items: AsyncIterable<T>,
  ask: (item: T) => Promise<R>,
  most: number,
): AsyncGenerator<R> {
  const source = items[Symbol.asyncIterator]();
  const read = () => quietly(source.next().then((item) => ({ item })));
  const underWay: Promise<{ answer: R }>[] = [];
  let coming: ReturnType<typeof read> | undefined = read();
  while (coming || underWay.length > 0) {
    const next: Promise<{ answer: R } | { item: IteratorResult<T> }>[] = underWay.slice(0, 1);
    if (coming && underWay.length < most) next.push(coming);
    const came = await Promise.race(next);
    if ('answer' in came) {
      underWay.shift();
      yield came.answer;
    } else if (came.item.done) {
      coming = undefined;
    } else {
      underWay.push(quietly(ask(came.item.value).then((answer) => ({ answer }))));
      coming = read();
    }
  }
}

/** A promise that may be given up: its failure is told to whoever still waits for it, and to nobody else. */
function quietly<T>(promise: Promise<T>): Promise<T> {
  promise.catch(() => {});
  return promise;
}
