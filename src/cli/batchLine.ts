/** What a line of `batch` makes: a line of results, or one that says what is wrong. Runs in the pool's threads. */
import { parse } from 'csv-parse/sync';
import { changeByRow, faultOfChange } from '../design/changeColumns.js';
import type { Design } from '../design/design.js';
import {
  formatPlaceless,
  shortened,
  type DesignFault,
  type DesignWarning,
  type PlacelessFault,
} from '../design/faults.js';
import type { DesignOption } from '../design/options.js';
import { thinnedParts } from '../design/plates.js';
import { readDesignAnyUnit, type ReadOptions } from '../design/read.js';
import { changeAll, pathsIn, type Tree } from '../design/vary.js';
import { toJsonLine } from '../report/json.js';
import { estimate } from '../study/estimate/estimate.js';
import { version } from '../version.js';
import type { Line } from './lines.js';
import { filesBeside } from './namedFile.js';
import { putLines, type Put } from './rooms.js';

/** What is to be made of each record. */
export interface BatchTask {
  /** leave the warm-up out */
  steadyOnly: boolean;
  /** with the curves of the warm-up */
  series: boolean;
  /** what the design is called, or the input: files that a design names stand beside it */
  fileName: string;
  /** records are rows of a table of changes to this design; else each is a design */
  changes?: { tree: Tree; columns: string[]; options: Pick<DesignOption, 'name' | 'changes'>[] };
}

interface BatchLine {
  /** JSON, without the line end */
  text: string;
  /** whose fault it is, where it holds no result */
  fault?: 'input' | 'ours';
}

interface BatchError {
  code: string;
  message: string;
  faults: PlacelessFault[];
}

/** What is known of a record when something turns out to be wrong with it. */
interface Known {
  name?: string;
  changes?: Record<string, string>;
}

/** Longest line [bytes]; the reader takes no longer design. */
export const LONGEST_LINE = 250_000;

const HEAD = { schema: 1, tool: { name: 'pitwright', version } };

/** What every line begins with, whoever's version wrote it. */
export const LINE_HEAD = Buffer.from(JSON.stringify({ ...HEAD, tool: { name: HEAD.tool.name } }).slice(0, -2));

const UNREADABLE = {
  'too-long': `the line is too long; allowed: up to ${LONGEST_LINE / 1000} kB`,
  'not-text': 'the line is not UTF-8 text',
};

/** What a slice of records makes, its lines in the room that came with it. */
export interface BatchAnswer {
  put: Put;
  /** a record each */
  faults: BatchLine['fault'][];
}

/** Answers some lines of a batch, in their order, into a room that another thread reads. */
export async function answerBatch(
  records: readonly Line[],
  task: BatchTask,
  room: SharedArrayBuffer,
): Promise<BatchAnswer> {
  const lines: BatchLine[] = [];
  for (const record of records) lines.push(await batchLine(record, task));
  return {
    put: putLines(
      lines.map(({ text }) => text),
      room,
    ),
    faults: lines.map(({ fault }) => fault),
  };
}

/** Never throws: what goes wrong with one record is told on its line. Nothing in it depends on the other records. */
async function batchLine(record: Line, task: BatchTask): Promise<BatchLine> {
  if (typeof record !== 'string') return wrong({}, record.unreadable, UNREADABLE[record.unreadable]);
  if (record.trim() === '') return wrong({}, 'empty-line', 'the line is empty');
  return task.changes ? changesLine(record, task, task.changes) : designLine(record, task);
}

async function designLine(record: string, task: BatchTask): Promise<BatchLine> {
  let tree: unknown;
  try {
    tree = JSON.parse(record);
  } catch (error) {
    const at = Number(/position (\d+)/.exec((error as Error).message)?.[1] ?? record.length);
    const rest = shortened(record.slice(at));
    const where = rest === '' ? 'it ends too early' : `from character ${at + 1} on: '${rest}'`;
    return wrong({}, 'not-json', `the line can't be read as JSON, ${where}; allowed: one design a line`);
  }
  const { name } = Object(tree) as { name?: unknown };
  return resultLine(record, { name: typeof name === 'string' ? name : undefined }, task);
}

async function changesLine(
  record: string,
  task: BatchTask,
  { tree, columns, options }: NonNullable<BatchTask['changes']>,
): Promise<BatchLine> {
  const cells = readRow(record);
  if (!Array.isArray(cells)) return wrong({}, 'not-csv', cells.problem);
  if (cells.length !== columns.length) {
    const count = (number: number) => (number === 1 ? 'one cell' : `${number} cells`);
    const message = `the line has ${count(cells.length)} where the head has ${columns.length}; a value with a comma in it stands in double quotes`;
    return wrong({}, 'wrong-columns', message);
  }
  const made = changeByRow(tree, columns, cells);
  if ('problem' in made) return faulty({ name: made.name }, [made.problem]);
  const known = { name: made.name, changes: made.changes };
  return resultLine(JSON.stringify(made.tree), known, task, {
    drawn: isAllPlate(made.changes) ? tree : undefined,
    // each as it would be in a file with the row's changes made
    options: options.map(({ name, changes }) => {
      const changed = changeAll(made.tree, changes);
      return 'problem' in changed
        ? { name, changes, problem: faultOfChange(changed.change, changed.problem) }
        : { name, changes: [...changes, ...changed.also], text: JSON.stringify(changed.tree) };
    }),
  });
}

