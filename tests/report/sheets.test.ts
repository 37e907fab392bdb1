import { describe, expect, it } from 'vitest';
import type { Block } from '../../src/report/sheets/blocks.js';
import { format } from '../../src/units/index.js';
import { everydayExamples } from '../support/examples.js';
import { asDrawn, compared, designOf, documentFrom, documentOf, plates, wordsOf } from './support/reports.js';
import { expectWholeSheets, figures, flat } from './wholeSheets.js';

const three = plates(['1/4 in', '1/8 in', '3/8 in']);
const comparison = compared(three);
const several = documentFrom(comparison);
const buyer = several.sheets[0];
const textsOf = (blocks: Block[]) =>
  flat(blocks).flatMap((block) => (block.kind === 'text' || block.kind === 'lead' ? [block.text] : []));
const tables = (blocks: Block[]) => flat(blocks).flatMap((block) => (block.kind === 'table' ? [block.table] : []));

describe("the buyer's page", () => {
  it('comes first, on one page, with the shop and its job', () => {
    expect(buyer.fit).toBe('one');
    expect(several.sheets.filter(({ fit }) => fit === 'one')).toHaveLength(1);
    expect([several.name, several.shop, several.job]).toEqual(['Backyard 24', 'Slag Creek Fabrication', 'Job 0412']);
  });

  it('has the options as columns, the baseline bare and the others with their difference from it', () => {
    const [table] = tables(buyer.blocks);
    expect(table.head.slice(1)).toEqual(['1/4 in', '1/8 in', '3/8 in']);
    const steel = table.rows.find(([words]) => words.startsWith('all steel'))!;
    const [first, thin, thick] = steel.slice(1);
    expect(first).toBe(format('mass', comparison.options[0].result.geometry.totalSteelMass_kg).replace(' lb', ''));
    const masses = comparison.options.map(({ result }) => result.geometry.totalSteelMass_kg);
    expect(Number(thin.split('\n')[1])).toBeCloseTo((masses[1] - masses[0]) / 0.45359237, -0.5);
    expect(thick).toMatch(/\n\+\d+$/);
    expect(table.rows.some(([words]) => words.startsWith('wood while holding'))).toBe(false);
    const texts = buyer.blocks.flatMap((block) => (block.kind === 'text' ? [block.text] : []));
    expect(texts.find((text) => text.startsWith('The same in all: '))).toMatch(/wood while holding \d\.\d+ lb\/h/);
  });

  it('says in one sentence what decides, with the numbers of the table', () => {
    const lead = buyer.blocks.find(({ kind }) => kind === 'lead') as { text: string };
    expect(lead.text.match(/\.(\s|$)/g)).toHaveLength(1);
    expect(lead.text).toMatch(/soaked soonest with 1\/8 in \([\d.]+ min\), last with 3\/8 in/);
    const soaked = tables(buyer.blocks)[0].rows.find(([words]) => words.startsWith('steel is soaked'))!;
    expect(lead.text).toContain(`(${soaked[2].split('\n')[0]})`);
  });

  it('says what was assumed, how sure it is, the cautions, and that it is no guarantee', () => {
    const all = textsOf(buyer.blocks).join('\n');
    for (const words of ['70,000 BTU/h', 'Oak at 20 % moisture', 'estimates', 'carbon monoxide', 'food thermometer']) {
      expect(all).toContain(words);
    }
    expect(all).toContain('an estimate, not a guarantee');
  });

  it('shows the pit with its main dimensions, from the design', () => {
    const [drawing] = figures(buyer.blocks);
    const letters = drawing.scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    for (const size of ['24 in', '60 in', '84 in', '78 in', 'Ø 24 in', 'Ø 6 in, 36 in long'])
      expect(letters).toContain(size);
    expect(drawing.scene.description).toContain('chamber 24 in round, 60 in long, of 1/4 in plate');
    expect(drawing.caption).toMatch(/scale about 1:\d+/);
  });

  it('has one chart with every option in it', () => {
    const [, chart, ...more] = figures(buyer.blocks);
    expect(more).toEqual([]);
    const letters = chart.scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    for (const { label } of three) expect(letters.some((text) => text.startsWith(`${label}: soaked `))).toBe(true);
    expect(letters).toEqual(expect.arrayContaining(['Thermometer [°F]', 'Thermometer [°C]', 'Time [min]']));
  });

  it('of one design has shop units and metric side by side', () => {
    const { sheets } = documentOf(asDrawn(designOf('plain-24')));
    const [table] = tables(sheets[0].blocks);
    expect(table.head).toEqual(['', 'shop units', 'metric']);
    expect(table.rows.find(([words]) => words === 'all steel')!.slice(1)).toEqual(['564 lb', '256 kg']);
  });

  it('of a pit that cannot burn says so, and still is a page', () => {
    const sealed = asDrawn(
      designOf('plain-24', (text) =>
        text.replace('open: 100 %', 'open: 0 %').replaceAll(/doorGap: .*? in\^2/g, 'doorGap: 0 in^2'),
      ),
    );
    const { sheets } = documentOf(sealed);
    expect(textsOf(sheets[0].blocks)[0]).toMatch(/can't burn|never reads|no fire/);
  });
});

describe("the shop's sheets", () => {
  const all = wordsOf(several);

  it('tell every input as read, defaults marked', () => {
    const inputs = several.sheets.find(({ title }) => title === 'Every input as read')!;
    const rows = tables(inputs.blocks).flatMap(({ rows: each }) => each);
    const value = (path: string) => rows.find(([name]) => name === path)?.[1];
    expect(value('firebox.diameter')).toBe('24 in (610 mm)');
    expect(value('site.humidity')).toBe('50 % *');
    expect(value('site.air')).not.toContain('*');
    expect(all).toContain('What the options change');
  });

  it('colour the side view by gas temperature, light to dark, with the firebox’s gas and what dials and grate read', () => {
    const sheet = several.sheets.find(({ title }) => title === 'Temperatures and flows')!;
    const [view] = figures(sheet.blocks);
    const { steady } = comparison.options[0].result;
    const letters = view.scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(letters).toContain(`gas ${format('temperature', steady!.stations[0].gas_K)}`);
    for (const { thermometer_K } of [...steady!.stations.slice(1), ...steady!.places]) {
      expect(letters).toContain(format('temperature', thermometer_K));
    }
    expect(letters).toContain('°F gas');
    expect(letters.some((text) => text.endsWith('lb/h air'))).toBe(true);
  });

  it('have heat, pressure and vent charts, each with its numbers in a table', () => {
    const sheet = several.sheets.find(({ title }) => title.startsWith('Warm-up'))!;
    expect(figures(sheet.blocks)).toHaveLength(4);
    const captions = tables(sheet.blocks).map(({ caption }) => caption);
    expect(captions.some((text) => text?.includes('by time'))).toBe(true);
    expect(captions).toEqual(
      expect.arrayContaining([
        'Where the heat goes',
        'Pressure against outdoors at the same height',
        'Openings while holding 250 °F',
      ]),
    );
  });

  it('list weights, estimates with spreads, and sources', () => {
    for (const words of ['Areas, weights, volumes', 'Estimates used', 'Churchill', 'EN 1993-1-2']) {
      expect(all).toContain(words);
    }
  });
});

describe('a report of each example', () => {
  it.each(everydayExamples)('%s: no number is missing or broken', expectWholeSheets);
});
