/** The designs side by side, each with its last good reading, what is still wrong, and its result. Knows no page. */
import type { Design } from '../design/design.js';
import { formatFault, type DesignFault, type DesignWarning } from '../design/faults.js';
import type { DesignOption } from '../design/options.js';
import { readDesign } from '../design/read.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { idOf, type Control } from './controls.js';
import { DesignText } from './designText.js';

/** Columns that stay readable beside each other. */
export const MOST_OPTIONS = 5;

export interface Option {
  id: number;
  /** how its column is headed */
  label: string;
  /** the last text that reads without a fault */
  text: DesignText;
  design: Design;
  readWarnings: DesignWarning[];
  /** paths of the fields that took their default */
  defaults: string[];
  /** what was typed and can't be taken, by control */
  refused: Map<string, Refusal>;
  /** newest steady states, then the same with the warm-up */
  result: EstimateResult | null;
  /** the newest result with a warm-up */
  full: EstimateResult | null;
  /** number of the request whose full result is awaited; 0: none */
  awaited: number;
  /** our own fault, when the solver broke */
  broken: string | null;
}

export interface Refusal {
  control: Control;
  value: string;
  /** the reader's words, one clause a fault */
  message: string;
}

interface Reading {
  text: DesignText;
  design: Design;
  warnings: DesignWarning[];
  defaults: string[];
}

export class Workbench {
  readonly options: Option[] = [];
  current: Option;
  /** options of the file that there is no room for */
  leftOut = 0;
  private ids = 0;

  /** @param start a design that reads without faults */
  constructor(start: string) {
    const first = readDesign(start, { fileName: 'page' });
    if (first.faults) throw new Error(formatFault(first.faults[0]));
    const text = DesignText.from(start);
    this.current = this.optionFrom({ ...first, text }, 'As drawn');
    this.options.push(this.current);
    this.addNamed(first.options);
  }

  get baseline(): Option {
    return this.options[0];
  }

  /**
   * Changes one field of the current option. What can't be taken is kept beside the last good design and tried again with
   * every later change, since two sizes may have to move together.
   *
   * @returns whether the design changed
   */
  edit(control: Control, value: string): boolean {
    const option = this.current;
    option.refused.delete(control.id);
    const others = [...option.refused.values()];
    const all = tryEdits(option, [...others, { control, value }]);
    if (!('faults' in all)) {
      option.refused.clear();
      return this.take(option, all);
    }
    const alone = others.length > 0 ? tryEdits(option, [{ control, value }]) : all;
    if (!('faults' in alone)) return this.take(option, alone);
    option.refused.set(control.id, { control, value, message: faultWords(alone.faults, control) });
    return false;
  }

  /** Takes back what was refused, so that the fields show the design again. */
  forgetRefused(): void {
    this.current.refused.clear();
  }

  /** A copy of the current option, which becomes the current one. Null when there are as many as fit. */
  add(): Option | null {
    if (this.options.length >= MOST_OPTIONS) return null;
    const { text, design, readWarnings, defaults, result, full } = this.current;
    const copied = { text: text.copy(), design, warnings: readWarnings, defaults };
    const option = this.optionFrom(copied, this.freeLabel());
    Object.assign(option, { result, full });
    this.options.push(option);
    this.current = option;
    return option;
  }

  remove(option: Option): void {
    const at = this.options.indexOf(option);
    if (at < 0 || this.options.length === 1) return;
    this.options.splice(at, 1);
    if (this.current === option) this.current = this.options[Math.min(at, this.options.length - 1)];
  }

  /** Reads a file into the current option; its faults when it can't be read. */
  load(text: string, fileName: string): DesignFault[] | null {
    const first = readDesign(text, { fileName });
    if (first.faults) return first.faults;
    const read = readText(DesignText.from(text));
    if ('faults' in read) return read.faults;
    const option = this.current;
    option.refused.clear();
    Object.assign(option, { result: null, full: null });
    this.take(option, read);
    this.addNamed(first.options);
    return null;
  }

  /** The options that a file names, where its design stands alone; beside others they would be taken for options of those. */
  private addNamed(named: readonly DesignOption[]): void {
    const room = this.options.length === 1 ? MOST_OPTIONS - 1 : 0;
    for (const { name, text: built, ...read } of named.slice(0, room)) {
      const text = this.current.text.copy();
      text.follow(built);
      this.options.push(this.optionFrom({ ...read, text }, name));
    }
    this.leftOut = Math.max(0, named.length - room);
  }

  private take(option: Option, { text, design, warnings, defaults }: Reading): boolean {
    Object.assign(option, { text, design, readWarnings: warnings, defaults });
    return true;
  }

  private optionFrom({ text, design, warnings, defaults }: Reading, label: string): Option {
    return {
      id: ++this.ids,
      label,
      text,
      design,
      readWarnings: warnings,
      defaults,
      refused: new Map(),
      result: null,
      full: null,
      awaited: 0,
      broken: null,
    };
  }

  private freeLabel(): string {
    const taken = new Set(this.options.map(({ label }) => label));
    for (let number = this.options.length + 1; ; number++) {
      if (!taken.has(`Option ${number}`)) return `Option ${number}`;
    }
  }
}

function readText(text: DesignText): Reading | { faults: DesignFault[] } {
  const read = readDesign(text.text(), { fileName: 'page', alone: true });
  if (read.faults) return { faults: read.faults };
  const { design, warnings, defaults } = read;
  return { text, design, warnings, defaults };
}

function tryEdits(
  option: Option,
  edits: readonly { control: Control; value: string }[],
): Reading | { faults: DesignFault[] } {
  const text = option.text.copy();
  for (const { control, value } of edits) {
    if (control.apply) control.apply(text, value, option.design);
    else if (control.type === 'words' && value === '' && control.id !== 'name') text.remove(control.path);
    else text.set(control.path, value);
  }
  return readText(text);
}

/** The reader's faults as words beside a field: without file and line, and without the path where it's the field's own. */
function faultWords(faults: readonly DesignFault[], control: Control): string {
  const own = idOf(control.path);
  return faults
    .slice(0, 3)
    .map((fault) => {
      const words = formatFault(fault).slice(`${fault.file}:${fault.line}:${fault.column}: `.length);
      return fault.path === own ? words.replace(`${own}: `, '') : words;
    })
    .join('; ');
}
