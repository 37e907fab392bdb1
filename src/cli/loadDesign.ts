import type { Design } from '../design/design.js';
import { formatFaults, type DesignWarning } from '../design/faults.js';
import { readDesignAnyUnit } from '../design/read.js';
import { exit, Stop } from './exit.js';
import { readText } from './input.js';

export interface LoadedDesign {
  design: Design;
  /** paths of the fields that took their default */
  defaults: string[];
  warnings: DesignWarning[];
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
  const read = await readDesignAnyUnit(text, { fileName });
  if (read.faults) {
    const count = read.faults.length;
    const what = count === 1 ? 'one fault' : `${count} faults`;
    throw new Stop(exit.wrongInput, `${fileName}: ${what} in the design\n${formatFaults(read.faults)}`);
  }
  return { design: read.design, defaults: read.defaults, warnings: read.warnings };
}
