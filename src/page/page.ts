import { plainText } from '../words/plainText.js';
import { showBuyerSheet } from './buyerSheetView.js';
import { CHART_LABELS } from './chartLabels.js';
import { ChartsView } from './chartsView.js';
import { ControlsView } from './controlsView.js';
import { element, part, setText } from './dom.js';
import { drawingTitle, showDrawing, titleBlock } from './drawingView.js';
import { chooseFile, saveFile, showFaults } from './files.js';
import { Lane } from './lane.js';
import { NumbersView } from './numbersView.js';
import type { ChartId, PicturedOption, PictureReply, PictureRequest, SolveReply } from './protocol.js';
import { Solver } from './solver.js';
import { noteTime } from './timing.js';
import { announcement, showReadout, showTitle, showVerdict } from './verdictView.js';
import { MOST_OPTIONS, type Option, type Workbench } from './workbench.js';

/** A screen reader is told, and the sheet made ready, when nothing has changed for so long [ms]. */
const CALM = 1200;

/** Holds the views to the workbench: what changes is read at once, drawn at once, and solved in the workers. */
export class Page {
  private readonly solver: Solver;
  private readonly pictures: Lane<PictureRequest, PictureReply>;
  private readonly controls: ControlsView;
  private readonly numbers: NumbersView;
  private readonly charts: ChartsView;
  private asked = 0;
  private calm = 0;
  private frame = 0;
  /** waits for the sheet that was asked for by the print button */
  private printing = false;

  constructor(
    private readonly bench: Workbench,
    workers: { solver: string; pictures: string },
  ) {
    this.solver = new Solver(workers.solver, {
      steady: (reply) => this.take(reply, false),
      full: (reply) => this.take(reply, true),
    });
    this.pictures = new Lane(
      workers.pictures,
      (reply) => this.showPicture(reply),
      ({ id }, fault) => this.showPicture({ id, kind: 'fault', fault, took: 0 }),
    );
    this.controls = new ControlsView(part('fields'), (control, value) => {
      const start = performance.now();
      if (this.bench.edit(control, value)) this.changed();
      else this.controls.update(this.bench.current);
      this.settleSoon();
      noteTime('edit', performance.now() - start);
    });
    this.numbers = new NumbersView(part<HTMLTableElement>('number-table'), {
      choose: (option) => {
        this.bench.current = option;
        this.showAll();
      },
      rename: (option, label) => {
        option.label = label;
        showVerdict(this.bench.current, this.bench.options);
        this.askChart();
        this.settleSoon();
      },
      remove: (option) => {
        this.solver.forget(option.id);
        this.bench.remove(option);
        this.showAll();
      },
    });
    this.charts = new ChartsView(part('chart'), part('chart-caption'), part<HTMLTableElement>('chart-table'));
  }

  open(): void {
    this.wire();
    this.showAll();
    this.solveAll();
    this.tellLeftOut();
  }

  private wire(): void {
    const choices = (Object.keys(CHART_LABELS) as ChartId[]).map((id) => {
      const pressed = id === this.charts.chosen;
      const button = element('button', { type: 'button', 'aria-pressed': pressed, 'data-chart': id }, CHART_LABELS[id]);
      button.addEventListener('click', () => {
        this.charts.chosen = id;
        for (const each of choices) each.setAttribute('aria-pressed', String(each === button));
        this.askChart();
      });
      return button;
    });
    part('chart-choice').append(...choices);
    part('chart-details').addEventListener('toggle', () => this.tabulate());
    part('add').addEventListener('click', () => {
      const option = this.bench.add();
      this.showAll();
      if (option) setText(part('status'), `${option.label} starts as a copy; the controls now change it.`);
    });
    chooseFile(part<HTMLInputElement>('open'), (text, name) => {
      const faults = this.bench.load(text, name);
      showFaults(part('messages'), name, faults);
      if (faults) return;
      this.showAll();
      this.solveAll();
      setText(part('status'), `${plainText(name, 60)} is open.`);
      this.tellLeftOut();
    });
    part('save').addEventListener('click', () => saveFile(this.bench.current));
    part('print').addEventListener('click', () => {
      this.printing = true;
      this.askSheet();
    });
    let width = window.innerWidth;
    window.addEventListener('resize', () => {
      // a phone's address bar comes and goes without a change of width
      if (window.innerWidth === width) return;
      width = window.innerWidth;
      this.drawSoon();
      this.askChart();
    });
  }

  /** The design has changed: controls and drawing at once, numbers when they come. */
  private changed(): void {
    const { current } = this.bench;
    this.controls.update(current);
    showTitle(current.design);
    this.drawSoon();
    this.solve();
  }

  private solve(option = this.bench.current): void {
    option.awaited = this.solver.solve(option.id, option.design);
    if (option === this.bench.current) part('verdict').classList.add('waiting');
  }

