/** Work that runs longer than this while newer work waits is given up [ms]. */
const PATIENCE = 1500;

/**
 * One worker and what waits for it. While it works, only the newest request of each key is kept: the slider has moved on from
 * the others.
 */
export class Lane<Request extends { id: number }, Reply extends { id: number }> {
  private worker: Worker | null = null;
  private running: { request: Request; since: number } | null = null;
  private readonly waiting = new Map<string | number, Request>();

  /**
   * @param source address of the worker's script
   * @param broken told when the worker itself stops
   */
  constructor(
    private readonly source: string,
    private readonly done: (reply: Reply) => void,
    private readonly broken: (request: Request, why: string) => void,
  ) {}

  ask(key: string | number, request: Request): void {
    this.waiting.set(key, request);
    if (this.running && performance.now() - this.running.since > PATIENCE) this.giveUp();
    this.next();
  }

  forget(key: string | number): void {
    this.waiting.delete(key);
  }

  private next(): void {
    if (this.running) return;
    const [first] = this.waiting;
    if (!first) return;
    const [key, request] = first;
    this.waiting.delete(key);
    this.worker ??= this.start();
    this.running = { request, since: performance.now() };
    this.worker.postMessage(request);
  }

  private start(): Worker {
    const worker = new Worker(this.source);
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      this.running = null;
      // a reply that a newer request has overtaken still shows the way while the slider moves
      this.next();
      this.done(data);
    };
    worker.onerror = ({ message }) => {
      const request = this.running?.request;
      this.giveUp();
      if (request) this.broken(request, message || 'the worker stopped');
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
