import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readDesign } from '../../src/design/read.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { pitDrawing } from '../../src/draw/pit/pitDrawing.js';
import { checkText } from '../../src/report/text/checkText.js';
import { estimateText } from '../../src/report/text/estimateText.js';
import { pitWords } from '../../src/report/sheets/buyerSheet.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { costsOf } from '../../src/study/costs.js';
import { weightOf } from '../../src/study/carry/weight.js';
import { asDrawn, documentOf } from './support/reports.js';
import { PLAIN } from '../design/designFiles.js';

type Tree = Record<string, Record<string, unknown>>;

const WALLED = {
  firebox: {
    roof: { plate: '3/8 in' },
    lining: { material: 'firebrick', thickness: '1-1/4 in', faces: ['floor', 'sides'] },
    shield: { plate: '16 ga', gap: '1 in', faces: ['roof', 'sides'] },
  },
  chamber: {
    insulation: { material: 'ceramic fibre', thickness: '2 in', skin: '16 ga' },
    floor: { insulation: 'none' },
  },
};

function readPit(change: Record<string, object> = {}) {
  const tree = parse(PLAIN) as Tree;
  for (const [part, fields] of Object.entries(change)) tree[part] = { ...tree[part], ...fields };
  const read = readDesign(JSON.stringify(tree), { fileName: 'walls' });
  if (read.faults) throw new Error(JSON.stringify(read.faults));
  return { ...read, geometry: geometryOf(read.design) };
}

const { design, geometry, defaults, warnings } = readPit(WALLED);
const result = estimate(design);

describe('walls of their own are told', () => {
  it('by check: plate and cover of each face, the lining’s weight', () => {
    const text = checkText({ design, geometry, defaults, warnings }, 'shop');
    expect(text).toMatch(/firebox +roof .*3\/8 in .*shield 1 in .* off, open/);
    expect(text).toMatch(/floor .*1\/4 in .*1 1\/4 in .* firebrick inside/);
    expect(text).toMatch(/Lining of the firebox, firebrick: \d/);
    expect(checkText(readPit(), 'shop')).not.toContain('covered with');
  });

  it('by estimate in full: hot face, steel behind, weight', () => {
    const text = estimateText(result, 'shop', { full: true });
    expect(text).toMatch(/LINING, each where it is hottest[\s\S]*firebox floor, firebrick +\d/);
    expect(text).toMatch(/firebox lining +\d/);
    expect(text).toMatch(/WEIGHTS[\s\S]*firebox roof +3\/8 in/);
    for (const { hot_K, steel_K } of result.assumed!.linings!) expect(hot_K).toBeGreaterThan(steel_K);
    expect(estimate(readPit().design).assumed).not.toHaveProperty('linings');
  });

  it('to a buyer', () => {
    expect(pitWords(design)).toContain('lined with 1 1/4 in of firebrick, with a heat shield');
  });

  it('among the weights, which add up to the pit’s', () => {
    const { items, pit } = weightOf(design, geometry);
    const names = items.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['firebox, lining', 'firebox, heat shield', 'chamber, insulation']));
    const lining = geometry.parts.reduce((sum, { liningMass }) => sum + liningMass, 0);
    expect(items.find(({ name }) => name === 'firebox, lining')!.mass_kg).toBeCloseTo(lining, 9);
    expect(items.reduce((sum, { mass_kg }) => sum + mass_kg, 0)).toBeCloseTo(pit.mass_kg, 9);
  });

  it('in money, by the area of hot face and of what is wrapped', () => {
    const priced = readPit({ ...WALLED, prices: { steel: '$1/lb', insulation: '$4/ft^2', lining: '$12/ft^2' } });
    const found = { result: estimate(priced.design, { steadyOnly: true }), studies: null } as never;
    const costs = costsOf([found], 8 * 3600);
    const cost = (name: string) => costs.materials.find(({ key }) => key === name)!.of(found)!;
    const foot = 0.3048;
    const [floor, sides] = ['floor', 'sides'].map((name) =>
      geometry.parts[0].faces.find((face) => face.name === name)!,
    );
    expect(cost('liningCost')).toBeCloseTo((12 * (floor.insideArea + sides.insideArea)) / foot ** 2, 6);
    expect(costs.build.of(found)).toBeCloseTo(cost('steelCost') + cost('insulationCost') + cost('liningCost'), 9);
  });
});

describe('the drawing', () => {
  const filled = (change?: Record<string, object>) =>
    pitDrawing(readPit(change).design, { width: 900, arrange: 'row' }).marks.filter((mark) => mark.shape !== 'text');
  const drawn = (width: number) => {
    const { marks, unsaid } = pitDrawing(design, { width, arrange: 'row' });
    return { texts: marks.flatMap((mark) => (mark.shape === 'text' ? [mark.text] : [])), unsaid };
  };
  const WORDS = {
    Firebox: [
      '1/4 in plate',
      '1 1/4 in firebrick on floor and sides',
      'shield 1 in off on roof and sides',
      'roof 3/8 in',
    ],
    Chamber: ['1/4 in plate', '2 in insulation', 'floor bare'],
  };

  it('names what covers a part and which face is unlike it', () => {
    const { texts, unsaid } = drawn(2400);
    expect(texts).toEqual(expect.arrayContaining([...WORDS.Firebox, ...WORDS.Chamber]));
    expect(unsaid).toEqual([]);
  });

  it('says beside it what finds no room in it, part by part', () => {
    const { texts, unsaid } = drawn(300);
    expect(unsaid).toEqual(Object.entries(WORDS).map(([part, words]) => `${part}: ${words.join(', ')}.`));
    expect(texts).not.toContain(WORDS.Firebox[1]);
    const [buyer] = documentOf(asDrawn(design)).sheets;
    expect(JSON.stringify(buyer)).toContain(unsaid[0]);
  });

  it('shows brick inside, and shield and insulation outside, on both views', () => {
    const shades = (change?: Record<string, object>) => filled(change).filter(({ fill }) => fill === 'shade').length;
    expect(shades()).toBe(0);
    expect(shades({ firebox: { lining: WALLED.firebox.lining } })).toBe(2);
    expect(shades({ chamber: WALLED.chamber })).toBe(2);
    expect(filled({ firebox: { shield: WALLED.firebox.shield } }).length).toBe(filled().length + 2);
  });
});
