import { fstatSync } from 'node:fs';
import { problemOfColumns } from '../../design/changeColumns.js';
import { formatPlaceless } from '../../design/faults.js';
import { withoutOptions } from '../../design/options.js';
import { readSource } from '../../design/source.js';
import type { Tree } from '../../design/vary.js';
import { LINE_HEAD, LONGEST_LINE, readRow, type BatchAnswer, type BatchTask } from '../batchLine.js';
import { claimInput } from '../claims.js';
import { exit, Stop } from '../exit.js';
import { STANDARD_INPUT } from '../input.js';
import { linesOf, type Line } from '../lines.js';
import { loadDesign } from '../loadDesign.js';
import { openLineSink, type LineSink } from '../lineSink.js';
import { refuseClashes } from '../output.js';
import { defaultWorkers, inOrder, SLICE, withThreads, type Ask } from '../pool.js';
import { Rooms } from '../rooms.js';
import { rateTeller, tell } from '../stderr.js';

/** What `batch` is asked for on the command line. */
export interface BatchOptions {
  /** file of the design that lines of CSV change; absent: each line is a design */
  changes?: string;
  steady?: boolean;
  series?: boolean;
  from: number;
  count?: number;
  output?: string;
  workers?: number;
}

/**
 * Slices a thread has before it or done and waiting for their turn: enough that none idles while another has a slow
 * design.
 */
const WINDOW = 16;

/**
 * A thread's heap [MB]: the old part five times what the worst lines take; with a larger young one memory creeps up.
 */
const HEAP = { young: 12, old: 128 };

/**
 * A filter: designs in, a line each; results out, a line each, in the same order, however many threads share the work.
 */
export async function run(options: BatchOptions): Promise<void> {
  const { changes, output = '-', workers = defaultWorkers() } = options;
  if (changes === '-') throw new Stop(exit.wrongUsage, '--changes takes a file: standard input holds the changes.');
  if (changes !== undefined) refuseClashes(changes, { '--output': options.output });
  const changed = changes === undefined ? undefined : await waysOf(changes);
  claimInput('-', changed ? 'table of changes' : 'file of designs');
  const out = openLineSink(output, LINE_HEAD);
  if (process.stdin.isTTY) tell('pitwright: reading from the keyboard, a line at a time; Ctrl-D ends it');

  const { steady = false, series = false } = options;
  const task: BatchTask = { steadyOnly: steady, series, fileName: changes ?? STANDARD_INPUT };
  let lines = fromStandardInput();
  if (changed) {
    const { columns, rest } = await headOf(lines);
    task.changes = { ...changed, columns };
    lines = rest;
  }
  const said = rateTeller();
  const told = { lines: 0, input: 0, ours: 0 };
  const rooms = new Rooms();
  const compute = (ask: Ask) => async (records: Line[]) => {
    const room = rooms.take();
    const job = { kind: 'batch', records, task, room } as const;
    const [{ put, faults }] = await ask<BatchAnswer>({ job, from: 0, to: records.length });
    return { room, bytes: rooms.read(room, put), faults };
  };
  const write = async (ask: Ask) => {
    for await (const { room, bytes, faults } of inOrder(slicesOf(lines, options), compute(ask), WINDOW * workers)) {
      if (!(await out.write(bytes))) return false;
      rooms.giveBack(room);
      for (const fault of faults) if (fault) told[fault]++;
      told.lines += faults.length;
      said.soFar(told.lines);
    }
    return true;
  };
  try {
    if (!(await withThreads(workers, write, HEAP))) return;
  } catch (error) {
    tellHowFar(out, options);
    throw error;
  } finally {
    process.stdin.destroy();
  }
  out.end();
  conclude(told, said.total(told.lines));
}

/** What was computed before something went wrong stays. */
function tellHowFar({ lines }: LineSink, { from }: BatchOptions): void {
  if (lines === 0) return;
  const whole = lines === 1 ? 'one whole line' : `${lines} whole lines`;
  tell(`pitwright: broke off after ${whole}, which stay; --from ${from + lines} goes on from there`);
}

/** All results are out; lines that hold none are told by the exit code and their number. */
function conclude({ input, ours }: { input: number; ours: number }, total: string): void {
  if (input + ours === 0) return tell(`pitwright: ${total}`);
  const wrong = input + ours;
  const lines = wrong === 1 ? 'one line is an error line and says' : `${wrong} lines are error lines and say`;
  throw new Stop(ours > 0 ? exit.ourFault : exit.wrongInput, `${total}; ${lines} what is wrong`);
}

/** The tree of a design that reads without faults, and its options. */
async function waysOf(path: string): Promise<Omit<NonNullable<BatchTask['changes']>, 'columns'>> {
  const { text, options } = await loadDesign(path);
  const tree = withoutOptions((readSource(text, path) as { tree: Tree }).tree);
  return { tree, options: options.map(({ name, changes }) => ({ name, changes })) };
}

async function* fromStandardInput(): AsyncGenerator<Line[]> {
  if (fstatSync(0).isDirectory())
    throw new Stop(exit.wrongInput, 'standard input: this is a folder. Give a file of lines.');
  try {
    yield* linesOf(process.stdin, LONGEST_LINE);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? String(error);
    throw new Stop(exit.wrongInput, `standard input: can't be read (${code}).`);
  }
}

/** The fields that a table of changes has for its head, and the lines below it. */
async function headOf(lines: AsyncGenerator<Line[]>): Promise<{ columns: string[]; rest: AsyncGenerator<Line[]> }> {
  const refused = (problem: string) => new Stop(exit.wrongInput, `standard input: ${problem}`);
  const first = await lines.next();
  if (first.done)
    throw refused('it is empty. A table of changes starts with a line of fields, such as name,chamber.plate');
  const [head, ...others] = first.value;
  if (typeof head !== 'string') throw refused('its first line, the head of the table, is no line of text.');
  const columns = readRow(head);
  if (!Array.isArray(columns)) throw refused(`its first line, the head of the table: ${columns.problem}`);
  const problem = problemOfColumns(columns);
  if (problem) throw refused(`the head of the table: ${formatPlaceless(problem)}`);
  async function* rest() {
    if (others.length > 0) yield others;
    yield* lines;
  }
  return { columns, rest: rest() };
}

/** Records that are to be computed, a slice at a time; a slice never waits for lines that are still to come. */
async function* slicesOf(
  lines: AsyncIterable<Line[]>,
  { from, count = Infinity }: BatchOptions,
): AsyncGenerator<Line[]> {
  let passed = 0;
  const last = from - 1 + count;
  for await (const group of lines) {
    const wanted = group.slice(Math.max(0, from - 1 - passed), Math.max(0, last - passed));
    passed += group.length;
    for (let i = 0; i < wanted.length; i += SLICE) yield wanted.slice(i, i + SLICE);
    if (passed >= last) return;
  }
}
