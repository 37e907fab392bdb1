import { randomBytes } from 'node:crypto';
import {
  accessSync,
  closeSync,
  constants,
  fstatSync,
  mkdirSync,
  openSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import type { Stats } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { exit, Stop } from './exit.js';

/** A place that a finished result is put in one go: the reader of the file never sees half of it. */
export interface Sink {
  write(content: string | Uint8Array): Promise<void>;
}

/** Files begun and not yet in place; taken away when the run ends early. */
const unfinished = new Set<string>();
/** Folders made for this run; taken away when the run ends early and they are still empty. */
const newFolders: string[] = [];

/** Standard output. Resolves when the reader has it, or has gone away. */
export const standardOutput: Sink = {
  write: (content) =>
    new Promise((done) => {
      process.stdout.write(content, () => done());
    }),
};

/**
 * A file, opened before the work starts so that a path that can't be written is told at once; `-` is standard output.
 * The content goes to a temporary file beside it, which takes its place when complete. Devices and pipes are written
 * straight.
 *
 * @throws Stop (wrong usage) when the path can't be written
 */
export function openSink(path: string): Sink {
  if (path === '-') return standardOutput;
  const existing = statOf(path);
  refuseFolder(path, existing);
  if (existing && !existing.isFile()) {
    return {
      write: async (content) => {
        try {
          writeFileSync(path, content);
        } catch (error) {
          throw new Stop(exit.wrongUsage, reasonUnwritable(path, error));
        }
      },
    };
  }
  const begun = begin(path, existing);
  closeSync(begun.descriptor);
  return {
    write: async (content) => {
      try {
        writeFileSync(begun.temporary, content);
        renameSync(begun.temporary, begun.target);
      } catch (error) {
        rmSync(begun.temporary, { force: true });
        throw new Stop(exit.wrongUsage, reasonUnwritable(path, error));
      } finally {
        unfinished.delete(begun.temporary);
      }
    },
  };
}

/** A temporary file beside the one that it will take the place of. */
function begin(path: string, existing: Stats | undefined): { temporary: string; target: string; descriptor: number } {
  const target = existing ? realpathSync(path) : resolve(path);
  const temporary = join(dirname(target), `.${basename(target)}.${randomBytes(4).toString('hex')}.tmp`);
  try {
    const descriptor = openSync(temporary, 'wx', existing?.mode);
    unfinished.add(temporary);
    return { temporary, target, descriptor };
  } catch (error) {
    throw new Stop(exit.wrongUsage, reasonUnwritable(path, error));
  }
}

/** A place that a result is put line by line, as it comes. */
export interface LineSink {
  /** Whole lines. Resolves when they are taken, to false where nobody takes any more. */
  write(lines: Uint8Array): Promise<boolean>;
  /** All lines are in. */
  end(): void;
}

/**
 * The same for results of any length, which are passed on as they come. A named file still appears only when it's
 * complete, so what is to be read on the way, or gone on with later, goes to standard output.
 *
 * @throws Stop (wrong usage) when the path can't be written
 */
export function openLineSink(path: string): LineSink {
  if (path === '-') return fstatSync(1).isFile() ? straightTo(1, 'standard output') : pipedOutput;
  const existing = statOf(path);
  refuseFolder(path, existing);
  if (existing && !existing.isFile()) {
    try {
      return straightTo(openSync(path, 'w'), path);
    } catch (error) {
      throw error instanceof Stop ? error : new Stop(exit.wrongUsage, reasonUnwritable(path, error));
    }
  }
  const { temporary, target, descriptor } = begin(path, existing);
  return {
    ...straightTo(descriptor, path),
    end: () => {
      closeSync(descriptor);
      renameSync(temporary, target);
      unfinished.delete(temporary);
    },
  };
}

/** Written before the call returns, all of it: Node's own stream for files forgets what a full disk didn't take. */
function straightTo(descriptor: number, name: string): LineSink {
  return {
    write: async (lines) => {
      try {
        writeFileSync(descriptor, lines);
        return true;
      } catch (error) {
        throw new Stop(exit.wrongUsage, reasonUnwritable(name, error));
      }
    },
    end: () => {},
  };
}

/** Set when a signal ends the run: whatever is on its way still gets out whole, and nothing after it. */
let ending = false;

const pipedOutput: LineSink = {
  write: (lines) =>
    new Promise((done) => {
      if (!ending) process.stdout.write(lines, (error) => done(!error));
    }),
  end: () => {},
};

/** Resolves when the reader has what was written so far, or has gone away. Nothing more is passed on. */
export function lastWordsOut(): Promise<void> {
  ending = true;
  return new Promise((done) => process.stdout.write('', () => done()));
}

/**
 * Makes a folder and the folders above it, before the work starts.
 *
 * @throws Stop (wrong usage) when it can't be made
 */
export function openFolder(path: string): void {
  try {
    const first = mkdirSync(path, { recursive: true });
    accessSync(path, constants.W_OK);
    if (first !== undefined) newFolders.push(...foldersBetween(resolve(first), resolve(path)));
  } catch (error) {
    throw new Stop(exit.wrongUsage, reasonUnwritable(path, error));
  }
}

/** From the innermost outwards. */
function foldersBetween(outer: string, inner: string): string[] {
  return inner === outer || inner === dirname(inner) ? [inner] : [inner, ...foldersBetween(outer, dirname(inner))];
}

/** Takes away what a run that ended early has begun. Nothing is left to do after a run that went through. */
export function discardUnfinished(): void {
  for (const file of unfinished) rmSync(file, { force: true });
  unfinished.clear();
  for (const folder of newFolders) {
    try {
      rmdirSync(folder);
    } catch {
      // not empty: what stands in it is complete, so it stays
    }
  }
  newFolders.length = 0;
}

/**
 * Refuses outputs that would overwrite each other or the input, before anything is read.
 *
 * @param input path of the input, `-` for standard input
 * @param outputs path by option name; `-` is standard output
 * @param what the input is, for the message
 * @throws Stop (wrong usage)
 */
export function refuseClashes(input: string, outputs: Record<string, string | undefined>, what = 'design'): void {
  const given = Object.entries(outputs).flatMap(([option, path]) => (path === undefined ? [] : [{ option, path }]));
  for (const [i, { option, path }] of given.entries()) {
    if (sameFile(path, input)) throw new Stop(exit.wrongUsage, `${option} ${path} would overwrite the ${what} itself.`);
    const other = given.slice(i + 1).find((each) => sameFile(path, each.path));
    if (other) throw new Stop(exit.wrongUsage, `${option} and ${other.option} both name ${path}.`);
  }
}

/** @throws Stop (wrong usage) when JSON and CSV would lie in one another on standard output */
export function refuseMixture({ json, csv, output = '-' }: { json?: boolean; csv?: string; output?: string }): void {
  if (!json || csv !== '-' || output !== '-') return;
  throw new Stop(exit.wrongUsage, '--json and --csv - would both go to standard output. Give one of them a file.');
}

function sameFile(a: string, b: string): boolean {
  const real = (path: string) => {
    try {
      return realpathSync(path);
    } catch {
      return resolve(path);
    }
  };
  return a !== '-' && b !== '-' && real(a) === real(b);
}

function refuseFolder(path: string, existing: Stats | undefined): void {
  if (!existing?.isDirectory()) return;
  throw new Stop(exit.wrongUsage, `${path}: this is a folder. Give the name of a file in it.`);
}

function statOf(path: string): Stats | undefined {
  try {
    return statSync(path);
  } catch {
    return undefined;
  }
}

/** Why a place can't be written, and what to do, from the system's error. */
export function reasonUnwritable(path: string, error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT') return `${path}: the folder ${dirname(path)} does not exist. Make it first.`;
  if (code === 'ENOTDIR' || code === 'EEXIST') return `${path}: a file stands where a folder is needed.`;
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return `${path}: you may not write here.`;
  if (code === 'ENOSPC') return `${path}: the disk is full.`;
  return `${path}: can't be written (${code ?? String(error)}).`;
}
