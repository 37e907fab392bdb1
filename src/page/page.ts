import { listed } from '../units/listed.js';
import { plainText } from '../words/plainText.js';
import { AnswerView } from './answerView.js';
import { Asides } from './asides.js';
import { showBuyerSheet } from './buyerSheetView.js';
import { chartPng, chartSvg } from './chartFiles.js';
import { CHART_LABELS } from './chartLabels.js';
import { ChartsView } from './chartsView.js';
import { ControlsView } from './controlsView.js';
import { designFile } from './designFile.js';
import { element, part, setText } from './dom.js';
import { drawingTitle, showDrawing, titleBlock } from './drawingView.js';
import { chooseFile, saveFile, showFaults } from './files.js';
import { carriesDesigns, designsIn, linkOf, type Keeper } from './kept.js';
import { Lane, type Source } from './lane.js';
import { NumbersView } from './numbersView.js';
import type { ChartId, PicturedOption, PictureReply, PictureRequest, Range, SolveReply } from './protocol.js';
import { pageWith } from './savePage.js';
import { Solver } from './solver.js';
import { noteTime } from './timing.js';
import { allPlateSteps, otherSteps, partPlateSteps, type Step } from './trySteps.js';
import { TryView } from './tryView.js';
import { announcement, showTitle, showVerdict } from './verdictView.js';
import { MOST_OPTIONS, type Kept, type Option, type Workbench } from './workbench.js';

/** A screen reader is told, and the sheet made ready, when nothing has changed for so long [ms]. */
const CALM = 1200;
/** All is kept when nothing has changed for so long [ms]. */
const KEEP_AFTER = 300;

/** Holds the views to the workbench: what changes is read at once, drawn at once, and solved in the workers. */
export class Page {
  private readonly solver: Solver;
  private readonly pictures: Lane<PictureRequest, PictureReply>;
  private readonly controls: ControlsView;
  private readonly numbers: NumbersView;
  private readonly charts: ChartsView;
  private readonly answer: AnswerView;
  private readonly asides: Asides;
  private readonly tries: TryView;
  private readonly shell: HTMLElement;
  private readonly keeper: Keeper;
  /** what the page came with */
  private readonly given: Kept;
  /** of the current design; null: not there yet */
  private ranges: Range[] | null = null;
  private asked = 0;
  private calm = 0;
  private frame = 0;
  private keeping = 0;
  /** the browser keeps nothing, and there is something to lose */
  private unkept = false;
  private lastKept = '';
  private beside = 0;
  private begun = 0;
  /** made when the hand rests */
  private partSteps: Step[] = [];
  private otherSteps: Step[] = [];
  /** waits for the sheet that was asked for by the print button */
  private printing = false;

  constructor(
    private readonly bench: Workbench,
    { workers, shell, keeper }: { workers: Record<'solver' | 'pictures', Source>; shell: HTMLElement; keeper: Keeper },
  ) {
    this.shell = shell;
    this.keeper = keeper;
    this.given = bench.keep();
    this.solver = new Solver(workers.solver, {
      steady: (reply) => this.take(reply, false),
      full: (reply) => this.take(reply, true),
    });
    this.pictures = new Lane(
      workers.pictures,
      (reply) => this.showPicture(reply),
      ({ id }, fault) => this.showPicture({ id, kind: 'fault', fault, took: 0 }),
    );
    this.answer = new AnswerView(part('readout'));
    this.asides = new Asides(workers.solver, {
      steps: (round, base, steps) =>
        this.pictures.ask('steps', { id: ++this.asked, kind: 'steps', round, base, steps }),
      ranges: (ranges) => {
        this.ranges = ranges;
        this.answer.show(this.bench.current, ranges);
      },
    });
    this.tries = new TryView((step) => this.tryStep(step));
    this.controls = new ControlsView(part('fields'), (control, value, rests) => {
      const start = performance.now();
      if (this.bench.edit(control, value)) this.changed();
      else this.controls.update(this.bench.current);
      if (rests) this.bench.rest();
      this.settleSoon();
      noteTime('edit', performance.now() - start);
    });
    this.numbers = new NumbersView(part<HTMLTableElement>('number-table'), {
      choose: (option) => {
        this.bench.current = option;
        this.showAll();
      },
      rename: (option, label) => {
        this.bench.rename(option, label);
        showVerdict(this.bench.current, this.bench.options);
        this.showSteps();
        this.askChart();
        this.settleSoon();
      },
      remove: (option) => {
        this.solver.forget(option.id);
        this.bench.remove(option);
        this.showAll();
        setText(part('status'), `${plainText(option.label, 40)} is removed. Undo brings it back.`);
      },
      holdAgainst: (option) => {
        this.bench.holdAgainst(option);
        this.showAll();
      },
    });
    this.charts = new ChartsView(part('chart'), part('chart-caption'), part<HTMLTableElement>('chart-table'));
  }

