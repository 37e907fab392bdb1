import { describe, expect, it } from 'vitest';
import { exampleNames } from '../support/examples.js';
import { canReadPdf, reachOfPages, readPdf } from './support/poppler.js';
import { asDrawn, designOf, documentOf, pdfOf, plates } from './support/reports.js';

const squeezed = (text: string) => text.replace(/\s+/g, ' ');

const document = documentOf(plates(['1/4 in', '1/8 in', '3/8 in']));

describe.skipIf(!canReadPdf())('the PDF report, read back', () => {
  const SEVEN = ['1/4 in', '1/8 in', '3/16 in', '5/16 in', '3/8 in', '1/2 in', '5/8 in'];
  it.each(['three plates', 'seven plates', ...exampleNames])('%s: no page is nearly empty', (name) => {
    const single = () => documentOf(asDrawn(designOf(name.replace('.yaml', ''))));
    const made = name === 'three plates' ? document : name === 'seven plates' ? documentOf(plates(SEVEN)) : single();
    for (const paper of ['letter', 'a4'] as const) {
      const reach = reachOfPages(pdfOf(made, paper));
      expect(reach.length).toBeGreaterThan(5);
      for (const share of reach) expect(share, reach.join(' ')).toBeGreaterThan(1 / 3);
    }
  });

  it('comes on A4 too', () => {
    const a4 = readPdf(pdfOf(documentOf(asDrawn(designOf('reverse-flow')), 'a4'), 'a4'));
    // whole pixels of 1/96 in come to within a point of 210 by 297 mm
    expect(Math.abs(a4.width - 595.3)).toBeLessThan(1);
    expect(Math.abs(a4.height - 841.9)).toBeLessThan(1);
    expect(a4.pages[0]).toContain('Market 30 reverse flow');
  });

  it('sets long names in their place', () => {
    const long = {
      ...designOf('plain-24'),
      name: 'firebox '.repeat(30),
      shop: 'W'.repeat(300),
      job: 'final '.repeat(80),
    };
    const read = readPdf(pdfOf(documentOf(asDrawn(long))));
    expect(squeezed(read.pages[0])).toContain('…');
    expect(read.pages[0]).toContain('page 1 of');
  });
});
