/**
 * Seeded random designs, all valid, over the whole accepted range and every layout.
 *
 * Numbers are drawn from the reader's own table of ranges, one in eight of them right at a bound; sizes that must fit
 * into each other are drawn inside what is left. What still can't be built is drawn again, from the same stream: a seed
 * always gives the same design.
 */
import { FINISHES, INSULATIONS, WOODS } from '../../src/design/catalog/index.js';
import { rangeOf } from '../../src/design/fields.js';
import { overlap, sectionArea, widthAt, type Section } from '../../src/design/overlap.js';
import { readDesign } from '../../src/design/read.js';
import { parseQuantity, UNITS } from '../../src/units/index.js';
import { generator, type Tree } from './seeded.js';
import { walled } from './wallDraws.js';

export { generator, type Tree } from './seeded.js';

export const LAYOUTS = ['plain', 'uprightAtEnd', 'uprightOver', 'uprightBeside', 'reverse'] as const;
export type Layout = (typeof LAYOUTS)[number];

interface Box {
  shape: 'round' | 'square';
  width: number;
  height: number;
  length: number;
  plate: number;
  centre: number;
}

const COLLAR = 0.0762;

class Draw {
  private readonly next: () => number;

  constructor(seed: number) {
    this.next = generator(seed);
  }

  chance(p: number): boolean {
    return this.next() < p;
  }

  pick<T>(items: readonly T[]): T {
    return items[Math.floor(this.next() * items.length)];
  }

  between(low: number, high: number): number {
    if (this.chance(1 / 16)) return low;
    if (this.chance(1 / 16)) return high;
    return low > 0 && high / low > 20 ? low * (high / low) ** this.next() : low + (high - low) * this.next();
  }

  /** Inside a range of the table, and inside narrower bounds where given; NaN when nothing is left. */
  si(path: string, low = -Infinity, high = Infinity): number {
    const { min, max } = rangeOf(path);
    const [a, b] = [Math.max(min, low), Math.min(max, high)];
    return a <= b ? this.between(a, b) : NaN;
  }

  /** An SI value as text, in any unit of its kind. */
  text(path: string, si: number): string | number {
    const { kind } = rangeOf(path);
    const unit = this.pick(UNITS[kind].length > 0 ? UNITS[kind] : [undefined]);
    if (!unit || (kind === 'share' && this.chance(0.5))) return si;
    return `${(si - (unit.offset ?? 0)) / unit.factor} ${unit.name}`;
  }

  some(path: string): string | number {
    return this.text(path, this.si(path));
  }
}

function section(box: Box): Section {
  const { shape, width, height, plate, centre } = box;
  return { shape, width: width - 2 * plate, height: height - 2 * plate, centre };
}

function drawBox(draw: Draw): Box {
  const shape = draw.pick(['round', 'square'] as const);
  const width = draw.si('firebox.width');
  const height = shape === 'round' ? width : draw.si('firebox.width');
  const length = draw.si('firebox.length');
  const plate = draw.si('firebox.plate', 0, 0.45 * Math.min(width, height, length));
  return { shape, width, height, length, plate, centre: draw.si('firebox.centre', height / 2, height / 2 + 1.2) };
}

function drawUpright(draw: Draw): Box {
  const [width, length, height] = [draw.si('upright.width'), draw.si('upright.width'), draw.si('upright.height')];
  const plate = draw.si('firebox.plate', 0, 0.45 * Math.min(width, height, length));
  return {
    shape: 'square',
    width,
    height,
    length,
    plate,
    centre: draw.si('firebox.centre', height / 2, height / 2 + 1),
  };
}

/** Height of a second part's middle, such that the two inner sections overlap. */
function beside(draw: Draw, first: Box, second: Box): number {
  const reach = 0.45 * (first.height - 2 * first.plate + second.height - 2 * second.plate);
  return draw.si('firebox.centre', Math.max(second.height / 2, first.centre - reach), first.centre + reach);
}

