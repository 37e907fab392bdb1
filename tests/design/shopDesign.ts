/**
 * Seeded random designs as a shop would build them: sizes in eighths of an inch, plate from the rack, fires near what
 * the steel asks for, every layout in turn. `randomDesign` reaches into every corner of what is accepted; most of these
 * warm up.
 */
import { overlap, widthAt, type Section } from '../../src/design/overlap.js';
import { readDesign } from '../../src/design/read.js';
import { INSULATIONS, FINISHES, WOODS } from '../../src/design/catalog/index.js';
import { generator, type Tree } from './randomDesign.js';
import { walled } from './wallDraws.js';

export const SHOP_LAYOUTS = [
  'plain',
  'upright at the end, stack on it',
  'upright at the end, stack on the chamber',
  'upright at the end, stacks on both',
  'upright over the firebox',
  'upright beside the firebox',
  'reverse flow',
  'reverse flow into an upright',
] as const;
export type ShopLayout = (typeof SHOP_LAYOUTS)[number];

/** A part in inches. */
interface Box {
  shape: 'round' | 'square';
  width: number;
  height: number;
  length: number;
  plate: number;
  centre: number;
}

const PLATES: [string, number][] = [
  ['11 ga', 0.1196],
  ['10 ga', 0.1345],
  ['1/8 in', 0.125],
  ['7 ga', 0.1793],
  ['3/16 in', 0.1875],
  ['1/4 in', 0.25],
  ['5/16 in', 0.3125],
  ['3/8 in', 0.375],
  ['1/2 in', 0.5],
];
/** Pipe that shells are made of; from 14 in on its nominal size is its outside diameter. */
const PIPES = [16, 18, 20, 24, 30];
/** Pipe that stacks are made of. */
const STACK_PIPES = [4, 5, 6, 8, 10];
const inches = (value: number) => `${Math.round(value * 8) / 8} in`;
const eighth = (value: number) => Math.round(value * 8) / 8;
const squareInches = (value: number) => `${Number(value.toPrecision(3))} in²`;
const nearest = (sizes: readonly number[], to: number) =>
  sizes.reduce((best, size) => (Math.abs(size - to) < Math.abs(best - to) ? size : best));
const percent = (share: number) => `${Math.round(100 * share)} %`;

class Draw {
  constructor(private readonly next: () => number) {}

  chance(p: number): boolean {
    return this.next() < p;
  }

