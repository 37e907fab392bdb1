/** Outside plates of a part, cut along it and by height, and the conduction between their pieces. */
import type { Design, HorizontalPart, PartName, Upright } from '../design/design.js';
import { isLeaf } from '../design/doors.js';
import type { Face } from '../design/geometry.js';
import { faceWords } from '../design/plates.js';
import { girth, girthStrips, jointPlate, type Cells, type Strip } from './cells.js';
import { addPatch, joinPlates } from './patches.js';
import type { Slice } from './slices.js';
import type { Network, PlatePlace } from './types.js';

/** Zone in cell i of the gas that a plate of slice j sees. */
function zoneAt(cells: Cells, i: number, j: number): number {
  const column = cells.columns[i];
  return column.length > 1 ? column[j] : column[0];
}

/** One piece of a face: its share of area and steel, on one zone. */
function addPiece(
  network: Network,
  design: Design,
  made: HorizontalPart | Upright,
  piece: { part: PartName; face: Face; share: number; zone: number; place: PlatePlace; name: string },
): number {
  const { face, share, zone, place, name, part } = piece;
  const { wall } = face;
  const level = face.orientation === 'up' || face.orientation === 'down';
  return addPatch(network, {
    name,
    body: `${part} ${faceWords(face.name)}`,
    part,
    zone,
    station: network.zones[zone].station,
    place,
    face: face.name,
    shape: face.orientation,
    insideArea: face.insideArea * share,
    outsideArea: face.outsideArea * share,
    mass: face.mass * share,
    thickness: face.thickness,
    length: face.length,
    windLength: level ? Math.sqrt(face.outsideArea) : face.length,
    steel: made.steel,
    insideEmissivity: design.estimates.insideEmissivity,
    outsideEmissivity: wall.emissivity,
    insulation: wall.insulation,
    lining: wall.lining,
    liningVolume: face.lining * share,
    shield: wall.shield,
    height: face.reach ? (face.reach.high - face.reach.low) * face.length : face.length,
    radius: face.orientation === 'horizontalCylinder' ? 0.5 * face.length : undefined,
  });
}

/** Where a slice of the plate stands, lowest first: four names over its height. */
function placeOf(face: Face, j: number, levels: number, heights: Heights): PlatePlace {
  if (face.orientation === 'up') return 'roof';
  if (face.orientation === 'down') return 'floor';
  const share = (j + 0.5) / levels;
  if (face.reach) return placeAt(middleOf(face, heights));
  if (isBoxSide(face)) return share > 0.5 ? 'upperSide' : 'lowerSide';
  return placeAt(share);
}

/** Heights as shares of the part's. */
interface Heights {
  low: number;
  high: number;
}

/** Height of the middle of what of a face lies in a slice. */
function middleOf({ reach = { low: 0, high: 1 } }: Face, { low, high }: Heights): number {
  return 0.5 * (Math.max(reach.low, low) + Math.min(reach.high, high));
}

function placeAt(share: number): PlatePlace {
  return share > 0.75 ? 'roof' : share > 0.5 ? 'upperSide' : share > 0.25 ? 'lowerSide' : 'floor';
}

function isBoxSide({ orientation, place }: Face): boolean {
  return orientation === 'vertical' || place !== 'along';
}

/** Shell and ends of a horizontal part, in slices, along its cells. */
export function addHorizontalPlates(
  network: Network,
  design: Design,
  cells: Cells,
  made: HorizontalPart | Upright,
  slices: Slice[],
): void {
  const { geometry, part } = cells;
  const count = cells.columns.length;
  const cellLength = geometry.length / count;
  const height = slices[slices.length - 1].roof - slices[0].floor;
  const alongFirst = [...geometry.faces].sort((a, b) => Number(b.place === 'along') - Number(a.place === 'along'));
  for (const face of alongFirst) {
    const along = face.place === 'along';
    const targets = along ? cells.columns.map((_, i) => i) : [face.place === 'fireEnd' ? 0 : count - 1];
    let under = -1;
    slices.forEach((slice, j) => {
      const whole = geometry.roof - geometry.floor;
      const heights = { low: (slice.floor - geometry.floor) / whole, high: (slice.roof - geometry.floor) / whole };
      const share = slice.share(face) / targets.length;
      if (share <= 0 || face.outsideArea <= 0) return;
      const nodes = targets.map((i) =>
        addPiece(network, design, made, {
          part,
          face,
          share,
          zone: zoneAt(cells, i, j),
          place: placeOf(face, j, slices.length, heights),
          name: `${part} ${face.name}${along && count > 1 ? ` ${i + 1}` : ''}`,
        }),
      );
      // the leaf of a door is parted from its face by a gap
      if (isLeaf(face)) return;
      const { plate } = face.wall;
      if (along) {
        const level = face.orientation === 'up' || face.orientation === 'down';
        cells.strips.push({
          face: face.name,
          level: j,
          ...(level ? {} : { at: middleOf(face, heights) }),
          plate,
          nodes,
        });
        return;
      }
      joinEnd(network, cells, { node: nodes[0], cell: targets[0], level: j, plate }, made);
      if (under >= 0) {
        const join = { edge: geometry.section / height, distance: height / slices.length, thickness: plate };
        joinPlates(network, { a: under, b: nodes[0], ...join, steel: made.steel });
      }
      under = nodes[0];
    });
  }
  for (const { nodes, plate } of cells.strips) {
    const edge = girth(network, cells, nodes);
    for (let i = 1; i < nodes.length; i++) {
      const join = { edge, thickness: plate, distance: cellLength, steel: made.steel };
      joinPlates(network, { a: nodes[i - 1], b: nodes[i], ...join });
    }
  }
  joinGirth(network, cells, made);
}

