import { describe, expect, it } from 'vitest';
import { asDrawn, designOf, documentOf, pdfOf, plates } from './support/reports.js';
import { canReadPdf, readPdf } from './support/poppler.js';

const document = documentOf(plates(['1/4 in', '1/8 in', '3/8 in']));
const pdf = pdfOf(document);
const squeezed = (text: string) => text.replace(/\s+/g, ' ');

describe('the PDF report', () => {
  it('is the same bytes each time', () => {
    expect(pdfOf(document).equals(pdf)).toBe(true);
  });
});

describe.skipIf(!canReadPdf())('the PDF report, read back', () => {
  const { pages, fonts, ink, width, height } = readPdf(pdf);

  it('is US Letter, with the buyer on the first page alone', () => {
    expect([width, height]).toEqual([612, 792]);
    expect(pages[0]).toContain('Slag Creek Fabrication');
    expect(pages[0]).toContain(`page 1 of ${pages.length}`);
    expect(pages[1]).toContain('Every input as read');
    expect(pages.slice(1).some((page) => page.includes('carbon monoxide'))).toBe(false);
  });

  it('has text that can be selected, letter by letter: no ligature, no picture of words', () => {
    const first = squeezed(pages[0]);
    for (const words of [
      'What each option does at 250 °F, and how it differs from 1/4 in',
      'firebox',
      'fire',
      'soaked soonest with 1/8 in',
      'Thermometer [°F]',
      '84 in',
      'carbon monoxide: outdoors only',
      'an estimate, not a guarantee',
    ]) {
      expect(first).toContain(words);
    }
    const all = squeezed(pages.join(' '));
    for (const words of ['differs from', 'Gnielinski', 'site.humidity', 'What flows through each opening']) {
      expect(all).toContain(words);
    }
  });

  it('embeds every font it uses', () => {
    expect(fonts.length).toBeGreaterThan(2);
    expect(fonts.some((line) => line.includes('Barlow-SemiBold'))).toBe(true);
    // columns from the right: object ID is two, then uni, sub, emb
    for (const line of fonts) expect(line.trim().split(/\s+/).at(-5), line).toBe('yes');
  });

  it('draws on every page, and on none over all of it', () => {
    for (const share of ink) {
      expect(share).toBeGreaterThan(0.005);
      expect(share).toBeLessThan(0.4);
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
