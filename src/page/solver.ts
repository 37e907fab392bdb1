import type { Design } from '../design/design.js';
import { Lane } from './lane.js';
import type { SolveReply, SolveRequest } from './protocol.js';

/**
 * Solves designs off the page's thread: the steady state in one worker, which is back within a frame, the warm-up in another,
 * so that a slider that moves never waits for curves.
 */
export class Solver {
  private readonly steady: Lane<SolveRequest, SolveReply>;
  private readonly full: Lane<SolveRequest, SolveReply>;
  private last = 0;

  /** @param source address of the worker's script */
  constructor(source: string, onReply: { steady(reply: SolveReply): void; full(reply: SolveReply): void }) {
    const broken = ({ id, option }: SolveRequest, fault: string) =>
      onReply.full({ id, option, result: null, fault, took: 0 });
    this.steady = new Lane(source, onReply.steady, broken);
    this.full = new Lane(source, onReply.full, broken);
  }

  /** Asks for both; returns the number that the newest replies will carry. */
  solve(option: number, design: Design): number {
    const id = ++this.last;
    this.steady.ask(option, { id, option, design, steadyOnly: true });
    this.full.ask(option, { id, option, design, steadyOnly: false });
    return id;
  }

  forget(option: number): void {
    this.steady.forget(option);
    this.full.forget(option);
  }
}
