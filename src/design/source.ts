/** YAML or JSON text to a plain tree, with the place of every field kept. */
import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument, type Document, type Node, type Pair } from 'yaml';
import { readNumber, withDecimalPoint } from '../units/index.js';
import { shortened, type DesignFault, type FaultCode } from './faults.js';
import { pathText, type Path } from './path.js';
import { slipOf } from './syntaxSlip.js';

interface Place {
  line: number;
  column: number;
  /** the value as written, shortened; null where there is none */
  written: string | null;
}

/** A file's raw tree, with the line and column of each of its fields. */
export interface Source {
  tree: unknown;
  /** faults that leave the tree readable: duplicate keys, a thousands comma inside braces */
  faults: DesignFault[];
  /** fields that such a fault already explains: all of one, or its value alone */
  explained: ReadonlyMap<string, 'all' | 'value'>;
  /** place of a field's value; of the nearest block above it when the field is absent */
  place(path: Path): Place;
  /** place of a field's name */
  keyPlace(path: Path): Place;
}

/** Far beyond any design, yet read in a moment: a YAML parser's time grows with the square of some of these. */
const MAX_LENGTH = 250_000;
const MAX_LINES = 5_000;
const MAX_MARKS = 10_000;
const MAX_DEPTH = 60;
const MAX_SYNTAX_FAULTS = 20;

/** Parses a text. Gives faults alone when there is no tree to go on with. Never throws. */
export function readSource(text: string, file: string): Source | { faults: DesignFault[] } {
  const refusal = refuse(text);
  if (refusal) return { faults: [{ ...blank('unreadable', file), ...refusal }] };
  const clean = text.replace(/^\uFEFF/, '');
  const lines = new LineCounter();
  try {
    const doc = parseDocument(clean, {
      lineCounter: lines,
      prettyErrors: false,
      uniqueKeys: false,
      strict: true,
      logLevel: 'error',
      schema: 'core',
    });
    const broken = [...doc.errors, ...doc.warnings].sort((a, b) => a.pos[0] - b.pos[0]);
    if (broken.length > 0) return { faults: syntaxFaults(broken, clean, lines, file) };
    const strange = strangeKey(doc.contents);
    if (strange) {
      const { line, col } = lines.linePos(strange.range?.[0] ?? 0);
      const told = { message: 'has a list, a block or an alias for the name of a field', allowed: 'a word' };
      return { faults: [{ ...blank('syntax', file), line, column: col, ...told }] };
    }
    const tree: unknown = doc.toJS({ maxAliasCount: 50 });
    return new TreeSource(doc, tree, clean, lines, file);
  } catch (error) {
    const deep = error instanceof RangeError;
    return {
      faults: [
        {
          ...blank('unreadable', file),
          message: deep ? 'is nested too deeply' : 'repeats itself through too many aliases',
          allowed: deep ? `up to ${MAX_DEPTH} levels` : 'plain fields, each written out',
        },
      ],
    };
  }
}

/** The first, and of the others those that are no echo of one before: one a line, and slips that end with their line. */
function syntaxFaults(broken: Document['warnings'], text: string, lines: LineCounter, file: string): DesignFault[] {
  const faults = new Map<number, DesignFault>();
  for (const { code, message, pos } of broken) {
    const { line } = lines.linePos(pos[0]);
    if (faults.has(line) || faults.size >= MAX_SYNTAX_FAULTS) continue;
    const { at, local, ...slip } = slipOf({ code, message, text, at: pos[0] });
    if (faults.size > 0 && !local) continue;
    const place = lines.linePos(at);
    faults.set(line, { ...blank('syntax', file), line: place.line, column: place.col, ...slip });
  }
  return [...faults.values()];
}

/** A key that is no plain word. Printing one nested in another takes time without bound, so none gets further. */
function strangeKey(node: unknown): Node | undefined {
  if (isSeq(node)) return firstOf(node.items, strangeKey);
  if (!isMap(node)) return undefined;
  return firstOf(node.items, ({ key, value }) => (isScalar(key) ? strangeKey(value) : ((key as Node | null) ?? node)));
}

