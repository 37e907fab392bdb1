import { describe, expect, it } from 'vitest';
import { canReadPdf, readPdf } from './support/poppler.js';
import { asDrawn, designOf, documentOf, pdfOf } from './support/reports.js';
import { expectTagged } from './taggedPdf.js';

const upright = documentOf(asDrawn(designOf('offset-with-upright')), 'a4');

describe.skipIf(!canReadPdf())('the PDF, as a screen reader walks it', () => {
  expectTagged([upright]);

  it('gives letters that the font lacks to who reads, finds or copies, and takes no title for markup', () => {
    const name = 'Łódź <b> & مدخنة';
    const pdf = pdfOf({ ...upright, name });
    const { pages, meta, info } = readPdf(pdf);
    // the reader sets the Arabic letters in the order they are seen
    expect(pages[0]).toMatch(/Łódź <b> & \P{ASCII}{5}/u);
    expect(meta).toContain('Łódź &lt;b&gt; &amp; مدخنة');
    expect(info).toContain(name);
  });
});
