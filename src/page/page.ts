import { plainText } from '../words/plainText.js';
import { AnswerView } from './answerView.js';
import { Beside } from './beside.js';
import { ChartsView } from './chartsView.js';
import { controlsFor, type Control, type QuantityControl } from './controls.js';
import { ControlsView } from './controlsView.js';
import { part } from './dom.js';
import { DrawingView } from './drawingView.js';
import { Filing } from './filing.js';
import { Keeping } from './keeping.js';
import type { Keeper } from './kept.js';
import { Lane, type Source } from './lane.js';
import { closingMenu } from './menu.js';
import { announce, showLeftOut } from './notices.js';
import { NumbersView } from './numbersView.js';
import { Printing } from './printing.js';
import type { PictureReply, PictureRequest } from './protocol.js';
import { Solver, type Answer } from './solver.js';
import { noteTime } from './timing.js';
import { Undo } from './undo.js';
import { announcement, showTitle, showVerdict } from './verdictView.js';
import { WorkingView } from './workingView.js';
import { systemOf } from '../units/choice.js';
import { UnitMenu } from './unitChoice.js';
import { isSolved, type Option } from './option.js';
import { MOST_OPTIONS, type Kept, type Workbench } from './workbench.js';

/** A screen reader is told, and the sheet made ready, when nothing has changed for so long [ms]. */
const CALM = 1200;

/** The control of a field that is a number; undefined: the design has none. */
function controlOf({ design, text }: Option, field: string): QuantityControl | undefined {
  for (const { controls } of controlsFor(design, text)) {
    const found = controls.find(({ id }) => id === field);
    if (found?.type === 'quantity') return found;
  }
  return undefined;
}

/** Holds the views to the workbench: what changes is read at once, drawn at once, and solved in the workers. */
export class Page {
  private readonly solver: Solver;
  private readonly controls: ControlsView;
  private readonly numbers: NumbersView;
  private readonly charts: ChartsView;
  private readonly drawing: DrawingView;
  private readonly answer = new AnswerView(part('readout'));
  private readonly beside: Beside;
  private readonly printing: Printing;
  private readonly keeping: Keeping;
  private readonly undo: Undo;
  private readonly working: WorkingView;
  private calm = 0;

  constructor(
    private readonly bench: Workbench,
    { workers, shell, keeper }: { workers: Record<'solver' | 'pictures', Source>; shell: HTMLElement; keeper: Keeper },
  ) {
    const pictures = new Lane<PictureRequest, PictureReply>(
      workers.pictures,
      (reply) => this.showPicture(reply),
      (_, fault) => this.showPicture({ kind: 'fault', fault, took: 0 }),
      // what a step of plate changes is a sentence: it does not wait for curves
      'steps',
    );
    const ask = (request: PictureRequest) => pictures.ask(request.kind, request);
    this.solver = new Solver(bench, workers.solver, (answer) => this.answered(answer));
    this.charts = new ChartsView(bench, ask, () => this.beside.vents());
    const edit = (control: Control, value: string, rests: boolean) => this.edit(control, value, rests);
    this.drawing = new DrawingView(bench, {
      edit,
      open: (block) => this.controls.open(block),
      control: (field) => controlOf(bench.current, field),
    });
    this.printing = new Printing(bench, ask);
    this.beside = new Beside(bench, workers.solver, {
      ask,
      more: () => this.showMore(),
      added: () => this.renew(),
    });
    this.keeping = new Keeping(bench, keeper, () => this.renew());
    this.undo = new Undo(bench, () => this.renew());
    this.working = new WorkingView(bench, () => this.showAll());
    new Filing(bench, shell, { opened: () => this.renew(), saved: () => this.keeping.saved() });
    this.controls = new ControlsView(part('fields'), edit, () => systemOf(bench.units));
    this.numbers = new NumbersView(part<HTMLTableElement>('number-table'), {
      choose: (option) => {
        bench.current = option;
        this.showAll();
      },
      rename: (option, label) => {
        bench.rename(option, label);
        showVerdict(bench.current, bench);
        this.showBench();
        this.charts.update();
        this.settleSoon();
      },
      remove: (option) => {
        this.solver.forget(option.id);
        bench.remove(option);
        this.showAll();
        announce(`${plainText(option.label, 40)} is removed. Undo brings it back.`);
      },
      holdAgainst: (option) => {
        bench.holdAgainst(option);
        this.showAll();
      },
    });
    part('add').addEventListener('click', () => {
      const option = bench.add();
      this.showAll();
      if (option) announce(`${option.label} starts as a copy; the controls now change it.`);
    });
    const units = new UnitMenu((choice) => {
      bench.units = choice;
      this.showAll();
    });
    bench.units = units.recall();
    closingMenu(part<HTMLDetailsElement>('more'));
    let width = window.innerWidth;
    window.addEventListener('resize', () => {
      // a phone's address bar comes and goes without a change of width
      if (window.innerWidth === width) return;
      width = window.innerWidth;
      this.drawing.drawSoon();
      this.charts.update();
    });
  }

