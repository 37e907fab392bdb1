import type { Chamber, Design, HorizontalPart, PartName, Stack, StationName, Upright } from '../design/design.js';
import type { Face, Geometry, PartGeometry } from '../design/geometry.js';
import { reversePlateArea, stackSection } from '../design/geometryOf.js';
import { steelDensity } from '../physics/steel.js';
import { girth, type BuiltPit, type Cells, type Strip } from './cells.js';
import { addPatch, addSharedPlate, joinPlates } from './patches.js';
import { slicesOf, widthAtHeight, type Slice } from './slices.js';
import type { Network, PlatePlace } from './types.js';

/** How finely a part is cut. */
export interface Cut {
  /** cells along a horizontal part, or up an upright */
  count: number;
  /** level slices of its plates */
  plates: number;
  /** does its gas stand in those slices too, or is it mixed over its height? */
  layered: boolean;
  /** does gas flow along it as through a pipe? */
  plug?: boolean;
  /** of the part's inside height [m above its floor]; default: all */
  range?: { low: number; high: number };
}

/** Add the cells of one part: zones, its outside plates split over them, and conduction between the plates. */
export function addPart(
  network: Network,
  design: Design,
  geometry: PartGeometry,
  made: HorizontalPart | Upright,
  stations: StationName[],
  soot: number,
  cut: Cut,
): Cells {
  const cells: Cells = { part: geometry.name, geometry, zones: [], columns: [], strips: [] };
  const upright = geometry.axis === 'vertical';
  const { count } = cut;
  const cellLength = geometry.length / count;
  const slices = upright ? [] : slicesOf(geometry, cut.plates, cut.range);
  const stationOf = (i: number) => stations[Math.floor((i * stations.length) / count)];
  const addZone = (i: number, space: { floor: number; roof: number; section: number }): number => {
    network.zones.push({
      name: stationOf(i),
      part: geometry.name,
      station: stationOf(i),
      ...space,
      centre: 0.5 * (space.floor + space.roof),
      volume: space.section * cellLength,
      length: geometry.length,
      hydraulicDiameter: 0,
      beamLength: 0,
      soot,
      ...(cut.plug ? { plug: true } : {}),
    });
    return network.zones.length - 1;
  };
  for (let i = 0; i < count; i++) {
    if (upright) {
      const floor = geometry.floor + i * cellLength;
      if (i === 0) cells.columns.push([]);
      cells.columns[0].push(addZone(i, { floor, roof: floor + cellLength, section: geometry.section }));
    } else if (cut.layered) {
      cells.columns.push(slices.map(({ floor, roof, section }) => addZone(i, { floor, roof, section })));
    } else {
      const section = slices.reduce((sum, slice) => sum + slice.section, 0);
      cells.columns.push([addZone(i, { floor: slices[0].floor, roof: slices[slices.length - 1].roof, section })]);
    }
  }
  cells.zones = cells.columns.flat();
  if (upright) addUprightPlates(network, design, cells, made);
  else addHorizontalPlates(network, design, cells, made, slices);
  addColumns(network, cells);
  return cells;
}

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
  const level = face.orientation === 'up' || face.orientation === 'down';
  return addPatch(network, {
    name,
    part,
    zone,
    station: network.zones[zone].station,
    place,
    shape: face.orientation,
    insideArea: face.insideArea * share,
    outsideArea: face.outsideArea * share,
    mass: face.mass * share,
    thickness: face.thickness,
    length: face.length,
    windLength: level ? Math.sqrt(face.outsideArea) : face.length,
    steel: made.steel,
    insideEmissivity: design.estimates.insideEmissivity,
    outsideEmissivity: made.emissivity,
    insulation: made.insulation,
    radius: face.orientation === 'horizontalCylinder' ? 0.5 * face.length : undefined,
  });
}

/** Where a slice of the plate stands, lowest first: four names over its height. */
function placeOf(face: Face, j: number, levels: number): PlatePlace {
  if (face.orientation === 'up') return 'roof';
  if (face.orientation === 'down') return 'floor';
  const share = (j + 0.5) / levels;
  if (isBoxSide(face)) return share > 0.5 ? 'upperSide' : 'lowerSide';
  return share > 0.75 ? 'roof' : share > 0.5 ? 'upperSide' : share > 0.25 ? 'lowerSide' : 'floor';
}

function isBoxSide({ orientation, place }: Face): boolean {
  return orientation === 'vertical' || place !== 'along';
}

