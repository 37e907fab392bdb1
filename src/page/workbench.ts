/** The designs side by side, each with its last good reading, what is still wrong, and its result. Knows no page. */
import { formatFault, type DesignFault } from '../design/faults.js';
import { readDesign } from '../design/read.js';
import { freeLabel } from '../study/compare/distinctLabels.js';
import type { Control } from './controls.js';
import { changeWords } from './changeWords.js';
import { DesignText } from './designText.js';
import type { PicturedOption } from './protocol.js';
import type { UnitChoice } from '../units/choice.js';
import {
  type Option,
  isSolved,
  type Refusal,
  type Reading,
  read,
  readText,
  tryEdits,
  faultWords,
  toldOf,
} from './option.js';

/** Columns that stay readable beside each other. */
export const MOST_OPTIONS = 5;

/** Changes that can be taken back. */
const MOST_STEPS = 200;

/** All that a person has made, as text: what the browser keeps, a link carries, and a page holds. */
export interface Kept {
  options: { label: string; named: boolean; text: string }[];
  current: number;
}

/** Is it what the page keeps of its options? */
export function isKept(value: unknown): value is Kept {
  const { options, current } = (value ?? {}) as Partial<Kept>;
  return (
    Array.isArray(options) &&
    options.length > 0 &&
    options.every(({ label, text }) => typeof label === 'string' && typeof text === 'string') &&
    typeof current === 'number'
  );
}

/** What one step back leads to. */
interface Step {
  options: Option[];
  current: number;
  leftOut: number;
}

const AS_DRAWN = 'As drawn';

/** The options on the page, the one in hand, and the steps that can be undone. */
export class Workbench {
  /** what numbers are read in */
  units: UnitChoice = 'both';
  /** the first is what the others are held against */
  options: Option[] = [];
  current!: Option;
  /** options of the file that there is no room for */
  leftOut = 0;
  private ids = 0;
  private past: Step[] = [];
  private future: Step[] = [];
  /** what the newest step is of, as long as more of the same counts as one step */
  private going: string | null = null;

  /** @param start a design that reads without faults, or what was kept of several */
  constructor(start: string | Kept) {
    const faults = typeof start === 'string' ? this.load(start, 'page') : this.take(start);
    if (faults) throw new Error(formatFault(faults[0]));
  }

  /** What pictures need of the options that have their numbers. */
  get pictured(): PicturedOption[] {
    return this.options.flatMap((option) => {
      const result = toldOf(option);
      return result ? [{ label: option.label, result }] : [];
    });
  }

  get allSolved(): boolean {
    return this.options.every(isSolved);
  }

  get baseline(): Option {
    return this.options[0];
  }

  /**
   * Changes one field of the current option. What can't be taken is kept beside the last good design and tried again
   * with every later change, since two sizes may have to move together.
   *
   * @returns whether the design changed
   */
  edit(control: Control, value: string): boolean {
    const option = this.current;
    if (!option.refused.has(control.id) && value === option.text.get(control.path)) return false;
    option.refused.delete(control.id);
    const others = [...option.refused.values()];
    const all = tryEdits(option, [...others, { control, value }]);
    const alone = 'faults' in all && others.length > 0 ? tryEdits(option, [{ control, value }]) : all;
    if ('faults' in alone) {
      option.refused.set(control.id, { control, value, message: faultWords(alone.faults, control) });
      return false;
    }
    this.remember(`${option.id} ${control.id}`);
    if (alone === all) option.refused.clear();
    Object.assign(option, read(alone));
    this.nameByChanges();
    return true;
  }

  /** Ends a step: what changes next is taken back by itself. */
  rest(): void {
    this.going = null;
  }

  get canUndo(): boolean {
    return this.past.length > 0;
  }

  get canRedo(): boolean {
    return this.future.length > 0;
  }

  /** Takes the newest change back. @returns whether there was one */
  undo(): boolean {
    return this.travel(this.past, this.future);
  }

  redo(): boolean {
    return this.travel(this.future, this.past);
  }

  /** A copy of the current option, which becomes the current one. Null when there are as many as fit. */
  add(): Option | null {
    return this.addText(this.current.text.copy());
  }

  /**
   * Another option with this text, which becomes the current one. Null when there are as many as fit, or it doesn't
   * read.
   */
  addText(text: DesignText): Option | null {
    const { design, readWarnings, defaults, result, full, solved, cook, spread } = this.current;
    const same = text.text() === this.current.text.text();
    const own = same ? { text, design, warnings: readWarnings, defaults } : readText(text);
    if (this.options.length >= MOST_OPTIONS || 'faults' in own) return null;
    this.remember(null);
    const option = this.optionFrom(own, '', false);
    if (same) Object.assign(option, { result, full, solved, cook, spread });
    this.options.push(option);
    this.current = option;
    this.nameByChanges();
    return option;
  }

