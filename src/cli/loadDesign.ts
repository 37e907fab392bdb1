import type { Design } from '../design/design.js';
import { formatFaults, type DesignWarning } from '../design/faults.js';
import type { DesignOption } from '../design/options.js';
import { readDesignAnyUnit } from '../design/read.js';
import { textWithFitted } from '../design/readFitted.js';
import { exit, Stop } from './exit.js';
import { readText } from './input.js';
import { filesBeside } from './namedFile.js';

/** A design that reads without faults, and all that reading it told. */
export interface LoadedDesign {
  design: Design;
  /** what it was read from, with what a file that it names holds put in: a text that stands for itself */
  text: string;
  /** paths of the fields that took their default */
  defaults: string[];
  warnings: DesignWarning[];
  /** other ways to build it that the file names */
  options: DesignOption[];
}

/**
 * A design from a file or, for `-`, from standard input.
 *
 * @throws Stop (wrong input) with every fault of the file, a line each
 */
export async function loadDesign(path: string): Promise<LoadedDesign> {
  const { text, fileName } = await readText(path);
  return readLoaded(text, fileName);
}

/** The same from a text that is there. */
export async function readLoaded(text: string, fileName: string): Promise<LoadedDesign> {
  const namedFile = filesBeside(fileName);
  const read = await readDesignAnyUnit(text, { fileName, namedFile });
  if (read.faults) {
    const count = read.faults.length;
    const what = count === 1 ? 'one fault' : `${count} faults`;
    throw new Stop(exit.wrongInput, `${fileName}: ${what} in the design\n${formatFaults(read.faults)}`);
  }
  const { design, defaults, warnings, options } = read;
  return { design, defaults, warnings, options, text: textWithFitted(text, namedFile) };
}