  /** @param link what the address carried, if it did */
  open(link: { found: Kept | null } | null): void {
    this.wire();
    const kept = this.keeper.find();
    if (kept && this.bench.take(kept) === null) {
      this.bench.forgetSteps();
      if (!link && !sameDesigns(kept, this.given)) {
        this.tell('This is what was here when the page was last open.', { 'Start over': () => this.startOver() });
      }
    } else if (kept) this.tell('What this browser had kept of this page can no longer be read; it was left out.');
    if (link) this.takeLink(link.found);
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
    for (const box of document.querySelectorAll<HTMLDetailsElement>('#more')) {
      document.addEventListener('pointerdown', ({ target }) => {
        if (box.open && !box.contains(target as Node)) box.open = false;
      });
      box.addEventListener('keydown', ({ key }) => {
        if (key !== 'Escape') return;
        box.open = false;
        box.querySelector('summary')?.focus();
      });
      box.addEventListener('click', ({ target }) => {
        if ((target as Element).closest('button')) box.open = false;
      });
    }
    const working = part<HTMLSelectElement>('working');
    working.addEventListener('change', () => {
      this.bench.current = this.bench.options[working.selectedIndex];
      this.showAll();
    });
    part('undo').addEventListener('click', () => this.travel('undo'));
    part('redo').addEventListener('click', () => this.travel('redo'));
    document.addEventListener('keydown', (event) => this.historyKey(event));
    part('link').addEventListener('click', () => void this.showLink());
    part('save-page').addEventListener('click', () => {
      const html = pageWith(this.shell, this.bench.keep());
      saveFile({ text: html, name: this.bench.baseline.design.name, ending: 'html', type: 'text/html' });
    });
    part('start-over').addEventListener('click', () => this.startOver());
    window.addEventListener('hashchange', () => {
      if (!carriesDesigns(location.hash)) return;
      void designsIn(location.hash).then((found) => {
        this.takeLink(found);
        this.showAll();
        this.solveAll();
      });
    });
    window.addEventListener('pagehide', () => this.keepNow());
    window.addEventListener('beforeunload', (event) => {
      if (this.unkept) event.preventDefault();
    });
    for (const kind of ['svg', 'png'] as const) {
      part(`chart-${kind}`).addEventListener('click', () => void this.saveChart(kind));
    }
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
      setText(part('status'), `${plainText(name, 60)} is open. Undo brings back what was here.`);
      this.tellLeftOut();
    });
    chooseFile(part<HTMLInputElement>('open-beside'), (text, name) => {
      const faults = this.bench.loadBeside(text, name);
      showFaults(part('messages'), name, faults);
      if (faults) return;
      this.showAll();
      this.solveAll();
    });
    part('save').addEventListener('click', () => this.save());
    part('print').addEventListener('click', () => {
      this.printing = true;
      this.printSoon();
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
    this.numbers.rename(this.bench);
    this.showSteps();
    this.drawSoon();
    this.solve();
    this.besideSoon();
  }

  /** One step back or forth. */
  private travel(way: 'undo' | 'redo'): void {
    if (!this.bench[way]()) return;
    this.showAll(true);
    this.solveAll();
    setText(part('status'), way === 'undo' ? 'One change taken back.' : 'One change made again.');
  }

  /** Ctrl-Z and its kin; where someone has begun to type, the browser's own. */
  private historyKey(event: KeyboardEvent): void {
    const { key, target } = event;
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const way = key.toLowerCase() === 'y' || (key.toLowerCase() === 'z' && event.shiftKey) ? 'redo' : 'undo';
    if (key.toLowerCase() !== 'z' && key.toLowerCase() !== 'y') return;
    if (target instanceof HTMLInputElement && target.type === 'text' && this.isTyping(target)) return;
    event.preventDefault();
    this.travel(way);
  }

  private isTyping({ dataset, value }: HTMLInputElement): boolean {
    const { refused } = this.bench.current;
    return dataset.field !== undefined && refused.get(dataset.field)?.value === value;
  }

  /** The steps of plate beside the current design, as soon as it is drawn. */
  private besideSoon(): void {
    this.ranges = null;
    this.tries.wait();
    window.clearTimeout(this.beside);
    this.beside = window.setTimeout(() => {
      const start = performance.now();
      const { current } = this.bench;
      const all = allPlateSteps(current);
      this.asides.begin(all);
      if (this.otherSteps.length === 0) this.moreSteps();
      this.tries.show(all, this.partSteps, this.otherSteps);
      if (current.full && current.solved === current.design) this.asides.answer(current.full);
      this.begun = performance.now();
      noteTime('steps-read', this.begun - start);
    });
  }

  private moreSteps(): void {
    this.partSteps = partPlateSteps(this.bench.current);
    this.otherSteps = otherSteps(this.bench.current);
  }

  private tryStep({ id, label }: Step): void {
    const { current } = this.bench;
    // those in sight may be of the design before
    const steps = [...allPlateSteps(current), ...partPlateSteps(current), ...otherSteps(current)];
    const now = steps.find((each) => each.id === id);
    if (!now || !this.bench.addText(now.text)) return;
    this.showAll();
    this.solveAll();
    setText(part('status'), `${label} is an option of its own; the controls now change it.`);
  }

  private save(): void {
    const { options } = this.bench;
    const { text, same, apart } = designFile(options);
    const name = this.bench.baseline.design.name;
    saveFile({ text, name, ending: 'yaml', type: 'application/yaml' });
    for (const option of apart) {
      const own = option.text.copy();
      own.remove(['options']);
      saveFile({ text: own.text(), name: `${name} ${option.label}`, ending: 'yaml', type: 'application/yaml' });
    }
    this.unkept = false;
    const names = (all: Option[]) => listed(all.map(({ label }) => plainText(label, 40)));
    const told = [
      ...(same.length > 0
        ? [`${names(same)} ${same.length === 1 ? 'is' : 'are'} built like the first, and not in the file.`]
        : []),
      ...(apart.length > 0 ? [`${names(apart)} went into a file of ${apart.length === 1 ? 'its' : 'their'} own.`] : []),
    ];
    if (told.length > 0) this.tell(told.join(' '));
  }

  private async showLink(): Promise<void> {
    const address = location.href.replace(/#.*$/, '') + (await linkOf(this.bench));
    const field = element('input', { type: 'text', readonly: true, id: 'link-text', 'aria-label': 'Link' });
    field.value = address;
    let copied = true;
    try {
      await navigator.clipboard.writeText(address);
    } catch {
      copied = false;
    }
    const how = copied ? 'It is copied.' : 'Copy it from here:';
    this.tell(`The design is in this link itself; nothing is sent anywhere. ${how}`, {}, field);
    field.select();
  }

  private takeLink(found: Kept | null): void {
    // so that a reload keeps what is changed from here on
    history.replaceState(null, '', location.href.replace(/#.*$/, ''));
    const faults = found && this.bench.take(found);
    if (!found || faults) {
      this.tell('The link is cut short or damaged: no design could be read from it. Ask for it again.');
      return;
    }
    this.tell('This design came with the link. Undo brings back what was here before.');
  }

  private startOver(): void {
    this.bench.take(this.given);
    this.showAll(true);
    this.solveAll();
    part('notice').hidden = true;
    setText(part('status'), 'This is the design that the page came with. Undo brings back what was here.');
  }

  /** A word on what has happened, with what can be done about it. */
  private tell(words: string, actions: Record<string, () => void> = {}, field?: HTMLElement): void {
    const box = part('notice');
    const close = () => (box.hidden = true);
    const buttons = Object.entries({ ...actions, Close: close }).map(([label, act]) => {
      const button = element('button', { type: 'button' }, label);
      button.addEventListener('click', act);
      return button;
    });
    box.replaceChildren(
      element('p', {}, words),
      ...(field ? [field] : []),
      element('div', { class: 'tools' }, ...buttons),
    );
    box.hidden = false;
  }

  private keepSoon(): void {
    window.clearTimeout(this.keeping);
    this.keeping = window.setTimeout(() => this.keepNow(), KEEP_AFTER);
  }

  /** Keeps all options in the browser, or says that it doesn't. */
  private keepNow(): void {
    window.clearTimeout(this.keeping);
    const kept = this.bench.keep();
    if (JSON.stringify(kept) === this.lastKept) return;
    this.lastKept = JSON.stringify(kept);
    const allowed = this.keeper.keep(kept);
    part('not-kept').hidden = allowed;
    this.unkept = !allowed && !sameDesigns(kept, this.given);
  }

  private solve(option = this.bench.current): void {
    option.awaited = this.solver.solve(option.id, option.design);
    option.asked = option.design;
    if (option === this.bench.current) this.wait(true);
  }

  private wait(waits: boolean): void {
    // a print from the browser's menu shows the page itself until there is a sheet of this design
    if (waits) part('buyer').replaceChildren();
    for (const id of ['verdict', 'answer']) part(id).classList.toggle('waiting', waits);
  }

  /** Every option that has no numbers yet, the current one first. */
  private solveAll(): void {
    const { current, options } = this.bench;
    for (const option of [current, ...options.filter((each) => each !== current)]) {
      if (option.solved !== option.design) this.solve(option);
    }
    if (current.solved === current.design) this.wait(false);
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
    if (result && full) {
      option.full = result;
      option.solved = reply.id === option.awaited ? option.asked : null;
    }
    this.numbers.update(this.bench);
    if (option === this.bench.current) {
      if (result) this.drawSoon();
      this.answer.show(option, this.ranges);
      if (full && result && reply.id === option.awaited) this.asides.answer(result);
      if (full) {
        this.askChart();
        this.tabulate();
        if (reply.id === option.awaited) {
          this.wait(false);
          this.settleSoon();
        }
      }
    }
    if (full && this.printing) this.printSoon();
    // what another option falls short of is told beside the current one
    if (full) showVerdict(this.bench.current, this.bench.options);
    noteTime(full ? 'full' : 'steady', reply.took);
    noteTime(full ? 'full-shown' : 'steady-shown', performance.now() - start);
    if (!full) return;
    // since the file was opened
    if (document.documentElement.dataset.answered === undefined) noteTime('first', performance.now());
    document.documentElement.dataset.answered = String(reply.id);
  }

  /** @param force also in fields where someone is at work */
  private showAll(force = false): void {
    const { current, options } = this.bench;
    this.controls.update(current, force);
    this.numbers.update(this.bench);
    document.querySelector('main')?.classList.toggle('several', options.length > 1);
    part<HTMLButtonElement>('add').disabled = options.length >= MOST_OPTIONS;
    this.showSteps();
    showTitle(current.design);
    this.ranges = null;
    this.answer.show(current, null);
    part('buyer').replaceChildren();
    showVerdict(current, options);
    this.drawSoon();
    this.askChart();
    this.tabulate();
    this.besideSoon();
    this.settleSoon();
  }

  /** Which option is worked on, what can be taken back, and how many more there may be. */
  private showSteps(): void {
    const { current, options, canUndo, canRedo } = this.bench;
    part<HTMLButtonElement>('undo').disabled = !canUndo;
    part<HTMLButtonElement>('redo').disabled = !canRedo;
    const working = part<HTMLSelectElement>('working');
    const labels = options.map(({ label }) => plainText(label, 60) || 'unnamed');
    if (JSON.stringify(labels) !== JSON.stringify([...working.options].map(({ text }) => text))) {
      working.replaceChildren(...labels.map((label) => element('option', {}, label)));
    }
    working.selectedIndex = options.indexOf(current);
    part('working-on').classList.toggle('alone', options.length === 1);
    this.tries.allow(options.length < MOST_OPTIONS);
    this.keepSoon();
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

  /** The chart in sight as a file, as it is on paper. */
  private async saveChart(kind: 'svg' | 'png'): Promise<void> {
    const { scene, chosen } = this.charts;
    if (!scene) return;
    const name = `${this.bench.current.design.name} ${CHART_LABELS[chosen]}`;
    const text = kind === 'svg' ? chartSvg(scene) : await chartPng(scene);
    saveFile({ text, name, ending: kind, type: kind === 'svg' ? 'image/svg+xml' : 'image/png' });
  }

  private askChart(): void {
    const { options, current } = this.pictured();
    if (current < 0) return;
    const { chosen: chart, width } = this.charts;
    const needed = chart === 'options' ? { options, current } : { options: [options[current]], current: 0 };
    this.pictures.ask('chart', { id: ++this.asked, kind: 'chart', chart, width, ...needed });
  }

  /** Prints once every option shown has its numbers: what is printed is what stands on the screen. */
  private printSoon(): void {
    if (this.bench.options.every(({ solved, design }) => solved === design)) this.askSheet();
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
      // of a design that has changed since
      if (this.bench.options.some(({ solved, design }) => solved !== design)) return;
      showBuyerSheet(part('buyer'), reply.sheet, this.bench.baseline.design);
      if (this.printing) window.print();
      this.printing = false;
    } else if (reply.kind === 'steps') {
      if (!this.asides.isNow(reply.round)) return;
      this.tries.tell(reply.lines);
      noteTime('steps', performance.now() - this.begun);
    } else {
      setText(part('chart-caption'), `Our fault, not yours: no picture (${plainText(reply.fault, 200)}).`);
    }
  }

  /** Once the hand rests: tells the verdict to a listener, makes the sheet ready, and works out what takes longer. */
  private settleSoon(): void {
    window.clearTimeout(this.calm);
    this.calm = window.setTimeout(() => {
      const { current, options } = this.bench;
      this.bench.rest();
      setText(part('status'), announcement(current, options));
      this.askSheet();
      const all = allPlateSteps(current);
      this.moreSteps();
      this.tries.show(all, this.partSteps, this.otherSteps);
      this.tries.allow(options.length < MOST_OPTIONS);
      this.asides.deepen([...all, ...this.partSteps]);
    }, CALM);
  }
}

/** The same designs under the same names? */
function sameDesigns(a: Kept, b: Kept): boolean {
  return JSON.stringify(a.options) === JSON.stringify(b.options);
}