function addHorizontalPlates(
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
      const share = slice.share(face) / targets.length;
      if (share <= 0 || face.outsideArea <= 0) return;
      const nodes = targets.map((i) =>
        addPiece(network, design, made, {
          part,
          face,
          share,
          zone: zoneAt(cells, i, j),
          place: placeOf(face, j, slices.length),
          name: `${part} ${face.name}${along && count > 1 ? ` ${i + 1}` : ''}`,
        }),
      );
      if (along) {
        cells.strips.push({ face: face.name, level: j, nodes });
        return;
      }
      joinEnd(network, cells, { node: nodes[0], cell: targets[0], level: j }, made);
      if (under >= 0) {
        const join = { edge: geometry.section / height, distance: height / slices.length, thickness: made.plate };
        joinPlates(network, { a: under, b: nodes[0], ...join, steel: made.steel });
      }
      under = nodes[0];
    });
  }
  for (const { nodes } of cells.strips) {
    const edge = girth(network, cells, nodes);
    for (let i = 1; i < nodes.length; i++) {
      const join = { edge, thickness: made.plate, distance: cellLength, steel: made.steel };
      joinPlates(network, { a: nodes[i - 1], b: nodes[i], ...join });
    }
  }
  joinGirth(network, cells, made, slices.length);
}

/** Conduction round the girth, from strip to strip within a cell; a box's roof and floor join its sides at both edges. */
function joinGirth(network: Network, cells: Cells, made: HorizontalPart | Upright, levels: number): void {
  const strip = (face: string, level: number) => cells.strips.find((s) => s.face === face && s.level === level);
  const cellLength = cells.geometry.length / cells.columns.length;
  const join = (lower?: Strip, upper?: Strip) => {
    if (!lower || !upper) return;
    const distance = 0.25 * (girth(network, cells, lower.nodes) + girth(network, cells, upper.nodes));
    const edge = 2 * cellLength;
    lower.nodes.forEach((a, i) =>
      joinPlates(network, { a, b: upper.nodes[i], edge, thickness: made.plate, distance, steel: made.steel }),
    );
  };
  for (const face of ['shell', 'sides']) for (let j = 1; j < levels; j++) join(strip(face, j - 1), strip(face, j));
  join(strip('floor', 0), strip('sides', 0));
  join(strip('sides', levels - 1), strip('roof', levels - 1));
}

/** Conduction from an end plate's slice into the strips of its cell that it touches. */
function joinEnd(
  network: Network,
  cells: Cells,
  end: { node: number; cell: number; level: number },
  made: HorizontalPart | Upright,
): void {
  const size = Math.sqrt((4 * network.nodes[end.node].weight) / Math.PI);
  const distance = size / 6 + cells.geometry.length / (2 * cells.columns.length);
  for (const { level, nodes } of cells.strips) {
    if (level !== end.level) continue;
    const edge = girth(network, cells, nodes);
    const join = { edge, thickness: made.plate, distance, steel: made.steel };
    joinPlates(network, { a: end.node, b: nodes[end.cell], ...join });
  }
}

/** Sides of an upright, a ring a zone; floor and roof on the lowest and highest. */
function addUprightPlates(network: Network, design: Design, cells: Cells, made: HorizontalPart | Upright): void {
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
    cells.strips.push({ face: face.name, level: 0, nodes });
    const edge = girth(network, cells, nodes);
    const join = { edge, thickness: made.plate, distance: each, steel: made.steel };
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
    const distance = Math.sqrt((4 * network.nodes[node].weight) / Math.PI) / 6 + 0.5 * each;
    for (const { nodes } of cells.strips) {
      const join = { edge: girth(network, cells, nodes), thickness: made.plate, distance, steel: made.steel };
      joinPlates(network, { a: node, b: nodes[i], ...join });
    }
  }
}

/** Tell the network which zones stand on each other, with the level area between them and the walls along which gas sinks. */
function addColumns(network: Network, cells: Cells): void {
  const { geometry } = cells;
  const upright = geometry.axis === 'vertical';
  const cellLength = geometry.length / cells.columns.length;
  cells.columns.forEach((zones, i) => {
    if (zones.length < 2) return;
    const areas: number[] = [];
    const edges: number[] = [];
    for (let k = 1; k < zones.length; k++) {
      const width = upright ? 0 : widthAtHeight(geometry, network.zones[zones[k]].floor - geometry.floor);
      const ends = (i === 0 ? 1 : 0) + (i === cells.columns.length - 1 ? 1 : 0);
      areas.push(upright ? geometry.section : width * cellLength);
      edges.push(upright ? geometry.perimeter : 2 * cellLength + ends * width);
    }
    network.columns.push({ zones, areas, edges });
  });
}

