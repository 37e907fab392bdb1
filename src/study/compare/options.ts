import { formatFault } from '../../design/faults.js';
import type { DesignWarning } from '../../design/faults.js';
import type { Design, HorizontalPart } from '../../design/design.js';
import { withoutOptions } from '../../design/options.js';
import { readDesignAnyUnit, type ReadOptions } from '../../design/read.js';
import { readSource } from '../../design/source.js';
import { convert } from '../../units/index.js';
import { thinnedParts } from '../../design/plates.js';
import {
  changeAll,
  combinations,
  eachField,
  fieldsOf,
  pathsIn,
  type Change,
  type Tree,
  type Variation,
} from '../../design/vary.js';
import type { Option } from './compare.js';
import { sizeInShape, type Equal } from './equalShape.js';

/** An option of `--vary` that reads without a fault. */
export interface OptionRead extends Option {
  warnings: DesignWarning[];
}

/** What can't be compared, a line each. */
interface OptionFaults {
  faults: string[];
}

/** More options than this make no table that anybody reads. */
export const MOST_OPTIONS = 24;

const SHAPED = ['firebox', 'chamber'] as const;

/**
 * The options that a design file and its variations make: every combination, the first values first.
 *
 * @param text of a design that reads without faults
 * @param equal what stays as it is where the shape of a part varies
 * @param namedFile gives the text of a file that a design, or a variation of it, names
 */
export async function optionsOf(
  text: string,
  fileName: string,
  variations: readonly Variation[],
  equal?: Equal,
  namedFile?: ReadOptions['namedFile'],
): Promise<OptionRead[] | OptionFaults> {
  const files = { fileName, ...(namedFile ? { namedFile } : {}) };
  const source = readSource(text, fileName);
  if (!('tree' in source)) return { faults: source.faults.map(formatFault) };
  const tree = withoutOptions(source.tree as Tree);
  const asDrawn = await readTree(tree, files);
  const options: OptionRead[] = [];
  for (const choices of combinations(variations)) {
    const option = await makeOption({ tree, design: asDrawn.design }, files, choices, variations, equal);
    if ('faults' in option) return option;
    options.push(option);
  }
  return options;
}

async function makeOption(
  drawn: { tree: Tree; design?: Design },
  files: ReadOptions,
  choices: Change[],
  variations: readonly Variation[],
  equal?: Equal,
): Promise<OptionRead | OptionFaults> {
  const changes = eachField(choices);
  const [reshaping, plain] = [changes.filter(isShape), changes.filter((change) => !isShape(change))];
  const changed = changeAll(drawn.tree, plain);
  if ('problem' in changed) return fault(changed.change, variations, changed.problem);
  let { tree } = changed;
  const made = changed.also;
  let read = await readTree(tree, files);
  for (const change of reshaping) {
    if (read.faults) break;
    for (const name of SHAPED.filter((part) => shapeOf(change, part, read.design!))) {
      const reshaped = reshape(tree, read.design!, name, change.value as HorizontalPart['shape'], equal!);
      if ('problem' in reshaped) return fault(change, variations, reshaped.problem);
      tree = reshaped.tree;
      made.push(...reshaped.changes);
    }
    read = await readTree(tree, files);
  }
  if (read.faults) {
    const named = variations.map(({ text }) => `--vary '${text}'`).join(' ');
    const values = choices.map(({ value }) => `'${value}'`).join(' with ');
    return {
      faults: read.faults.map((each) => `${named}: with ${values}: ${formatFault(each).replace(/^.*?:\d+:\d+: /, '')}`),
    };
  }
  const thinned =
    drawn.design && changes.some(({ path }) => path === 'all.plate') ? thinnedParts(drawn.design, read.design) : [];
  return {
    label: labelOf(choices),
    changes: [...changes, ...made],
    design: read.design,
    warnings: [...read.warnings, ...thinned],
  };
}

function readTree(tree: Tree, files: ReadOptions) {
  return readDesignAnyUnit(JSON.stringify(tree), files);
}

function fault({ path }: Change, variations: readonly Variation[], problem: string): OptionFaults {
  const spec = variations.find((variation) => pathsIn(variation.path).includes(path))!.text;
  return { faults: [`--vary '${spec}': ${problem}`] };
}

/** Does a change give a shape to a part? */
export function isShape({ path }: { path: string }): boolean {
  return /^(?:all|firebox|chamber)\.shape$/.test(path);
}

/** Is it this part that gets another shape than it has? A name that is no shape is left to the reader. */
function shapeOf({ path, value }: Change, name: (typeof SHAPED)[number], design: Design): boolean {
  const part = design[name];
  return part !== undefined && (path === `${name}.shape` || path === 'all.shape') && part.shape !== value;
}

/** Give a part its other shape, with the size across that keeps what stays equal. */
function reshape(
  tree: Tree,
  design: Design,
  name: (typeof SHAPED)[number],
  shape: string,
  equal: Equal,
): { tree: Tree; changes: Change[] } | { problem: string } {
  if (shape !== 'round' && shape !== 'square') {
    return { problem: `'${shape}' is no shape; allowed: round, square` };
  }
  const size = sizeInShape(design, name, shape, equal);
  if (size === null) return { problem: `no ${shape} ${name} has the same ${equal}` };
  const copy = structuredClone(tree);
  const part = copy[name] as Tree;
  for (const key of ['diameter', 'width', 'height', 'shell', 'heads', 'flange']) delete part[key];
  part.length ??= `${convert('length', design[name]!.length, 'shop').toFixed(4)} in`;
  const across = `${convert('length', size, 'shop').toFixed(4)} in`;
  part.shape = shape;
  if (shape === 'round') part.diameter = across;
  else part.width = across;
  // the wall of a pipe that gave its plate is still the plate
  part.plate ??= `${convert('length', design[name]!.plate, 'shop').toFixed(6)} in`;
  return { tree: copy, changes: [{ path: `${name}.${shape === 'round' ? 'diameter' : 'width'}`, value: across }] };
}

/** Values as a column's head: `1/4 in`, `ceramic fibre 2 in`, `no insulation`. */
function labelOf(choices: readonly Change[]): string {
  return choices
    .flatMap((choice) => {
      const fields = fieldsOf(choice);
      return fields.every(({ value }) => value === choice.value) ? [fields[fields.length - 1]] : fields;
    })
    .map(({ path, value }) => (value === 'none' ? `no ${lastOf(path)}` : plainValue(value)))
    .join(', ');
}

function lastOf(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1);
}

/** A block in braces by its values alone. */
function plainValue(value: string): string {
  const inside = /^\{(.*)\}$/s.exec(value)?.[1];
  if (inside === undefined) return value.replace(/^"(.*)"$/, '$1');
  return inside
    .split(/,(?=[^,:]*:)/)
    .map((field) => field.slice(field.indexOf(':') + 1).trim())
    .join(' ');
}
