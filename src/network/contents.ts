import type { Content, Design, PartName } from '../design/design.js';
import type { BuiltPit, Cells } from './cells.js';

/** Free-convection length of racks, pans and food [m]: an estimate; it enters to a small power. */
const CONTENT_LENGTH = 0.15;
/** Specific heat of water, and of lean meat as it goes on the racks [J/(kg K)] (ASHRAE Refrigeration, from memory). */
const SPECIFIC_HEAT: Record<Content['material'], number> = { steel: 0, stainless: 0, water: 4186, food: 3500 };

/** Racks, grates, pans and food as bodies inside: gas and walls see their whole surface; water and food evaporate from it. */
export function addContents(built: BuiltPit, design: Design): void {
  const groups: [PartName, Cells | undefined, Content[]][] = [
    ['firebox', built.firebox, design.firebox.contents],
    ['chamber', built.chamber, design.chamber?.contents ?? []],
    ['upright', built.upright, design.upright?.contents ?? []],
  ];
  for (const [part, cells, contents] of groups) {
    for (const content of contents) {
      const all = cells!.zones;
      const { zones } = built.network;
      const chosen = content.station ? all.filter((z) => zones[z].station === content.station) : all;
      for (const zone of chosen.length > 0 ? chosen : all) {
        const share = 1 / (chosen.length > 0 ? chosen.length : all.length);
        const wet = content.material === 'water' || content.material === 'food';
        const node = built.network.nodes.length;
        built.network.nodes.push({
          name: content.name,
          part,
          mass: content.mass * share,
          material: wet ? 'constant' : content.material === 'stainless' ? 'stainless' : 'carbon',
          specificHeat: SPECIFIC_HEAT[content.material],
          thickness: 0,
          weight: 0,
        });
        built.network.faces.push({
          node,
          zone,
          area: content.area * share,
          shape: 'vertical',
          length: CONTENT_LENGTH,
          windLength: CONTENT_LENGTH,
          emissivity: design.estimates.insideEmissivity,
          sunShare: 0,
          wet: wet ? 1 : 0,
        });
      }
    }
  }
}
