import { INSULATIONS } from '../../design/catalog/index.js';
import type { Content, Grate, Design, HorizontalPart, PartName, Upright } from '../../design/design.js';
import type { Face, Geometry, PartGeometry } from '../../design/geometry.js';
import { fireGrateOf } from '../../design/fireGrate.js';
import { deckArea, deckOf } from '../../design/decks.js';
import { growth, liningMass, sharedLiningMass, shieldMass, skinMass, stackSkinMass } from '../../design/geometryOf.js';
import { stackSection } from '../../design/stackSection.js';
import { steelDensity } from '../../physics/steel.js';
import type { Warning } from '../estimate/result.js';
import { TONGUE_BAND, towingOf, type Carried, type Move, type TowCase, type Towing } from './towing.js';
import { tonguePercent, trailerLoads, type TrailerLoads } from './trailerLoads.js';
import { amount, inWords, told, type Told } from '../../units/index.js';

/**
 * A weight and where it acts: along the trailer from its mark; without a trailer along the pit from the firebox's outer
 * end.
 */
interface WeightItem extends Carried {
  name: string;
  /** above the ground, as the pit stands; null where the file gives none */
  height_m: number | null;
}

/** What everything weighs and where it acts. */
export interface WeightResult {
  items: WeightItem[];
  /** the pit alone: steel, insulation, lining and what stands inside */
  pit: { mass_kg: number; position_m: number; height_m: number };
  /** pit, loads and trailer */
  total: { mass_kg: number; position_m: number };
  trailer: TrailerLoads | null;
  /** the same empty, loaded and after a cook, and what to move */
  towing: Towing | null;
}

interface Item {
  name: string;
  mass: number;
  /** along the pit from the firebox's outer end [m] */
  along: number;
  height: number | null;
  kind?: Carried['kind'];
}

/** Where each part begins and ends along the pit, from the firebox's outer end [m]. */
type Extents = Partial<Record<PartName, { from: number; to: number }>>;

/**
 * Weights with where they act, the centre of gravity, and what axle and tongue carry.
 *
 * Parts stand in line: firebox, chamber, upright; an upright over its firebox stands on the middle of it. Shells act at
 * their middle, ends at the ends, plates between parts at the joint. A stack stands one of its diameters from the end
 * of the chamber it draws from, and in the middle of an upright.
 *
 * Statics of a beam on two supports: with x from the mark, tongue = sum m (x_axle - x) / (x_axle - x_hitch), axle =
 * total less tongue. All level and at rest.
 */
export function weightOf(design: Design, geometry: Geometry): WeightResult {
  const { trailer, loads } = design;
  const extents = extentsOf(design);
  const own = pitItems(design, geometry, extents);
  const sign = !trailer || (trailer.runs === 'to hitch') === trailer.hitch > trailer.axle ? 1 : -1;
  const place = (along: number) => (trailer?.offset ?? 0) + sign * along;
  const items: WeightItem[] = [
    ...own.map(({ name, mass, along, height, kind }) => ({
      name,
      mass_kg: mass,
      position_m: place(along),
      height_m: height,
      ...(kind ? { kind } : {}),
      ofPit: true,
    })),
    ...(loads ?? []).map(({ name, mass, position, kind }) => ({
      name,
      mass_kg: mass,
      position_m: position,
      height_m: null,
      kind,
    })),
    ...(trailer
      ? [{ name: 'trailer, empty', mass_kg: trailer.mass, position_m: trailer.balance, height_m: null }]
      : []),
  ];
  const pitMass = sum(own.map(({ mass }) => mass));
  const total = sum(items.map(({ mass_kg }) => mass_kg));
  const position = sum(items.map((each) => each.mass_kg * each.position_m)) / total;
  return {
    items,
    pit: {
      mass_kg: pitMass,
      position_m: place(sum(own.map(({ mass, along }) => mass * along)) / pitMass),
      height_m: sum(own.map(({ mass, height }) => mass * height!)) / pitMass,
    },
    total: { mass_kg: total, position_m: position },
    trailer: trailer ? trailerLoads(trailer, total, position) : null,
    towing: trailer ? towingOf(trailer, items) : null,
  };
}

function sum(values: number[]): number {
  return values.reduce((a, b) => a + b, 0);
}

function extentsOf({ firebox, chamber, upright, throat }: Design): Extents {
  const out: Extents = { firebox: { from: 0, to: firebox.length } };
  let end = firebox.length;
  if (chamber) {
    out.chamber = { from: end, to: end + chamber.length };
    end += chamber.length;
  }
  if (upright) {
    const from = !chamber && throat.through === 'top' ? 0.5 * (firebox.length - upright.depth) : end;
    out.upright = { from, to: from + upright.depth };
  }
  return out;
}

