/** A table of changes to one design: a column a field, or several that go together; a row a design. */
import { shortened, type PlacelessFault } from './faults.js';
import { unknownStep } from './shape.js';
import { pathText, type Path } from './path.js';
import { PARTS } from './stations.js';
import { stepsOf } from './path.js';
import { changeAll, eachField, faultOfPath, isPath, pathsIn, problemOfValues, type Change, type Tree } from './vary.js';

/** The column that is taken as text, whatever it looks like. */
const NAME = 'name';
const ALL = 'all';

/** One design of the table. */
interface Changed {
  tree: Tree;
  /** the row's own name, where it has one */
  name?: string;
  /** what the row changes, as written, by path */
  changes: Record<string, string>;
}

/** What keeps a head from being the paths of fields, each once; undefined: nothing. */
export function problemOfColumns(columns: readonly string[]): PlacelessFault | undefined {
  const fields = columns.flatMap(pathsIn);
  for (const [i, column] of fields.entries()) {
    const told = { code: 'unknown-key', path: '', value: shortened(column), allowed: null, nearest: null } as const;
    if (!isPath(column)) return { ...told, ...faultOfPath(column) };
    if (fields.indexOf(column) < i) return { ...told, message: 'stands in two columns' };
    const path = stepsOf(column);
    const places: Path[] = path[0] === ALL ? PARTS.map((part) => [part, ...path.slice(1)]) : [path];
    const unknowns = places.map(unknownStep);
    const [unknown] = unknowns;
    if (unknown && unknowns.every(Boolean)) {
      const { known, nearest } = unknown;
      const before = path.slice(0, unknown.at.length - 1);
      return {
        ...told,
        message: known.length === 0 ? `names no field: ${pathText(before)} holds none` : 'is no field',
        allowed: known.length === 0 ? null : known.join(', '),
        nearest: nearest === undefined ? null : pathText([...before, nearest, ...path.slice(before.length + 1)]),
      };
    }
  }
  return undefined;
}

/** A design's tree with a row's changes made; an empty cell leaves its field as it is. */
export function changeByRow(
  tree: Tree,
  columns: readonly string[],
  cells: readonly string[],
): Changed | { name?: string; problem: PlacelessFault } {
  const named = cells[columns.indexOf(NAME)] || undefined;
  const changes: Record<string, string> = {};
  columns.forEach((column, i) => {
    if (cells[i] !== '' && column !== NAME) changes[column] = cells[i];
  });
  const cellsOf = Object.entries(changes).map(([path, value]) => ({ path, value }));
  for (const { path, value } of cellsOf) {
    const problem = problemOfValues({ path, value });
    if (problem !== undefined) return { name: named, problem: faultOfChange({ path, value }, problem) };
  }
  const made = changeAll(tree, eachField(cellsOf));
  if ('problem' in made) return { name: named, problem: faultOfChange(made.change, made.problem) };
  const changed = made.tree;
  return { tree: named === undefined ? changed : { ...changed, [NAME]: named }, name: named, changes };
}

/** A change that can't be made, as a fault. */
export function faultOfChange({ path, value }: Change, message: string): PlacelessFault {
  return { code: 'cannot-be-built', path, value: shortened(value), message, allowed: null, nearest: null };
}
