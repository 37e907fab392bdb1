/**
 * A builder's file to a design, or to every fault in it.
 *
 * `readDesign` never throws and never guesses: it gives a design in SI with the list of defaults taken, or faults, each with
 * file, line, column, field, value as written, what is allowed and the nearest right name.
 */
import { loadOtherUnits, type OtherUnits } from '../units.js';
import type { Design } from './design.js';
import type { DesignFault, DesignWarning } from './faults.js';
import { Reading } from './reading.js';
import { resolveDesign } from './resolve.js';
import { checkSense } from './sense.js';
import { checkShape } from './shape.js';
import { readSource } from './source.js';

export interface ReadOptions {
  /** name that faults carry; '-' for standard input */
  fileName: string;
  /** converter for legal units outside the trade's table */
  otherUnits?: OtherUnits;
}

export type ReadResult =
  | {
      design: Design;
      /** paths of the fields that took their default */
      defaults: string[];
      warnings: DesignWarning[];
      faults?: undefined;
    }
  | { design?: undefined; faults: DesignFault[] };

/**
 * Reads a design from YAML or JSON text.
 *
 * @example readDesign(text, { fileName: 'pit.yaml' })
 */
export function readDesign(text: string, options: ReadOptions): ReadResult {
  const source = readSource(text, options.fileName);
  if (!('tree' in source)) return { faults: source.faults };
  const reading = new Reading(source, options.fileName, options.otherUnits);
  const root = reading.root();
  const design = resolveDesign(root);
  checkShape(source.tree, reading);
  checkSense(design, reading);
  if (reading.faults.length > 0) {
    return { faults: reading.faults.sort((a, b) => a.line - b.line || a.column - b.column) };
  }
  return { design, defaults: reading.defaults, warnings: reading.warnings };
}

/**
 * `readDesign`, with any legal unit: where a unit is not in the trade's table, mathjs is loaded and the file read again.
 * Files in shop units never pay for it.
 */
export async function readDesignAnyUnit(text: string, options: ReadOptions): Promise<ReadResult> {
  const first = readDesign(text, options);
  if (!first.faults?.some((fault) => fault.code === 'unknown-unit')) return first;
  return readDesign(text, { ...options, otherUnits: await loadOtherUnits() });
}
