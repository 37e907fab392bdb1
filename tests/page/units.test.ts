import { describe, expect, it } from 'vitest';
import { pitDrawing } from '../../src/draw/pit/pitDrawing.js';
import { numberRows, toldBeside } from '../../src/page/numbers.js';
import { exampleDesign } from '../support/examples.js';
import { sampleResult } from '../support/sampleResult.js';
import { SHOP } from './support/shopUnits.js';

describe('units by choice', () => {
  it('the drawing is measured in the system that is asked for', () => {
    const design = exampleDesign('plain-24.yaml');
    const texts = (system?: 'si') =>
      pitDrawing(design, { width: 800, arrange: 'row', ...(system ? { system } : {}) }).marks.flatMap((mark) =>
        // plates are called what the yard calls them
        mark.shape === 'text' && !mark.text.endsWith('plate') ? [mark.text] : [],
      );
    expect(texts()).toContain('60 in');
    expect(texts('si').some((text) => SHOP.test(text))).toBe(false);
    expect(texts('si').length).toBe(texts().length);
  });

  it('numbers stand in shop units, in SI, or in both, and their differences with them', () => {
    const texts = (units: 'both' | 'shop' | 'si') =>
      Object.fromEntries(numberRows(sampleResult, units).map(({ quantity, text }) => [quantity.key, text]));
    const [both, shop, si] = [texts('both'), texts('shop'), texts('si')];
    const wood = 'hold.wood_kg_per_s';
    expect(both[wood]).toBe(`${shop[wood]} (${si[wood]})`);
    expect(shop[wood]).toMatch(/lb\/h$/);
    expect(si[wood]).toMatch(/kg\/h$/);
    expect(Object.values(si).filter((text) => SHOP.test(text))).toEqual([]);
    const row = numberRows(sampleResult, 'si').find(({ quantity }) => quantity.key === wood)!;
    const [, more] = toldBeside([row, { ...row, si: row.si! * 2 }], 'si');
    expect(more!.difference).toMatch(/^\+.* kg\/h$/);
  });
});
