/** What a slip in a file's brackets, columns and quotes is, in words of who writes it and not of the parser. */
import { shortened, type DesignFault } from './faults.js';

/** What a parser found, and where. */
interface Broken {
  code: string;
  message: string;
  text: string;
  at: number;
}

/** In words, and where a reader has to look. */
interface Slip extends Pick<DesignFault, 'message' | 'allowed' | 'value' | 'example'> {
  at: number;
  /** it ends with its line: what a parser finds behind it is no echo of it, nor it of what was before */
  local: boolean;
}

/** A path of a field with the place in a list, as a name within braces. */
const IN_BRACKETS = /[{,]\s*([A-Za-z.]+\[\d+\][\w.[\]]*)\s*:/;
/** A field that begins within the value of the one before it. */
const WITHIN_VALUE = /^[^,{}[\]\n]*?[\s;]([A-Za-z]\w*)\s*:/;
const IN_COLUMN = 'fields of one block in one column';
const NO_LIST = { why: 'a dash where no list is', allowed: 'a dash before each item of a list, on a line of its own' };
const CLOSES: Readonly<Partial<Record<string, string>>> = { '{': '}', '[': ']' };

/** What stands in the way, what belongs there, and where it stands, if not where it was found. */
interface Words {
  why: string;
  allowed: string;
  at?: number | undefined;
  local?: boolean;
}

/** By what a parser says of it, and by its line: the first that fits. */
const BY_MESSAGE: readonly (Words & { found: RegExp; line?: RegExp })[] = [
  {
    found: /^Implicit (map )?keys need/,
    line: /^[^:#]*(:[^\s:#][^:#]*)*(\s#.*)?$/,
    why: 'no colon behind the name of a field',
    allowed: 'name: value',
    local: true,
  },
  { found: /^Implicit (map )?keys need/, line: /^\s*-/, ...NO_LIST },
  { found: /^(A block sequence may not|Unexpected block-seq-ind)/, ...NO_LIST },
  {
    found: /^Nested mappings/,
    line: /:\s+\S.*:(\s|$)/,
    why: 'a second colon on one line',
    allowed: 'one field a line, or quotes about a text with a colon',
    local: true,
  },
  {
    found: /^(All mapping items|Sequence item without)/,
    why: 'a field stands in no column of those before it',
    allowed: IN_COLUMN,
  },
  {
    found: /^All sequence items/,
    why: 'an item stands in another column than the one before it',
    allowed: 'dashes of one list in one column',
  },
  {
    found: /^Unexpected .*( at node end| token)$/,
    why: 'more stands behind a value that has ended',
    allowed: 'quotes about all of it',
    local: true,
  },
  {
    found: /^Missing , /,
    why: 'a comma or a colon is missing within brackets',
    allowed: '{ name: value, name: value }',
    local: true,
  },
];

/** The slip that keeps a file from being read. */
export function slipOf(broken: Broken): Slip {
  const { code, text } = broken;
  const line = lineAt(text, broken.at);
  const here = { at: broken.at, value: shortened(line) || null, local: true };
  if (code === 'TAB_AS_INDENT' || /^\s*\t/.test(line)) {
    return { ...here, message: 'is indented with a tab', allowed: 'spaces only' };
  }
  if (code === 'MULTIPLE_DOCS') {
    return { ...here, message: 'the file holds more than one document', allowed: 'one design a file' };
  }
  const bracketed = IN_BRACKETS.exec(line)?.[1];
  if (bracketed !== undefined) {
    return {
      ...here,
      value: bracketed,
      message: 'has a path with brackets, which begin a list here',
      allowed: 'such a path in quotes',
      example: `'${bracketed}': ...`,
    };
  }
  const { why, allowed, at = broken.at, local = false } = inWords(broken, line);
  return { at, value: shortened(lineAt(text, at)) || null, message: `can't be read: ${why}`, allowed, local };
}

function inWords(broken: Broken, line: string): Words {
  const found = broken.message.split('\n')[0];
  const [, begins] = /^Plain value cannot start with .*(.)$/.exec(found) ?? [];
  if (begins) return { why: `a value begins with ${begins}`, allowed: 'quotes about such a value', local: true };
  return (
    brackets(broken, found) ??
    BY_MESSAGE.find((each) => each.found.test(found) && (each.line?.test(line) ?? true)) ??
    tooFarRight(broken, found) ??
    openBefore(broken, found) ?? { why: found, allowed: 'YAML or JSON' }
  );
}

/** What is wrong with brackets, quotes and the commas between them. */
function brackets({ code, text, at }: Broken, found: string): Words | undefined {
  const [, next] = (code === 'BLOCK_IN_FLOW' && WITHIN_VALUE.exec(text.slice(at))) || [];
  if (next)
    return { why: `no comma before '${next}'`, allowed: 'a comma between the fields within braces', local: true };
  const [, close] = /must be sufficiently indented and end with a ([}\]])/.exec(found) ?? [];
  const open = Object.keys(CLOSES).find((mark) => CLOSES[mark] === close);
  if (open) return neverClosed(open, lastOpen(text, at, open));
  if (code === 'BLOCK_IN_FLOW') {
    const opened = lastOpen(text, at, '{') ?? lastOpen(text, at, '[');
    return neverClosed(opened === undefined ? '{' : text[opened], opened);
  }
  const [, extra] = /token in YAML stream: "([}\]])"/.exec(found) ?? [];
  const stray = extra ?? (found.startsWith('Unexpected flow-error-end') ? text[at] : undefined);
  const opens = Object.keys(CLOSES).find((mark) => CLOSES[mark] === stray);
  if (opens) return { why: `a '${stray}' closes nothing`, allowed: `a '${opens}' for each '${stray}'` };
  const [, quote] = /^Missing closing (["'])/.exec(found) ?? [];
  return quote ? neverClosed(quote, lastOpen(text, at, quote)) : undefined;
}

function neverClosed(mark: string, at: number | undefined): Words {
  const close = CLOSES[mark];
  if (!close) return { why: 'a quote is never closed', allowed: 'quotes in pairs', at };
  return { why: `a '${mark}' is never closed`, allowed: `a '${close}' for each '${mark}'`, at };
}

/** It is the line below the one that a parser stumbles at. */
function tooFarRight({ text, at }: Broken, found: string): Words | undefined {
  if (!found.startsWith('Nested mappings')) return undefined;
  const below = text.indexOf('\n', at) + 1;
  return {
    why: 'a field stands further right than the one before it',
    allowed: IN_COLUMN,
    at: below > 0 ? below + text.slice(below).search(/\S|$/) : at,
  };
}

/** A name that goes on over the end of its line began with a bracket or a quote. */
function openBefore({ text, at }: Broken, found: string): Words | undefined {
  if (!/^Implicit (map )?keys need/.test(found)) return undefined;
  const end = text.indexOf('\n', at);
  const [first] = ['"', "'", '{', '['].flatMap((mark) => lastOpen(text, end < 0 ? text.length : end, mark) ?? []);
  return first === undefined ? undefined : neverClosed(text[first], first);
}

function lineAt(text: string, at: number): string {
  const start = text.lastIndexOf('\n', at - 1) + 1;
  const end = text.indexOf('\n', at);
  return text.slice(start, end < 0 ? undefined : end);
}

/** Where the last mark of a kind before a place opened that is still open there: a bracket or a quote. */
function lastOpen(text: string, before: number, mark: string): number | undefined {
  const open: number[] = [];
  let quoted: string | undefined;
  for (let i = 0; i < before; i++) {
    const char = text[i];
    const begins = i === 0 || /[\s,:{[]/.test(text[i - 1]);
    if (quoted !== undefined) {
      if (char === quoted) [quoted] = [undefined, open.pop()];
    } else if (char === '#' && begins) i = text.indexOf('\n', i) < 0 ? before : text.indexOf('\n', i);
    else if ((char === '"' || char === "'") && begins) [quoted] = [char, open.push(i)];
    else if (char === '{' || char === '[') open.push(i);
    else if (char === '}' || char === ']') open.pop();
  }
  return open.findLast((i) => text[i] === mark);
}
