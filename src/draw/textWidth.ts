import { breakLines } from '../words/plainText.js';
import { ADVANCE_RUNS } from './advanceWidths.js';

/** Weights that the shipped font has. */
export type FontWeight = 400 | 500 | 600;

/** Width of a character that the font lacks, about [ems]: another font draws it, if any does. */
const FOREIGN = 1;

/** Thousandths of the size, by character. */
const advances = new Map<string, Record<FontWeight, number>>(
  ADVANCE_RUNS.flatMap(({ first, widths }) =>
    widths[400].map((_, i): [string, Record<FontWeight, number>] => [
      String.fromCodePoint(first + i),
      { 400: widths[400][i], 500: widths[500][i], 600: widths[600][i] },
    ]),
  ),
);

/** Whether the charts' font has every character of a text; others depend on what the reader's machine has. */
export function fontHas(text: string): boolean {
  return [...text].every((character) => advances.has(character));
}

/**
 * Width of a line of text in the charts' font, without kerning, in the unit of its size. Needs no canvas, so that a
 * layout is the same in a file, on paper and on a page.
 */
export function textWidth(text: string, { size, weight }: { size: number; weight: FontWeight }): number {
  let sum = 0;
  for (const character of text) sum += (advances.get(character)?.[weight] ?? FOREIGN * 1000) / 1000;
  return sum * size;
}

/** Cuts a text with an ellipsis so that it fits a width. */
export function fitText(text: string, width: number, font: { size: number; weight: FontWeight }): string {
  if (textWidth(text, font) <= width) return text;
  const characters = [...text];
  while (characters.length > 0 && textWidth(`${characters.join('')}…`, font) > width) characters.pop();
  return `${characters.join('').trimEnd()}…`;
}

/** Breaks a text into lines no wider than `width`; a word that is wider alone is broken where it must be. */
export function breakText(text: string, width: number, font: { size: number; weight: FontWeight }): string[] {
  const fits = (line: string) => textWidth(line, font) <= width;
  return breakLines(text, fits, (word) => {
    const pieces: string[] = [];
    let rest = [...word];
    while (rest.length > 1 && !fits(rest.join(''))) {
      let count = rest.length - 1;
      while (count > 1 && !fits(rest.slice(0, count).join(''))) count--;
      pieces.push(rest.slice(0, count).join(''));
      rest = rest.slice(count);
    }
    return [...pieces, rest.join('')];
  });
}
