import { closeSync, constants, fstatSync, ftruncateSync, openSync, readFileSync, readSync } from 'node:fs';
import { exit, Stop } from './exit.js';
import { STANDARD_OUTPUT } from './output.js';
import { tell } from './stderr.js';

const LINE_FEED = 0x0a;
const BLOCK = 64 * 1024;

/**
 * What a killed run left of its last line is taken away before a next one goes on behind it: line N stays design N, and
 * a count of line ends is the count of what is done. A system without /proc can't be asked what its standard output is,
 * and nothing is done.
 *
 * @param descriptor of standard output
 * @param head what each of our lines begins with
 * @returns whether all that is written goes to the end of the file, wherever that is by then
 * @throws Stop (wrong usage) where what stands there is nothing of ours, or can't be taken away
 */
export function dropHalfLine(descriptor: number, head: Buffer): boolean {
  const found = fstatSync(descriptor);
  const flags = found.isFile() ? flagsOf(descriptor) : undefined;
  if (flags === undefined) return true;
  const append = (flags & constants.O_APPEND) !== 0;
  if (found.size === 0) return append;
  const piece = lastPiece(`/proc/self/fd/${descriptor}`, found.size, head.length);
  if (piece === undefined || piece.length === 0) return append;
  const ours = piece.beginning.equals(head.subarray(0, piece.length));
  if (!ours || !append) {
    const what = ours ? 'is cut short' : 'has no end, and is no line of results';
    throw new Stop(
      exit.wrongUsage,
      `${STANDARD_OUTPUT}: the last line that is there already ${what}; go on with >> behind whole lines of results alone.`,
    );
  }
  ftruncateSync(descriptor, found.size - piece.length);
  tell(
    `pitwright: ${STANDARD_OUTPUT}: took away its last line, of which a run that broke off had written a part alone`,
  );
  return append;
}

/** How a file was opened, where the system tells. */
function flagsOf(descriptor: number): number | undefined {
  try {
    const flags = /^flags:\s*([0-7]+)$/m.exec(readFileSync(`/proc/self/fdinfo/${descriptor}`, 'utf8'))?.[1];
    return flags === undefined ? undefined : Number.parseInt(flags, 8);
  } catch {
    return undefined;
  }
}

interface Piece {
  length: number;
  beginning: Buffer;
}

/** What stands behind the last line end; undefined where the file can't be read. */
function lastPiece(path: string, size: number, shown: number): Piece | undefined {
  let descriptor: number;
  try {
    descriptor = openSync(path, 'r');
  } catch {
    return undefined;
  }
  const read = (from: number, to: number) => {
    const bytes = Buffer.alloc(to - from);
    return bytes.subarray(0, readSync(descriptor, bytes, 0, bytes.length, from));
  };
  try {
    let start = 0;
    for (let to = size; to > 0 && start === 0; to -= BLOCK) {
      const from = Math.max(0, to - BLOCK);
      const end = read(from, to).lastIndexOf(LINE_FEED);
      if (end >= 0) start = from + end + 1;
    }
    return { length: size - start, beginning: read(start, Math.min(size, start + shown)) };
  } finally {
    closeSync(descriptor);
  }
}