  /** @param link what the address carried, if it did */
  open(link: { found: Kept | null } | null): void {
    this.keeping.open(link);
    this.renew();
    showLeftOut(this.bench);
  }

  private edit(control: Control, value: string, rests: boolean): void {
    const { bench } = this;
    const start = performance.now();
    if (bench.edit(control, value)) this.changed();
    else this.controls.update(bench.current);
    if (rests) bench.rest();
    this.settleSoon();
    noteTime('edit', performance.now() - start);
  }

  /** The design has changed: controls and drawing at once, numbers when they come. */
  private changed(): void {
    const { current } = this.bench;
    this.controls.update(current);
    showTitle(current.design);
    this.numbers.rename(this.bench);
    this.showBench();
    this.drawing.drawSoon();
    this.solver.solve(current);
    this.wait(true);
    this.beside.wait();
  }

  /** Other designs have taken the place of those that were here. */
  private renew(): void {
    this.showAll();
    this.solver.solveAll();
    this.wait(!isSolved(this.bench.current));
  }

  private showAll(): void {
    const { current, options } = this.bench;
    this.controls.update(current, true);
    this.numbers.update(this.bench);
    document.querySelector('main')?.classList.toggle('several', options.length > 1);
    part<HTMLButtonElement>('add').disabled = options.length >= MOST_OPTIONS;
    this.showBench();
    showTitle(current.design);
    this.answer.show(current, systemOf(this.bench.units));
    this.printing.clear();
    showVerdict(current, this.bench);
    this.drawing.drawSoon();
    this.charts.update();
    this.beside.wait();
    if (isSolved(current)) this.beside.begin();
    this.wait(!isSolved(current) && current.broken === null);
    this.settleSoon();
  }

  /** Which option is worked on, what can be taken back, and how many more there may be. */
  private showBench(): void {
    this.undo.show();
    this.working.show();
    this.beside.allow();
    this.keeping.keepSoon();
  }

  /** What came after the first numbers. */
  private showMore(): void {
    const { current } = this.bench;
    this.answer.show(current, systemOf(this.bench.units));
    showVerdict(current, this.bench);
    this.charts.update();
    this.printing.makeReady();
  }

  private wait(waits: boolean): void {
    if (waits) this.printing.clear();
    for (const id of ['verdict', 'answer']) part(id).classList.toggle('waiting', waits);
  }

  private answered({ option, full, newest }: Answer): void {
    const { current } = this.bench;
    this.numbers.update(this.bench);
    if (option === current) {
      this.drawing.drawSoon();
      this.answer.show(option, systemOf(this.bench.units));
      if (full) this.charts.update();
      if (newest) this.beside.begin();
      if (full && newest) {
        if (option.full && isSolved(option)) this.beside.answer(option.full);
        this.wait(false);
        this.settleSoon();
      }
    }
    if (!full) return;
    this.printing.solved();
    // what another option falls short of is told beside the current one
    showVerdict(current, this.bench);
  }

  private showPicture(reply: PictureReply): void {
    const start = performance.now();
    switch (reply.kind) {
      case 'chart':
        this.charts.show(reply);
        noteTime('chart', reply.took);
        return noteTime('chart-shown', performance.now() - start);
      case 'sheet':
        return this.printing.show(reply.sheet);
      case 'steps':
        return this.beside.tell(reply);
      case 'fault':
        return this.charts.fail(reply.fault);
    }
  }

  /** Once the hand rests: tells the verdict to a listener, makes the sheet ready, and works out what takes longer. */
  private settleSoon(): void {
    window.clearTimeout(this.calm);
    this.calm = window.setTimeout(() => {
      const { current } = this.bench;
      // a drag that goes on is one change
      if (!this.drawing.grips.holding) this.bench.rest();
      announce(announcement(current, this.bench));
      this.printing.makeReady();
      this.beside.deepen();
      if (this.charts.chosen === 'vents') this.beside.vents();
    }, CALM);
  }
}
