import type { Design } from '../design/design.js';
import type { Further } from '../study/estimate/estimate.js';
import type { EstimateResult } from '../study/estimate/result.js';
import type { OptionStudy } from '../study/compare/studyOption.js';
import type { Spread } from '../study/spread/uncertainty.js';
import { Lane, type Source } from './lane.js';
import type { AsideReply, AsideRequest, StudiedStep } from './protocol.js';
import type { Step } from './trySteps.js';

/** The design itself among the steps. */
const BASE = 'base';

interface Told {
  /** of these steps, and of the design that they start from, all is known */
  steps(round: number, base: OptionStudy, steps: StudiedStep[]): void;
  spread(spread: Spread): void;
  cooked(found: Further): void;
}

/**
 * What is worked out beside the answer to one design: what a step of plate changes, first quickly and, once the hand
 * rests, with its events and part by part; then what a cook makes of it, and how far the answer spreads. A change of
 * the design begins a new round.
 */
export class Asides {
  private readonly lane: Lane<AsideRequest, AsideReply>;
  private round = 0;
  private base: EstimateResult | null = null;
  private steps: readonly Step[] = [];
  private events = false;
  /** it is known how far the answer spreads */
  private sure = false;
  private studies = new Map<string, OptionStudy>();
  /** what is to be gone into once the quick ones are there */
  private next: readonly Step[] | null = null;

  constructor(
    source: Source,
    private readonly told: Told,
  ) {
    this.lane = new Lane(
      source,
      (reply) => this.take(reply),
      () => undefined,
    );
  }

  /** The steps of a changed design, as quickly as can be. */
  begin(steps: readonly Step[]): void {
    this.round++;
    this.lane.forgetAll();
    Object.assign(this, { base: null, steps, events: false, studies: new Map(), next: null });
    for (const { id, design } of steps) this.ask(id, design);
  }

  /** The answer that they are held against. */
  answer(base: EstimateResult): void {
    this.base = base;
    if (!this.events) this.studies.set(BASE, { result: base, studies: null });
    this.tell();
  }

  /**
   * All that takes longer; on a page that has to do it itself, and would stand still, the cook alone.
   *
   * @param known what of the design is there already
   */
  deepen(steps: readonly Step[], design: Design, known: { cook: boolean; spread: boolean }): void {
    if (this.events) return;
    this.sure = known.spread;
    if (!known.cook) this.cook(design, false);
    if (!Lane.onPage) this.deepenSteps(steps);
  }

  private deepenSteps(steps: readonly Step[]): void {
    if (!this.base || this.studies.size <= this.steps.length) {
      this.next = steps;
      return;
    }
    Object.assign(this, { steps, events: true, studies: new Map(), next: null });
    if (this.sure) this.study(this.base.design);
    else this.lane.ask('spread', { round: this.round, kind: 'spread', base: this.base, cases: [] });
  }

  /** @param vented with its vents from shut to open */
  cook(design: Design, vented: boolean): void {
    this.lane.ask(`cook ${vented}`, { round: this.round, kind: 'cook', design, vented });
  }

  /** Once it is known how sure the answer is. */
  private study(base: Step['design']): void {
    this.ask(BASE, base);
    for (const { id, design } of this.steps) this.ask(id, design);
  }

  private ask(step: string, design: Step['design']): void {
    this.lane.ask(step, { round: this.round, kind: 'step', step, design, events: this.events });
  }

  private take(reply: AsideReply): void {
    if (reply.round !== this.round || reply.kind === 'fault') return;
    if (reply.kind === 'step') {
      if (reply.events !== this.events) return;
      this.studies.set(reply.step, reply.study);
      this.tell();
    } else if (reply.kind === 'cook') {
      this.told.cooked(reply.found);
    } else if (reply.spread) {
      this.told.spread(reply.spread);
      if (this.base) this.study(this.base.design);
    } else if (this.base) {
      const { round, cases } = reply;
      this.lane.ask('spread', { round, kind: 'spread', base: this.base, cases });
    }
  }

  private tell(): void {
    const base = this.studies.get(BASE);
    if (!base) return;
    const done = this.steps.flatMap(({ id, label, instead }) => {
      const study = this.studies.get(id);
      return study ? [{ id, label, instead, study }] : [];
    });
    if (done.length > 0) this.told.steps(this.round, base, done);
    if (this.next && done.length === this.steps.length) this.deepenSteps(this.next);
  }

  /** Is a line of this round? */
  isNow(round: number): boolean {
    return round === this.round;
  }
}
