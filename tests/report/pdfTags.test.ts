import { describe } from 'vitest';
import { canReadPdf } from './support/poppler.js';
import { documentOf, plates } from './support/reports.js';
import { expectTagged } from './taggedPdf.js';

const SIZING = {
  text: 'Two choices.',
  table: { caption: 'Choices from stock', head: ['choice', 'stack'], rows: [['1', '6 in'], ['2', '']] }, // prettier-ignore
};
const several = documentOf(plates(['1/4 in', '1/8 in', '3/8 in']), 'letter', SIZING);

describe.skipIf(!canReadPdf())('the PDF, as a screen reader walks it', () => expectTagged([several]));
