import { isUtf8 } from 'node:buffer';

/** A line of a stream, or why it can't be read. */
export type Line = string | { unreadable: 'too-long' | 'not-text' };

const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;
const BYTE_ORDER_MARK = Buffer.from([0xef, 0xbb, 0xbf]);

/**
 * Cuts a stream of bytes into its lines, without their endings.
 *
 * Every line end makes a line, empty ones too, and what stands after the last one is a line if it holds anything. The
 * bytes of a line over the limit are let go as they come.
 */
class LineCutter {
  private parts: Buffer[] = [];
  private length = 0;
  private first = true;

  /** @param longest bytes of a line */
  constructor(private readonly longest: number) {}

  /** The lines that end in a chunk. */
  push(chunk: Buffer): Line[] {
    const lines: Line[] = [];
    let from = 0;
    for (let at = chunk.indexOf(LINE_FEED); at >= 0; at = chunk.indexOf(LINE_FEED, from)) {
      this.keep(chunk.subarray(from, at));
      lines.push(this.take());
      from = at + 1;
    }
    this.keep(chunk.subarray(from));
    return lines;
  }

  /** The last line, where none ended it. */
  end(): Line[] {
    return this.length > 0 ? [this.take()] : [];
  }

  private keep(bytes: Buffer): void {
    this.length += bytes.length;
    if (this.length > this.longest) this.parts = [];
    else if (bytes.length > 0) this.parts.push(bytes);
  }

  private take(): Line {
    const line =
      this.length > this.longest ? undefined : this.parts.length === 1 ? this.parts[0] : Buffer.concat(this.parts);
    const { first } = this;
    [this.parts, this.length, this.first] = [[], 0, false];
    if (line === undefined) return { unreadable: 'too-long' };
    const start = first && line.subarray(0, 3).equals(BYTE_ORDER_MARK) ? 3 : 0;
    const end = line.at(-1) === CARRIAGE_RETURN ? line.length - 1 : line.length;
    const text = line.subarray(start, end);
    return isUtf8(text) ? text.toString('utf8') : { unreadable: 'not-text' };
  }
}

/** The lines of a stream, those of a chunk at a time: none waits for the next chunk to come. */
export async function* linesOf(stream: AsyncIterable<Buffer>, longest: number): AsyncGenerator<Line[]> {
  const cutter = new LineCutter(longest);
  for await (const chunk of stream) {
    const lines = cutter.push(chunk);
    if (lines.length > 0) yield lines;
  }
  const last = cutter.end();
  if (last.length > 0) yield last;
}
