/**
 * One field of a design file with several values in turn: `chamber.plate=1/8 in | 3/16 in | 1/4 in`.
 *
 * Values are changed in the file's tree and the whole is read again, so that every way to write a quantity and every fault
 * report holds for them too.
 */
import type { PartName } from './design.js';
import { formatFault, shortened } from './faults.js';
import { readSource } from './source.js';

/** A field and what it is to be in turn, all as written. */
export interface Variation {
  path: string;
  values: string[];
  /** the whole, for messages */
  text: string;
}

/** A field and what it is to be, as written; `none` takes the field away. */
export interface Change {
  path: string;
  value: string;
}

export type Tree = Record<string, unknown>;
type Step = string | number;

export const PARTS: readonly PartName[] = ['firebox', 'chamber', 'upright'];
/** First step of a path that means every part there is. */
const ALL = 'all';
const NONE = 'none';
const MOST_VALUES = 24;

/**
 * Field and values of a variation.
 *
 * @example parseVariation('chamber.plate=1/8 in | 1/4 in')
 * @returns the problem as one clause where it is none
 */
export function parseVariation(text: string): Variation | { problem: string } {
  const at = text.indexOf('=');
  if (at < 0) return { problem: "has no '=' between field and values (chamber.plate=1/8 in | 1/4 in)" };
  const path = text.slice(0, at).trim();
  if (!isPath(path)) {
    return { problem: `names no field: '${shortened(path)}' (write it as chamber.plate or stacks[0].height)` };
  }
  const values = splitAtBars(text.slice(at + 1)).map((value) => value.trim());
  if (values.some((value) => value === '')) return { problem: 'has an empty value between its bars' };
  if (values.length > MOST_VALUES) return { problem: `has ${values.length} values; up to ${MOST_VALUES} are compared` };
  return { path, values, text };
}

/** Is a text written as the path of a field is? Whether there is such a field is another question. */
export function isPath(text: string): boolean {
  return /^[A-Za-z]\w*(?:\[\d+\])?(?:\.(?:[A-Za-z]\w*|\d+)(?:\[\d+\])?)+$|^[A-Za-z]\w*$/.test(text);
}

/** Bars part values, but not inside quotes. */
function splitAtBars(text: string): string[] {
  return text.match(/(?:"[^"|]*"|[^|])+|(?<=\||^)(?=\||$)/g) ?? [''];
}

/** Every combination of the variations' values, the first of each first. */
export function combinations(variations: readonly Variation[]): Change[][] {
  return variations.reduce<Change[][]>(
    (before, { path, values }) => before.flatMap((changes) => values.map((value) => [...changes, { path, value }])),
    [[]],
  );
}

/**
 * A copy of a design file's tree with one field changed.
 *
 * `all.plate` changes every part, and a list without an index every item of it.
 *
 * @returns the problem as one clause where the path leads nowhere or the value can't be read
 */
export function changeTree(tree: Tree, { path, value }: Change): { tree: Tree } | { problem: string } {
  const read = value === NONE ? { value: undefined } : readValue(value);
  if ('problem' in read) return read;
  const steps = stepsOf(path);
  const places = steps[0] === ALL ? partsOf(tree).map((part) => [part, ...steps.slice(1)]) : [steps];
  const copy = structuredClone(tree);
  for (const place of places) {
    const problem = set(copy, place, [], read.value);
    if (problem !== undefined) return { problem };
  }
  return { tree: copy };
}

function partsOf(tree: Tree): PartName[] {
  return PARTS.filter((part) => Object.hasOwn(tree, part) && tree[part] !== null);
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

/** A value as a file would hold it: read as YAML, so that quotes and braces mean what they mean there. */
function readValue(text: string): { value: unknown } | { problem: string } {
  const source = readSource(`value: ${text}`, 'value');
  const bare = 'tree' in source ? source : { faults: source.faults };
  const [fault] = bare.faults;
  if (fault) {
    const told = fault.path ? fault : { ...fault, value: shortened(text) };
    return { problem: formatFault(told).replace(/^value:\d+:\d+: (?:value\.?)?/, '') };
  }
  const value = (source as { tree: Tree }).tree.value;
  return value === null || value === undefined ? { problem: `'${shortened(text)}' is empty` } : { value };
}

/** Set a field deep in a tree, making the blocks on the way. @returns a problem, as one clause */
function set(node: unknown, [step, ...rest]: Step[], done: Step[], value: unknown): string | undefined {
  if (Array.isArray(node)) {
    if (typeof step !== 'number') {
      for (let i = 0; i < node.length; i++) {
        const problem = set(node[i], [step, ...rest], [...done, i], value);
        if (problem !== undefined) return problem;
      }
      return undefined;
    }
    if (step >= node.length)
      return `there is no ${nameOf([...done, step])}: the list has ${node.length}, counted from 0`;
  } else if (typeof step === 'number') {
    return `${nameOf(done)} is no list`;
  }
  const block = node as Record<Step, unknown>;
  if (rest.length === 0) {
    if (value === undefined) delete block[step];
    else block[step] = structuredClone(value);
    return undefined;
  }
  const next = Object.hasOwn(block, step) ? block[step] : undefined;
  if (next === undefined || next === null) {
    if (done.length === 0 && PARTS.includes(step as PartName)) return `the design has no ${step}`;
    if (value === undefined) return undefined;
    block[step] = {};
  } else if (typeof next !== 'object') {
    return `${nameOf([...done, step])} holds no fields`;
  }
  return set(block[step], rest, [...done, step], value);
}

function nameOf(steps: Step[]): string {
  return steps.map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? step : `.${step}`)).join('');
}