/** Cells along the chamber get these names; under a reverse-flow plate they are the plenum's. */
const STATIONS: StationName[] = ['fireEnd', 'middle', 'stackEnd'];
const UNDER: StationName[] = ['plenumFireEnd', 'plenumMiddle', 'plenumStackEnd'];

export function addChamber(
  built: BuiltPit,
  design: Design,
  chamber: Chamber,
  geometry: PartGeometry,
  { count, levels }: { count: number; levels: number },
): void {
  const { network } = built;
  if (!chamber.reverse) {
    built.chamber = addPart(network, design, geometry, chamber, STATIONS, 0, { count, plates: levels, layered: true });
    return;
  }
  const height = geometry.roof - geometry.floor;
  const { height: level, plate: thickness } = chamber.reverse;
  const under = { low: 0, high: level };
  const above = { low: level, high: height };
  built.plenum = addPart(network, design, geometry, chamber, UNDER, 0, {
    count,
    plates: 1,
    layered: false,
    plug: true,
    range: under,
  });
  built.chamber = addPart(network, design, geometry, chamber, STATIONS, 0, {
    count,
    plates: levels,
    layered: true,
    range: above,
  });
  const width = widthAtHeight(geometry, level);
  const each = geometry.length / count;
  const area = reversePlateArea(chamber) / count;
  let before = -1;
  for (let i = 0; i < count; i++) {
    const node = addSharedPlate(network, {
      name: `reverse plate ${i + 1}`,
      part: 'chamber',
      zones: [built.plenum.columns[i][0], built.chamber.columns[i][0]],
      shapes: ['up', 'down'],
      area,
      mass: area * thickness * steelDensity(chamber.steel),
      thickness,
      length: (width * geometry.length) / (2 * (width + geometry.length)),
      steel: chamber.steel,
      emissivity: design.estimates.insideEmissivity,
    });
    if (before >= 0) {
      joinPlates(network, { a: before, b: node, edge: width, thickness, distance: each, steel: chamber.steel });
    }
    before = node;
  }
  for (const lower of built.plenum.strips) {
    const upper = built.chamber.strips.find(({ face, level: at }) => face === lower.face && at === 0);
    if (!upper) continue;
    const distance = 0.25 * (girth(network, built.plenum, lower.nodes) + girth(network, built.chamber, upper.nodes));
    const join = { edge: 2 * each, thickness: chamber.plate, distance, steel: chamber.steel };
    lower.nodes.forEach((a, i) => joinPlates(network, { a, b: upper.nodes[i], ...join }));
  }
}

export function addStack(
  network: Network,
  design: Design,
  stack: Stack,
  geometry: Geometry,
  index: number,
  count: number,
): number[] {
  const shape = geometry.stacks[index];
  // a square one is four upright plates, each as wide in the wind as the stack is across
  const outside = stackSection(stack);
  const zones: number[] = [];
  let before = -1;
  for (let i = 0; i < count; i++) {
    const each = stack.height / count;
    const low = stack.base + i * each;
    const zone = network.zones.length;
    zones.push(zone);
    network.zones.push({
      name: `stack ${index + 1}${count > 1 ? ` cell ${i + 1}` : ''}`,
      part: 'stack',
      floor: low,
      roof: low + each,
      centre: low + 0.5 * each,
      volume: shape.volume / count,
      section: shape.flowArea,
      length: stack.height,
      hydraulicDiameter: 0,
      beamLength: 0,
      soot: 0,
    });
    const node = addPatch(network, {
      name: `stack ${index + 1} wall${count > 1 ? ` ${i + 1}` : ''}`,
      part: 'stack',
      zone,
      shape: outside.round ? 'verticalCylinder' : 'vertical',
      insideArea: shape.insideArea / count,
      outsideArea: shape.outsideArea / count,
      mass: shape.mass / count,
      thickness: stack.wall,
      length: stack.height,
      windLength: outside.across,
      steel: stack.steel,
      insideEmissivity: design.estimates.insideEmissivity,
      outsideEmissivity: stack.emissivity,
      insulation: stack.insulation,
      radius: outside.round ? 0.5 * outside.across : undefined,
    });
    if (before >= 0) {
      const join = { edge: outside.girth, thickness: stack.wall, distance: each, steel: stack.steel };
      joinPlates(network, { a: before, b: node, ...join });
    }
    before = node;
  }
  return zones;
}