function pitItems(design: Design, geometry: Geometry, extents: Extents): Item[] {
  const parts = geometry.parts.flatMap((part) => partItems(design, part, extents[part.name]!));
  const shared = geometry.shared.map((plate): Item => {
    const [a, b] = plate.parts;
    const { mass, centre } = plate;
    const [first, second] = [extents[a]!, extents[b]!];
    const over = second.from < first.to;
    const along = over ? 0.5 * (Math.max(first.from, second.from) + Math.min(first.to, second.to)) : first.to;
    const lined = sharedLiningMass(plate, 0) + sharedLiningMass(plate, 1);
    return { name: `plate between ${a} and ${b}`, mass: mass + lined, along, height: centre };
  });
  const stacks = design.stacks.map((stack, i): Item => {
    const { base, top, mass } = geometry.stacks[i];
    const { from, to } = extents[stack.part]!;
    const { along: size } = stackSection(stack);
    const atChamber = design.chamber?.reverse ? from + size : to - size;
    const along = stack.part === 'upright' ? 0.5 * (from + to) : Math.min(to, Math.max(from, atChamber));
    const name = design.stacks.length > 1 ? `stack ${i + 1}` : 'stack';
    const cover = stackSkinMass(stack) + stackInsulationMass(stack);
    return { name, mass: mass + cover, along, height: 0.5 * (base + top) };
  });
  const boxes = stacks.flatMap(({ name, along }, i): Item[] => {
    const { gather } = geometry.stacks[i];
    if (!gather) return [];
    const { mass, contactMass, low, high } = gather;
    return [{ name: `gather box of the ${name}`, mass: mass + contactMass, along, height: 0.5 * (low + high) }];
  });
  return [...parts, ...shared, ...stacks, ...boxes];
}

function partItems(design: Design, part: PartGeometry, { from, to }: { from: number; to: number }): Item[] {
  const own = design[part.name] as HorizontalPart | Upright;
  const upright = part.axis === 'vertical';
  const middle = 0.5 * (from + to);
  const along = (face: Face) =>
    upright || face.place === 'along'
      ? middle
      : face.place === 'fireEnd'
        ? from - (face.beyond ?? 0)
        : face.place === 'farEnd'
          ? to + (face.beyond ?? 0)
          : middle;
  const steel = sum(part.faces.map(({ mass }) => mass));
  const at = (weight: (face: Face) => number, of: (face: Face) => number) => {
    const mass = sum(part.faces.map(weight));
    return mass > 0 ? sum(part.faces.map((face) => weight(face) * of(face))) / mass : middle;
  };
  const height = (face: Face) => face.centre;
  const plates: Item = {
    name: part.name,
    mass: steel,
    along: at(({ mass }) => mass, along),
    height: at(({ mass }) => mass, height),
  };
  const laid = (what: string, weight: (face: Face) => number): Item[] => {
    const mass = sum(part.faces.map(weight));
    return mass > 0
      ? [{ name: `${part.name}, ${what}`, mass, along: at(weight, along), height: at(weight, height) }]
      : [];
  };
  return [
    plates,
    ...laid('insulation', (face) => skinMass([face], own.steel) + insulationMass(face)),
    ...laid('lining', liningMass),
    ...laid('heat shield', (face) => shieldMass([face], own.steel)),
    ...deckItem(design, part, middle),
    ...own.contents.map((content) => contentItem(part, content, { from, to })),
    ...fireGrateIn(design, part.name, middle),
    ...gratesIn(design, part.name).map((grate) => ({
      name: `${part.name}, ${grate.name}`,
      mass: grate.mass,
      along: from + 0.5 * (grate.from + grate.to) * (to - from),
      height: grate.height,
    })),
  ];
}

function fireGrateIn({ firebox }: Design, part: string, along: number): Item[] {
  const grate = part === 'firebox' ? fireGrateOf(firebox) : undefined;
  return grate ? [{ name: 'fire grate', mass: grate.mass, along, height: grate.height }] : [];
}

/** Grates whose steel counts. */
function gratesIn({ chamber }: Design, part: string): Grate[] {
  return part === 'chamber' ? (chamber?.grates ?? []).filter(({ mass }) => mass > 0) : [];
}

/** What lies under the food is in the chamber's steel but in none of its faces. */
function deckItem(design: Design, part: PartGeometry, along: number): Item[] {
  const { chamber } = design;
  const deck = part.name === 'chamber' && chamber ? deckOf(chamber) : undefined;
  if (!deck) return [];
  const mass = deckArea(chamber!) * deck.plate * steelDensity(chamber!.steel);
  return [{ name: deck.name, mass, along, height: part.floor + deck.height }];
}

/** Share along the part at which each station's middle lies. */
const STATION_PLACES: Record<string, number> = {
  fireEnd: 1 / 6,
  plenumFireEnd: 1 / 6,
  stackEnd: 5 / 6,
  plenumStackEnd: 5 / 6,
};

