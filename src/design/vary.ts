/**
 * One field of a design file, or several that go together, with several values in turn: `chamber.plate, upright.plate =
 * 1/8 in | 3/16 in | 1/4 in`, or each with its own: `... = 1/8 in; 3/16 in | 1/4 in; 3/8 in`.
 *
 * Values are changed in the file's tree and the whole is read again, so that every way to write a quantity and every
 * fault report holds for them too.
 */
import { convert, parseQuantity } from '../units/index.js';
import type { PartName } from './design.js';
import { formatFault, formatPlaceless, shortened } from './faults.js';
import { pathText, stepsOf, type Step } from './path.js';
import { unknownStep } from './shape.js';
import { readSource } from './source.js';
import { PARTS } from './stations.js';
import { FACES } from './walls.js';

/** A field, or several with commas between them, and what it is, or they are, to be in turn, all as written. */
export interface Variation {
  path: string;
  values: string[];
  /** the whole, for messages */
  text: string;
}

/**
 * A field and what it is to be, as written; `none` takes the field away. Several have one value, or one each behind
 * semicolons.
 */
export interface Change {
  path: string;
  value: string;
}

/** A block of a design file as it stands there, unread. */
export type Tree = Record<string, unknown>;

/** First step of a path that means every part there is. */
const ALL = 'all';
const NONE = 'none';
const MOST_VALUES = 24;
/** Thicknesses nearer than this are one [m]. */
const SAME_PLATE = 1e-6;

/**
 * Fields and values of a variation.
 *
 * @example parseVariation('chamber.plate, upright.plate = 1/8 in | 1/4 in')
 * @returns the problem as one clause where it is none
 */
export function parseVariation(text: string): Variation | { problem: string } {
  const at = text.indexOf('=');
  if (at < 0) return { problem: "has no '=' between field and values (chamber.plate=1/8 in | 1/4 in)" };
  const paths = pathsIn(text.slice(0, at));
  const wrong = paths.find((path) => !isPath(path));
  if (wrong !== undefined) {
    const { message, ...detail } = faultOfPath(wrong);
    const told = { path: '', value: null, message: `${message}: '${shortened(wrong)}'`, ...detail };
    return { problem: formatPlaceless(told) };
  }
  const twice = paths.find((path, i) => paths.indexOf(path) < i);
  if (twice !== undefined) return { problem: `names ${twice} twice` };
  const values = splitAt('|', text.slice(at + 1));
  if (values.some((value) => value === '')) return { problem: 'has an empty value between its bars' };
  const path = paths.join(', ');
  const uneven = values.map((value) => problemOfValues({ path, value })).find((problem) => problem !== undefined);
  if (uneven !== undefined) return { problem: uneven };
  if (values.length > MOST_VALUES) return { problem: `has ${values.length} values; up to ${MOST_VALUES} are compared` };
  return { path, values, text };
}

/** The fields that a text names, with commas between them. */
export function pathsIn(text: string): string[] {
  return text.split(',').map((path) => path.trim());
}

/**
 * Is a text written as the path of a field, or of an item of a list, is? Whether there is such a field is another
 * question.
 */
export function isPath(text: string): boolean {
  return /^[A-Za-z]\w*(?:\[\d+\])?(?:\.(?:[A-Za-z]\w*|\d+)(?:\[\d+\])?)*$/.test(text);
}

/** What is wrong with a text that is not written as a path is. */
export function faultOfPath(text: string) {
  const words = text.split(/[^\w[\]]+/).filter(Boolean);
  const meant = words.join('.').replaceAll('.[', '[');
  const known = words.length > 0 && isPath(meant) && unknownStep(stepsOf(meant)) === undefined;
  return {
    code: 'unknown-key',
    message: 'names no field',
    allowed: 'paths such as chamber.plate, stacks[0].height or, to take one away, stacks[1]',
    nearest: known ? pathText(stepsOf(meant)) : null,
  } as const;
}

/** A bar or a semicolon parts values, wherever it stands: a quotation mark may be an inch. */
function splitAt(mark: '|' | ';', text: string): string[] {
  return text.split(mark).map((value) => value.trim());
}

/** The fields of a change, each with its value. */
export function fieldsOf({ path, value }: Change): Change[] {
  const values = splitAt(';', value);
  return pathsIn(path).map((each, i) => ({ path: each, value: values.length === 1 ? value : values[i] }));
}

/** What keeps the values of a change from being one for all of its fields, or one for each; undefined: nothing. */
export function problemOfValues({ path, value }: Change): string | undefined {
  const [fields, values] = [pathsIn(path).length, splitAt(';', value)];
  if (values.some((each) => each === '')) return 'has an empty value between its semicolons';
  if (values.length === 1 || values.length === fields) return undefined;
  return `has ${values.length} values with semicolons between them for ${fields === 1 ? 'one field' : `${fields} fields`}`;
}

/** Every combination of the variations' values, the first of each first. */
export function combinations(variations: readonly Variation[]): Change[][] {
  return variations.reduce<Change[][]>(
    (before, { path, values }) => before.flatMap((changes) => values.map((value) => [...changes, { path, value }])),
    [[]],
  );
}

/**
 * A change of each field, in the order in which none undoes another that says more: all parts, a part by name, its
 * door; items of a list that go last of all, from its end on, so that each goes by the number that it has in the file.
 */
export function eachField(changes: readonly Change[]): Change[] {
  const fields = changes.flatMap(fieldsOf);
  const goes = ({ path, value }: Change) => (value === NONE ? /\[(\d+)\]$/.exec(path)?.[1] : undefined);
  const rank = (change: Change) => {
    if (goes(change) !== undefined) return 3;
    const steps = stepsOf(change.path);
    return steps.includes('door') || steps.includes('doors') ? 2 : steps[0] === ALL ? 0 : 1;
  };
  return fields.sort((a, b) => rank(a) - rank(b) || Number(goes(b) ?? 0) - Number(goes(a) ?? 0));
}