function surface(draw: Draw, tree: Tree): void {
  if (draw.chance(0.3)) {
    tree.insulation = {
      material: draw.pick(Object.keys(INSULATIONS)),
      thickness: draw.some('firebox.insulation.thickness'),
      ...(draw.chance(0.6) ? { skin: draw.some('firebox.insulation.skin') } : {}),
    };
  }
  if (draw.chance(0.4)) tree.finish = draw.pick(Object.keys(FINISHES));
  if (draw.chance(0.2)) tree.emissivity = draw.some('firebox.emissivity');
}

function partTree(draw: Draw, box: Box, stations: string[]): Tree {
  const tree: Tree = { plate: draw.text('firebox.plate', box.plate), centre: draw.text('firebox.centre', box.centre) };
  if (draw.chance(0.3)) tree.steel = draw.pick(['carbon', 'stainless']);
  if (draw.chance(0.7)) tree.doorGap = draw.some('firebox.doorGap');
  if (draw.chance(0.25)) {
    const room = 0.6 * Math.min(box.width, box.height, box.length);
    tree.door = {
      width: draw.text('firebox.door.width', draw.si('firebox.door.width', 0, room)),
      height: draw.text('firebox.door.width', draw.si('firebox.door.width', 0, room)),
      ...(draw.chance(0.5) ? { plate: draw.some('firebox.plate') } : {}),
      ...(draw.chance(0.5) ? { lap: draw.some('firebox.door.lap') } : {}),
    };
  }
  surface(draw, tree);
  if (draw.chance(0.3)) {
    tree.contents = Array.from({ length: 1 + Math.floor(draw.between(0, 2)) }, (_, i) => ({
      name: `thing ${i + 1}`,
      material: draw.pick(['steel', 'stainless', 'water', 'food']),
      mass: draw.some('firebox.contents.mass'),
      area: draw.some('firebox.contents.area'),
      ...(draw.chance(0.4) ? { station: draw.pick(stations) } : {}),
    }));
  }
  return tree;
}

function horizontalTree(draw: Draw, box: Box, stations: string[]): Tree {
  const sizes =
    box.shape === 'round'
      ? { diameter: draw.text('firebox.width', box.width) }
      : { width: draw.text('firebox.width', box.width), height: draw.text('firebox.width', box.height) };
  return {
    shape: box.shape,
    ...sizes,
    length: draw.text('firebox.length', box.length),
    ...partTree(draw, box, stations),
  };
}

function intakes(draw: Draw, firebox: Box): Tree[] {
  const face = sectionArea(section(firebox));
  const kinds = draw.pick([1, 1, 2, 3]);
  return Array.from({ length: kinds }, () => {
    const count = draw.pick([1, 1, 2, 4]);
    const most = (0.95 * face) / (kinds * count);
    const kind = draw.pick(['disc', 'slide', 'pipe']);
    const area = draw.si('firebox.intakes.area', most / 300, most);
    const half = kind === 'slide' ? 0 : Math.sqrt(area / Math.PI);
    return {
      kind,
      count,
      area: draw.text('firebox.intakes.area', area),
      open: draw.some('firebox.intakes.open'),
      centre: draw.text(
        'firebox.intakes.centre',
        draw.si(
          'firebox.intakes.centre',
          firebox.centre - firebox.height / 2 + half,
          firebox.centre + firebox.height / 2 - half,
        ),
      ),
      ...(draw.chance(0.3) ? { discharge: draw.some('firebox.intakes.discharge') } : {}),
    };
  });
}

function opening(draw: Draw, area: number, low: number, high: number): Tree {
  const inset = 1e-3 * (high - low);
  return {
    area: draw.text('throat.area', draw.si('throat.area', area / 100, 0.999 * area)),
    centre: draw.text('firebox.intakes.centre', draw.si('firebox.intakes.centre', low + inset, high - inset)),
    ...(draw.chance(0.3) ? { discharge: draw.some('firebox.intakes.discharge') } : {}),
  };
}

