import { expect } from 'vitest';
import { readDesign } from '../../../src/design/read.js';
import { randomDesign } from '../../design/randomDesign.js';
import { asDrawn, documentOf, htmlOf, pdfOf, wordsOf } from './reports.js';

/** The report of a random design, as HTML and as PDF, holds no broken number. */
export function expectWholeReport(seed: number): void {
  const read = readDesign(JSON.stringify(randomDesign(seed)), { fileName: 'random' });
  const document = documentOf(asDrawn(read.design!));
  expect(wordsOf(document)).not.toMatch(/NaN|undefined|Infinity|\[object/);
  expect(htmlOf(document)).not.toMatch(/NaN|undefined|Infinity/);
  expect(pdfOf(document).length).toBeGreaterThan(20_000);
}
