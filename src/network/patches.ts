import type { Insulation } from '../design/design.js';
import { INSULATIONS } from '../design/catalog/index.js';
import { steelDensity, type Steel } from '../physics/steel.js';
import { OUTDOORS, type FaceShape, type Network, type NetworkFace, type PlatePlace } from './types.js';

/** Slices of each insulation layer, each a node. */
export const INSULATION_SLICES = 3;
/** Cover of an insulation that has no skin: foil or wash that holds no heat to speak of, as thickness of steel [m]. */
const FOIL = 0.1e-3;

/** A patch of plate with gas on its inside and outdoors on its outside. */
export interface Patch {
  name: string;
  part: string;
  zone: number;
  station?: string;
  place?: PlatePlace;
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
  /** outside radius of a curved patch [m], for the growth of area through the layers; undefined: flat */
  radius?: number;
}

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
    part: patch.part,
    mass: patch.mass,
    material: patch.steel,
    specificHeat: 0,
    thickness: patch.thickness,
    station: patch.station,
    weight: 0.5 * (patch.insideArea + patch.outsideArea),
    place: patch.place,
  });
  faces.push(insideFace(patch, steel));
  const growth = (x: number) => (patch.radius ? 1 + x / patch.radius : 1);
  let outermost = steel;
  if (thick > 0) outermost = addInsulation(network, patch, steel, thick, Math.max(layer!.skin, FOIL), growth);
  const reach = growth(thick);
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

function insideFace(patch: Patch, node: number): NetworkFace {
  return {
    node,
    zone: patch.zone,
    area: patch.insideArea,
    shape: patch.shape,
    length: patch.length,
    windLength: patch.windLength,
    emissivity: patch.insideEmissivity,
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
      weight: 0,
    });
    const distance = i === 0 ? 0.5 * slice : slice;
    const between = patch.outsideArea * growth(i * slice);
    links.push({ a: before, b: nodes.length - 1, factor: between / distance, conductivity });
    before = nodes.length - 1;
  }
  const outside = patch.outsideArea * growth(thick);
  nodes.push({
    name: `${patch.name} skin`,
    part: patch.part,
    mass: steelDensity(skinSteel) * skin * outside,
    material: skinSteel,
    specificHeat: 0,
    thickness: 0,
    weight: 0,
  });
  links.push({ a: before, b: nodes.length - 1, factor: outside / (0.5 * slice), conductivity });
  return nodes.length - 1;
}

/** Add a plate that has gas of one zone on each side. @returns its node */
export function addSharedPlate(
  network: Network,
  plate: {
    name: string;
    part: string;
    zones: [number, number];
    shapes: [FaceShape, FaceShape];
    area: number;
    mass: number;
    thickness: number;
    length: number;
    steel: Steel;
    emissivity: number;
  },
): number {
  const node = network.nodes.length;
  network.nodes.push({
    name: plate.name,
    part: plate.part,
    mass: plate.mass,
    material: plate.steel,
    specificHeat: 0,
    thickness: plate.thickness,
    weight: 0,
  });
  plate.zones.forEach((zone, side) => {
    network.faces.push({
      node,
      zone,
      area: plate.area,
      shape: plate.shapes[side],
      length: plate.length,
      windLength: plate.length,
      emissivity: plate.emissivity,
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
