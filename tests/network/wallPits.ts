import { expect } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import type { Design } from '../../src/design/design.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { isSteel } from '../../src/network/materials.js';
import { makePit, type Pit } from '../../src/network/pit.js';
import { generator } from '../design/seeded.js';
import { shopDesign } from '../design/shopDesign.js';
import { withWalls } from '../design/wallDraws.js';

export function pitOf(text: string, levels = 5): Pit {
  const read = readDesign(text, { fileName: 'walls' });
  if (read.faults) throw new Error(JSON.stringify(read.faults));
  return made(read.design, levels);
}

function made(design: Design, levels = 5): Pit {
  return makePit(design, geometryOf(design), { chamber: 3, levels, upright: 4, stack: 1 });
}

const seeds = Array.from({ length: 24 }, (_, i) => i);

/** Walls of random designs, in so many levels, have the weight of the design's. */
export function expectWeight(levels: number): void {
  for (const seed of seeds) {
    const pit = pitOf(JSON.stringify(withWalls(shopDesign(seed), generator(seed))), levels);
    const { nodes } = pit.model.network;
    for (const { name, steelMass, liningMass } of pit.geometry.parts) {
      const shared = pit.geometry.shared.filter(({ parts }) => parts.includes(name));
      const own = nodes.filter((node) => node.part === name && node.thickness > 0 && isSteel(node.material));
      const plates = own.filter((node) => !/ plate$/.test(node.name)).reduce((sum, { mass }) => sum + mass, 0);
      const half = shared.reduce((sum, { mass }) => sum + mass / 2, 0);
      expect(plates / (steelMass - half), `seed ${seed}, ${name}`).toBeCloseTo(1, 7);
      const inside = nodes.filter(
        (node) => new RegExp(`^${name} .*lining \\d$`).test(node.name) && !/ plate /.test(node.name),
      );
      const between = nodes.filter((node) => / plate side \d lining \d$/.test(node.name));
      expect(liningMass, `seed ${seed}, ${name}`).toBeGreaterThanOrEqual(0);
      if (between.length === 0) expect(inside.reduce((sum, { mass }) => sum + mass, 0)).toBeCloseTo(liningMass, 9);
    }
  }
}
