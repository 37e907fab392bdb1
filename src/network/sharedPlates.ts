import type { Design, PartName } from '../design/design.js';
import type { Geometry } from '../design/geometry.js';
import { cellAtHeight, chamberEnd, girth, type BuiltPit, type Cells } from './cells.js';
import { addSharedPlate, joinPlates } from './patches.js';

/** Add the plates that two parts share: gas on both sides, conduction into the shells of both. */
export function addSharedPlates(built: BuiltPit, design: Design, geometry: Geometry): void {
  const { network } = built;
  for (const plate of geometry.shared) {
    const sideOf = (name: PartName): { zone: number; cells: Cells; cell: number } => {
      if (name === 'firebox') return { zone: built.firebox.zones[0], cells: built.firebox, cell: 0 };
      if (name === 'upright') {
        const zone =
          plate.orientation === 'vertical'
            ? cellAtHeight(network, built.upright!.zones, plate.centre)
            : built.upright!.zones[0];
        return { zone, cells: built.upright!, cell: built.upright!.zones.indexOf(zone) };
      }
      const zone = cellAtHeight(
        network,
        chamberEnd(built, plate.parts.includes('upright') ? 'far' : 'fire'),
        plate.centre,
      );
      const cells = built.plenum?.zones.includes(zone) ? built.plenum : built.chamber!;
      return { zone, cells, cell: cells.zones.indexOf(zone) };
    };
    const sides = plate.parts.map(sideOf);
    const level = plate.orientation !== 'vertical';
    const node = addSharedPlate(network, {
      name: `${plate.parts[0]} to ${plate.parts[1]} plate`,
      part: plate.parts[1],
      zones: [sides[0].zone, sides[1].zone],
      shapes: level ? ['up', 'down'] : ['vertical', 'vertical'],
      area: plate.area,
      mass: plate.mass,
      thickness: plate.thickness,
      length: plate.length,
      steel: plate.steel,
      emissivity: design.estimates.insideEmissivity,
    });
    const size = Math.sqrt((4 * plate.area) / Math.PI);
    for (const { cells, cell } of sides) {
      const girths = [...cells.along.values()];
      const whole = girths.reduce((sum, nodes) => sum + girth(network, cells, nodes), 0);
      for (const nodes of girths) {
        joinPlates(network, {
          a: node,
          b: nodes[cell],
          edge: (Math.PI * size * girth(network, cells, nodes)) / whole,
          thickness: plate.thickness,
          distance: size / 6 + cells.geometry.length / (2 * cells.zones.length),
          steel: plate.steel,
        });
      }
    }
  }
}
