/**
 * Memory that threads put finished lines into, for the main thread to pass on, again and again.
 *
 * As messages they would live in the main thread's heap until their turn comes. V8 lets a heap grow with all that
 * outlives a moment, so that over a long stream memory would creep upwards.
 */

/** How many bytes of a room are taken; the lines themselves where they don't fit. */
export type Put = number | string;

const SMALLEST = 128 * 1024;

/** Lines into a room, each with its line end. */
export function putLines(lines: readonly string[], room: SharedArrayBuffer): Put {
  const text = lines.map((line) => `${line}\n`).join('');
  return Buffer.byteLength(text) > room.byteLength ? text : Buffer.from(room).write(text);
}

/** Rooms that threads put their answers into, used again and as large as the largest answer asked for. */
export class Rooms {
  private readonly free: SharedArrayBuffer[] = [];
  private size = SMALLEST;

  take(): SharedArrayBuffer {
    const room = this.free.pop();
    return room && room.byteLength >= this.size ? room : new SharedArrayBuffer(this.size);
  }

  /** What was put into a room, good until it's given back. Where it was too small, later ones are larger. */
  read(room: SharedArrayBuffer, put: Put): Buffer {
    if (typeof put === 'number') return Buffer.from(room, 0, put);
    const bytes = Buffer.from(put);
    while (this.size < bytes.length) this.size *= 2;
    return bytes;
  }

  giveBack(room: SharedArrayBuffer): void {
    this.free.push(room);
  }
}