  remove(option: Option): void {
    const at = this.options.indexOf(option);
    if (at < 0 || this.options.length === 1) return;
    this.remember(null);
    this.options.splice(at, 1);
    if (this.current === option) this.current = this.options[Math.min(at, this.options.length - 1)];
    this.nameByChanges();
  }

  rename(option: Option, label: string): void {
    this.remember(`${option.id} name`);
    Object.assign(option, { label, named: true });
  }

  /** Holds all others against this one. */
  holdAgainst(option: Option): void {
    if (option === this.baseline) return;
    this.remember(null);
    this.options = [option, ...this.options.filter((each) => each !== option)];
    option.named = true;
    this.nameByChanges();
  }

  /** Reads a file in place of all that is there; its faults when it can't be read. */
  load(text: string, fileName: string): DesignFault[] | null {
    const first = readDesign(text, { fileName });
    if (first.faults) return first.faults;
    const own = readText(DesignText.from(text));
    if ('faults' in own) return own.faults;
    const drawn = this.optionFrom(own, AS_DRAWN, true);
    const named = first.options.slice(0, MOST_OPTIONS - 1).map(({ name, text: built, ...each }) => {
      const other = own.text.copy();
      other.follow(built);
      return this.optionFrom({ ...each, text: other }, name, true);
    });
    this.replaceAll([drawn, ...named], drawn, first.options.length - named.length);
    return null;
  }

  /** Reads a file as one more option; its faults when it can't be read. */
  loadBeside(text: string, fileName: string): DesignFault[] | null {
    const read = readDesign(text, { fileName });
    if (read.faults) return read.faults;
    const own = DesignText.from(text);
    own.remove(['options']);
    const option = this.addText(own);
    if (option) Object.assign(option, { label: this.free(read.design.name, option), named: true });
    return null;
  }

  /** What is there now is where taking back ends. */
  forgetSteps(): void {
    Object.assign(this, { past: [], future: [], going: null });
  }

  /** All of it as text. */
  keep(): Kept {
    return {
      options: this.options.map(({ label, named, text }) => ({ label, named, text: text.text() })),
      current: this.options.indexOf(this.current),
    };
  }

  /** Takes what was kept in place of all that is there; faults when it can't be read any more. */
  take({ options, current }: Kept): DesignFault[] | null {
    const made: Option[] = [];
    for (const { label, named, text } of options.slice(0, MOST_OPTIONS)) {
      const alone = readDesign(text, { fileName: 'page', alone: true });
      if (alone.faults) return alone.faults;
      made.push(this.optionFrom({ ...alone, text: DesignText.from(text) }, label, named));
    }
    this.replaceAll(made, made[current] ?? made[0], options.length - made.length);
    return null;
  }

  private replaceAll(options: Option[], current: Option, leftOut: number): void {
    if (this.options.length > 0) this.remember(null);
    Object.assign(this, { options, current, leftOut });
  }

  /**
   * Keeps what is there for a step back. @param step what changes: more of the same is no step of its own; null: always
   * one
   */
  private remember(step: string | null): void {
    if (step === null || step !== this.going) {
      this.past.push(this.now());
      if (this.past.length > MOST_STEPS) this.past.shift();
    }
    this.future = [];
    this.going = step;
  }

  private now(): Step {
    const copies = this.options.map((option) => ({ ...option, refused: new Map<string, Refusal>() }));
    return { options: copies, current: this.current.id, leftOut: this.leftOut };
  }

  private travel(from: Step[], to: Step[]): boolean {
    const step = from.pop();
    if (!step) return false;
    to.push(this.now());
    this.options = step.options;
    this.leftOut = step.leftOut;
    this.current = this.options.find(({ id }) => id === step.current) ?? this.options[0];
    this.going = null;
    return true;
  }

  /** Options without a name of their own are called by what they change. */
  private nameByChanges(): void {
    this.options.forEach((option, i) => {
      if (option.named) return;
      const words = i === 0 ? AS_DRAWN : changeWords(this.baseline, option);
      option.label = this.free(words === '' ? `Option ${i + 1}` : words, option);
    });
  }

  /** A label that no other option has. */
  private free(label: string, own: Option): string {
    return freeLabel(label, (each) => this.options.some((other) => other !== own && other.label === each));
  }

  private optionFrom(reading: Reading, label: string, named: boolean): Option {
    return {
      id: ++this.ids,
      label,
      named,
      ...read(reading),
      refused: new Map(),
      result: null,
      full: null,
      solved: null,
      cook: null,
      spread: null,
      awaited: 0,
      asked: null,
      broken: null,
    };
  }
}
