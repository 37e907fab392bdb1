/**
 * A text from a design file made fit for one line of plain output: control characters (a terminal obeys them), line
 * breaks and direction marks (they reorder what stands beside them) become spaces; very long ones are cut.
 */
export function plainText(text: string, longest = 100): string {
  const tidy = text
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}\uFFFE\uFFFF]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const characters = [...tidy];
  return characters.length <= longest ? tidy : `${characters.slice(0, longest - 1).join('')}…`;
}

/** Control characters but tab and line ends of either kind, line separators, direction marks, and what XML has no place for. */
const OBEYED =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufffe\uffff]|\r(?!\n)/g;

/**
 * A text for a terminal, with everything that a terminal would obey written as JSON writes it, so that nothing is hidden. In JSON
 * itself such characters only stand in strings, where this means the same.
 */
export function visible(text: string): string {
  return text.replace(OBEYED, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/** The same for a name in the middle of a line. */
export function visibleName(name: string): string {
  return visible(name.replaceAll('\n', '\\n').replaceAll('\t', '\\t'));
}

/** Breaks a text between words into lines of at most `width` characters, never between a number and its unit. */
export function wrapLines(text: string, width: number): string[] {
  const lines: string[] = [];
  const words = text.split(/(?<!\d) | (?![°%A-Za-z])/);
  for (const word of words) {
    const last = lines[lines.length - 1];
    if (last !== undefined && last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** The same as one text, each line after the first set in by `indent`. */
export function wrap(text: string, width: number, indent = ''): string {
  return wrapLines(text, width).join(`\n${indent}`);
}