function stack(draw: Draw, part: string, box: Box, least: number): Tree {
  const diameter = draw.si('stacks.diameter', 0, Math.min(box.width, box.length));
  const tree: Tree = {
    part,
    diameter: draw.text('stacks.diameter', diameter),
    wall: draw.text('firebox.plate', draw.si('firebox.plate', 0, 0.44 * diameter)),
    height: draw.some('stacks.height'),
    base: draw.text(
      'firebox.intakes.centre',
      draw.si('firebox.intakes.centre', least, box.centre + box.height / 2 + COLLAR),
    ),
  };
  if (draw.chance(0.4)) tree.damper = draw.some('firebox.intakes.open');
  if (draw.chance(0.2)) tree.entryLoss = draw.some('stacks.entryLoss');
  if (draw.chance(0.2)) tree.bendLoss = draw.some('stacks.bendLoss');
  if (draw.chance(0.2)) tree.capLoss = draw.some('stacks.bendLoss');
  if (draw.chance(0.2)) tree.roughness = draw.some('stacks.roughness');
  surface(draw, tree);
  return tree;
}

function site(draw: Draw): { tree: Tree; air: number } {
  const air = draw.si('site.air');
  const tree: Tree = {
    air: draw.text('site.air', air),
    wind: draw.some('site.wind'),
    altitude: draw.some('site.altitude'),
  };
  for (const key of ['humidity', 'surroundings', 'sun', 'rain'] as const)
    if (draw.chance(0.3)) tree[key] = draw.some(`site.${key}`);
  if (draw.chance(0.3))
    tree.windPressure = { intake: draw.some('site.windPressure.intake'), stack: draw.some('site.windPressure.intake') };
  return { tree, air };
}

function wood(draw: Draw): Tree {
  return {
    kind: draw.pick(Object.keys(WOODS)),
    moisture: draw.some('wood.moisture'),
    ...(draw.chance(0.2) ? { heat: draw.some('wood.heat') } : {}),
    ...(draw.chance(0.1) ? { composition: { carbon: '48 %', hydrogen: '6 %', oxygen: '44 %' } } : {}),
  };
}