function firstOf<T, R>(items: readonly T[], find: (item: T) => R | undefined): R | undefined {
  for (const item of items) {
    const found = find(item);
    if (found !== undefined) return found;
  }
  return undefined;
}

function blank(code: FaultCode, file: string): DesignFault {
  return { code, file, line: 1, column: 1, path: '', value: null, message: '', allowed: null, nearest: null };
}

/** What can't be a design file, told before a parser sees it. */
function refuse(text: string): Pick<DesignFault, 'message' | 'allowed'> | undefined {
  if (text.trim() === '')
    return { message: 'the file is empty', allowed: 'a design; `pitwright new` writes one to start from' };
  if (text.length > MAX_LENGTH) return { message: 'the file is too large for a design', allowed: 'up to 250 kB' };
  if (/[\u0000-\u0008\u000e-\u001a\u001c-\u001f]/.test(text) || (text.match(/\uFFFD/g)?.length ?? 0) > 3) {
    return { message: 'the file is not text', allowed: 'YAML or JSON in UTF-8' };
  }
  if ((text.match(/\n/g)?.length ?? 0) > MAX_LINES) {
    return { message: 'the file has too many lines for a design', allowed: `up to ${MAX_LINES} lines` };
  }
  if ((text.match(/[,:[\]{}"'&*?]/g)?.length ?? 0) > MAX_MARKS) {
    return {
      message: 'the file holds far more than a design',
      allowed: `up to ${MAX_MARKS} brackets, colons, commas and quotes`,
    };
  }
  if (depthOf(text) > MAX_DEPTH) return { message: 'is nested too deeply', allowed: `up to ${MAX_DEPTH} levels` };
  return undefined;
}

/**
 * Upper bound of the nesting: open brackets, and list dashes or key marks in a row on one line. Indentation counts too.
 */
function depthOf(text: string): number {
  let open = 0;
  let deepest = 0;
  for (const line of text.split('\n')) {
    const lead = /^[ \t]*(?:[-?:][ \t]+)*/.exec(line)?.[0] ?? '';
    const marks = lead.replace(/[ \t]/g, '').length;
    const bare = line.replace(/(^|\s)#.*$/, '').replace(/"(?:[^"\\]|\\.)*"|'[^']*'/g, '');
    for (const char of bare) {
      if (char === '[' || char === '{') open++;
      else if (char === ']' || char === '}') open = Math.max(0, open - 1);
      deepest = Math.max(deepest, open + marks);
    }
  }
  return Math.max(deepest, indentLevels(text));
}

function indentLevels(text: string): number {
  const stack: number[] = [];
  let deepest = 0;
  for (const line of text.split('\n')) {
    if (line.trim() === '') continue;
    const indent = line.length - line.trimStart().length;
    while (stack.length > 0 && stack[stack.length - 1] >= indent) stack.pop();
    stack.push(indent);
    deepest = Math.max(deepest, stack.length);
  }
  return deepest;
}

class TreeSource implements Source {
  readonly faults: DesignFault[] = [];
  readonly explained = new Map<string, 'all' | 'value'>();

  constructor(
    private readonly doc: Document,
    readonly tree: unknown,
    private readonly text: string,
    private readonly lines: LineCounter,
    private readonly file: string,
  ) {
    this.inspect(doc.contents, []);
  }

  place(path: Path): Place {
    let node: unknown = this.doc.contents;
    for (let i = 0; i < path.length; i++) {
      const next = this.step(node, path[i]);
      if (next === undefined) return i === 0 ? this.at(0, null) : { ...this.keyPlace(path.slice(0, i)), written: null };
      node = next;
    }
    const range = (node as Node | null)?.range;
    if (!range) return { ...this.keyPlace(path), written: null };
    // An alias is at fault where it is used, not where it points.
    return this.at(range[0], this.written(this.resolved(node) as Node));
  }

  keyPlace(path: Path): Place {
    let node: unknown = this.doc.contents;
    for (const part of path.slice(0, -1)) node = this.step(node, part);
    const last = path[path.length - 1];
    const pair = this.pair(node, last);
    const key = (pair?.key ?? this.step(node, last)) as Node | undefined;
    return key?.range ? this.at(key.range[0], this.written(key)) : this.at(0, null);
  }

  private at(offset: number, written: string | null): Place {
    const { line, col } = this.lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col), written };
  }

  private written(node: Node): string | null {
    if (!isScalar(node)) return isMap(node) ? '{...}' : isSeq(node) ? '[...]' : null;
    if (node.value === null) return null;
    const range = node.range;
    const raw = range ? this.text.slice(range[0], Math.min(range[1], range[0] + 400)) : String(node.value);
    return shortened(typeof node.value === 'string' ? node.value : raw);
  }

  private resolved(node: unknown): unknown {
    return isAlias(node) ? node.resolve(this.doc) : node;
  }

  private pair(node: unknown, part: string | number | undefined): Pair | undefined {
    const map = this.resolved(node);
    if (!isMap(map)) return undefined;
    // The last of several equal keys is the one whose value the tree holds.
    return map.items.findLast((pair) => keyText(pair) === String(part));
  }

  private step(node: unknown, part: string | number): unknown {
    const seq = this.resolved(node);
    if (isSeq(seq) && typeof part === 'number') return seq.items[part];
    const pair = this.pair(node, part);
    return pair?.value ?? undefined;
  }

  /**
   * Duplicate keys and thousands commas inside braces, in one walk. Aliases are not followed: they point at walked
   * nodes.
   */
  private inspect(node: unknown, path: Path): void {
    if (isSeq(node)) node.items.forEach((item, i) => this.inspect(item, [...path, i]));
    if (!isMap(node)) return;
    const seen = new Set<string>();
    let previous: Pair | undefined;
    for (const pair of node.items) {
      const key = keyText(pair);
      const where = [...path, key];
      const range = (pair.key as Node | null)?.range;
      const place = this.at(range ? range[0] : 0, null);
      const written = isScalar(previous?.value) ? this.written(previous.value) : null;
      if (node.flow && isBare(pair) && previous && written !== null && goesOn(written, key)) {
        const before = [...path, keyText(previous)];
        const { line, column } = this.at((previous.value as Node).range?.[0] ?? 0, null);
        const whole = `${written},${/^\d/.test(key) ? '' : ' '}${key}`;
        this.explained.set(pathText(where), 'all').set(pathText(before), 'value');
        this.faults.push({
          ...blank('comma-in-braces', this.file),
          line,
          column,
          path: pathText(before),
          value: shortened(whole),
          message: 'is split by its comma: inside braces a comma ends the value',
          allowed: 'quotes, or no comma',
          nearest: shortened(readNumber(whole) ? `"${whole}"` : (withDecimalPoint(whole) ?? `"${whole}"`)),
        });
      } else if (seen.has(key)) {
        this.faults.push({
          ...blank('duplicate-key', this.file),
          line: place.line,
          column: place.column,
          path: pathText(where),
          message: 'is written twice',
          allowed: 'each field once',
        });
      }
      seen.add(key);
      previous = pair;
      this.inspect(pair.value, where);
    }
  }
}

function keyText(pair: Pair): string {
  return String(isScalar(pair.key) ? pair.key.value : '');
}

/** A key without a value, as braces make of what stands behind a comma. */
function isBare({ value }: Pair): boolean {
  return value === null || (isScalar(value) && value.value === null);
}

/** Does a value go on behind the comma that ended it: digits after digits, or a pipe's wall after the pipe? */
function goesOn(written: string, key: string): boolean {
  return /^\d{3}(?!\d)/.test(key) || (/\d$/.test(written) && /^\d/.test(key)) || /\bpipe$/i.test(written);
}
