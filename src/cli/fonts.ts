import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { inflateSync } from 'node:zlib';

const WEIGHTS = [400, 500, 600] as const;

const { resolve } = createRequire(import.meta.url);
const file = (weight: number, ending: string) =>
  readFileSync(resolve(`@fontsource/barlow/files/barlow-latin-${weight}-normal.${ending}`));

/** The charts' font for a canvas or a PDF, one file a weight. */
export function fontFiles(): { weight: number; file: Buffer }[] {
  return WEIGHTS.map((weight) => ({ weight, file: unpacked(file(weight, 'woff')) }));
}

/** The charts' font for a document that carries it within. */
export function embeddedFonts(): { weight: number; base64: string }[] {
  return WEIGHTS.map((weight) => ({ weight, base64: file(weight, 'woff2').toString('base64') }));
}

/**
 * The plain font in a WOFF file: each table inflated, under the directory of an OpenType file. From the WOFF itself the
 * PDF library inflates a table anew for every letter, which takes most of a second.
 *
 * Layout of both: W3C, WOFF File Format 1.0 (2012), sections 3 to 5.
 */
function unpacked(woff: Buffer): Buffer {
  const count = woff.readUInt16BE(12);
  const directory = Buffer.alloc(12 + 16 * count);
  woff.copy(directory, 0, 4, 8);
  directory.writeUInt16BE(count, 4);
  const parts: Buffer[] = [directory];
  let offset = directory.length;
  for (let i = 0; i < count; i++) {
    const entry = woff.subarray(44 + 20 * i, 64 + 20 * i);
    const [from, packed, length, checksum] = [4, 8, 12, 16].map((at) => entry.readUInt32BE(at));
    const stored = woff.subarray(from, from + packed);
    const table = packed < length ? inflateSync(stored) : stored;
    entry.copy(directory, 12 + 16 * i, 0, 4);
    [checksum, offset, length].forEach((value, k) => directory.writeUInt32BE(value, 16 + 16 * i + 4 * k));
    const padding = Buffer.alloc(-length & 3);
    parts.push(table, padding);
    offset += length + padding.length;
  }
  return Buffer.concat(parts);
}
