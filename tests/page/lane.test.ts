import { afterEach, describe, expect, it, vi } from 'vitest';
import { Lane } from '../../src/page/lane.js';

interface Asked {
  id: number;
}

/** Workers that answer when they are told to. */
class Slow {
  static all: Slow[] = [];
  onmessage: ((event: { data: Asked }) => void) | null = null;
  onerror: (() => void) | null = null;
  stopped = false;
  readonly asked: number[] = [];
  constructor() {
    Slow.all.push(this);
  }
  postMessage({ id }: Asked): void {
    this.asked.push(id);
  }
  terminate(): void {
    this.stopped = true;
  }
  answer(): void {
    this.onmessage!({ data: { id: this.asked.at(-1)! } });
  }
}

const laneOf = (done: number[], urgent?: string) => {
  Slow.all = [];
  vi.stubGlobal('Worker', Slow);
  vi.useFakeTimers();
  return new Lane<Asked, Asked>(
    { address: 'x', name: 'x' },
    ({ id }) => done.push(id),
    () => undefined,
    urgent,
  );
};

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe('a lane of work', () => {
  it('keeps the newest request of each key alone', () => {
    const done: number[] = [];
    const lane = laneOf(done);
    lane.ask('a', { id: 1 });
    for (const id of [2, 3, 4]) lane.ask('a', { id });
    lane.ask('b', { id: 5 });
    const [worker] = Slow.all;
    for (let i = 0; i < 3; i++) worker.answer();
    expect(done).toEqual([1, 4, 5]);
    expect(Slow.all).toHaveLength(1);
  });

  it('takes what is urgent before all else that waits', () => {
    const done: number[] = [];
    const lane = laneOf(done, 'steps');
    lane.ask('sheet', { id: 1 });
    lane.ask('chart', { id: 2 });
    lane.ask('steps', { id: 3 });
    const [worker] = Slow.all;
    for (let i = 0; i < 3; i++) worker.answer();
    expect(done).toEqual([1, 3, 2]);
  });

  it('gives long work up for newer work, and takes it up again after, unless it is forgotten or asked anew', () => {
    const done: number[] = [];
    const lane = laneOf(done);
    lane.ask('chart', { id: 1 });
    vi.advanceTimersByTime(2000);
    lane.ask('steps', { id: 2 });
    expect(Slow.all[0].stopped).toBe(true);
    Slow.all[1].answer();
    Slow.all[1].answer();
    expect(done).toEqual([2, 1]);

    lane.ask('chart', { id: 3 });
    vi.advanceTimersByTime(2000);
    lane.ask('chart', { id: 4 });
    Slow.all[2].answer();
    lane.ask('chart', { id: 5 });
    lane.forgetAll();
    vi.advanceTimersByTime(2000);
    lane.ask('steps', { id: 6 });
    Slow.all[3].answer();
    expect(done).toEqual([2, 1, 4, 6]);
    expect(Slow.all[3].asked).toEqual([6]);
  });
});
