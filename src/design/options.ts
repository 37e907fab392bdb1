/**
 * Options of a design file: each is read as the file would be with its changes made, and its faults are told at its own
 * lines.
 */
import { stringify } from 'yaml';
import type { Design } from './design.js';
import { formatPlaceless, type DesignFault, type DesignWarning } from './faults.js';
import { thinnedParts } from './plates.js';
import type { ReadResult } from './read.js';
import type { Reading } from './reading.js';
import { unknownStep } from './shape.js';
import type { Path } from './path.js';
import { PARTS } from './stations.js';
import { stepsOf } from './path.js';
import { changeAll, eachField, faultOfPath, isPath, pathsIn, problemOfValues, type Change, type Tree } from './vary.js';

/** What the design without any option is called beside them. */
export const AS_DRAWN = 'as drawn';

/** Another way to build the pit that its file names, read and ready to be computed. */
export interface DesignOption {
  name: string;
  /** fields and what stands in them instead, as written */
  changes: Change[];
  /** what goes with them, such as the plate of a door */
  also: Change[];
  /** the design file with the changes made and without options */
  text: string;
  design: Design;
  defaults: string[];
  warnings: DesignWarning[];
}

/** A design file's tree without its options. */
export function withoutOptions(tree: Tree): Tree {
  return Object.fromEntries(Object.entries(tree).filter(([key]) => key !== 'options'));
}

/**
 * The options of a design that reads without faults; what is wrong with them goes into the reading.
 *
 * @param readTree reads a design's text, as the file itself was
 */
export function readOptions(
  tree: Tree,
  drawn: Design,
  reading: Reading,
  readTree: (text: string) => ReadResult,
): DesignOption[] {
  const names = new Set([AS_DRAWN]);
  return (tree.options as { name: string; changes: Tree }[]).flatMap(({ name: written, changes }, i) => {
    const name = written.trim();
    const at: Path = ['options', i];
    if (name === '') {
      reading.fault([...at, 'name'], { code: 'missing', message: 'is empty', allowed: 'a name: 3/16 shell' });
    } else if (names.has(name.toLowerCase())) {
      reading.fault([...at, 'name'], {
        code: 'duplicate-key',
        message: name.toLowerCase() === AS_DRAWN ? 'is what the design itself is called' : 'is the name of two options',
        allowed: 'a name of its own for each option',
      });
    }
    names.add(name.toLowerCase());
    const option = readOption({ at, asked: changes }, withoutOptions(tree), drawn, reading, readTree);
    return option ? [{ name, ...option }] : [];
  });
}

/** An option as the file has it. */
interface Asked {
  at: Path;
  asked: Tree;
}

function readOption(
  { at, asked }: Asked,
  tree: Tree,
  drawn: Design,
  reading: Reading,
  readTree: (text: string) => ReadResult,
): Omit<DesignOption, 'name'> | undefined {
  const written = Object.entries(asked).map(([path, value]) => ({ path, value: flowText(value) }));
  const problem = written.map((change) => problemOfChange(change, asked)).find((each) => each !== undefined);
  if (problem) {
    const { path, ...detail } = problem;
    reading.fault([...at, 'changes', path], detail);
    return undefined;
  }
  const changes = eachField([...oldSizes(written, tree), ...written]);
  const made = changeAll(tree, changes);
  if ('problem' in made) {
    const [key] = placeOf(made.change.path, asked)!;
    reading.fault([...at, 'changes', key], { message: made.problem, atKey: true, value: null });
    return undefined;
  }
  const text = JSON.stringify(withoutOptions(made.tree));
  const read = readTree(text);
  if (read.faults) {
    tellFaults(read.faults, { at, asked }, reading);
    return undefined;
  }
  if (JSON.stringify(unnamed(read.design)) === JSON.stringify(unnamed(drawn))) {
    reading.fault([...at, 'changes'], {
      code: 'no-change',
      message: 'changes nothing: the design has that already',
      allowed: 'fields with other values than the design has',
      example: '{ chamber.plate: 3/16 in, upright.plate: 3/16 in }',
      value: null,
    });
    return undefined;
  }
  const { design, defaults } = read;
  const thinned = changes.some(({ path }) => path === 'all.plate') ? thinnedParts(drawn, design) : [];
  return { changes, also: made.also, text, design, defaults, warnings: [...read.warnings, ...thinned] };
}

