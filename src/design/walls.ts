/** What each wall of a part is made of and covered with, from the part's own fields and those of its faces. */
import { FINISHES } from './catalog/index.js';
import type { Door, HorizontalPart, Insulation, Lining, Shield, Upright } from './design.js';

/** Faces that a design file knows. Those of an upright's four sides are one. */
export const FACES = ['roof', 'floor', 'sides', 'fireEnd', 'stackEnd'] as const;
/** A side of a part that may have a plate of its own. */
export type FaceName = (typeof FACES)[number];

/** What a face is made of, from the inside out, and how its outside radiates. */
export interface Wall {
  /** [m] */
  plate: number;
  finish: string;
  emissivity: number;
  /** layers that have a thickness; absent: none */
  insulation?: Insulation;
  lining?: Lining;
  shield?: Shield;
}

type Part = HorizontalPart | Upright;

/** A face of a part, all that it doesn't say itself taken from the part. */
export function wallAt(part: Part, name: FaceName): Wall {
  const own = name === 'fireEnd' || name === 'stackEnd' ? ('depth' in part ? undefined : part[name]) : part[name];
  const finish = own?.finish ?? part.finish;
  const painted = own?.finish !== undefined && own.finish !== part.finish;
  const insulation = own?.insulation === 'none' ? undefined : (own?.insulation ?? part.insulation);
  const { lining, shield } = part;
  return {
    plate: own?.plate ?? part.plate,
    finish,
    emissivity: own?.emissivity ?? (painted ? FINISHES[finish].emissivity : part.emissivity),
    ...(insulation && insulation.thickness > 0 ? { insulation } : {}),
    ...(lining && lining.thickness > 0 && covers(lining, name) ? { lining } : {}),
    ...(shield && covers(shield, name) ? { shield } : {}),
  };
}

function covers({ faces }: { faces: string[] }, name: FaceName): boolean {
  return faces.includes(name);
}

/** The leaf of a door that is covered otherwise than the face that it hangs in; undefined: it is one with its face. */
export function leafWall(part: Part, door: Door, face: FaceName): Wall | undefined {
  const own = door.insulation;
  if (own === undefined) return undefined;
  const { insulation: around, ...wall } = wallAt(part, face);
  const insulation = own === 'none' || own.thickness === 0 ? undefined : own;
  if (JSON.stringify(insulation) === JSON.stringify(around)) return undefined;
  return { ...wall, plate: door.plate, ...(insulation ? { insulation } : {}) };
}

/** Is all of a round part's shell one wall? */
export function isOneShell(part: Part): boolean {
  const [first, ...others] = (['roof', 'floor', 'sides'] as const).map((name) => JSON.stringify(wallAt(part, name)));
  return others.every((each) => each === first);
}

/** From the outside of a wall to the gas: plate and lining [m]. */
export function depthOf({ plate, lining }: Wall): number {
  return plate + (lining?.thickness ?? 0);
}

/** How far the gas keeps off the outside of a part at each face, and what that leaves inside [m]. */
export function insideOf(part: Part): {
  width: number;
  height: number;
  /** along the gas's way, of a round part with heads between their seams, with their straight flanges */
  length: number;
  /** heights above the ground */
  floor: number;
  roof: number;
} {
  const depth = (name: FaceName) => depthOf(wallAt(part, name));
  const [roof, floor, sides] = [depth('roof'), depth('floor'), depth('sides')];
  return {
    width: part.width - 2 * sides,
    height: part.height - (roof + floor),
    length: 'depth' in part ? part.depth - 2 * sides : endToEnd(part, depth),
    floor: part.centre - (part.height / 2 - floor),
    roof: part.centre + (part.height / 2 - roof),
  };
}

/**
 * Length of a horizontal part less what its ends take of it; heads stand outside of it, beyond their straight flanges
 * [m].
 */
export function endToEnd(part: HorizontalPart, thickness: (name: FaceName) => number): number {
  const { length, heads = 'flat', flange = 0 } = part;
  return heads === 'flat' ? length - (thickness('fireEnd') + thickness('stackEnd')) : length + 2 * flange;
}
