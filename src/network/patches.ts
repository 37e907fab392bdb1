import type { Insulation, Lining, Shield } from '../design/design.js';
import { INSULATIONS, LININGS } from '../design/catalog/index.js';
import { steelDensity, type Steel } from '../physics/steel.js';
import { OUTDOORS, type FaceShape, type Network, type NetworkFace, type PlatePlace } from './types.js';

/** Slices of each insulation layer, each a node. */
const INSULATION_SLICES = 3;
/** Slices of a lining, each thicker than the one before it: heat comes in fast at its hot face. */
const LINING_SLICES = 6;
const LINING_GROWTH = 1.5;
/** Cover of an insulation that has no skin: foil or wash that holds no heat to speak of, as thickness of steel [m]. */
const FOIL = 0.1e-3;

/** A patch of plate with gas on its inside and outdoors on its outside. */
interface Patch {
  name: string;
  /** the plate that it is a patch of, as a builder calls it (default: as it is named) */
  body?: string;
  part: string;
  zone: number;
  station?: string;
  place?: PlatePlace;
  face?: string;
  shape: FaceShape;
  insideArea: number;
  outsideArea: number;
  /** steel [kg] and plate thickness [m] */
  mass: number;
  thickness: number;
  /** free-convection length [m], of the whole face */
  length: number;
  /** wind length [m] */
  windLength: number;
  steel: Steel;
  insideEmissivity: number;
  outsideEmissivity: number;
  insulation?: Insulation;
  lining?: Lining;
  /** of the lining [m3] */
  liningVolume?: number;
  shield?: Shield;
  /** height of the face that it is of, where that is not its free-convection length [m] */
  height?: number;
  /** outside radius of a curved patch [m], for the growth of area through the layers; undefined: flat */
  radius?: number;
}

const bodyOf = ({ name, body = name }: Pick<Patch, 'name' | 'body'>): string => body;

/** Share of a patch's outside that stands across the sun and is open to rain. */
function openToSky(shape: FaceShape): number {
  if (shape === 'up') return 1;
  return shape === 'horizontalCylinder' ? 1 / Math.PI : 0;
}

/** Add a patch's steel, insulation and skin as nodes with their faces and links. @returns index of the steel node */
export function addPatch(network: Network, patch: Patch): number {
  const { nodes, faces } = network;
  const steel = nodes.length;
  const layer = patch.insulation;
  const thick = layer && layer.thickness > 0 ? layer.thickness : 0;
  nodes.push({
    name: patch.name,
    body: bodyOf(patch),
    part: patch.part,
    mass: patch.mass,
    material: patch.steel,
    specificHeat: 0,
    thickness: patch.thickness,
    station: patch.station,
    area: 0.5 * (patch.insideArea + patch.outsideArea),
    place: patch.place,
    face: patch.face,
  });
  const { lining } = patch;
  const hot = lining ? addLining(network, patch, steel, lining) : steel;
  faces.push(insideFace(patch, hot));
  const growth = (x: number) => (patch.radius ? 1 + x / patch.radius : 1);
  let outermost = steel;
  if (thick > 0) outermost = addInsulation(network, patch, steel, thick, Math.max(layer!.skin, FOIL), growth);
  let distance = thick;
  if (patch.shield) {
    outermost = addShield(network, patch, outermost, { shield: patch.shield, distance, growth });
    distance += patch.shield.gap;
  }
  const reach = growth(distance);
  const level = patch.shape === 'up' || patch.shape === 'down';
  faces.push({
    node: outermost,
    zone: OUTDOORS,
    area: patch.outsideArea * reach,
    shape: patch.shape,
    length: patch.shape === 'horizontalCylinder' ? patch.length * reach : patch.length,
    windLength: level || patch.shape === 'vertical' ? patch.windLength : patch.windLength * reach,
    emissivity: patch.outsideEmissivity,
    sunShare: openToSky(patch.shape),
    wet: 0,
    station: patch.station,
    place: patch.place,
  });
  return steel;
}

/**
 * Add the slices of a lining inside a plate. The one that gas and fire see has its node on the hot face, the others
 * theirs in their middles, so that the face is as hot as its node and all heat that it takes is stored or passed on.
 *
 * @returns the hot face's node
 */
function addLining(
  network: Network,
  of: Pick<Patch, 'name' | 'part' | 'insideArea' | 'liningVolume'>,
  steel: number,
  { material, thickness }: Lining,
): number {
  const { nodes, links } = network;
  const { density, specificHeat, conductivity } = LININGS[material];
  const first = (thickness * (LINING_GROWTH - 1)) / (LINING_GROWTH ** LINING_SLICES - 1);
  const end = (i: number) => (first * (LINING_GROWTH ** i - 1)) / (LINING_GROWTH - 1);
  const node = (i: number) => (i === 0 ? 0 : i === LINING_SLICES ? thickness : 0.5 * (end(i) + end(i + 1)));
  // straight from the hot face to the steel, such that all of it comes to its volume
  const outer = (2 * of.liningVolume!) / thickness - of.insideArea;
  const areaAt = (depth: number) => of.insideArea + ((outer - of.insideArea) * depth) / thickness;
  const hot = nodes.length;
  for (let i = 0; i < LINING_SLICES; i++) {
    const [from, to] = [end(i), end(i + 1)];
    nodes.push({
      name: `${of.name} lining ${i + 1}`,
      part: of.part,
      mass: density * areaAt(0.5 * (from + to)) * (to - from),
      material: 'table',
      specificHeat: 0,
      heat: specificHeat,
      thickness: 0,
      area: i === 0 ? of.insideArea : 0,
      ...(i === 0 ? { lines: steel } : {}),
    });
    const factor = areaAt(0.5 * (node(i) + node(i + 1))) / (node(i + 1) - node(i));
    links.push({ a: hot + i, b: i < LINING_SLICES - 1 ? hot + i + 1 : steel, factor, conductivity });
  }
  return hot;
}

