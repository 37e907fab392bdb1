import { beforeAll, describe, expect, it } from 'vitest';
import { PLAIN } from '../../design/designFiles.js';
import { spreadOf, heavy } from './comparedSpread.js';

/** What heavier plate does for sure, by so many cases. */
export function heavierPlateDiffers(cases: number): void {
  describe('how sure a difference is', () => {
    let study: ReturnType<typeof spreadOf>;
    beforeAll(() => {
      study = spreadOf([PLAIN, heavy], cases);
    }, 120_000);
    const of = (key: string) => study.spread.options[1].measures.find((each) => each.key === key)!;

    it('heavier plate soaks later in every case, and swings more in none; the wood that holds differs in none', () => {
      expect(of('soaked_s')).toMatchObject({ more: cases, less: 0, same: 0, missing: 0 });
      expect(of('soaked_s').difference.p10).toBeGreaterThan(60);
      expect(of('swing.steel_K').less).toBeGreaterThan(cases / 2);
      expect(of('swing.steel_K')).toMatchObject({ more: 0, missing: 0 });
      expect(of('hold.wood_kg_per_s').same + of('hold.wood_kg_per_s').less).toBe(cases);
      expect(of('steel_kg').difference.p10).toBeCloseTo(of('steel_kg').difference.p90!, 9);
    });

    it('differences spread far less than the numbers themselves, since all options share the fire', () => {
      const width = ({ p10, p90 }: { p10: number | null; p90: number | null }) => p90! - p10!;
      expect(width(of('hold.fire_W').difference)).toBeLessThan(0.2 * width(of('hold.fire_W').value));
    });

    it('counts every case once, and gives the baseline no difference to itself', () => {
      for (const { measures } of study.spread.options) {
        for (const { more, less, same, missing } of measures) expect(more + less + same + missing).toBe(cases);
      }
      for (const { difference, more, less } of study.spread.options[0].measures) {
        expect([more, less]).toEqual([0, 0]);
        expect(difference.p90 ?? 0).toBe(0);
      }
    });
  });
}
