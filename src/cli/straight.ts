/** Writing that is done when the call returns, where that is known to take no waiting. */
import { fstatSync, ftruncateSync, writeSync } from 'node:fs';
import { isatty } from 'node:tty';

/** Files and devices; a terminal and a pipe may want to be waited for. */
export function goesStraight(descriptor: number): boolean {
  const found = fstatSync(descriptor);
  return found.isFile() || (found.isCharacterDevice() && !isatty(descriptor));
}

/**
 * Writes all of it: Node's own stream for files forgets what a full disk didn't take. Where the disk takes a part
 * alone, what isn't whole of that is taken back.
 *
 * @param wholeOf how much of the bytes that were taken is whole
 */
export function writeWhole(descriptor: number, bytes: Uint8Array, wholeOf: (taken: Uint8Array) => number): void {
  const before = fstatSync(descriptor);
  let taken = 0;
  try {
    while (taken < bytes.length) taken += writeSync(descriptor, bytes, taken);
  } catch (error) {
    const whole = wholeOf(bytes.subarray(0, taken));
    const { size } = fstatSync(descriptor);
    if (before.isFile() && size === before.size + taken) ftruncateSync(descriptor, before.size + whole);
    throw error;
  }
}

/** The reader has seen enough. */
export function hungUp(error: unknown): boolean {
  return (error as NodeJS.ErrnoException).code === 'EPIPE';
}
