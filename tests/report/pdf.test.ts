import { describe, expect, it } from 'vitest';
import { canReadPdf, readPdf, walk } from './support/poppler.js';
import { documentOf, pdfOf, plates } from './support/reports.js';

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

  it('embeds the letters it uses of the three weights, and no other font', () => {
    expect(fonts.map((line) => /Barlow-(\w+)/.exec(line)?.[1]).sort()).toEqual(['Medium', 'Regular', 'SemiBold']);
    // columns from the right: object ID is two, then uni, sub, emb
    for (const line of fonts) expect(line.trim().split(/\s+/).slice(-5, -2), line).toEqual(['yes', 'yes', 'yes']);
  });

  it('draws on every page, and on none over all of it', () => {
    for (const share of ink) {
      expect(share).toBeGreaterThan(0.005);
      expect(share).toBeLessThan(0.4);
    }
  });

  it('keeps a heading and the head of a table with what they stand over', () => {
    for (const sheet of document.sheets.slice(1)) {
      for (const block of sheet.blocks) {
        if (block.kind !== 'table' || !block.table.caption) continue;
        const { caption, rows } = block.table;
        // a line of its own: a figure's caption may begin alike
        const page = squeezed(pages.find((text) => text.split('\n').some((line) => line.trim() === caption))!);
        for (const cell of rows.slice(0, 2).flat()) expect(page).toContain(cell);
      }
    }
    const titles = document.sheets.slice(1).map(({ title }) => title);
    for (const page of pages) {
      const lines = page.trim().split('\n');
      // the last line is the foot
      for (const line of lines.slice(-4)) expect(titles).not.toContain(line.trim());
    }
  });

  it('says the head of a long table again on every page, and once to a screen reader', () => {
    const rows = Array.from({ length: 120 }, (_, i) => [`line ${i + 1}`, 'value']);
    const long = { caption: 'A long table', head: ['the first', 'the other'], rows };
    const [first] = document.sheets;
    const sheet = { title: 'Long', fit: 'flow' as const, blocks: [{ kind: 'table' as const, table: long }] };
    const { pages: all, tags } = readPdf(pdfOf({ ...document, sheets: [first, sheet] }));
    const [, ...behind] = all;
    expect(behind.length).toBeGreaterThan(2);
    for (const page of behind) expect(page).toMatch(/the first +the other/);
    for (const page of behind.slice(1)) expect(page).toContain('Long, continued');
    expect(walk(tags).filter(({ text }) => text === 'the first')).toHaveLength(1);
    expect(walk(tags).filter(({ name, text }) => name === 'TH' && /^line \d+$/.test(text))).toHaveLength(120);
  });
});
