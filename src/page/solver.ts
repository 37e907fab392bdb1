import type { Design } from '../design/design.js';
import type { SolveReply, SolveRequest } from './protocol.js';

/** A solve that runs longer than this while a newer one waits is given up [ms]. */
const PATIENCE = 1500;

/**
 * One worker and what waits for it. While it works, only the newest request of each option is kept: the slider has moved on
 * from the others.
 */
class Lane {
  private worker: Worker | null = null;
  private running: { request: SolveRequest; since: number } | null = null;
  private readonly waiting = new Map<number, SolveRequest>();

  constructor(
    private readonly source: string,
    private readonly done: (reply: SolveReply) => void,
  ) {}

  ask(request: SolveRequest): void {
    this.waiting.set(request.option, request);
    if (this.running && performance.now() - this.running.since > PATIENCE) this.giveUp();
    this.next();
  }

  forget(option: number): void {
    this.waiting.delete(option);
  }

  private next(): void {
    if (this.running) return;
    const [request] = this.waiting.values();
    if (!request) return;
    this.waiting.delete(request.option);
    this.worker ??= this.start();
    this.running = { request, since: performance.now() };
    this.worker.postMessage(request);
  }

  private start(): Worker {
    const worker = new Worker(this.source);
    worker.onmessage = ({ data }: MessageEvent<SolveReply>) => {
      this.running = null;
      // a reply that a newer request has overtaken still shows the way while the slider moves
      this.done(data);
      this.next();
    };
    worker.onerror = ({ message }) => {
      const request = this.running?.request;
      this.giveUp();
      if (request) this.done({ ...request, result: null, fault: message || 'the solver stopped', took: 0 });
      this.next();
    };
    return worker;
  }

  private giveUp(): void {
    this.worker?.terminate();
    this.worker = null;
    this.running = null;
  }
}

/**
 * Solves designs off the page's thread: the steady state in one worker, which is back within a frame, the warm-up in another,
 * so that a slider that moves never waits for curves.
 */
export class Solver {
  private readonly steady: Lane;
  private readonly full: Lane;
  private last = 0;

  /** @param source address of the worker's script */
  constructor(source: string, onReply: { steady(reply: SolveReply): void; full(reply: SolveReply): void }) {
    this.steady = new Lane(source, onReply.steady);
    this.full = new Lane(source, onReply.full);
  }

  /** Asks for both; returns the number that the newest replies will carry. */
  solve(option: number, design: Design): number {
    const id = ++this.last;
    this.steady.ask({ id, option, design, steadyOnly: true });
    this.full.ask({ id, option, design, steadyOnly: false });
    return id;
  }

  forget(option: number): void {
    this.steady.forget(option);
    this.full.forget(option);
  }
}
