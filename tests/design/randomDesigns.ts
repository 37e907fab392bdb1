import { describe, expect, it } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import { LAYOUTS, randomDesign, randomDesignWithCount } from './randomDesign.js';

/** So many random designs are what they are for. */
export function askRandomDesigns(count: number): void {
  describe('random designs', () => {
    const texts: string[] = [];

    it('are all valid, of every layout, and found in few draws', () => {
      const draws = new Map<string, number[]>();
      for (let seed = 0; seed < count; seed++) {
        const { tree, attempts, layout } = randomDesignWithCount(seed);
        texts.push(JSON.stringify(tree));
        expect(readDesign(texts[seed], { fileName: String(seed) }).faults).toBeUndefined();
        draws.set(layout, [...(draws.get(layout) ?? []), attempts]);
      }
      expect([...draws.keys()].sort()).toEqual([...LAYOUTS].sort());
      for (const counts of draws.values()) {
        expect(counts.reduce((a, b) => a + b, 0) / counts.length).toBeLessThan(2.5);
      }
    });

    it('are the same for the same seed', () => {
      expect(randomDesign(7)).toEqual(randomDesign(7));
      expect(randomDesign(7)).not.toEqual(randomDesign(12));
    });

    it('have each of the rarer shapes in some', () => {
      const trees = texts;
      for (const field of ['heads', 'flange', 'doors', 'grate', 'ashDoor', 'damperAt', 'gather', 'plates']) {
        expect(trees.filter((tree) => tree.includes(`"${field}":`)).length, field).toBeGreaterThan(count / 75);
      }
    });
  });
}
