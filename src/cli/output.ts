import { randomBytes } from 'node:crypto';
import {
  accessSync,
  closeSync,
  constants,
  mkdirSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import type { Stats } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { visible, visibleName } from '../words/plainText.js';
import { claimOutput, isStandardOutput, refuseClaimed, refuseOwnInput, sameFile } from './claims.js';
import { exit, Stop } from './exit.js';
import { goesStraight, hungUp, writeWhole } from './straight.js';

/** A place that a finished result is put in one go: the reader of the file never sees half of it. */
export interface Sink {
  /** Text, in which nothing is left that a terminal obeys; or bytes as they are. */
  write(content: string | Uint8Array): Promise<void>;
}

/** What messages call the stream that stands in for a file. */
export const STANDARD_OUTPUT = 'standard output';

/** Files begun and not yet in place; taken away when the run ends early. */
const unfinished = new Set<string>();
/** Files and folders made for this run; taken away when the run ends early and they are still empty. */
export const newFiles: string[] = [];
const newFolders: string[] = [];

/** Standard output. Resolves when the reader has it, or has gone away. */
export const standardOutput: Sink = {
  write: async (content) => {
    const bytes = bytesOf(content);
    if (!goesStraight(1)) return new Promise((done) => process.stdout.write(bytes, () => done()));
    try {
      writeWhole(1, bytes, () => 0);
    } catch (error) {
      throw new Stop(exit.wrongUsage, reasonUnwritable(STANDARD_OUTPUT, error));
    }
  },
};

/**
 * A file, opened before the work starts so that a path that can't be written is told at once; `-` is standard output.
 * The content goes to a temporary file beside it, which takes its place when complete. Devices and pipes are written
 * straight.
 *
 * @param renewed what this run reads and may all the same replace
 * @throws Stop (wrong usage) when the path can't be written, or holds what this run reads or writes elsewhere
 */
export function openSink(path: string, renewed?: string): Sink {
  if (isStandardOutput(path)) {
    refuseOwnInput();
    return standardOutput;
  }
  const existing = placeFor(path, renewed);
  if (existing && !existing.isFile()) {
    return {
      write: async (content) => {
        try {
          writeFileSync(path, bytesOf(content));
        } catch (error) {
          if (!hungUp(error)) throw new Stop(exit.wrongUsage, reasonUnwritable(path, error));
        }
      },
    };
  }
  const begun = begin(path, existing);
  return {
    write: async (content) => {
      try {
        writeFileSync(begun.temporary, bytesOf(content));
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

/**
 * What stands at a path that is to be written, once nothing speaks against it.
 *
 * @throws Stop (wrong usage)
 */
export function placeFor(path: string, renewed?: string): Stats | undefined {
  const existing = statOf(path);
  if (existing?.isDirectory()) {
    throw new Stop(exit.wrongUsage, `${visibleName(path)}: this is a folder. Give the name of a file in it.`);
  }
  if (path === '' || /[\\/]$/.test(path)) {
    throw new Stop(exit.wrongUsage, `'${visibleName(path)}' is no name of a file. Give one, such as out.txt.`);
  }
  claimOutput(path, renewed);
  try {
    if (existing) accessSync(path, constants.W_OK);
  } catch (error) {
    throw new Stop(exit.wrongUsage, reasonUnwritable(path, error));
  }
  return existing;
}

/** Of a file's name, so much stands in the name of its temporary file: a name may be 255 bytes long. */
const NAME_KEPT = 40;

/** A temporary file beside the one that it will take the place of. */
function begin(path: string, existing: Stats | undefined): { temporary: string; target: string } {
  const target = existing ? realpathSync(path) : resolve(path);
  const name = basename(target).slice(0, NAME_KEPT);
  const temporary = join(dirname(target), `.${name}.${randomBytes(4).toString('hex')}.tmp`);
  try {
    closeSync(openSync(temporary, 'wx', existing?.mode));
    unfinished.add(temporary);
    return { temporary, target };
  } catch (error) {
    throw new Stop(exit.wrongUsage, reasonUnwritable(path, error));
  }
}

function bytesOf(content: string | Uint8Array): Uint8Array {
  return typeof content === 'string' ? Buffer.from(visible(content)) : content;
}

/** Set when a signal ends the run: whatever is on its way still gets out whole, and nothing after it. */
let ending = false;

/** Has a signal ended the run? */
export function isEnding(): boolean {
  return ending;
}

/** Resolves when the reader has what was written so far, or has gone away. Nothing more is passed on. */
export function lastWordsOut(): Promise<void> {
  ending = true;
  return new Promise((done) => process.stdout.write('', () => done()));
}

/**
 * Makes a folder for pictures and the folders above it, before the work starts and before any other output is opened:
 * one may lie in it.
 *
 * @throws Stop (wrong usage) when it can't be made, or a picture could overwrite what this run reads
 */
export function openFolder(path: string): void {
  if (path === '') throw new Stop(exit.wrongUsage, "'' is no name of a folder. Give one, such as charts.");
  try {
    const first = mkdirSync(path, { recursive: true });
    accessSync(path, constants.W_OK);
    if (first !== undefined) newFolders.push(...foldersBetween(resolve(first), resolve(path)));
    for (const name of readdirSync(path)) if (PICTURE.test(name)) refuseClaimed(join(path, name));
  } catch (error) {
    throw error instanceof Stop ? error : new Stop(exit.wrongUsage, reasonUnwritable(path, error));
  }
}

/** What a picture may be called. */
const PICTURE = /\.(png|svg)$/i;

/** From the innermost outwards. */
function foldersBetween(outer: string, inner: string): string[] {
  return inner === outer || inner === dirname(inner) ? [inner] : [inner, ...foldersBetween(outer, dirname(inner))];
}

/** Takes away what a run that ended early has begun. Nothing is left to do after a run that went through. */
export function discardUnfinished(): void {
  for (const file of unfinished) rmSync(file, { force: true });
  unfinished.clear();
  for (const file of newFiles) if (statOf(file)?.size === 0) rmSync(file, { force: true });
  newFiles.length = 0;
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
    if (path === '-') continue;
    if (input !== '-' && sameFile(path, input))
      throw new Stop(exit.wrongUsage, `${option} ${visibleName(path)} would overwrite the ${what} itself.`);
    const other = given.slice(i + 1).find((each) => each.path !== '-' && sameFile(path, each.path));
    if (other) throw new Stop(exit.wrongUsage, `${option} and ${other.option} both name ${visibleName(path)}.`);
  }
}

/** @throws Stop (wrong usage) when JSON and CSV would lie in one another on standard output */
export function refuseMixture({ json, csv, output = '-' }: { json?: boolean; csv?: string; output?: string }): void {
  if (!json || csv === undefined || !isStandardOutput(csv) || !isStandardOutput(output)) return;
  throw new Stop(exit.wrongUsage, '--json and --csv would both go to standard output. Give one of them a file.');
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
  const name = visibleName(path);
  if (code === 'ENOENT') return `${name}: the folder ${visibleName(dirname(path))} does not exist. Make it first.`;
  if (code === 'ENOTDIR' || code === 'EEXIST') return `${name}: a file stands where a folder is needed.`;
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return `${name}: you may not write here.`;
  if (code === 'ENOSPC') return `${name}: the disk is full.`;
  if (code === 'EDQUOT') return `${name}: your share of the disk is full.`;
  if (code === 'EFBIG') return `${name}: no file may grow that large here.`;
  if (code === 'ENAMETOOLONG') return `${name}: the name is too long.`;
  return `${name}: can't be written (${code ?? String(error)}).`;
}