  /** Every option that has no numbers yet, the current one first. */
  private solveAll(): void {
    const { current, options } = this.bench;
    this.solve();
    for (const option of options) if (option !== current && option.full === null) this.solve(option);
  }

  /** Options of a file that are not shown are missed in silence otherwise. */
  private tellLeftOut(): void {
    const { leftOut } = this.bench;
    const told = part('left-out');
    told.hidden = leftOut === 0;
    if (leftOut === 0) return;
    const what = leftOut === 1 ? 'One option' : `${leftOut} options`;
    setText(told, `${what} of the file ${leftOut === 1 ? 'is' : 'are'} not shown: there is room for ${MOST_OPTIONS}.`);
  }

  private take(reply: SolveReply, full: boolean): void {
    const start = performance.now();
    const option = this.bench.options.find(({ id }) => id === reply.option);
    if (!option) return;
    option.broken = reply.fault;
    const result = reply.result && {
      ...reply.result,
      warnings: [...option.readWarnings, ...reply.result.warnings],
    };
    if (result) option.result = result;
    if (result && full) option.full = result;
    this.numbers.update(this.bench);
    if (option === this.bench.current) {
      if (result) this.drawSoon();
      showReadout(option);
      if (full) {
        this.askChart();
        this.tabulate();
        if (reply.id === option.awaited) {
          part('verdict').classList.remove('waiting');
          this.settleSoon();
        }
      }
    }
    // what another option falls short of is told beside the current one
    if (full) showVerdict(this.bench.current, this.bench.options);
    noteTime(full ? 'full' : 'steady', reply.took);
    noteTime(full ? 'full-shown' : 'steady-shown', performance.now() - start);
    if (!full) return;
    // since the file was opened
    if (document.documentElement.dataset.answered === undefined) noteTime('first', performance.now());
    document.documentElement.dataset.answered = String(reply.id);
  }

  private showAll(): void {
    const { current, options } = this.bench;
    this.controls.update(current);
    this.numbers.update(this.bench);
    document.querySelector('main')?.classList.toggle('several', options.length > 1);
    part<HTMLButtonElement>('add').disabled = options.length >= MOST_OPTIONS;
    showTitle(current.design);
    showReadout(current);
    showVerdict(current, options);
    this.drawSoon();
    this.askChart();
    this.tabulate();
    this.settleSoon();
  }

  /** Draws with the next frame, once for all that changes before it. */
  private drawSoon(): void {
    this.frame ||= requestAnimationFrame(() => {
      const start = performance.now();
      this.frame = 0;
      const { design, result } = this.bench.current;
      setText(part('drawing-title'), drawingTitle(design, result));
      showDrawing(part('drawing'), design, result);
      part('title-block').replaceChildren(...titleBlock(design, result).map((text) => element('span', {}, text)));
      noteTime('draw', performance.now() - start);
    });
  }

  private pictured(): { options: PicturedOption[]; current: number } {
    const solved = this.bench.options.filter(({ full }) => full);
    return {
      options: solved.map(({ label, full }) => ({ label, result: full! })),
      current: solved.indexOf(this.bench.current),
    };
  }

  private tabulate(): void {
    const { options, current } = this.pictured();
    this.charts.tabulate(options, options[current]);
  }

  private askChart(): void {
    const { options, current } = this.pictured();
    if (current < 0) return;
    const { chosen: chart, width } = this.charts;
    const needed = chart === 'options' ? { options, current } : { options: [options[current]], current: 0 };
    this.pictures.ask('chart', { id: ++this.asked, kind: 'chart', chart, width, ...needed });
  }

  private askSheet(): void {
    const { options } = this.pictured();
    if (options.length === 0) return;
    this.pictures.ask('sheet', {
      id: ++this.asked,
      kind: 'sheet',
      options,
      defaults: this.bench.baseline.defaults,
    });
  }

  private showPicture(reply: PictureReply): void {
    const start = performance.now();
    if (reply.kind === 'chart') {
      this.charts.show(reply);
      noteTime('chart', reply.took);
      noteTime('chart-shown', performance.now() - start);
    } else if (reply.kind === 'sheet') {
      showBuyerSheet(part('buyer'), reply.sheet, this.bench.baseline.design);
      if (this.printing) window.print();
      this.printing = false;
    } else {
      setText(part('chart-caption'), `Our fault, not yours: no picture (${plainText(reply.fault, 200)}).`);
    }
  }

  /** Once the hand rests: tells the verdict to a listener, and makes the sheet ready for a print from the browser's menu. */
  private settleSoon(): void {
    window.clearTimeout(this.calm);
    this.calm = window.setTimeout(() => {
      setText(part('status'), announcement(this.bench.current as Option, this.bench.options));
      this.askSheet();
    }, CALM);
  }
}
