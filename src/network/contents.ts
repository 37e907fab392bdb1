import type { Content, Design, Grate, PartName } from '../design/design.js';
import { fireGrateOf } from '../design/fireGrate.js';
import { cellAtHeight, type BuiltPit, type Cells } from './cells.js';
import { levelsAt } from './places.js';
import type { ThermalNode } from './types.js';

/** Free-convection length of racks, pans and food [m]: an estimate; it enters to a small power. */
const CONTENT_LENGTH = 0.15;
/** Specific heat of water, and of lean meat as it goes on the racks [J/(kg K)] (ASHRAE Refrigeration, from memory). */
const SPECIFIC_HEAT: Record<Content['material'], number> = { steel: 0, stainless: 0, water: 4186, food: 3500 };

/** A body, or the piece of one that hangs in some zones: how much of its surface is in each. */
interface Piece extends Pick<Content, 'name' | 'material' | 'mass' | 'area'> {
  part: PartName;
  body?: string;
  zones: readonly { zone: number; share: number }[];
}

/**
 * Grates, racks, pans and food as bodies inside: gas and walls see their whole surface; water and food evaporate from
 * it.
 */
export function addContents(built: BuiltPit, design: Design): void {
  const emissivity = design.estimates.insideEmissivity;
  for (const part of ['firebox', 'chamber', 'upright'] as const) {
    for (const content of design[part]?.contents ?? []) spread(built, part, content, emissivity);
  }
  const fire = fireGrateOf(design.firebox);
  if (fire) {
    const { mass, area } = fire;
    const material = design.firebox.grate!.steel === 'stainless' ? 'stainless' : 'steel';
    const zones = [{ zone: cellAtHeight(built.network, built.firebox.zones, fire.height), share: 1 }];
    // coals lie on it: its mean says nothing of how hot it gets
    addPiece(built, { name: 'fire grate', part: 'firebox', material, mass, area, zones }, emissivity);
  }
  for (const grate of design.chamber?.grates ?? []) {
    if (grate.mass > 0) lay(built, built.chamber!, grate, emissivity);
  }
}

/** A body is spread over the zones of its station, or else of its part. */
function spread(built: BuiltPit, part: PartName, content: Content, emissivity: number): void {
  const all = built[part]!.zones;
  const there = all.filter((zone) => built.network.zones[zone].station === content.station);
  const chosen = there.length > 0 ? there : all;
  const body = `${content.name} in the ${part}`;
  const each = { ...content, part, body, mass: content.mass / chosen.length, area: content.area / chosen.length };
  for (const zone of chosen) addPiece(built, { ...each, zones: [{ zone, share: 1 }] }, emissivity);
}

/** A grate hangs at its height in every cell along the chamber that it reaches into. */
function lay(built: BuiltPit, cells: Cells, grate: Grate, emissivity: number): void {
  const { columns } = cells;
  const { from, to, mass, area } = grate;
  columns.forEach((column, i) => {
    const covered = Math.min(to, (i + 1) / columns.length) - Math.max(from, i / columns.length);
    if (covered <= 0) return;
    const share = covered / (to - from);
    const zones = levelsAt(built.network, column, grate.height).filter((each) => each.share > 0);
    const material = grate.steel === 'stainless' ? 'stainless' : 'steel';
    addPiece(
      built,
      { name: grate.name, body: grate.name, part: 'chamber', material, mass: mass * share, area: area * share, zones },
      emissivity,
    );
  });
}

function addPiece({ network }: BuiltPit, piece: Piece, emissivity: number): void {
  const { name, part, body, material, mass, area, zones } = piece;
  const wet = material === 'water' || material === 'food';
  const own: ThermalNode['material'] = wet ? 'constant' : material === 'stainless' ? 'stainless' : 'carbon';
  const node = network.nodes.length;
  const specificHeat = SPECIFIC_HEAT[material];
  network.nodes.push({ name, body, part, mass, material: own, specificHeat, thickness: 0, area: 0 });
  for (const { zone, share } of zones) {
    network.faces.push({
      node,
      zone,
      area: area * share,
      shape: 'vertical',
      length: CONTENT_LENGTH,
      windLength: CONTENT_LENGTH,
      emissivity,
      sunShare: 0,
      wet: wet ? 1 : 0,
    });
  }
}