  pick<T>(items: readonly T[]): T {
    return items[Math.floor(this.next() * items.length)];
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  /** Evenly in logarithms. */
  ratio(low: number, high: number): number {
    return low * (high / low) ** this.next();
  }
}

const section = (box: Box): Section => ({
  shape: box.shape,
  width: box.width - 2 * box.plate,
  height: box.height - 2 * box.plate,
  centre: box.centre,
});

function plate(draw: Draw): { text: string; inch: number } {
  const [text, inch] = draw.pick(PLATES);
  return { text, inch };
}

/** Firebox or chamber, and its part of the file. */
function horizontal(draw: Draw, sizes: [number, number], lengths: [number, number]): { box: Box; tree: Tree } {
  const shape = draw.pick(['round', 'round', 'square'] as const);
  const pipe = shape === 'round' && draw.chance(0.25) ? draw.pick(PIPES.filter((each) => each >= sizes[0])) : undefined;
  const width = pipe ?? eighth(draw.between(...sizes));
  const height = shape === 'round' ? width : eighth(draw.between(...sizes));
  const length = eighth(draw.between(...lengths));
  const { text, inch } = plate(draw);
  const box = { shape, width, height, length, plate: inch, centre: 0 };
  const diameter = pipe === undefined ? inches(width) : `${pipe} in pipe`;
  const across = shape === 'round' ? { diameter } : { width: inches(width), height: inches(height) };
  return { box, tree: { shape, ...across, length: inches(length), plate: text } };
}

function surface(draw: Draw, chance: number): Tree {
  return {
    ...(draw.chance(chance)
      ? {
          insulation: {
            material: draw.pick(Object.keys(INSULATIONS)),
            thickness: draw.pick(['1/2 in', '1 in', '2 in', '3 in', '4 in']),
            ...(draw.chance(0.7) ? { skin: draw.pick(['16 ga', '14 ga', '18 ga']) } : {}),
          },
        }
      : {}),
    ...(draw.chance(0.3) ? { finish: draw.pick(Object.keys(FINISHES)) } : {}),
  };
}

/** What every part may have besides its shell. */
function fittings(draw: Draw, box: Box, stations: readonly string[], insulated: number): Tree {
  const tree: Tree = { centre: inches(box.centre) };
  if (draw.chance(0.12)) tree.steel = 'stainless';
  if (draw.chance(0.8)) tree.doorGap = squareInches(draw.ratio(0.1, 5));
  if (draw.chance(0.4)) {
    const room = 0.6 * Math.min(box.width, box.height, box.length);
    tree.door = {
      width: inches(Math.max(4, draw.between(0.4, 1) * room)),
      height: inches(Math.max(4, draw.between(0.4, 1) * room)),
      ...(draw.chance(0.4) ? { plate: plate(draw).text } : {}),
      ...(draw.chance(0.4) ? { lap: draw.pick(['1/2 in', '3/4 in', '1 in']) } : {}),
    };
  }
  Object.assign(tree, surface(draw, insulated));
  return { ...tree, ...contents(draw, stations) };
}

/** Grates, a water pan, food. */
function contents(draw: Draw, stations: readonly string[]): Tree {
  const list: Tree[] = [];
  const fireside = stations[0] === 'firebox';
  if (draw.chance(0.5)) {
    list.push({
      name: 'grate',
      material: draw.pick(['steel', 'steel', 'stainless']),
      mass: `${Math.round(draw.ratio(4, 60))} lb`,
      area: `${Number(draw.ratio(2, 20).toPrecision(2))} ft²`,
      ...(draw.chance(0.4) ? { station: draw.pick(stations) } : {}),
    });
  }
  if (!fireside && draw.chance(0.12)) {
    list.push({
      name: 'water pan',
      material: 'water',
      mass: `${Math.round(draw.ratio(2, 30))} lb`,
      area: `${Number(draw.ratio(0.3, 3).toPrecision(2))} ft²`,
      station: draw.pick(stations),
    });
  }
  if (!fireside && draw.chance(0.12)) {
    list.push({
      name: 'meat',
      material: 'food',
      mass: `${Math.round(draw.ratio(5, 60))} lb`,
      area: `${Number(draw.ratio(1, 10).toPrecision(2))} ft²`,
    });
  }
  return list.length > 0 ? { contents: list } : {};
}

/** An opening between two heights, of up to an area [in²]. */
function opening(draw: Draw, most: number, low: number, high: number): Tree {
  const area = Math.min(draw.ratio(25, 220), draw.between(0.3, 0.95) * most);
  return {
    area: squareInches(area),
    centre: `${Number(draw.between(low + 0.15 * (high - low), low + 0.85 * (high - low)).toPrecision(4))} in`,
    ...(draw.chance(0.15) ? { discharge: Number(draw.between(0.5, 0.9).toPrecision(2)) } : {}),
  };
}

function intakes(draw: Draw, box: Box, flue: number): Tree[] {
  const kinds = draw.pick([1, 1, 1, 2, 3]);
  const all = flue * draw.ratio(0.25, 2);
  return Array.from({ length: kinds }, () => {
    const count = draw.pick([1, 1, 2, 3]);
    const area = Math.max(0.5, Math.min(all / (kinds * count), (0.2 * box.width * box.height) / (kinds * count)));
    const half = Math.min(0.5 * Math.sqrt(area) + 0.5, 0.4 * box.height);
    return {
      kind: draw.pick(['disc', 'slide', 'pipe']),
      count,
      area: squareInches(area),
      ...(draw.chance(0.5) ? { open: percent(draw.between(0.15, 1)) } : {}),
      centre: `${Number(draw.between(box.centre - box.height / 2 + half, box.centre + 0.2 * box.height).toPrecision(4))} in`,
      ...(draw.chance(0.15) ? { discharge: Number(draw.between(0.5, 0.8).toPrecision(2)) } : {}),
    };
  });
}

function stack(draw: Draw, part: string, box: Box, bore: number, least: number): Tree {
  const roof = box.centre + box.height / 2;
  return {
    part,
    ...(draw.chance(0.2)
      ? { diameter: `${nearest(STACK_PIPES, bore)} in pipe, standard wall` }
      : { diameter: inches(bore), wall: draw.pick(['11 ga', '14 ga', '1/8 in', '3/16 in', '1/4 in']) }),
    height: inches(draw.ratio(12, 84)),
    base: inches(draw.chance(0.6) ? roof : Math.max(least + 0.5, draw.between(box.centre, roof))),
    ...(draw.chance(0.35) ? { damper: percent(draw.between(0.2, 1)) } : {}),
    ...(draw.chance(0.2) ? { bendLoss: Number(draw.between(0, 1).toPrecision(2)) } : {}),
    ...(draw.chance(0.2) ? { capLoss: Number(draw.between(0, 1.5).toPrecision(2)) } : {}),
    ...surface(draw, 0.1),
  };
}

function site(draw: Draw): { tree: Tree; air: number } {
  const air = Math.round(draw.chance(0.2) ? draw.between(-20, 32) : draw.between(32, 105));
  const tree: Tree = {
    air: `${air} °F`,
    wind: `${Math.round(draw.between(0, draw.chance(0.2) ? 30 : 12))} mph`,
    altitude: `${Math.round(draw.chance(0.3) ? draw.between(2000, 9000) : draw.between(0, 2000))} ft`,
  };
  if (draw.chance(0.2)) tree.humidity = percent(draw.between(0.1, 1));
  if (draw.chance(0.1)) tree.surroundings = `${air - Math.round(draw.between(0, 40))} °F`;
  if (draw.chance(0.2)) tree.sun = `${Math.round(draw.between(100, 1000))} W/m2`;
  if (draw.chance(0.15)) tree.rain = percent(draw.between(0.1, 1));
  if (draw.chance(0.2)) {
    tree.windPressure = {
      intake: Number(draw.between(-0.5, 0.8).toPrecision(2)),
      stack: Number(draw.between(-0.6, 0.2).toPrecision(2)),
    };
  }
  return { tree, air };
}

/** Heat that the parts' bare or wrapped outsides would lose at the target, roughly [BTU/h]. */
function roughLoss(parts: { box: Box; tree: Tree }[], rise: number): number {
  return parts.reduce((sum, { box, tree }) => {
    const area = (2 * (box.width * box.height + box.length * (box.width + box.height))) / 144;
    return sum + (tree.insulation ? 0.8 : 2.2) * area * rise;
  }, 0);
}

function attempt(draw: Draw, layout: ShopLayout): Tree {
  const { tree: siteTree, air } = site(draw);
  const reverse = layout.startsWith('reverse');
  const hasChamber = layout !== 'upright over the firebox' && layout !== 'upright beside the firebox';
  const hasUpright = layout.includes('upright');
  const fireside = horizontal(draw, [14, 32], [14, 40]);
  const { box: firebox } = fireside;
  firebox.centre = eighth(firebox.height / 2 + draw.between(4, 22));
  const cook = hasChamber ? horizontal(draw, [15, 40], [28, 110]) : undefined;
  const chamber = cook?.box;
  if (chamber) {
    const reach = 0.4 * (firebox.height + chamber.height);
    chamber.centre = eighth(Math.max(chamber.height / 2, firebox.centre + draw.between(-0.2, 0.8) * reach));
  }
  let upright: Box | undefined;
  let uprightPlate = '';
  if (hasUpright) {
    const { text, inch } = plate(draw);
    uprightPlate = text;
    const [width, length, height] = [
      [16, 36],
      [16, 36],
      [24, 76],
    ].map(([low, high]) => eighth(draw.between(low, high)));
    upright = { shape: 'square', width, length, height, plate: inch, centre: 0 };
    const beside = chamber ?? firebox;
    const foot =
      layout === 'upright over the firebox'
        ? firebox.centre + firebox.height / 2 + draw.between(0, 2)
        : Math.max(0, beside.centre + draw.between(-0.6, 0.25) * beside.height);
    upright.centre = Math.ceil(8 * (foot + height / 2)) / 8;
  }
  Object.assign(fireside.tree, fittings(draw, firebox, ['firebox'], 0.2));
  const wrapped = draw.pick([0, 0, 0.3, 0.9]);
  const chamberStations = ['fireEnd', 'middle', 'stackEnd'];
  const uprightStations = ['uprightLower', 'uprightUpper'];
  if (chamber) Object.assign(cook!.tree, fittings(draw, chamber, chamberStations, wrapped));
  const uprightTree: Tree | undefined = upright && {
    width: inches(upright.width),
    depth: inches(upright.length),
    height: inches(upright.height),
    plate: uprightPlate,
    ...fittings(draw, upright, uprightStations, wrapped),
  };

  let level = -Infinity;
  if (chamber && reverse) {
    const inside = section(chamber);
    const height = draw.between(0.2, 0.5) * inside.height;
    const { text } = plate(draw);
    const turn = Math.min(
      draw.between(0.4, 1.5) * 0.2 * inside.width * inside.height,
      0.45 * widthAt(inside, inside.centre - inside.height / 2 + height) * chamber.length,
    );
    level = inside.centre - inside.height / 2 + height;
    cook!.tree.reverse = { height: `${Number(height.toPrecision(4))} in`, plate: text, turn: squareInches(turn) };
  }

  const parts = [
    fireside,
    ...(cook ? [cook] : []),
    ...(upright && uprightTree ? [{ box: upright, tree: uprightTree }] : []),
  ];
  const target = Math.round(draw.chance(0.8) ? draw.between(215, 330) : draw.between(Math.max(160, air + 40), 420));
  const heat = roughLoss(parts, target - air) * draw.ratio(1.1, 7);
  const fire: Tree = { heat: `${Number((heat / 1000).toPrecision(3))} kBTU/h`, target: `${target} °F` };
  if (draw.chance(0.4)) fire.rise = `${Math.round(draw.between(2, 25))} min`;
  if (draw.chance(0.3)) fire.radiant = Number(draw.between(0.2, 0.45).toPrecision(2));
  if (draw.chance(0.3)) fire.soot = `${Number(draw.between(0, 1.2).toPrecision(2))} per m`;

  // a flue for that fire: some 0.6 to 2 in² for each 1,000 BTU/h
  const flue = Math.min(110, Math.max(8, (heat / 1000) * draw.ratio(0.35, 2)));
  const tree: Tree = {
    schema: 1,
    name: `Shop design: ${layout}`,
    site: siteTree,
    wood: {
      kind: draw.pick(Object.keys(WOODS)),
      moisture: percent(draw.between(0.1, 0.35)),
    },
    fire,
    firebox: { ...fireside.tree, intakes: intakes(draw, firebox, flue) },
  };
  const next = chamber ?? upright!;
  if (layout === 'upright over the firebox') {
    const roof = firebox.centre + firebox.height / 2;
    const plan = (Math.min(firebox.width, upright!.width) - 2) * (Math.min(firebox.length, upright!.length) - 2);
    tree.throat = { ...opening(draw, 0.5 * plan, roof, roof), through: 'top' };
  } else {
    const meet = overlap(section(firebox), section(next));
    tree.throat = opening(draw, meet.area, meet.low, Math.min(meet.high, level === -Infinity ? meet.high : level));
  }
  if (cook) tree.chamber = cook.tree;
  if (upright && uprightTree) {
    if (chamber) {
      const meet = overlap(section(chamber), section(upright));
      uprightTree.opening = opening(draw, meet.area, Math.max(meet.low, reverse ? level : meet.low), meet.high);
    }
    tree.upright = uprightTree;
  }
  const onto = layout.endsWith('on both')
    ? ['chamber', 'upright']
    : [hasUpright && !layout.endsWith('on the chamber') ? 'upright' : 'chamber'];
  tree.stacks = onto.flatMap((part) => {
    const box = part === 'chamber' ? chamber! : upright!;
    const floor = Math.max(box.centre - box.height / 2, part === 'chamber' ? level : -Infinity);
    const count = draw.chance(0.12) ? 2 : 1;
    const bore = Math.max(3, Math.min(Math.sqrt((4 * flue) / Math.PI / (count * onto.length)), 0.6 * box.width));
    return Array.from({ length: count }, () => stack(draw, part, box, bore, floor));
  });
  if (draw.chance(0.3)) tree.innerConvection = Number(draw.between(0.8, 2).toPrecision(3));
  if (draw.chance(0.8)) {
    tree.gauge = draw.pick([...(chamber ? chamberStations : []), ...(upright ? uprightStations : [])]);
  }
  if (draw.chance(0.2)) {
    tree.estimates = {
      oxygenUse: percent(draw.between(0.7, 0.95)),
      stemFill: Number(draw.between(0.2, 1).toPrecision(2)),
      insideEmissivity: Number(draw.between(0.85, 0.97).toPrecision(2)),
    };
  }
  return tree;
}

/** Draws that a seed gets until one can be built. */
const MOST_ATTEMPTS = 300;

/**
 * A valid design as the tree of a design file, every fourth with walls of its own, how many draws it took, and its
 * layout.
 */
export function shopDesignWithCount(seed: number): { tree: Tree; attempts: number; layout: ShopLayout } {
  const draw = new Draw(generator(seed + 0x5109));
  const layout = SHOP_LAYOUTS[seed % SHOP_LAYOUTS.length];
  for (let attempts = 1; attempts <= MOST_ATTEMPTS; attempts++) {
    const tree = attempt(draw, layout);
    if (!readDesign(JSON.stringify(tree), { fileName: `shop ${seed}` }).faults)
      return { tree: walled(tree, seed), attempts, layout };
  }
  throw new Error(`seed ${seed}: no valid ${layout} design in ${MOST_ATTEMPTS} draws`);
}

/** A valid design as the tree of a design file. */
export function shopDesign(seed: number): Tree {
  return shopDesignWithCount(seed).tree;
}
