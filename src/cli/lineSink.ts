import { closeSync, constants, fstatSync, ftruncateSync, openSync, realpathSync } from 'node:fs';
import { visibleName } from '../words/plainText.js';
import { isStandardOutput, refuseOwnInput } from './claims.js';
import { exit, Stop } from './exit.js';
import { dropHalfLine } from './halfLine.js';
import { isEnding, newFiles, placeFor, reasonUnwritable, STANDARD_OUTPUT } from './output.js';
import { goesStraight, hungUp, writeWhole } from './straight.js';

/** A place that a result is put line by line, as it comes. Whatever ends the run, whole lines stay. */
export interface LineSink {
  /** Whole lines. Resolves when they are taken, to false where nobody takes any more. */
  write(lines: Uint8Array): Promise<boolean>;
  /** All lines are in. */
  end(): void;
  /** lines that are in */
  readonly lines: number;
}

/**
 * The same for results of any length, which are passed on as they come: a named file holds what is computed so far.
 * What it held before goes with the first line.
 *
 * @param head what each line begins with
 * @throws Stop (wrong usage) when the path can't be written, or holds what this run reads
 */
export function openLineSink(path: string, head: Buffer): LineSink {
  if (isStandardOutput(path)) {
    refuseOwnInput();
    if (!goesStraight(1)) return new PipedLines();
    const append = dropHalfLine(1, head);
    return new StraightLines(1, STANDARD_OUTPUT, { append });
  }
  const existing = placeFor(path);
  try {
    const descriptor = openSync(path, constants.O_WRONLY | constants.O_CREAT);
    if (existing && !existing.isFile()) return new StraightLines(descriptor, path, { append: true });
    if (!existing) newFiles.push(realpathSync(path));
    return new StraightLines(descriptor, path, { append: false, anew: true });
  } catch (error) {
    throw new Stop(exit.wrongUsage, reasonUnwritable(path, error));
  }
}

/** Lines into a file or a device. */
class StraightLines implements LineSink {
  lines = 0;
  /** where the file must end, unless others may write to it as well */
  private size: number | undefined;
  /** the file has a name; GNU parallel gives each job a file that has lost its own already */
  private readonly named: boolean;

  /**
   * @param options.append each line goes to the end of the file, wherever that is by then
   * @param options.anew what the file held before goes with the first line
   */
  constructor(
    private readonly descriptor: number,
    private readonly name: string,
    private readonly options: { append: boolean; anew?: boolean },
  ) {
    const found = fstatSync(descriptor);
    this.named = found.nlink > 0;
    if (found.isFile() && !options.append) this.size = options.anew ? 0 : found.size;
  }

  async write(lines: Uint8Array): Promise<boolean> {
    try {
      if (this.lines === 0) this.start();
      this.refuseOthers();
      this.put(lines);
      if (this.size !== undefined) this.size += lines.length;
      return true;
    } catch (error) {
      if (hungUp(error)) return false;
      throw error instanceof Stop ? error : new Stop(exit.wrongUsage, reasonUnwritable(this.name, error));
    }
  }

  end(): void {
    if (!this.options.anew) return;
    try {
      if (this.lines === 0) this.start();
      closeSync(this.descriptor);
    } catch (error) {
      throw new Stop(exit.wrongUsage, reasonUnwritable(this.name, error));
    }
  }

  private put(lines: Uint8Array): void {
    let whole = lines.length;
    try {
      writeWhole(this.descriptor, lines, (taken) => (whole = taken.lastIndexOf(LINE_FEED) + 1));
    } finally {
      this.lines += linesIn(lines.subarray(0, whole));
    }
  }

  private start(): void {
    if (this.options.anew) ftruncateSync(this.descriptor, 0);
  }

  /** Lines of two runs in one file would stand for nobody's designs. */
  private refuseOthers(): void {
    if (this.size === undefined) return;
    const { size, nlink } = fstatSync(this.descriptor);
    const gone = this.named && nlink === 0;
    if (size === this.size && !gone) return;
    const what = gone ? 'it was taken away meanwhile' : 'something else writes to it as well';
    throw new Stop(
      exit.wrongUsage,
      `${visibleName(this.name)}: ${what}, so this run ends. Give each run a file of its own.`,
    );
  }
}

class PipedLines implements LineSink {
  lines = 0;

  write(lines: Uint8Array): Promise<boolean> {
    return new Promise((done) => {
      if (isEnding()) return;
      process.stdout.write(lines, (error) => {
        if (!error) this.lines += linesIn(lines);
        done(!error);
      });
    });
  }

  end(): void {}
}

const LINE_FEED = 0x0a;

function linesIn(bytes: Uint8Array): number {
  let lines = 0;
  for (const byte of bytes) if (byte === LINE_FEED) lines++;
  return lines;
}