function attempt(draw: Draw, layout: Layout, more: Draw): Tree {
  const { tree: siteTree, air } = site(draw);
  const firebox = drawBox(draw);
  const hasChamber = layout === 'plain' || layout === 'uprightAtEnd' || layout === 'reverse';
  const chamber = hasChamber ? drawBox(draw) : undefined;
  const upright = layout.startsWith('upright') ? drawUpright(draw) : undefined;
  if (chamber) chamber.centre = beside(draw, firebox, chamber);
  if (upright && chamber) upright.centre = beside(draw, chamber, upright);
  if (upright && layout === 'uprightBeside') upright.centre = beside(draw, firebox, upright);
  const roof = firebox.centre + firebox.height / 2;
  if (upright && layout === 'uprightOver')
    upright.centre = draw.si('firebox.centre', roof + upright.height / 2, roof + 0.07 + upright.height / 2);

  const fire: Tree = {
    heat: draw.some('fire.heat'),
    target: draw.text('fire.target', draw.si('fire.target', air + 6)),
  };
  for (const key of ['rise', 'radiant', 'soot'] as const) if (draw.chance(0.4)) fire[key] = draw.some(`fire.${key}`);
  const tree: Tree = { schema: 1, name: `Random ${layout}`, site: siteTree, wood: wood(draw), fire };
  tree.firebox = { ...horizontalTree(draw, firebox, ['firebox']), intakes: intakes(draw, firebox) };

  let level = -Infinity;
  if (chamber) {
    const chamberTree = horizontalTree(draw, chamber, ['fireEnd', 'middle', 'stackEnd']);
    const inside = section(chamber);
    if (layout === 'reverse') {
      const plate = draw.si('firebox.plate', 0, 0.2 * inside.height);
      const height = draw.si('chamber.reverse.height', 0.02 * inside.height, 0.98 * inside.height - plate);
      level = inside.centre - inside.height / 2 + height;
      const area = widthAt(inside, level) * (chamber.length - 2 * chamber.plate);
      chamberTree.reverse = {
        height: draw.text('chamber.reverse.height', height),
        plate: draw.text('firebox.plate', plate),
        turn: draw.text('chamber.reverse.turn', draw.si('chamber.reverse.turn', area / 200, 0.49 * area)),
      };
    }
    tree.chamber = chamberTree;
  }
  const next = chamber ?? upright;
  if (next && layout === 'uprightOver') {
    const plan = (Math.min(firebox.width, next.width) - 0.2) * (Math.min(firebox.length, next.length) - 0.2);
    tree.throat = { ...opening(draw, plan, roof - 0.05, roof + 0.07), through: 'top' };
  } else if (next) {
    const meet = overlap(section(firebox), section(next));
    tree.throat = opening(draw, meet.area, meet.low, level > -Infinity ? Math.min(meet.high, level) : meet.high);
  }
  if (upright) {
    const uprightTree: Tree = {
      width: draw.text('upright.width', upright.width),
      depth: draw.text('upright.width', upright.length),
      height: draw.text('upright.height', upright.height),
      ...partTree(draw, upright, ['uprightLower', 'uprightUpper']),
    };
    if (chamber) {
      const meet = overlap(section(chamber), section(upright));
      uprightTree.opening = opening(draw, meet.area, meet.low, meet.high);
    }
    tree.upright = uprightTree;
  }
  const onto =
    layout === 'uprightAtEnd'
      ? draw.pick([['upright'], ['chamber'], ['chamber', 'upright']])
      : [chamber ? 'chamber' : 'upright'];
  tree.stacks = onto.flatMap((part) => {
    const box = part === 'chamber' ? chamber : upright;
    if (!box) return [];
    const least = Math.max(box.centre - box.height / 2, level + 1e-3);
    return Array.from({ length: draw.chance(0.15) ? 2 : 1 }, () => stack(draw, part, box, least));
  });
  if (draw.chance(0.4)) tree.innerConvection = draw.some('innerConvection');
  tree.gauge = draw.pick([
    ...(chamber ? ['fireEnd', 'middle', 'stackEnd'] : []),
    ...(upright ? ['uprightLower', 'uprightUpper'] : []),
  ]);
  if (draw.chance(0.3)) {
    tree.estimates = {
      oxygenUse: draw.some('estimates.oxygenUse'),
      stemFill: draw.some('estimates.stemFill'),
      insideEmissivity: draw.some('estimates.insideEmissivity'),
    };
  }
  if (more.chance(1 / 3)) {
    // heights of the throat, and of the lowest that draws from the chamber
    const at = (block: unknown) => {
      const read = parseQuantity('length', String((block as Tree).centre ?? (block as Tree).base));
      return read.ok ? read.si : NaN;
    };
    const draws = [
      ...(tree.stacks as Tree[]).filter(({ part }) => part === 'chamber'),
      ...(upright && chamber ? [(tree.upright as Tree).opening] : []),
    ];
    shaped(more, tree, { firebox, chamber, upright, throat: at(tree.throat), floor: Math.min(...draws.map(at)) });
  }
  return tree;
}

const metres = (si: number): string => `${si} m`;
const squareMetres = (si: number): string => `${si} m2`;

/**
 * In a third of designs what only some pits have: heads, several doors, a grate under the fire, a damper low down, a
 * gather box.
 */
