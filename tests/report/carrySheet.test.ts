import { describe, expect, it } from 'vitest';
import { format } from '../../src/units/index.js';
import { compared, designOf, documentFrom } from './support/reports.js';

const tank = (plate: string) =>
  designOf('tank-on-trailer', (text) =>
    text.replace('flange: 1-1/2 in', `flange: 1-1/2 in\n  plate: ${plate}`).replace(/options:[^]*$/, ''),
  );
const comparison = compared([
  { label: '3/16 shell', changes: [], design: tank('3/16 in') },
  { label: '3/8 shell', changes: [], design: tank('3/8 in') },
]);
const [buyer, ...shop] = documentFrom(comparison).sheets;
const texts = buyer.blocks.flatMap((block) => (block.kind === 'text' ? [block.text] : []));

describe('a pit on a trailer on paper', () => {
  it('tells the buyer what axles and tongue carry with each plate, and what hands find', () => {
    const [told] = texts.filter((text) => text.includes('Trailer:'));
    const loads = comparison.options.map(({ result }) => result.weight!.trailer!);
    expect(loads[1].axleLoad_kg).toBeGreaterThan(loads[0].axleLoad_kg + 40);
    loads.forEach(({ axleLoad_kg, tongueLoad_kg }, i) => {
      const { label } = comparison.options[i];
      for (const load of [axleLoad_kg, tongueLoad_kg]) expect(told).toContain(`${format('mass', load)} with ${label}`);
    });
    expect(told).toContain('rated for 3,500 lb');
    expect(told).not.toContain('OVER');
    expect(told).toMatch(/^Handles, bare hand: /);
  });

  it('says so where a plate is more than its axles are rated for', () => {
    const weak = (plate: string) => {
      const design = tank(plate);
      // between the loads of the two
      return { ...design, trailer: { ...design.trailer!, axleRating: 870 } };
    };
    const options = ['3/16 in', '3/8 in'].map((plate) => ({ label: plate, changes: [], design: weak(plate) }));
    const over = compared(options);
    const [light, heavy] = over.options.map(({ result }) => result.weight!.trailer!.axleLoad_kg);
    expect(light).toBeLessThan(870);
    expect(heavy).toBeGreaterThan(870);
    const words = JSON.stringify(documentFrom(over).sheets[0]);
    expect(words).toContain(`${format('mass', heavy)} (OVER) with 3/8 in`);
    expect(words).not.toContain(`${format('mass', light)} (OVER)`);
  });

  it('has the tables of both behind, and counts no inputs to the buyer', () => {
    const sheet = shop.find(({ title }) => title === 'Handles and trailer')!;
    const captions = sheet.blocks.flatMap((block) => (block.kind === 'table' ? [block.table.caption] : []));
    expect(captions).toEqual([
      'Handles, bare hand',
      "Weights, positions from the trailer's mark",
      'What the trailer carries',
      'Empty, loaded and after a cook',
    ]);
    expect(JSON.stringify(buyer)).not.toMatch(/inputs not given|marked behind/);
    expect(
      documentFrom(compared([{ label: 'as drawn', changes: [], design: designOf('plain-24') }])).sheets.map(
        ({ title }) => title,
      ),
    ).not.toContain('Handles');
  });
});
