/** The pieces that every text report is put together from. */
import { inWords, type Told } from '../../units/index.js';
import { NOT_A_GUARANTEE } from '../../words/cautions.js';
import { plainText, wrap } from '../../words/plainText.js';

/** Columns that a text report keeps to, but for names. */
export const WIDTH = 98;

/** Text broken into lines. */
export function paragraph(text: string): string {
  return wrap(text, WIDTH);
}

/** A remark under a table. */
export function note(text: string): string {
  return `  ${wrap(text, WIDTH - 2, '  ')}`;
}

/** An item of a list, broken into lines. */
export function bullet(text: string): string {
  return `  - ${wrap(text, WIDTH - 4, '    ')}`;
}

/** Warnings, each with its place in front. */
export function warningLines(warnings: readonly { where: string; message: Told }[]): string {
  return warnings
    .map(({ where, message }) => bullet(`${plainText(where)}: ${plainText(inWords(message), 600)}`))
    .join('\n');
}

/** What the report is about, and what made it. */
export function heading(title: string, { name, version }: { name: string; version: string }): string {
  return `${title}\n${paragraph(`${name} ${version}: ${NOT_A_GUARANTEE}`)}`;
}

/** Blocks under a head. */
export function section(head: string, ...blocks: string[]): string {
  return [head, ...blocks].join('\n');
}
