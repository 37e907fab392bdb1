import { createReadStream, readdirSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { visibleName } from '../words/plainText.js';
import { nearestName } from '../units/index.js';
import { claimInput } from './claims.js';
import { exit, Stop } from './exit.js';

/** What a file is expected to hold, for messages and limits. */
interface Expected {
  what: string;
  /** what such a file is, as a sentence */
  form: string;
  /** of its name */
  endings: RegExp;
  /** above this it's some other file, and reading on would only fill the memory [bytes] */
  largest: number;
}

/** A page of text. */
const DESIGN: Expected = {
  what: 'design',
  form: "A design is YAML or JSON text; 'pitwright new' writes one to start from.",
  endings: /\.(ya?ml|json)$/i,
  largest: 1_000_000,
};
/** What a file of cases must look like. */
export const CASES: Expected = {
  what: 'case',
  form: 'Cases are a CSV table.',
  endings: /\.csv$/i,
  largest: 20_000_000,
};
/** What a logger's file must look like. */
export const LOG: Expected = {
  what: 'log',
  form: 'A log is a CSV table.',
  endings: /\.(csv|txt|tsv)$/i,
  largest: 50_000_000,
};

/** How messages name what `-` stands for. */
export const STANDARD_INPUT = 'standard input';

/** Names that can't be shown as they are, by how messages name them. */
const names = new Map<string, string>();

/** The path of a file that messages name so. */
export function pathNamed(fileName: string): string {
  return names.get(fileName) ?? fileName;
}

interface InputText {
  text: string;
  /** how messages name it */
  fileName: string;
}

/**
 * Reads a whole text file, or standard input for `-`.
 *
 * @throws Stop (wrong input) when it's missing, a folder, unreadable, too large or not UTF-8 text
 */
export async function readText(path: string, expected = DESIGN): Promise<InputText> {
  const fileName = path === '-' ? STANDARD_INPUT : visibleName(path);
  if (fileName !== path) names.set(fileName, path);
  if (path !== '-') await refuseFolder(path, expected);
  claimInput(path, expected.what);
  let bytes: Buffer;
  try {
    bytes = await readAtMost(path === '-' ? process.stdin : createReadStream(path), fileName, expected);
  } catch (error) {
    throw error instanceof Stop ? error : new Stop(exit.wrongInput, reasonUnreadable(path, error));
  }
  return { text: decode(bytes, fileName, expected), fileName };
}

async function refuseFolder(path: string, { what, endings }: Expected): Promise<void> {
  const found = await stat(path).catch(() => undefined);
  if (!found?.isDirectory()) return;
  const fitting = readdirSync(path)
    .filter((name) => endings.test(name))
    .sort();
  // a folder may hold other files of the same ending: one that is called what it should be is the likelier
  const likely = fitting.find((name) => name.includes(what)) ?? fitting.at(0);
  const remedy = likely === undefined ? '; it holds none' : `, such as ${visibleName(join(path, likely))}`;
  throw new Stop(exit.wrongInput, `${visibleName(path)}: this is a folder. Give a ${what} file${remedy}.`);
}

async function readAtMost(stream: NodeJS.ReadableStream, fileName: string, expected: Expected): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of stream) {
    const bytes = Buffer.from(chunk);
    length += bytes.length;
    if (length > expected.largest) {
      throw new Stop(
        exit.wrongInput,
        `${fileName}: over ${expected.largest / 1e6} MB, too much for a ${expected.what} file. Is this the right file?`,
      );
    }
    chunks.push(bytes);
  }
  return Buffer.concat(chunks);
}

function decode(bytes: Buffer, fileName: string, { form }: Expected): string {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    throw new Stop(exit.wrongInput, `${fileName}: saved as UTF-16 text. Save it as UTF-8 and try again.`);
  }
  if (bytes.includes(0)) {
    throw new Stop(exit.wrongInput, `${fileName}: not a text file. ${form}`);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Stop(exit.wrongInput, `${fileName}: not UTF-8 text. Save it as UTF-8 and try again.`);
  }
}

function reasonUnreadable(path: string, error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  const name = visibleName(path);
  if (code === 'ENOENT' || code === 'ENOTDIR') {
    const near = nearestFile(path);
    return `${name}: no such file.${near ? ` Did you mean ${visibleName(near)}?` : ''}`;
  }
  if (code === 'EACCES' || code === 'EPERM') return `${name}: you may not read this file. Mend its permissions.`;
  return `${name}: can't be read (${code ?? String(error)}).`;
}

/**
 * The nearest name to one that no file has.
 *
 * @param shown folder that it is shown in, where that isn't the path's own
 */
export function nearestFile(path: string, shown = dirname(path)): string | undefined {
  try {
    const name = nearestName(basename(path), readdirSync(dirname(path)));
    return name && (path.includes('/') || path.includes('\\') ? join(shown, name) : name);
  } catch {
    return undefined;
  }
}
