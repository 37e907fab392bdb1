import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { readDesign } from '../../src/design/read.js';
import { SHOP_LAYOUTS, shopDesign, shopDesignWithCount } from './shopDesign.js';

/** So many random designs of a shop are what they are for. */
export function askShopDesigns(count: number): void {
  describe('random designs of a shop', () => {
    const drawn = Array.from({ length: count }, (_, seed) => ({ ...shopDesignWithCount(seed), seed }));
    const designs = drawn.map(({ tree, seed }): Design => {
      const { design, faults } = readDesign(JSON.stringify(tree), { fileName: String(seed) });
      if (faults) throw new Error(`seed ${seed}: ${faults[0].message}`);
      return design;
    });

    it('are valid in few draws, each layout as often as the others', () => {
      for (const layout of SHOP_LAYOUTS) {
        const own = drawn.filter((each) => each.layout === layout);
        expect(own).toHaveLength(count / SHOP_LAYOUTS.length);
        expect(own.reduce((sum, { attempts }) => sum + attempts, 0) / own.length).toBeLessThan(2);
      }
    });

    it('are the same for the same seed', () => {
      expect(shopDesign(7)).toEqual(shopDesign(7));
      expect(shopDesign(7)).not.toEqual(shopDesign(15));
    });

    const parts = (design: Design) => [design.firebox, design.chamber, design.upright].flatMap((part) => part ?? []);
    const contents = (design: Design) => parts(design).flatMap((part) => part.contents.map(({ name }) => name));
    it.each<[string, (design: Design, text: string) => boolean]>([
      ['a round chamber', ({ chamber }) => chamber?.shape === 'round'],
      ['a square chamber', ({ chamber }) => chamber?.shape === 'square'],
      ['a square firebox', ({ firebox }) => firebox.shape === 'square'],
      ['no chamber, the fire straight under', ({ throat }) => throat.through === 'top'],
      ['no chamber, the fire beside', ({ chamber, throat }) => !chamber && throat.through === 'end'],
      ['a reverse-flow plate and an upright', ({ chamber, upright }) => chamber?.reverse !== undefined && !!upright],
      ['a stack on the chamber beside an upright', ({ stacks, upright }) => !!upright && stacks[0].part === 'chamber'],
      ['stacks on both', ({ stacks }) => new Set(stacks.map(({ part }) => part)).size === 2],
      ['several stacks', ({ stacks }) => stacks.length > 1],
      ['a damper', ({ stacks }) => stacks[0].damper < 1],
      ['insulation', (design) => parts(design).some(({ insulation }) => (insulation?.thickness ?? 0) > 0)],
      ['a door', (design) => parts(design).some(({ door }) => door)],
      ['stainless', (design) => parts(design).some(({ steel }) => steel === 'stainless')],
      ['pipe', (_, text) => text.includes('in pipe"')],
      ['a stack of pipe', (_, text) => text.includes('in pipe, standard wall')],
      ['a grate', (design) => contents(design).includes('grate')],
      ['a water pan', (design) => contents(design).includes('water pan')],
      ['food', (design) => contents(design).includes('meat')],
      ['frost', ({ site }) => site.air < 260],
      ['heat', ({ site }) => site.air > 310],
      ['wind', ({ site }) => site.wind > 8],
      ['wind that presses', ({ site }) => site.windPressure.intake !== 0],
      ['altitude', ({ site }) => site.altitude > 2000],
      ['rain', ({ site }) => site.rain > 0],
      ['no rain', ({ site }) => site.rain === 0],
      ['sun', ({ site }) => site.sun > 0],
      ['a cold sky', ({ site }) => site.surroundings < site.air],
    ])('have %s among them', (_, has) => {
      const many = designs.filter((design, i) => has(design, JSON.stringify(drawn[i].tree)));
      expect(many.length).toBeGreaterThan(count / 50);
    });
  });
}
