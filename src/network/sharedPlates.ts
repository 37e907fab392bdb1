import type { Design, PartName } from '../design/design.js';
import type { Geometry, SharedPlate } from '../design/geometry.js';
import { cellAtHeight, chamberEnd, cutsBetween, girth, type BuiltPit } from './cells.js';
import { addSharedPlate, joinPlates } from './patches.js';

/** Add the plates that two parts share: gas on both sides, conduction into the shells of both. */
export function addSharedPlates(built: BuiltPit, design: Design, geometry: Geometry): void {
  for (const plate of geometry.shared) {
    const level = plate.orientation !== 'vertical';
    if (level) {
      addPiece(built, design, plate, { share: 1, centre: plate.centre });
      continue;
    }
    // cut where the zones of one of its sides end
    const sides = plate.parts.map((name) => zonesBeside(built, name, plate));
    const [low, high] = [plate.centre - 0.5 * plate.length, plate.centre + 0.5 * plate.length];
    const cuts = cutsBetween(built.network, sides, low, high);
    for (let i = 1; i < cuts.length; i++) {
      const share = (cuts[i] - cuts[i - 1]) / (high - low);
      addPiece(built, design, plate, { share, centre: 0.5 * (cuts[i - 1] + cuts[i]) });
    }
  }
}

/** Zones of a part that a plate shared with another one can touch. */
function zonesBeside(built: BuiltPit, name: PartName, { parts, orientation }: SharedPlate): number[] {
  if (name === 'firebox') return built.firebox.zones;
  if (name === 'upright') return orientation === 'vertical' ? built.upright!.zones : [built.upright!.zones[0]];
  return chamberEnd(built, parts.includes('upright') ? 'far' : 'fire');
}

function addPiece(built: BuiltPit, design: Design, plate: SharedPlate, piece: { share: number; centre: number }): void {
  const { network } = built;
  const sides = plate.parts.map((name) => {
    const zone = cellAtHeight(network, zonesBeside(built, name, plate), piece.centre);
    const cells = [built.firebox, built.upright, built.plenum, built.chamber].find((c) => c?.zones.includes(zone))!;
    return { zone, cells };
  });
  const level = plate.orientation !== 'vertical';
  const area = plate.area * piece.share;
  const node = addSharedPlate(network, {
    name: `${plate.parts[0]} to ${plate.parts[1]} plate`,
    part: plate.parts[1],
    zones: [sides[0].zone, sides[1].zone],
    shapes: level ? ['up', 'down'] : ['vertical', 'vertical'],
    area,
    mass: plate.mass * piece.share,
    thickness: plate.thickness,
    length: plate.length,
    steel: plate.steel,
    emissivity: design.estimates.insideEmissivity,
    linings: plate.linings,
  });
  const size = Math.sqrt((4 * plate.area) / Math.PI);
  for (const { zone, cells } of sides) {
    const cell =
      cells.geometry.axis === 'vertical' ? cells.zones.indexOf(zone) : cells.columns.findIndex((c) => c.includes(zone));
    const spread = cells.geometry.axis === 'vertical' ? cells.zones.length : cells.columns.length;
    const whole = cells.strips.reduce((sum, { nodes }) => sum + girth(network, cells, nodes), 0);
    for (const { nodes } of cells.strips) {
      joinPlates(network, {
        a: node,
        b: nodes[cell],
        edge: (piece.share * Math.PI * size * girth(network, cells, nodes)) / whole,
        thickness: plate.thickness,
        distance: size / 6 + cells.geometry.length / (2 * spread),
        steel: plate.steel,
      });
    }
  }
}
