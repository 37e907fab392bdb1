import { describe, expect, it } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import { randomDesign } from './randomDesign.js';
import { askRandomDesigns } from './randomDesigns.js';

askRandomDesigns(500);

describe('random designs', () => {
  it('reach across the ranges', () => {
    const designs = Array.from({ length: 400 }, (_, seed) => {
      const result = readDesign(JSON.stringify(randomDesign(seed)), { fileName: String(seed) });
      if (result.faults) throw new Error(result.faults[0].message);
      return result.design;
    });
    const spread = (of: (design: (typeof designs)[number]) => number): [number, number] => {
      const values = designs.map(of);
      return [Math.min(...values), Math.max(...values)];
    };
    const [coldest, hottest] = spread((design) => design.site.air);
    expect([coldest, hottest]).toEqual([233.15, 323.15]);
    const [thinnest, thickest] = spread((design) => design.firebox.plate);
    expect(thinnest).toBe(0.0005);
    expect(thickest).toBeCloseTo(0.0508, 6);
    const [least, most] = spread((design) => design.fire.heat);
    expect([least, most]).toEqual([500, 500000]);
    expect(designs.some((design) => design.chamber?.reverse)).toBe(true);
    expect(designs.some((design) => design.stacks.length > 1)).toBe(true);
    expect(designs.some((design) => design.firebox.insulation?.thickness === 0)).toBe(true);
  });
});
