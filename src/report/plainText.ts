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

/** Breaks a sentence into lines of at most `width` characters, each after the first set in by `indent`. */
export function wrap(text: string, width = 96, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  lines.push(line);
  return lines.join('\n');
}