/** Sizes that a part loses with its shape: a round one has no width, a square one no diameter. */
function oldSizes(written: readonly Change[], tree: Tree): Change[] {
  return PARTS.flatMap((part) => {
    const shape = written.findLast(({ path }) => path === `${part}.shape` || path === 'all.shape')?.value;
    const drawn = tree[part] as Tree | undefined;
    if (shape === undefined || drawn === undefined || drawn.shape === shape) return [];
    return (shape === 'round' ? ['width', 'height'] : ['diameter'])
      .filter((key) => Object.hasOwn(drawn, key))
      .map((key) => ({ path: `${part}.${key}`, value: 'none' }));
  });
}

/** A value as the variation of a field is written. */
function flowText(value: unknown): string {
  return typeof value === 'string' && value.includes('\n')
    ? JSON.stringify(value)
    : stringify(value, { collectionStyle: 'flow', lineWidth: 0 }).trim();
}

function problemOfChange({ path, value }: Change, asked: Tree) {
  const odd = pathsIn(path).find((each) => !isPath(each));
  if (odd !== undefined) {
    const { nearest, ...detail } = faultOfPath(odd);
    return { path, ...detail, nearest: nearest ?? undefined, atKey: true, value: null } as const;
  }
  if (asked[path] === null) {
    const allowed = `what stands there instead, or none to take it away`;
    return { path, code: 'missing', message: 'is empty', allowed, atKey: true, value: null } as const;
  }
  const uneven = problemOfValues({ path, value });
  return uneven === undefined ? undefined : { path, message: uneven, allowed: 'one value, or one for each field' };
}

/**
 * Faults of the design with an option's changes: at the changes that they are about or, of none, at all of them
 * together.
 */
function tellFaults(faults: readonly DesignFault[], { at, asked }: Asked, reading: Reading): void {
  const placed = faults.map((fault) => ({ fault, place: placeOf(fault.path, asked) }));
  const direct = placed.filter(({ place }) => place !== undefined);
  const told = new Set<string>();
  for (const { fault, place } of direct) {
    const { code, value, message, nearest } = fault;
    // all.plate is wrong in every part, and told once
    const once = JSON.stringify([place, code]);
    if (told.has(once)) continue;
    told.add(once);
    const detail = { code, value, message, atKey: code === 'unknown-key', nearest: nearest ?? inEveryPart(fault) };
    reading.fault([...at, 'changes', ...place!], { ...restOf(fault), ...detail });
  }
  if (direct.length > 0) return;
  const only = Object.keys(asked);
  for (const { fault } of placed) {
    const { code, path, value, message } = fault;
    const what = formatPlaceless({ code, path, value, message, allowed: null, nearest: null });
    const detail = { code, value: null, message: `makes a pit that can't be: ${what}` };
    reading.fault([...at, 'changes', ...(only.length === 1 ? only : [])], { ...restOf(fault), ...detail });
  }
}

function restOf({ allowed, nearest, example }: DesignFault) {
  return {
    allowed: allowed ?? undefined,
    nearest: nearest ?? undefined,
    ...(example === undefined ? {} : { example }),
  };
}

/** A field of a part where there is none, as one of all parts. */
function inEveryPart({ code, path }: DesignFault): string | undefined {
  return code === 'unknown-key' && isPath(path) && unknownStep(['chamber', ...stepsOf(path)]) === undefined
    ? `all.${path}`
    : undefined;
}

/** The change that a path is of, and the way from there; undefined where it is of none. */
function placeOf(path: string, asked: Tree): Path | undefined {
  const reached = Object.keys(asked).flatMap((key) =>
    pathsIn(key).flatMap((each) => {
      const rest = behind(each, path);
      return rest === undefined ? [] : [{ key, rest }];
    }),
  );
  const [nearest] = reached.sort((a, b) => a.rest.length - b.rest.length);
  return nearest && [nearest.key, ...nearest.rest];
}

/**
 * The steps of a path behind those that a change reaches. `all` is every part, and a list without an index every item
 * of it.
 */
function behind(change: string, path: string): Path | undefined {
  const [first, ...others] = stepsOf(change);
  const steps = [first === 'all' ? `(?:${PARTS.join('|')})` : first, ...others];
  const pattern = steps
    .map((step, i) => (typeof step === 'number' ? `\\[${step}\\]` : `${i === 0 ? '' : '(?:\\[\\d+\\])?\\.'}${step}`))
    .join('');
  const rest = new RegExp(`^${pattern}(?:$|(?=[.[])(.*))`, 's').exec(path);
  if (!rest) return undefined;
  return rest[1] === undefined ? [] : stepsOf(`x${rest[1]}`).slice(1);
}

/** What a pit is called is no way to build it. */
function unnamed(pit: Design): Design {
  return { ...pit, name: '', shop: '', job: '' };
}
