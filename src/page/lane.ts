import { workHere } from './serve.js';

/** Work that runs longer than this while newer work waits is given up [ms]. */
const PATIENCE = 1500;

/** The script of a worker, and the name of its work where the page does it itself. */
export interface Source {
  address: string;
  name: string;
  /** a worker that was started before anyone had work for it; the first who has takes it */
  early?: (Worker & { broken?: boolean }) | undefined;
}

/**
 * One worker and what waits for it. While it works, only the newest request of each key is kept: the slider has moved
 * on from the others. Where the browser starts no worker the page does the work, one after the other.
 */
export class Lane<Request, Reply> {
  /** the browser starts no workers: known from the first one that it did not */
  static onPage = false;

  private worker: Worker | null = null;
  /** what is worked on, by its key; no key: nobody waits for it any more */
  private running: { key: string | number | null; request: Request; since: number } | null = null;
  private readonly waiting = new Map<string | number, Request>();
  /** the worker has given an answer before: what stops it now is the work, not the browser */
  private answered = false;

  /**
   * @param broken told when the work itself stops
   * @param urgent key of what is worked on before all else that waits
   */
  constructor(
    private readonly source: Source,
    private readonly done: (reply: Reply) => void,
    private readonly broken: (request: Request, why: string) => void,
    private readonly urgent?: string,
  ) {}

  ask(key: string | number, request: Request): void {
    this.waiting.set(key, request);
    const { running } = this;
    if (this.worker && running && performance.now() - running.since > PATIENCE) {
      this.giveUp();
      // nobody asks for it again: it waits behind the newer one
      if (running.key !== null && !this.waiting.has(running.key)) this.waiting.set(running.key, running.request);
    }
    this.next();
  }

  forget(key: string | number): void {
    this.waiting.delete(key);
    if (this.running?.key === key) this.running.key = null;
  }

  forgetAll(): void {
    this.waiting.clear();
    if (this.running) this.running.key = null;
  }

  private next(): void {
    if (this.running) return;
    const all = [...this.waiting];
    const first = all.find(([key]) => key === this.urgent) ?? all[0];
    if (!first) return;
    const [key, request] = first;
    this.waiting.delete(key);
    this.run(key, request);
  }

  private run(key: string | number | null, request: Request): void {
    this.running = { key, request, since: performance.now() };
    if (!Lane.onPage) this.worker ??= this.start();
    if (this.worker) this.worker.postMessage(request);
    else this.runHere(request);
  }

  private start(): Worker | null {
    let worker: Worker;
    const { early } = this.source;
    this.source.early = undefined;
    try {
      if (early?.broken) throw new Error('it did not start');
      worker = early ?? new Worker(this.source.address);
    } catch {
      Lane.onPage = true;
      return null;
    }
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      this.answered = true;
      this.take(data);
    };
    worker.onerror = ({ message }) => {
      const { key = null, request } = this.running ?? {};
      this.giveUp();
      if (request && !this.answered) {
        Lane.onPage = true;
        this.run(key, request);
        return;
      }
      if (request) this.broken(request, message || 'the worker stopped');
      this.next();
    };
    return worker;
  }

  private runHere(request: Request): void {
    workHere<Reply>(this.source.address, this.source.name, request).then(
      (reply) => this.take(reply),
      (error: unknown) => {
        this.running = null;
        this.broken(request, error instanceof Error ? error.message : String(error));
        this.next();
      },
    );
  }

  private take(reply: Reply): void {
    this.running = null;
    // a reply that a newer request has overtaken still shows the way while the slider moves
    this.next();
    this.done(reply);
  }

  private giveUp(): void {
    this.worker?.terminate();
    this.worker = null;
    this.running = null;
  }
}
