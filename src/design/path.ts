/**
 * Where a field stands in a design file: as steps, and as text. Apart from the reading of files, which few of its users
 * need.
 */
import { shortened } from './faults.js';

/** A key of a block, or a place in a list, counted from 0. */
export type Step = string | number;
/** The way from the top of a file to a field. */
export type Path = readonly Step[];

/** `firebox.intakes[0].diameter` */
export function pathText(path: Path): string {
  return path
    .map((part, i) => (typeof part === 'number' ? `[${part}]` : i === 0 ? shortened(part) : `.${shortened(part)}`))
    .join('');
}

/** The value at a path of a tree; undefined where there is none. */
export function valueAt(tree: unknown, path: Path): unknown {
  let value = tree;
  for (const part of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<string | number, unknown>)[part];
  }
  return value;
}

/** A path's names and indices: `stacks[0].height` is stacks, 0, height. */
export function stepsOf(path: string): Step[] {
  return path.split('.').flatMap((part): Step[] => {
    const match = /^(\w+)\[(\d+)\]$/.exec(part);
    if (match) return [stepOf(match[1]), Number(match[2])];
    return [stepOf(part)];
  });
}

function stepOf(text: string): Step {
  return /^\d+$/.test(text) ? Number(text) : text;
}