function shaped(
  draw: Draw,
  tree: Tree,
  boxes: { firebox: Box; chamber?: Box; upright?: Box; throat?: number; floor?: number },
): void {
  const { firebox, chamber, upright } = boxes;
  for (const [name, box] of Object.entries({ firebox, chamber })) {
    if (box?.shape !== 'round' || !draw.chance(0.5)) continue;
    const part = tree[name] as Tree;
    part.heads = draw.pick(['dished', 'elliptical', 'hemispherical']);
    if (draw.chance(0.4)) part.flange = metres(draw.between(0, 0.1));
  }
  for (const [name, box] of Object.entries({ chamber, upright })) {
    if (!box || !draw.chance(0.5)) continue;
    const part = tree[name] as Tree;
    const lying = name === 'chamber';
    const many = draw.pick([1, 2, 3]);
    const gaps = draw.chance(0.5);
    delete part.door;
    if (gaps) delete part.doorGap;
    const room = (size: number) => draw.between(0.3 * size, 0.9 * size);
    const doors = Array.from({ length: many }, (_, i) => ({
      name: `door ${i + 1}`,
      width: metres(room(lying ? box.length / many : Math.max(box.width, box.length))),
      height: metres(room(lying ? box.height : box.height / many)),
      ...(gaps ? { gap: squareMetres(draw.between(0, 1e-3)) } : {}),
    }));
    part.doors = doors;
  }
  if (draw.chance(0.5)) {
    const inside = firebox.height - 2 * firebox.plate;
    const height = draw.between(0.06 * inside, 0.6 * inside);
    const box = tree.firebox as Tree;
    box.grate = {
      height: metres(height),
      bars: metres(draw.between(0.004, 0.03)),
      apart: metres(draw.between(0.004, 0.05)),
    };
    if (draw.chance(0.6)) {
      const high = metres(draw.between(0.3 * height, 0.9 * height));
      box.ashDoor = { width: metres(0.2 * firebox.width), height: high, open: draw.pick([0, 0.1, 0.5]) };
    }
  }
  const { throat = NaN, floor = NaN } = boxes;
  if (chamber && throat < floor && !(tree.chamber as Tree).reverse && draw.chance(0.9)) {
    const inside = chamber.height - 2 * chamber.plate;
    const bottom = chamber.centre - inside / 2;
    const level = draw.between(throat, Math.min(floor, bottom + 0.9 * inside)) + 1e-3;
    const gaps = draw.pick([1, 2, 3, 5]);
    const open = draw.between(0.05, 0.5) * chamber.length;
    (tree.chamber as Tree).plates = {
      height: metres(level - bottom),
      plate: '3 mm',
      gaps: Array.from({ length: gaps }, () => metres(Math.max(0.004, open / gaps))),
    };
  }
  for (const stack of tree.stacks as Tree[]) {
    if (draw.chance(0.4)) Object.assign(stack, { damper: draw.between(0.1, 1), damperAt: draw.pick(['base', 'top']) });
    const box = stack.part === 'chamber' ? chamber : upright;
    if (!box || !draw.chance(0.4)) continue;
    const side = draw.between(0.2, 0.8) * Math.min(box.width, box.length, box.height);
    const gather = { width: side, depth: draw.between(0.5, 1) * side, height: side };
    Object.assign(stack, {
      diameter: metres(Math.max(0.03, 0.4 * gather.depth)),
      wall: '2 mm',
      base: metres(draw.chance(0.5) ? box.centre + box.height / 2 + side : box.centre + 0.4 * box.height),
      gather: {
        width: metres(gather.width),
        depth: metres(gather.depth),
        height: metres(gather.height),
        plate: '3 mm',
        mouth: squareMetres(draw.between(0.1, 0.7) * side * gather.depth),
      },
    });
  }
}

/** Draws that a seed needs until one can be built; far below the limit. */
const MOST_ATTEMPTS = 200;

/**
 * A valid design as the tree of a design file, every fourth with walls of its own, how many draws it took, and its
 * layout.
 */
export function randomDesignWithCount(seed: number): { tree: Tree; attempts: number; layout: Layout } {
  const draw = new Draw(seed);
  // from a stream of their own, so that designs without them stay as they were
  const more = new Draw(~seed);
  const layout = LAYOUTS[((seed % LAYOUTS.length) + LAYOUTS.length) % LAYOUTS.length];
  for (let attempts = 1; attempts <= MOST_ATTEMPTS; attempts++) {
    const tree = attempt(draw, layout, more);
    if (!readDesign(JSON.stringify(tree), { fileName: `seed ${seed}` }).faults)
      return { tree: walled(tree, seed), attempts, layout };
  }
  throw new Error(`seed ${seed}: no valid ${layout} design in ${MOST_ATTEMPTS} draws`);
}

/** A valid design as the tree of a design file; `JSON.stringify` of it is a file that reads without faults. */
export function randomDesign(seed: number): Tree {
  return randomDesignWithCount(seed).tree;
}
