/**
 * Seeded walls for a seeded design: faces of their own, linings, heat shields and doors covered otherwise, as a shop
 * would build them.
 */
import { FINISHES, INSULATIONS, LININGS } from '../../src/design/catalog/index.js';
import { readDesign } from '../../src/design/read.js';
import { generator, type Tree } from './seeded.js';

const PLATES = ['11 ga', '1/8 in', '3/16 in', '1/4 in', '3/8 in', '1/2 in'];
const FACES = ['roof', 'floor', 'sides', 'fireEnd', 'stackEnd'];

/** Draws of walls that a design gets until some fit it; then it stays as it is. */
const MOST_ATTEMPTS = 20;

/** Of designs by their seeds every so many has walls of its own. */
const EVERY = 4;

/**
 * A seeded design with walls drawn for it, if it is one that has some; drawn apart, so that the design itself stays as
 * it was.
 */
export function walled(tree: Tree, seed: number): Tree {
  return seed % EVERY === EVERY - 1 ? withWalls(tree, generator(seed + 0x3a11)) : tree;
}

/**
 * A design with walls drawn for it, or as it is where none fit.
 *
 * @param next numbers 0..1
 */
export function withWalls(tree: Tree, next: () => number): Tree {
  for (let i = 0; i < MOST_ATTEMPTS; i++) {
    const made = structuredClone(tree);
    for (const part of ['firebox', 'chamber', 'upright']) {
      if (made[part] !== undefined) coverPart(made[part] as Tree, part, next);
    }
    if (!readDesign(JSON.stringify(made), { fileName: 'walls' }).faults) return made;
  }
  return tree;
}

function coverPart(part: Tree, name: string, next: () => number): void {
  const chance = (p: number) => next() < p;
  const pick = <T>(items: readonly T[]): T => items[Math.floor(next() * items.length)];
  const own = name === 'upright' ? FACES.slice(0, 3) : FACES;
  const some = () => {
    const drawn = own.filter(() => chance(0.5));
    return drawn.length > 0 ? { faces: drawn } : {};
  };
  const insulation = () =>
    chance(0.4)
      ? 'none'
      : { material: pick(Object.keys(INSULATIONS)), thickness: pick(['1/2 in', '1 in', '2 in']), skin: '16 ga' };
  for (const face of own) {
    if (!chance(0.25)) continue;
    part[face] = {
      ...(chance(0.6) ? { plate: pick(PLATES) } : {}),
      ...(chance(0.4) ? { insulation: insulation() } : {}),
      ...(chance(0.3) ? { finish: pick(Object.keys(FINISHES)) } : {}),
    };
  }
  if (chance(name === 'firebox' ? 0.5 : 0.15)) {
    part.lining = {
      material: pick(Object.keys(LININGS)),
      thickness: pick(['1/2 in', '1 in', '1-1/4 in', '2-1/2 in']),
      ...some(),
    };
  }
  if (chance(0.25)) {
    part.shield = {
      plate: pick(['16 ga', '11 ga']),
      gap: pick(['1/4 in', '1 in', '2 in']),
      edges: pick(['open', 'closed']),
      ...some(),
    };
  }
  const doors = [part.door, ...((part.doors as unknown[]) ?? [])].filter((door) => door !== undefined);
  for (const door of doors) if (chance(0.5)) (door as Tree).insulation = insulation();
}
