import { describe, expect, it } from 'vitest';
import { exampleNames } from '../support/examples.js';
import { canReadPdf, reachOfPages } from './support/poppler.js';
import { asDrawn, designOf, documentOf, pdfOf, plates } from './support/reports.js';

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
});