function insideFace(patch: Patch, node: number): NetworkFace {
  return {
    node,
    zone: patch.zone,
    area: patch.insideArea,
    shape: patch.shape,
    length: patch.length,
    windLength: patch.windLength,
    emissivity: patch.lining?.emissivity ?? patch.insideEmissivity,
    sunShare: 0,
    wet: 0,
  };
}

function addInsulation(
  network: Network,
  patch: Patch,
  steel: number,
  thick: number,
  skin: number,
  growth: (x: number) => number,
): number {
  const { nodes, links } = network;
  const { material, skinSteel = patch.steel } = patch.insulation!;
  const row = INSULATIONS[material];
  const { conductivity } = row;
  const slice = thick / INSULATION_SLICES;
  let before = steel;
  for (let i = 0; i < INSULATION_SLICES; i++) {
    const area = patch.outsideArea * growth((i + 0.5) * slice);
    nodes.push({
      name: `${patch.name} insulation ${i + 1}`,
      part: patch.part,
      mass: row.density * area * slice,
      material: 'constant',
      specificHeat: row.specificHeat,
      thickness: 0,
      area: 0,
    });
    const distance = i === 0 ? 0.5 * slice : slice;
    const between = patch.outsideArea * growth(i * slice);
    links.push({ a: before, b: nodes.length - 1, factor: between / distance, conductivity });
    before = nodes.length - 1;
  }
  const outside = patch.outsideArea * growth(thick);
  nodes.push({
    name: `${patch.name} skin`,
    body: `${bodyOf(patch)} skin`,
    part: patch.part,
    face: patch.face,
    mass: steelDensity(skinSteel) * skin * outside,
    material: skinSteel,
    specificHeat: 0,
    thickness: 0,
    area: 0,
  });
  links.push({ a: before, b: nodes.length - 1, factor: outside / (0.5 * slice), conductivity });
  return nodes.length - 1;
}

/** Add a heat shield before a wall's outside. @returns its node */
function addShield(
  { nodes, gaps }: Network,
  patch: Patch,
  wall: number,
  { shield, distance, growth }: { shield: Shield; distance: number; growth: (x: number) => number },
): number {
  const area = patch.outsideArea * growth(distance);
  const outside = patch.outsideArea * growth(distance + shield.gap);
  const eps = patch.outsideEmissivity;
  nodes.push({
    name: `${patch.name} shield`,
    body: `${bodyOf(patch)} shield`,
    part: patch.part,
    face: patch.face,
    mass: steelDensity(patch.steel) * shield.plate * outside,
    material: patch.steel,
    specificHeat: 0,
    thickness: 0,
    area: 0,
  });
  gaps.push({
    wall,
    shield: nodes.length - 1,
    area,
    width: shield.gap,
    height: patch.height ?? patch.length,
    radius: (patch.radius ?? 0) + distance,
    shape: patch.shape,
    // long cylinders, or flat plates: Incropera et al. (2007), 6th ed., Table 13.3
    emissivity: 1 / (1 / eps + (area / outside) * (1 / eps - 1)),
    open: shield.edges === 'open',
  });
  return nodes.length - 1;
}

/** Add a plate that has gas of one zone on each side. @returns its node */
export function addSharedPlate(
  network: Network,
  plate: {
    name: string;
    body?: string;
    part: string;
    zones: [number, number];
    shapes: [FaceShape, FaceShape];
    area: number;
    mass: number;
    thickness: number;
    length: number;
    steel: Steel;
    emissivity: number;
    linings: [Lining | undefined, Lining | undefined];
  },
): number {
  const node = network.nodes.length;
  network.nodes.push({
    name: plate.name,
    body: bodyOf(plate),
    part: plate.part,
    mass: plate.mass,
    material: plate.steel,
    specificHeat: 0,
    thickness: plate.thickness,
    area: 0,
  });
  plate.zones.forEach((zone, side) => {
    const lining = plate.linings[side];
    const { name, part, area } = plate;
    const lined = { name: `${name} side ${side + 1}`, part, insideArea: area };
    const hot = lining ? addLining(network, { ...lined, liningVolume: area * lining.thickness }, node, lining) : node;
    if (lining) (network.nodes[node].hiddenFrom ??= []).push(zone);
    network.faces.push({
      node: hot,
      zone,
      area: plate.area,
      shape: plate.shapes[side],
      length: plate.length,
      windLength: plate.length,
      emissivity: lining?.emissivity ?? plate.emissivity,
      sunShare: 0,
      wet: 0,
    });
  });
  return node;
}

/** Let two plates conduct into each other along a common edge. */
export function joinPlates(
  network: Network,
  join: { a: number; b: number; edge: number; thickness: number; distance: number; steel: Steel },
): void {
  if (join.edge <= 0 || join.distance <= 0) return;
  const { a, b, steel } = join;
  network.links.push({ a, b, factor: (join.edge * join.thickness) / join.distance, conductivity: steel });
}