/**
 * Conduction round the girth, from strip to strip within a cell; a box's roof and floor join its sides at both edges.
 */
function joinGirth(network: Network, cells: Cells, made: HorizontalPart | Upright): void {
  const flat = (face: string) => cells.strips.find((s) => s.face === face && s.at === undefined);
  const cellLength = cells.geometry.length / cells.columns.length;
  const join = (lower?: Strip, upper?: Strip) => {
    if (!lower || !upper) return;
    const distance = 0.25 * (girth(network, cells, lower.nodes) + girth(network, cells, upper.nodes));
    const [edge, thickness] = [2 * cellLength, jointPlate(lower.plate, upper.plate)];
    lower.nodes.forEach((a, i) =>
      joinPlates(network, { a, b: upper.nodes[i], edge, thickness, distance, steel: made.steel }),
    );
  };
  const girthwise = girthStrips(cells);
  for (let i = 1; i < girthwise.length; i++) join(girthwise[i - 1], girthwise[i]);
  join(flat('floor'), girthwise[0]);
  join(girthwise.at(-1), flat('roof'));
}

/** Conduction from an end plate's slice into the strips of its cell that it touches. */
function joinEnd(
  network: Network,
  cells: Cells,
  end: { node: number; cell: number; level: number; plate: number },
  made: HorizontalPart | Upright,
): void {
  const size = Math.sqrt((4 * network.nodes[end.node].area) / Math.PI);
  const distance = size / 6 + cells.geometry.length / (2 * cells.columns.length);
  for (const { level, nodes, plate } of cells.strips) {
    if (level !== end.level) continue;
    const edge = girth(network, cells, nodes);
    const join = { edge, thickness: jointPlate(end.plate, plate), distance, steel: made.steel };
    joinPlates(network, { a: end.node, b: nodes[end.cell], ...join });
  }
}

/** Sides of an upright, a ring a zone; floor and roof on the lowest and highest. */
export function addUprightPlates(network: Network, design: Design, cells: Cells, made: HorizontalPart | Upright): void {
  const { geometry, part } = cells;
  const [zones] = cells.columns;
  const count = zones.length;
  const each = geometry.length / count;
  const sides = geometry.faces.filter(({ place }) => place === 'along');
  for (const face of sides) {
    const nodes = zones.map((zone, i) =>
      addPiece(network, design, made, {
        part,
        face,
        share: 1 / count,
        zone,
        place: (i + 0.5) / count > 0.5 ? 'upperSide' : 'lowerSide',
        name: `${part} ${face.name} ${i + 1}`,
      }),
    );
    if (isLeaf(face)) continue;
    const { plate } = face.wall;
    cells.strips.push({ face: face.name, level: 0, plate, nodes });
    const edge = girth(network, cells, nodes);
    const join = { edge, thickness: plate, distance: each, steel: made.steel };
    for (let i = 1; i < nodes.length; i++) joinPlates(network, { a: nodes[i - 1], b: nodes[i], ...join });
  }
  for (const face of geometry.faces) {
    if (face.place === 'along' || face.outsideArea <= 0) continue;
    const i = face.place === 'bottom' ? 0 : count - 1;
    const node = addPiece(network, design, made, {
      part,
      face,
      share: 1,
      zone: zones[i],
      place: face.place === 'bottom' ? 'floor' : 'roof',
      name: `${part} ${face.name}`,
    });
    const distance = Math.sqrt((4 * network.nodes[node].area) / Math.PI) / 6 + 0.5 * each;
    for (const { nodes, plate } of cells.strips) {
      const thickness = jointPlate(face.wall.plate, plate);
      const join = { edge: girth(network, cells, nodes), thickness, distance, steel: made.steel };
      joinPlates(network, { a: node, b: nodes[i], ...join });
    }
  }
}