/**
 * A copy of a design file's tree with one field changed.
 *
 * `all.plate` changes every part, and a list without an index every item of it. With the plate of a part goes that of
 * its door and of a face, unless the design gives them another one; and a pipe becomes a shell of its outside diameter.
 *
 * @returns what changed beside the field, or the problem as one clause where the path leads nowhere or the value can't
 * be read
 */
export function changeTree(tree: Tree, { path, value }: Change): { tree: Tree; also: Change[] } | { problem: string } {
  const steps = stepsOf(path);
  const read = value === NONE && !takesNone(steps) ? { value: undefined } : readValue(value);
  if ('problem' in read) return read;
  const places = steps[0] === ALL ? partsOf(tree).map((part) => [part, ...steps.slice(1)]) : [steps];
  const copy = structuredClone(tree);
  const also: Change[] = [];
  for (const place of places) {
    const problem = set(copy, place, [], read.value);
    if (problem !== undefined) return { problem };
    if (!isPlate(place)) continue;
    const name = place[0] as PartName;
    const part = blockOf(tree[name]);
    for (const own of platesWith(part)) {
      set(copy, [name, ...own, 'plate'], [], read.value);
      also.push({ path: pathText([name, ...own, 'plate']), value });
    }
    const pipe = pipeOf(part);
    if (pipe && read.value !== undefined) {
      set(copy, [name, 'diameter'], [], pipe.diameter);
      also.push({ path: `${name}.diameter`, value: pipe.diameter });
    }
  }
  return { tree: copy, also };
}

/** The same with several changes made, one after the other. */
export function changeAll(
  tree: Tree,
  changes: readonly Change[],
): { tree: Tree; also: Change[] } | { change: Change; problem: string } {
  let changed = { tree, also: [] as Change[] };
  for (const change of changes) {
    const made = changeTree(changed.tree, change);
    if ('problem' in made) return { change, problem: made.problem };
    changed = { tree: made.tree, also: [...changed.also, ...made.also] };
  }
  return changed;
}

function isPlate(steps: Step[]): boolean {
  return steps.length === 2 && steps[1] === 'plate' && PARTS.includes(steps[0] as PartName);
}

/** A face or a door without insulation has `none`, for else it has that of its part. */
function takesNone(steps: Step[]): boolean {
  return steps.at(-1) === 'insulation' && steps.length > 2 && steps[0] !== 'stacks';
}

/** Faces and doors of a part to which the design gives the plate of the part. */
function platesWith(part: Tree | undefined): Step[][] {
  const several = Array.isArray(part?.doors) ? (part.doors as unknown[]) : [];
  const owners: [Step[], unknown][] = [
    ...[...FACES, 'door'].map((own): [Step[], unknown] => [[own], part?.[own]]),
    ...several.map((each, i): [Step[], unknown] => [['doors', i], each]),
  ];
  return owners.flatMap(([steps, each]) => {
    const block = blockOf(each);
    if (block?.plate === undefined) return [];
    const own = part?.plate ?? pipeOf(part)?.wall;
    return samePlate(block.plate, own, part?.steel === 'stainless') ? [steps] : [];
  });
}

/** A value where it is a block of fields. */
export function blockOf(value: unknown): Tree | undefined {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Tree) : undefined;
}

/** The pipe that a part's diameter names: its outside diameter as written, and its wall [m]. */
function pipeOf(part: Tree | undefined): { diameter: string; wall: number } | undefined {
  if (typeof part?.diameter !== 'string') return undefined;
  const read = parseQuantity('length', part.diameter);
  if (!read.ok || read.pipe?.wall === undefined) return undefined;
  return { diameter: `${Number(convert('length', read.si, 'shop').toFixed(4))} in`, wall: read.pipe.wall };
}

/** Do two plates, as written or in metres, come to the same? */
function samePlate(a: unknown, b: unknown, stainless: boolean): boolean {
  const metres = (plate: unknown) => {
    if (typeof plate === 'number') return plate;
    const read = parseQuantity('plate', String(plate), { gauges: stainless ? 'stainless' : 'carbon' });
    return read.ok ? read.si : NaN;
  };
  return a === b || Math.abs(metres(a) - metres(b)) < SAME_PLATE;
}

function partsOf(tree: Tree): PartName[] {
  return PARTS.filter((part) => Object.hasOwn(tree, part) && tree[part] !== null);
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
    if (step >= node.length) {
      const [there, last] = [
        [...done, step],
        [...done, node.length - 1],
      ].map(pathText);
      const meant = node.length > 0 ? `; did you mean '${last}'?` : '';
      return `there is no ${there}: the list has ${node.length}, counted from 0${meant}`;
    }
  } else if (typeof step === 'number') {
    return `${pathText(done)} is no list`;
  }
  const block = node as Record<Step, unknown>;
  if (rest.length === 0) {
    if (value === undefined && Array.isArray(node)) node.splice(Number(step), 1);
    else if (value === undefined) delete block[step];
    else block[step] = structuredClone(value);
    return undefined;
  }
  const next = Object.hasOwn(block, step) ? block[step] : undefined;
  if (next === undefined || next === null) {
    if (done.length === 0 && PARTS.includes(step as PartName)) return `the design has no ${step}`;
    if (value === undefined) return undefined;
    block[step] = {};
  } else if (typeof next !== 'object') {
    return `${pathText([...done, step])} holds no fields`;
  }
  return set(block[step], rest, [...done, step], value);
}
