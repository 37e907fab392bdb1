import { expect } from 'vitest';
import type { Block } from '../../src/report/sheets/blocks.js';
import { asDrawn, designOf, documentOf, wordsOf } from './support/reports.js';

export const flat = (blocks: Block[]): Block[] =>
  blocks.flatMap((block) => (block.kind === 'columns' ? block.columns.flatMap(flat) : [block]));
export const figures = (blocks: Block[]) => flat(blocks).flatMap((block) => (block.kind === 'figure' ? [block] : []));

/** The report of an example has no number that is missing or broken. */
export function expectWholeSheets(name: string): void {
  const document = documentOf(asDrawn(designOf(name.replace(/\.ya?ml$/, ''))));
  expect(document.sheets.length).toBeGreaterThan(4);
  expect(wordsOf(document)).not.toMatch(/NaN|undefined|Infinity|\[object/);
  for (const sheet of document.sheets) {
    for (const { scene } of figures(sheet.blocks)) {
      expect(scene.title.length * scene.description.length).toBeGreaterThan(0);
      expect(scene.shapes.length).toBeGreaterThan(10);
    }
  }
}
