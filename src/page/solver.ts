import type { Design } from '../design/design.js';
import { Lane, type Source } from './lane.js';
import type { SolveReply, SolveRequest } from './protocol.js';

/** An answer to this option is nobody's. */
const NO_OPTION = -1;

/**
 * Solves designs off the page's thread: the steady state in one worker, which is back within a frame, the warm-up in another,
 * so that a slider that moves never waits for curves.
 */
export class Solver {
  private readonly steady: Lane<SolveRequest, SolveReply>;
  private readonly full: Lane<SolveRequest, SolveReply>;
  private last = 0;
  private started = false;

  constructor(source: Source, onReply: { steady(reply: SolveReply): void; full(reply: SolveReply): void }) {
    const broken = ({ id, option }: SolveRequest, fault: string) =>
      onReply.full({ id, option, result: null, fault, took: 0 });
    this.steady = new Lane(source, onReply.steady, broken);
    this.full = new Lane(
      source,
      (reply) => {
        onReply.full(reply);
        if (!this.started && reply.result) this.warm(reply.result.design);
      },
      broken,
    );
  }

  /**
   * Asks for both; returns the number that the newest replies will carry. The first time the full answer is all that counts, and
   * gets the machine for itself.
   */
  solve(option: number, design: Design): number {
    const id = ++this.last;
    if (this.started) this.steady.ask(option, { id, option, design, steadyOnly: true });
    this.full.ask(option, { id, option, design, steadyOnly: false });
    return id;
  }

  /** Has the other worker load and solve once, so that the first move of a slider finds it ready. */
  private warm(design: Design): void {
    this.started = true;
    this.steady.ask(NO_OPTION, { id: 0, option: NO_OPTION, design, steadyOnly: true });
  }

  forget(option: number): void {
    this.steady.forget(option);
    this.full.forget(option);
  }
}