function contentItem(part: PartGeometry, content: Content, { from, to }: { from: number; to: number }): Item {
  const share = part.axis === 'vertical' ? 0.5 : (STATION_PLACES[content.station ?? ''] ?? 0.5);
  const [low, high] = [part.floor, part.roof];
  const quarter = content.station === 'uprightLower' ? 0.25 : content.station === 'uprightUpper' ? 0.75 : 0.5;
  return {
    name: `${part.name}, ${content.name}`,
    mass: content.mass,
    along: from + share * (to - from),
    height: low + quarter * (high - low),
    ...(content.material === 'water' || content.material === 'food' ? { kind: content.material } : {}),
  };
}

/** Insulation over an outside face; over a round shell it is a ring, so longer round than the shell. */
function insulationMass(face: Face): number {
  const { insulation } = face.wall;
  if (!insulation) return 0;
  const { thickness, material } = insulation;
  return face.outsideArea * growth(face, thickness / 2) * thickness * INSULATIONS[material].density;
}

function stackInsulationMass(stack: Design['stacks'][number]): number {
  const { insulation, height } = stack;
  if (!insulation) return 0;
  const { thickness } = insulation;
  const { girth } = stackSection(stack, thickness / 2);
  return girth * thickness * height * INSULATIONS[insulation.material].density;
}

/** What a trailer carries beyond its ratings, or holds on its tongue outside the usual band. */
export function weightWarnings({ trailer, towing }: WeightResult, design: Design): Warning[] {
  if (!trailer || !design.trailer) return [];
  const { axleRating, hitchRating } = design.trailer;
  const kg = (mass: number) => amount('mass', mass);
  const out: Warning[] = [];
  if (trailer.axleMargin_kg < 0) {
    out.push({
      code: 'axle-overloaded',
      message: told`the axles carry ${kg(trailer.axleLoad_kg)}, more than their rating of ${kg(axleRating)}: stronger axles, or less weight`,
      where: 'trailer',
      value: trailer.axleLoad_kg,
      limits: { high: axleRating, unit: 'kg' },
    });
  }
  if (trailer.hitchMargin_kg < 0) {
    out.push({
      code: 'hitch-overloaded',
      message: told`the tongue bears ${kg(trailer.tongueLoad_kg)} on a hitch rated for ${kg(hitchRating)}: move weight towards the axle, or a stronger hitch`,
      where: 'trailer',
      value: trailer.tongueLoad_kg,
      limits: { high: hitchRating, unit: 'kg' },
    });
  }
  return [...out, ...unsteady(towing!)];
}

/** A warning where the tongue bears too little or too much in any case, with what to move. */
function unsteady({ cases, axle, pit }: Towing): Warning[] {
  const off = cases.filter(({ steady }) => !steady);
  if (off.length === 0) return [];
  const percent = ({ name, trailer }: TowCase) => `${tonguePercent(trailer)} ${name}`;
  const lifts = off.some(({ trailer }) => trailer.tongueLoad_kg < 0) ? ': below zero it lifts the hitch' : '';
  const worst = off.reduce((a, b) => (beyond(b) > beyond(a) ? b : a));
  const remedy =
    axle && pit
      ? told`move the axle ${moveTold(axle)}, or the pit ${moveTold(pit)}`
      : 'no place of axle or pit serves all of these: carry what goes during a cook over the axle';
  return [
    {
      code: 'tongue-load-out-of-band',
      message: told`of the whole weight the tongue bears ${off.map(percent).join(', ')}, outside ${100 * TONGUE_BAND.low} to ${100 * TONGUE_BAND.high} % (common practice, no source)${lifts}; ${remedy}`,
      where: 'trailer',
      value: worst.trailer.tongueShare,
      limits: { ...TONGUE_BAND, unit: '-', source: 'common practice, no source' },
    },
  ];
}

function beyond({ trailer: { tongueShare } }: TowCase): number {
  return Math.max(TONGUE_BAND.low - tongueShare, tongueShare - TONGUE_BAND.high);
}

/** '4.1 in (100 mm) to 9.2 in (230 mm) away from the hitch': inches as decimals, so that both ends are told alike. */
export const moveWords = (move: Move): string => inWords(moveTold(move));

function moveTold({ from_m, to_m }: Move): Told {
  const say = (metres: number) => amount('length', Math.abs(metres), { digits: 2, unit: 'in' });
  if (from_m > 0) return told`${say(from_m)} to ${say(to_m)} away from the hitch`;
  if (to_m < 0) return told`${say(to_m)} to ${say(from_m)} towards the hitch`;
  return told`by no more than ${say(from_m)} towards the hitch or ${say(to_m)} away from it`;
}
