/**
 * A text from a design file made fit for one line of plain output: control characters (a terminal obeys them), line
 * breaks and direction marks (they reorder what stands beside them) become spaces; very long ones are cut.
 */
export function plainText(text: string, longest = 100): string {
  const tidy = text
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const characters = [...tidy];
  return characters.length <= longest ? tidy : `${characters.slice(0, longest - 1).join('')}…`;
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
