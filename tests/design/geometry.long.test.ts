import { describe, expect, it } from 'vitest';
import { geometryOf } from '../../src/design/geometryOf.js';
import type { Geometry } from '../../src/design/geometry.js';
import { designOf } from './designFiles.js';
import { randomDesign } from './randomDesign.js';

const sum = (values: number[]): number => values.reduce((a, b) => a + b, 0);

/** Steel of everything but stacks and skins: by faces and by shared plates. */
function steelOf(geometry: Geometry): number {
  return sum(geometry.parts.map((each) => each.steelMass));
}

describe('any design', () => {
  it('has positive, finite areas, masses and volumes that add up', () => {
    for (let seed = 0; seed < 300; seed++) {
      const geometry = geometryOf(designOf(JSON.stringify(randomDesign(seed))));
      for (const each of geometry.parts) {
        expect(each.gasVolume).toBeGreaterThan(0);
        expect(each.roof).toBeGreaterThan(each.floor);
        for (const { outsideArea, insideArea, mass, thickness, length } of each.faces) {
          for (const value of [outsideArea, insideArea, mass, thickness, length]) {
            expect(Number.isFinite(value) && value > 0, `seed ${seed} ${each.name}`).toBe(true);
          }
        }
      }
      for (const shared of geometry.shared) {
        expect(shared.area, `seed ${seed}`).toBeGreaterThan(0);
        expect(Number.isFinite(shared.centre) && shared.length > 0).toBe(true);
      }
      expect(geometry.totalSteelMass).toBeGreaterThanOrEqual(
        steelOf(geometry) + sum(geometry.stacks.map((each) => each.mass)) - 1e-9,
      );
    }
  });
});