/** Does a row give every part one plate? */
function isAllPlate(changes: Record<string, string>): boolean {
  return Object.keys(changes).some((column) => pathsIn(column).includes('all.plate'));
}

/** A line of CSV as its cells. */
export function readRow(line: string): string[] | { problem: string } {
  try {
    const rows: string[][] = parse(line, { relax_column_count: true, trim: true, record_delimiter: ['\n'] });
    return rows[0] ?? [''];
  } catch {
    return { problem: "the line can't be read as CSV: its double quotes don't match" };
  }
}

/** A way to build a design, as its line tells it beside the design as drawn. */
type Way = Pick<DesignOption, 'name' | 'changes'> & ({ text: string } | { problem: PlacelessFault });

/**
 * @param ways of a row of changes: `drawn`, the tree before, where all parts were given one plate; and the design's
 * options
 */
async function resultLine(
  text: string,
  known: Known,
  task: BatchTask,
  ways?: { drawn: Tree | undefined; options: Way[] },
): Promise<BatchLine> {
  try {
    const read = await readDesignAnyUnit(text, readingOf(task));
    if (read.faults) return faulty(known, withoutPlaces(read.faults, task));
    const asked: Way[] =
      ways?.options ?? read.options.map((each) => ({ ...each, changes: [...each.changes, ...each.also] }));
    const options: object[] = [];
    for (const way of asked) options.push(await optionResult(way, task));
    const result = {
      ...HEAD,
      name: read.design.name,
      changes: known.changes,
      ...(await solved(read, task, ways?.drawn)),
      ...HEAD,
      ...(options.length > 0 ? { options } : {}),
    };
    return { text: toJsonLine(result) };
  } catch (error) {
    const what = (error instanceof Error ? error.message : String(error)).split('\n')[0];
    const message = `our fault, not yours: ${what}. Please report it with this line and the one it was made from`;
    return { ...wrong(known, 'our-fault', message), fault: 'ours' };
  }
}

/** What an option comes to, or what is wrong with it in this line. */
async function optionResult(way: Way, task: BatchTask): Promise<object> {
  const { name, changes } = way;
  const head = { name: shortened(name), changes: Object.fromEntries(changes.map(({ path, value }) => [path, value])) };
  if ('problem' in way) return { ...head, error: errorOf([way.problem]) };
  const read = await readDesignAnyUnit(way.text, { ...readingOf(task), alone: true });
  if (read.faults) return { ...head, error: errorOf(withoutPlaces(read.faults, task)) };
  return { ...head, ...(await solved(read, task)) };
}

/** Everything that is told of a design, but the design. */
async function solved(
  read: { design: Design; warnings: DesignWarning[] },
  task: BatchTask,
  drawn?: Tree,
): Promise<object> {
  const { steadyOnly, series } = task;
  const asDrawn = drawn && (await readDesignAnyUnit(JSON.stringify(drawn), readingOf(task))).design;
  const thinned = asDrawn ? thinnedParts(asDrawn, read.design) : [];
  const result = estimate(read.design, { steadyOnly });
  const { warmUp } = result;
  return {
    ...result,
    // what it rests on stays where the design is left out
    fitted: result.design.fitted?.logs,
    design: undefined,
    // told of the whole line
    schema: undefined,
    tool: undefined,
    warnings: [...read.warnings, ...thinned, ...result.warnings],
    warmUp: series || warmUp === null ? warmUp : { ...warmUp, series: undefined },
  };
}

function readingOf({ fileName }: BatchTask): ReadOptions {
  return { fileName, namedFile: filesBeside(fileName) };
}

function withoutPlaces(faults: readonly DesignFault[], { fileName }: BatchTask): PlacelessFault[] {
  return faults.map((fault) => withoutPlace(fault, fileName));
}

/**
 * Where a fault stands in the line says nothing, and where the line stands in the stream may not be told: it may be a
 * part.
 */
function withoutPlace({ file, line, column, ...fault }: DesignFault, fileName: string): PlacelessFault {
  if (file === fileName) return fault;
  return { ...fault, message: `${fault.message} (${file}:${line}:${column})` };
}

function faulty(known: Known, told: PlacelessFault[]): BatchLine {
  const { code, message } = errorOf(told);
  return wrong(known, code, message, told);
}

function errorOf(told: PlacelessFault[]): BatchError {
  const count = told.length === 1 ? 'one fault' : `${told.length} faults`;
  const more = told.length === 1 ? '' : ', first';
  const message = `${count} in the design${more}: ${formatPlaceless(told[0])}`;
  return { code: 'wrong-design', message, faults: told };
}

function wrong({ name, changes }: Known, code: string, message: string, faults: BatchError['faults'] = []): BatchLine {
  const error: BatchError = { code, message, faults };
  return {
    text: toJsonLine({ ...HEAD, name: name === undefined ? undefined : shortened(name), changes, error }),
    fault: 'input',
  };
}
