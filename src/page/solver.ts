import type { Design } from '../design/design.js';
import { Lane, type Source } from './lane.js';
import type { SolveReply, SolveRequest } from './protocol.js';
import { noteTime } from './timing.js';
import { isSolved, type Option } from './option.js';
import { type Workbench } from './workbench.js';

/** An answer to this option is nobody's. */
const NO_OPTION = -1;

/** An option has an answer. */
export interface Answer {
  option: Option;
  /** with its warm-up */
  full: boolean;
  /** to what was asked last */
  newest: boolean;
}

/**
 * Solves the options off the page's thread and lays each answer down with its option: the steady state in one worker,
 * which is back within a frame, after it the warm-up in another, so that a slider that moves never waits for curves.
 */
export class Solver {
  private readonly steady: Lane<SolveRequest, SolveReply>;
  private readonly full: Lane<SolveRequest, SolveReply>;
  /** what follows the steady state of an option, which has the machine for itself first */
  private readonly next = new Map<number, SolveRequest>();
  private last = 0;
  private started = false;

  constructor(
    private readonly bench: Workbench,
    source: Source,
    private readonly answered: (answer: Answer) => void,
  ) {
    const broken = ({ id, option }: SolveRequest, fault: string) =>
      this.take({ id, option, steadyOnly: false, result: null, fault, took: 0 });
    this.steady = new Lane(
      source,
      (reply) => {
        this.take(reply);
        this.goOn(reply.option);
      },
      (request, fault) => {
        broken(request, fault);
        this.goOn(request.option);
      },
    );
    this.full = new Lane(
      source,
      (reply) => {
        this.take(reply);
        if (!this.started && reply.result && !reply.steadyOnly) this.warm(reply.result.design);
      },
      broken,
    );
  }

  /** Both at once. The first time one worker gives both, and gets the machine for itself. */
  solve(option: Option): void {
    const id = ++this.last;
    const request = { id, option: option.id, design: option.design };
    if (!this.started && id === 1) this.full.ask(NO_OPTION, { ...request, steadyOnly: true });
    this.next.set(option.id, { ...request, steadyOnly: false });
    if (this.started) this.steady.ask(option.id, { ...request, steadyOnly: true });
    else this.goOn(option.id);
    Object.assign(option, { awaited: id, asked: option.design });
  }

  private goOn(option: number): void {
    const request = this.next.get(option);
    this.next.delete(option);
    if (request) this.full.ask(option, request);
  }

  /** Every option that has no numbers yet, the current one first. */
  solveAll(): void {
    const { current, options } = this.bench;
    for (const option of [current, ...options.filter((each) => each !== current)]) {
      if (!isSolved(option)) this.solve(option);
      else this.drop(option);
    }
  }

  /**
   * What is still asked of a design that this option has left again, as when a change is taken back at once, is not
   * waited for.
   */
  private drop(option: Option): void {
    this.forget(option.id);
    option.awaited = ++this.last;
  }

  forget(option: number): void {
    this.next.delete(option);
    this.steady.forget(option);
    this.full.forget(option);
  }

  /** Has the other worker load and solve once, so that the first move of a slider finds it ready. */
  private warm(design: Design): void {
    this.started = true;
    this.steady.ask(NO_OPTION, { id: 0, option: NO_OPTION, design, steadyOnly: true });
  }

  private take({ id, option: of, result, steadyOnly, fault, took }: SolveReply): void {
    const full = !steadyOnly;
    const start = performance.now();
    const option = this.bench.options.find((each) => each.id === of);
    if (!option) return;
    const newest = id === option.awaited;
    // its numbers are of its design already: this one came too late
    if (!newest && isSolved(option)) return;
    option.broken = fault;
    if (result) {
      option.result = { ...result, warnings: [...option.readWarnings, ...result.warnings] };
      if (full) Object.assign(option, { full: option.result, solved: newest ? option.asked : null });
    }
    this.answered({ option, full, newest });
    noteTime(full ? 'full' : 'steady', took);
    noteTime(full ? 'full-shown' : 'steady-shown', performance.now() - start);
    if (!full) return;
    // since the file was opened
    if (document.documentElement.dataset.answered === undefined) noteTime('first', performance.now());
    document.documentElement.dataset.answered = String(id);
  }
}
