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

/** The same of several texts; one that says nothing is left out. */
export function plainTexts(texts: readonly string[], longest?: number): string[] {
  return texts.map((text) => plainText(text, longest)).filter((text) => text !== '');
}

/** Spaces that a line must not end at: between a number and its unit. */
export function tied(text: string): string {
  return text
    .replace(/(\d) (?=[°%A-Za-z])(?!(?:to|of|and|or|at|against|with) )/g, '$1\u00a0')
    .replaceAll('in H2O', 'in\u00a0H2O');
}

/**
 * Control characters but tab and line ends of either kind, line separators, direction marks, and what XML has no place
 * for.
 */
const OBEYED =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufffe\uffff]|\r(?!\n)/g;

/**
 * A text for a terminal, with everything that a terminal would obey written as JSON writes it, so that nothing is
 * hidden. In JSON itself such characters only stand in strings, where this means the same.
 */
export function visible(text: string): string {
  return text.replace(OBEYED, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/** The same for a name in the middle of a line. */
export function visibleName(name: string): string {
  return visible(name.replaceAll('\n', '\\n').replaceAll('\t', '\\t'));
}

/** The same text with a capital at its head. */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** Length of a text in characters, as columns count it. */
export function lengthOf(text: string): number {
  return [...text].length;
}

/**
 * Breaks a text between words into lines that fit, never between a number and its unit.
 *
 * @param cut a word into pieces, where it may not stand whole
 */
export function breakLines(
  text: string,
  fits: (line: string) => boolean,
  cut = (word: string): string[] => [word],
): string[] {
  const lines: string[] = [];
  for (const word of text.split(/(?<!\d) | (?![°%A-Za-z])/).flatMap(cut)) {
    const longer = `${lines[lines.length - 1]} ${word}`;
    if (lines.length > 0 && fits(longer)) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** The same into lines of at most `width` characters. */
export function wrapLines(text: string, width: number): string[] {
  return breakLines(text, (line) => line.length <= width);
}

/** The same as one text, each line after the first set in by `indent`. */
export function wrap(text: string, width: number, indent = ''): string {
  return wrapLines(text, width).join(`\n${indent}`);
}
