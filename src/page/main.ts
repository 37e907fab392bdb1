/** The page's own program: one workbench, the views of it, and the workers that solve. */
import { formatFault } from '../design/faults.js';
import { starterDesign } from '../design/starter.js';
import { plainText } from '../charts/plainText.js';
import { format } from '../units.js';
import { BuyerSheet } from './buyerSheet.js';
import { CHARTS, ChartsView } from './chartsView.js';
import { ControlsView } from './controlsView.js';
import { element, part, setText } from './dom.js';
import { showDrawing, titleBlock } from './drawingView.js';
import { chooseFile, saveFile } from './files.js';
import { mayAdd, NumbersView } from './numbersView.js';
import type { SolveReply } from './protocol.js';
import { Solver } from './solver.js';
import { showVerdict, shortVerdict } from './verdictView.js';
import { Workbench, type Option } from './workbench.js';

/** The screen reader is told when nothing has changed for so long [ms]. */
const CALM = 1200;

function start(): void {
  const given: unknown = JSON.parse(part('design').textContent ?? 'null');
  const bench = new Workbench(typeof given === 'string' ? given : starterDesign());
  new Page(bench, document.documentElement.dataset.worker ?? '').open();
}

class Page {
  private readonly solver: Solver;
  private readonly controls: ControlsView;
  private readonly numbers: NumbersView;
  private readonly charts: ChartsView;
  private readonly sheet: BuyerSheet;
  private calm = 0;

  constructor(
    private readonly bench: Workbench,
    worker: string,
  ) {
    this.solver = new Solver(worker, {
      steady: (reply) => this.take(reply, false),
      full: (reply) => this.take(reply, true),
    });
    this.controls = new ControlsView(part('fields'), (control, value) => {
      if (this.bench.edit(control, value)) this.changed();
      else this.controls.update(this.bench.current);
      this.announce();
    });
    this.numbers = new NumbersView(part<HTMLTableElement>('number-table'), {
      choose: (option) => this.choose(option),
      rename: (option, label) => {
        option.label = label;
        this.charts.update(this.bench);
      },
      remove: (option) => {
        this.solver.forget(option.id);
        this.bench.remove(option);
        this.showAll();
      },
    });
    this.charts = new ChartsView(part('chart'), part('chart-caption'), part<HTMLTableElement>('chart-table'));
    this.sheet = new BuyerSheet(part('buyer'));
  }

  open(): void {
    this.wire();
    this.showAll();
    this.solve();
  }

  private wire(): void {
    const choices = CHARTS.map(({ id, label }) => {
      const button = element(
        'button',
        { type: 'button', 'aria-pressed': id === this.charts.chosen, 'data-chart': id },
        label,
      );
      button.addEventListener('click', () => {
        this.charts.chosen = id;
        for (const each of choices) each.setAttribute('aria-pressed', String(each === button));
        this.charts.update(this.bench);
      });
      return button;
    });
    part('chart-choice').append(...choices);
    part('chart-details').addEventListener('toggle', () => this.charts.tabulate(this.bench));
    part('add').addEventListener('click', () => {
      const option = this.bench.add();
      this.showAll();
      if (option)
        setText(part('status'), `${plainText(option.label, 40)} starts as a copy; the controls now change it.`);
    });
    chooseFile(part<HTMLInputElement>('open'), (text, name) => this.load(text, name));
    part('save').addEventListener('click', () => saveFile(this.bench.current));
    part('print').addEventListener('click', () => {
      this.sheet.update(this.bench);
      window.print();
    });
    window.addEventListener('beforeprint', () => this.sheet.update(this.bench));
    let resized = 0;
    let width = window.innerWidth;
    window.addEventListener('resize', () => {
      if (window.innerWidth === width) return;
      width = window.innerWidth;
      cancelAnimationFrame(resized);
      resized = requestAnimationFrame(() => this.showPictures());
    });
    void document.fonts.ready.then(() => this.showPictures());
  }

