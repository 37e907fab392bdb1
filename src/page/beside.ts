import type { EstimateResult } from '../study/estimate/result.js';
import { Asides } from './asides.js';
import type { Source } from './lane.js';
import { announce } from './notices.js';
import type { PictureRequest, Pictured } from './protocol.js';
import { noteTime } from './timing.js';
import { allPlateSteps, otherSteps, partPlateSteps, type Step } from './trySteps.js';
import { TryView } from './tryView.js';
import { systemOf } from '../units/choice.js';
import { isSolved, spreadOf } from './option.js';
import { MOST_OPTIONS, type Workbench } from './workbench.js';

interface Told {
  /** how far the answer spreads, or what a cook makes of it, is known */
  more(): void;
  /** a step has become an option */
  added(): void;
  ask(request: PictureRequest): void;
}

/** What stands beside the answer: how far it spreads, and what steps of plate change. */
export class Beside {
  private readonly asides: Asides;
  private readonly view: TryView;
  private timer = 0;
  private begun = 0;
  /** the design's steps have not been begun */
  private due = true;
  /** there has been an answer: until then it gets the machine for itself */
  private started = false;
  /** made when the hand rests */
  private parts: Step[] = [];
  private others: Step[] = [];

  constructor(
    private readonly bench: Workbench,
    source: Source,
    private readonly told: Told,
  ) {
    this.asides = new Asides(source, {
      steps: (round, base, steps) => told.ask({ kind: 'steps', round, base, steps, system: systemOf(bench.units) }),
      spread: (found) => {
        bench.current.spread = { of: bench.current.design, found };
        told.more();
      },
      cooked: (found) => {
        const { current } = bench;
        const known = current.cook?.of === current.design ? current.cook.found.result : {};
        // what was asked of the vents stays known
        current.cook = { of: current.design, found: { ...found, result: { ...known, ...found.result } } };
        told.more();
      },
    });
    this.view = new TryView((step) => this.add(step));
  }

  /** Another design: its steps wait until its own first numbers have had the machine for themselves. */
  wait(): void {
    this.view.wait();
    window.clearTimeout(this.timer);
    this.due = true;
  }

  /** Its steps, as soon as it is drawn. */
  begin(): void {
    if (!this.started || !this.due) return;
    this.due = false;
    this.timer = window.setTimeout(() => {
      const start = performance.now();
      const { current } = this.bench;
      const all = allPlateSteps(current);
      this.asides.begin(all);
      if (this.others.length === 0) this.readMore();
      this.show(all);
      if (current.full && isSolved(current)) this.asides.answer(current.full);
      this.begun = performance.now();
      noteTime('steps-read', this.begun - start);
    });
  }

  /** The hand rests: what takes longer. */
  deepen(): void {
    if (!this.started) return;
    const all = allPlateSteps(this.bench.current);
    this.readMore();
    this.show(all);
    const { current } = this.bench;
    const { design, cook } = current;
    const known = { cook: cook?.of === design, spread: spreadOf(current) !== undefined };
    this.asides.deepen([...all, ...this.parts], design, known);
  }

  /** Has the vents followed from shut to open, unless that is known. */
  vents(): void {
    const { design, cook } = this.bench.current;
    if (cook?.of !== design || !cook.found.result.ventCurve) this.asides.cook(design, true);
  }

  answer(result: EstimateResult): void {
    if (this.started) return this.asides.answer(result);
    this.started = true;
    this.begin();
  }

  tell({ round, lines }: Pictured<'steps'>): void {
    if (!this.asides.isNow(round)) return;
    this.view.tell(lines);
    noteTime('steps', performance.now() - this.begun);
  }

  /** Is there room for one more option? */
  allow(): void {
    this.view.allow(this.bench.options.length < MOST_OPTIONS);
  }

  private show(all: readonly Step[]): void {
    this.view.show(all, this.parts, this.others);
    this.allow();
  }

  private readMore(): void {
    this.parts = partPlateSteps(this.bench.current);
    this.others = otherSteps(this.bench.current);
  }

  private add({ id, label }: Step): void {
    const { current } = this.bench;
    // those in sight may be of the design before
    const steps = [...allPlateSteps(current), ...partPlateSteps(current), ...otherSteps(current)];
    const now = steps.find((each) => each.id === id);
    if (!now || !this.bench.addText(now.text)) return;
    this.told.added();
    announce(`${label} is an option of its own; the controls now change it.`);
  }
}
