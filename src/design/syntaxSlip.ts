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
type Slip = Pick<DesignFault, 'message' | 'allowed' | 'value' | 'example'> & { at: number };

/** A path of a field with the place in a list, as a name within braces. */
const IN_BRACKETS = /[{,]\s*([A-Za-z.]+\[\d+\][\w.[\]]*)\s*:/;
/** A field that begins within the value of the one before it. */
const WITHIN_VALUE = /^[^,{}[\]\n]*?[\s;]([A-Za-z]\w*)\s*:/;
/** Two fields on a line. */
const TWO_FIELDS = /:\s+\S.*:(\s|$)/;

/** The slip that keeps a file from being read. */
export function slipOf(broken: Broken): Slip {
  const { code, text } = broken;
  const line = lineAt(text, broken.at);
  const here = { at: broken.at, value: shortened(line) || null };
  if (code === 'TAB_AS_INDENT' || /^\s*\t/.test(line)) {
    return { ...here, message: 'is indented with a tab', allowed: 'spaces only' };
  }
  if (code === 'MULTIPLE_DOCS') {
    return { ...here, message: 'the file holds more than one document', allowed: 'one design a file' };
  }
  const bracketed = IN_BRACKETS.exec(line)?.[1];
  if (bracketed !== undefined) {
    return {
      at: broken.at,
      value: bracketed,
      message: 'has a path with brackets, which begin a list here',
      allowed: 'such a path in quotes',
      example: `'${bracketed}': ...`,
    };
  }
  const { why, allowed, at = broken.at } = inWords(broken, line);
  return { at, value: shortened(lineAt(text, at)) || null, message: `can't be read: ${why}`, allowed };
}

function inWords(
  { code, message, text, at }: Broken,
  line: string,
): { why: string; allowed: string; at?: number | undefined } {
  const found = message.split('\n')[0];
  const next = code === 'BLOCK_IN_FLOW' ? WITHIN_VALUE.exec(text.slice(at))?.[1] : undefined;
  if (next) return { why: `no comma before '${next}'`, allowed: 'a comma between the fields within braces' };
  const [, close] = /must be sufficiently indented and end with a ([}\]])/.exec(found) ?? [];
  if (close) {
    const open = close === '}' ? '{' : '[';
    return {
      why: `a '${open}' is never closed`,
      allowed: `a '${close}' for each '${open}'`,
      at: lastOpen(text, at, open),
    };
  }
  const [, extra] = /^Unexpected .* token in YAML stream: "([}\]])"/.exec(found) ?? [];
  if (extra)
    return { why: `a '${extra}' closes nothing`, allowed: `a '${extra === '}' ? '{' : '['}' for each '${extra}'` };
  const [, quote] = /^Missing closing (["'])/.exec(found) ?? [];
  if (quote) return { why: 'a quote is never closed', allowed: 'quotes in pairs', at: lastOpen(text, at, quote) };
  if (found.startsWith('Nested mappings')) {
    if (TWO_FIELDS.test(line))
      return { why: 'a second colon on one line', allowed: 'one field a line, or quotes about a text with a colon' };
    const below = text.indexOf('\n', at) + 1;
    return {
      why: 'a field stands further right than the one before it',
      allowed: 'fields of one block in one column',
      at: below > 0 ? below + text.slice(below).search(/\S|$/) : at,
    };
  }
  if (found.startsWith('All mapping items')) {
    return { why: 'a field stands in no column of those before it', allowed: 'fields of one block in one column' };
  }
  return { why: found, allowed: 'YAML or JSON' };
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
