/** One of the designs side by side: its text, its last good reading, what can't be taken of it, its result. */
import type { Design } from '../design/design.js';
import { formatFault, type DesignFault, type DesignWarning } from '../design/faults.js';
import { pathText } from '../design/path.js';
import { readDesign } from '../design/read.js';
import type { Further } from '../study/estimate/estimate.js';
import type { EstimateResult } from '../study/estimate/result.js';
import type { Spread } from '../study/spread/uncertainty.js';
import type { Control } from './controls.js';
import type { DesignText } from './designText.js';

/** A design that is edited, with what is known of it so far. */
export interface Option {
  id: number;
  /** how its column is headed */
  label: string;
  /** the person gave it that name; else it is named by what it changes */
  named: boolean;
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
  /** the newest result with a warm-up, and the design that it is of */
  full: EstimateResult | null;
  solved: Design | null;
  /** what a cook makes of a design, worked out when the hand rests */
  cook: { of: Design; found: Further } | null;
  /** how far the numbers of a design spread, worked out then too */
  spread: { of: Design; found: Spread } | null;
  /** number of the request whose full result is awaited, and the design that was sent; 0: none */
  awaited: number;
  asked: Design | null;
  /** our own fault, when the solver broke */
  broken: string | null;
}

/** Are its numbers those of its design? */
export function isSolved({ solved, design }: Option): boolean {
  return solved === design;
}

/** Is it known what a cook makes of the design that its numbers are of? */
export function isCooked({ solved, cook }: Option): boolean {
  return cook !== null && cook.of === solved;
}

/** How far the numbers of its design spread, where that is known by now. */
export function spreadOf({ design, spread }: Option): Spread | undefined {
  return spread?.of === design ? spread.found : undefined;
}

/** Its newest result with how far that spreads, where that is known by now. */
function spreadResult(option: Option): EstimateResult | null {
  const { full, solved, spread } = option;
  return full && spread && spread.of === solved ? { ...full, spread: spread.found } : full;
}

/** The same with what a cook makes of it where that is known by now. @param late also of a design before */
export function toldOf(option: Option, late = false): EstimateResult | null {
  const { cook } = option;
  const full = spreadResult(option);
  if (!full || !cook || !(late || isCooked(option))) return full;
  return { ...full, ...cook.found.result, warnings: [...full.warnings, ...cook.found.warnings] };
}

/** What was typed and could not be taken, and why. */
export interface Refusal {
  control: Control;
  value: string;
  /** the reader's words, one clause a fault */
  message: string;
}

/** A text that reads without a fault, and what it gives. */
export interface Reading {
  text: DesignText;
  design: Design;
  warnings: DesignWarning[];
  defaults: string[];
}

/** An option of a design that was read, without numbers yet. */
export function read({ text, design, warnings, defaults }: Reading) {
  return { text, design, readWarnings: warnings, defaults };
}

/** A design as its text reads. */
export function readText(text: DesignText): Reading | { faults: DesignFault[] } {
  const read = readDesign(text.text(), { fileName: 'page', alone: true });
  if (read.faults) return { faults: read.faults };
  const { design, warnings, defaults } = read;
  return { text, design, warnings, defaults };
}

/** What the text of an option would read as with values of controls changed. */
export function tryEdits(
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

/**
 * The reader's faults as words beside a field: without file and line, and without the path where it's the field's own.
 */
export function faultWords(faults: readonly DesignFault[], control: Control): string {
  const own = pathText(control.path);
  return faults
    .slice(0, 3)
    .map((fault) => {
      const words = formatFault(fault).slice(`${fault.file}:${fault.line}:${fault.column}: `.length);
      return fault.path === own ? words.replace(`${own}: `, '') : words;
    })
    .join('; ');
}
