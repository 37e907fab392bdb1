/**
 * Which files a run reads and writes, so that no output overwrites an input or another output, by whatever name it
 * goes.
 */
import { fstatSync, realpathSync, statSync, type BigIntStats } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { visibleName } from '../words/plainText.js';
import { exit, Stop } from './exit.js';

/** What a design rests on; the one input that `fit` may renew. */
export const FITTED_FILE = 'fitted values that the design rests on';
const OUTPUT = 'another output of this run';

/**
 * What each file is, by its place and by its number on its disk: links of both kinds and other spellings lead there
 * too.
 */
const claimed = new Map<string, string>();

/** A file is read, as what messages call it. Standard input for `-`. */
export function claimInput(path: string, what: string): void {
  const key = path === '-' ? keyOf(statOf(0)) : keyOf(statOf(path));
  if (key !== undefined) claimed.set(key, what);
}

/**
 * A file is to be written.
 *
 * @param renewed what may stand there
 * @throws Stop (wrong usage) where that would overwrite what the run reads or writes elsewhere
 */
export function claimOutput(path: string, renewed?: string): void {
  refuseClaimed(path, renewed);
  claimed.set(placeOf(path), OUTPUT);
}

/** @throws Stop (wrong usage) where a file is claimed as something else than what may stand there */
export function refuseClaimed(path: string, renewed?: string): void {
  const key = keyOf(statOf(path));
  const goesOut = key !== undefined && key === keyOf(statOf(1)) ? OUTPUT : undefined;
  const what = claimed.get(placeOf(path)) ?? claimed.get(key ?? '') ?? goesOut;
  if (what === undefined || what === renewed) return;
  const whose = what === OUTPUT ? what : `the ${what} itself`;
  throw new Stop(exit.wrongUsage, `${visibleName(path)}: this would overwrite ${whose}. Give another name or folder.`);
}

/** @throws Stop (wrong usage) where standard output has been redirected into what the run reads */
export function refuseOwnInput(): void {
  const what = claimed.get(keyOf(statOf(1)) ?? '');
  if (what === undefined || what === OUTPUT) return;
  throw new Stop(exit.wrongUsage, `standard output goes into the ${what} itself. Give it a file of its own.`);
}

/** Whether two paths lead to one file, also one that is still to be made. */
export function sameFile(a: string, b: string): boolean {
  if (placeOf(a) === placeOf(b)) return true;
  const key = keyOf(statOf(a));
  return key !== undefined && key === keyOf(statOf(b));
}

/** Whether a path leads to what standard output already is, as /dev/stdout does. */
export function isStandardOutput(path: string): boolean {
  if (path === '-') return true;
  const [named, open] = [statOf(path), statOf(1)];
  return named !== undefined && open !== undefined && named.dev === open.dev && named.ino === open.ino;
}

/** Where a file stands or will stand, links of the folder followed. */
function placeOf(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    try {
      return join(realpathSync(dirname(path)), basename(path));
    } catch {
      return resolve(path);
    }
  }
}

/** Devices and pipes may be read and written by anybody. */
function keyOf(found: BigIntStats | undefined): string | undefined {
  return found?.isFile() ? `${found.dev}:${found.ino}` : undefined;
}

function statOf(file: string | number): BigIntStats | undefined {
  try {
    return typeof file === 'number' ? fstatSync(file, { bigint: true }) : statSync(file, { bigint: true });
  } catch {
    return undefined;
  }
}
