/**
 * A builder's file to a design, or to every fault in it.
 *
 * `readDesign` never throws and never guesses: it gives a design in SI with the list of defaults taken, or faults, each
 * with file, line, column, field, value as written, what is allowed and the nearest right name.
 */
import { loadOtherUnits, type OtherUnits } from '../units/index.js';
import { withFitted } from './applyFitted.js';
import type { Design } from './design.js';
import type { Fitted } from './fitted.js';
import { DESIGN, rangeOf } from './fields.js';
import { readRows } from './fields/blocks.js';
import type { DesignFault, DesignWarning } from './faults.js';
import { readOptions, type DesignOption } from './options.js';
import { readFitted, type NamedFile } from './readFitted.js';
import { Reading } from './reading.js';
import { checkSense } from './sense.js';
import { checkShape } from './shape.js';
import { readSource } from './source.js';
import type { Tree } from './vary.js';

/** What reading a design needs beside its text. */
export interface ReadOptions {
  /** name that faults carry; '-' for standard input */
  fileName: string;
  /** converter for legal units outside the trade's table */
  otherUnits?: OtherUnits;
  /** gives the text of a file that the design names; without it a design can name none, and holds the block itself */
  namedFile?: NamedFile;
  /** leaves the design's options alone, right or wrong */
  alone?: true;
}

type Read = Extract<ReadResult, { design: Design }>;

/** A design with what was assumed, or every fault that keeps it from being one. */
export type ReadResult =
  | {
      design: Design;
      /** paths of the fields that took their default */
      defaults: string[];
      warnings: DesignWarning[];
      /** other ways to build it that the file names */
      options: DesignOption[];
      faults?: undefined;
    }
  | { design?: undefined; faults: DesignFault[] };

/**
 * Reads a design from YAML or JSON text. What measured cooks have told, where the design names it, is already in its
 * fields.
 *
 * @example readDesign(text, { fileName: 'pit.yaml' })
 */
export function readDesign(text: string, options: ReadOptions): ReadResult {
  const source = readSource(text, options.fileName);
  if (!('tree' in source)) return { faults: source.faults };
  const reading = new Reading(source, options.fileName, options.otherUnits);
  const root = reading.root();
  const design: Design = readRows(DESIGN, root, {}, {}, ['wood', 'firebox', 'chamber', 'upright']);
  const { fitted, faults } = readFitted(root, options);
  checkShape(source.tree, reading);
  checkSense(design, reading);
  if (reading.faults.length + faults.length > 0) return { faults: [...reading.told(), ...faults] };
  const drawn = applyFitted(design, fitted, reading);
  const tree = source.tree as Tree;
  if (options.alone || tree.options === undefined) return { ...drawn, options: [] };
  const readTree = (each: string) => readDesign(each, { ...options, alone: true });
  const ways = readOptions(tree, drawn.design, reading, readTree);
  return reading.faults.length > 0 ? { faults: reading.told() } : { ...drawn, options: ways };
}

/** What measured cooks have told takes the place of what the design leaves to a default. */
function applyFitted(design: Design, fitted: Fitted | undefined, reading: Reading): Omit<Read, 'options'> {
  const { defaults, warnings } = reading;
  if (!fitted) return { design, defaults, warnings };
  const byWood = reading.root().child('fire').read('heat', rangeOf('fire.heat'))?.wood ?? false;
  const applied = withFitted(design, fitted, byWood);
  return {
    design: applied.design,
    defaults: defaults.filter((path) => !applied.replaced.includes(path)),
    warnings: [...warnings, ...applied.warnings],
  };
}

/**
 * `readDesign`, with any legal unit: where a unit is not in the trade's table, mathjs is loaded and the file read
 * again. Files in shop units never pay for it.
 */
export async function readDesignAnyUnit(text: string, options: ReadOptions): Promise<ReadResult> {
  const first = readDesign(text, options);
  if (!first.faults?.some((fault) => fault.code === 'unknown-unit')) return first;
  return readDesign(text, { ...options, otherUnits: await loadOtherUnits() });
}