  private load(text: string, name: string): void {
    const faults = this.bench.load(text, name);
    const box = part('messages');
    box.hidden = faults === null;
    if (faults) {
      const close = element('button', { type: 'button' }, 'Close');
      close.addEventListener('click', () => (box.hidden = true));
      box.replaceChildren(
        element('h2', {}, `${plainText(name, 60)} was not opened; what was there stays`),
        element('ul', {}, ...faults.slice(0, 12).map((fault) => element('li', {}, formatFault(fault)))),
        close,
      );
      return;
    }
    this.changed();
    setText(part('status'), `${plainText(name, 60)} is open.`);
  }

  private choose(option: Option): void {
    this.bench.current = option;
    this.showAll();
  }

  /** The design has changed: drawing and controls at once, numbers when they come. */
  private changed(): void {
    const { current } = this.bench;
    this.controls.update(current);
    this.title();
    this.draw();
    this.solve();
  }

  private solve(): void {
    const { current } = this.bench;
    current.awaited = this.solver.solve(current.id, current.design);
    part('verdict').classList.add('waiting');
  }

  private take(reply: SolveReply, full: boolean): void {
    const option = this.bench.options.find(({ id }) => id === reply.option);
    if (!option) return;
    document.documentElement.dataset[full ? 'fullTook' : 'steadyTook'] = reply.took.toFixed(1);
    option.broken = reply.fault;
    if (!reply.result) {
      if (option === this.bench.current) showVerdict(option);
      return;
    }
    const result = { ...reply.result, warnings: [...option.readWarnings, ...reply.result.warnings] };
    option.result = result;
    if (full) option.full = result;
    if (option !== this.bench.current) return this.numbers.update(this.bench);
    const started = performance.now();
    this.draw();
    this.readout();
    if (full) {
      if (reply.id === option.awaited) part('verdict').classList.remove('waiting');
      this.numbers.update(this.bench);
      showVerdict(option);
      this.charts.update(this.bench);
      document.documentElement.dataset.answered = String(reply.id);
    } else {
      this.numbers.update(this.bench);
    }
    document.documentElement.dataset[full ? 'fullShown' : 'steadyShown'] = (performance.now() - started).toFixed(1);
  }

  private showAll(): void {
    this.controls.update(this.bench.current);
    this.numbers.update(this.bench);
    part<HTMLButtonElement>('add').disabled = !mayAdd(this.bench);
    this.title();
    this.readout();
    this.showPictures();
    if (this.bench.current.full) showVerdict(this.bench.current);
  }

  private showPictures(): void {
    this.draw();
    this.charts.update(this.bench);
  }

  private draw(): void {
    const { design, result } = this.bench.current;
    showDrawing(part('drawing'), design, result);
    part('title-block').replaceChildren(...titleBlock(design, result).map((text) => element('span', {}, text)));
  }

  private title(): void {
    const { name, shop, job } = this.bench.current.design;
    setText(part('title'), plainText(name, 80) || 'A pit without a name');
    setText(
      part('job'),
      [shop, job]
        .map((text) => plainText(text, 60))
        .filter(Boolean)
        .join(', '),
    );
  }

  /** The few numbers that stay in sight on a small screen. */
  private readout(): void {
    const { full, result } = this.bench.current;
    const { warmUp } = full ?? {};
    const state = result?.steady;
    const rows: [string, string][] = [
      [
        `to ${format('temperature', this.bench.current.design.fire.target)}`,
        warmUp?.gauge_s == null ? '–' : format('time', warmUp.gauge_s),
      ],
      ['soaked', warmUp?.soaked_s == null ? '–' : format('time', warmUp.soaked_s)],
      ['wood to hold', format('massFlow', state?.wood_kg_per_s ?? null)],
    ];
    part('readout').replaceChildren(
      ...rows.map(([term, value]) => element('div', {}, element('dt', {}, term), element('dd', {}, value))),
    );
  }

  /** Tells the verdict once the hand rests. */
  private announce(): void {
    window.clearTimeout(this.calm);
    this.calm = window.setTimeout(() => {
      const option = this.bench.current;
      const refused = [...option.refused.values()].map(({ control, message }) => `${control.label}: ${message}`);
      setText(part('status'), [...refused, ...(option.full ? [shortVerdict(option.full)] : [])].join('. '));
    }, CALM);
  }
}

start();
