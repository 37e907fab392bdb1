import type { Chamber, Design, HorizontalPart, Stack, StationName, Upright } from '../design/design.js';
import type { Geometry, PartGeometry } from '../design/geometry.js';
import { reversePlateArea, stackSection } from '../design/geometryOf.js';
import { steelDensity } from '../physics/steel.js';
import { girth, type BuiltPit, type Cells } from './cells.js';
import { addPatch, addSharedPlate, joinPlates } from './patches.js';
import { splitByPlate, type PlateSplit } from './reverse.js';
import type { Network, Zone } from './types.js';

/** Add the cells of one part: zones, its outside plates split over them, and conduction between the plates. */
export function addPart(
  network: Network,
  design: Design,
  geometry: PartGeometry,
  made: HorizontalPart | Upright,
  count: number,
  stations: StationName[],
  soot: number,
  split?: PlateSplit,
): Cells {
  const cells: Cells = { part: geometry.name, geometry, zones: [], along: new Map() };
  const upright = geometry.axis === 'vertical';
  const section = split ? split.section : geometry.section;
  const floor = split ? split.floor : geometry.floor;
  const roof = split ? split.roof : geometry.roof;
  const cellLength = geometry.length / count;
  for (let i = 0; i < count; i++) {
    const low = upright ? floor + i * cellLength : floor;
    const high = upright ? low + cellLength : roof;
    const zone: Zone = {
      name: stations.length === 1 ? stations[0] : `${stations[Math.floor((i * stations.length) / count)]}`,
      part: geometry.name,
      station: stations[Math.floor((i * stations.length) / count)],
      floor: low,
      roof: high,
      centre: 0.5 * (low + high),
      volume: section * cellLength,
      section,
      length: geometry.length,
      hydraulicDiameter: 0,
      beamLength: 0,
      soot,
    };
    cells.zones.push(network.zones.length);
    network.zones.push(zone);
  }
  const alongFirst = [...geometry.faces].sort((a, b) => Number(b.place === 'along') - Number(a.place === 'along'));
  for (const face of alongFirst) {
    const share = split ? split.share(face) : 1;
    if (share <= 0 || face.outsideArea <= 0) continue;
    const all = face.place === 'along';
    const first = face.place === 'fireEnd' || face.place === 'bottom';
    const targets = all ? cells.zones.map((_, i) => i) : [first ? 0 : count - 1];
    const nodes: number[] = [];
    for (const i of targets) {
      const part = share / targets.length;
      const zone = network.zones[cells.zones[i]];
      nodes.push(
        addPatch(network, {
          name: `${geometry.name} ${face.name}${all && count > 1 ? ` ${i + 1}` : ''}`,
          part: geometry.name,
          zone: cells.zones[i],
          station: zone.station,
          shape: face.orientation,
          insideArea: face.insideArea * part,
          outsideArea: face.outsideArea * part,
          mass: face.mass * part,
          thickness: face.thickness,
          length: face.length,
          windLength:
            face.orientation === 'up' || face.orientation === 'down' ? Math.sqrt(face.outsideArea) : face.length,
          steel: made.steel,
          insideEmissivity: design.estimates.insideEmissivity,
          outsideEmissivity: made.emissivity,
          insulation: made.insulation,
          radius: face.orientation === 'horizontalCylinder' ? 0.5 * face.length : undefined,
        }),
      );
    }
    if (all) cells.along.set(face.name, nodes);
    else joinEnd(network, cells, nodes[0], first ? 0 : count - 1, made);
  }
  joinAlong(network, cells, made, cellLength);
  return cells;
}

/** Conduction along the plate from cell to cell, and round the corners of a box within a cell. */
function joinAlong(network: Network, cells: Cells, made: HorizontalPart | Upright, cellLength: number): void {
  const { plate: thickness, steel } = made;
  for (const nodes of cells.along.values()) {
    const edge = girth(network, cells, nodes);
    for (let i = 1; i < nodes.length; i++) {
      joinPlates(network, { a: nodes[i - 1], b: nodes[i], edge, thickness, distance: cellLength, steel });
    }
  }
  const sides = cells.along.get('sides');
  if (!sides) return;
  for (const name of ['roof', 'floor']) {
    const other = cells.along.get(name);
    if (!other) continue;
    const distance = girth(network, cells, other) / 4 + girth(network, cells, sides) / 8;
    for (let i = 0; i < sides.length; i++) {
      joinPlates(network, { a: sides[i], b: other[i], edge: 2 * cellLength, thickness, distance, steel });
    }
  }
}

/** Conduction from an end plate into the along-plates of its cell; faces must have been added along first. */
function joinEnd(network: Network, cells: Cells, end: number, cell: number, made: HorizontalPart | Upright): void {
  const size = Math.sqrt((4 * network.nodes[end].weight) / Math.PI);
  const distance = size / 6 + cells.geometry.length / (2 * cells.zones.length);
  for (const nodes of cells.along.values()) {
    const edge = girth(network, cells, nodes);
    joinPlates(network, { a: end, b: nodes[cell], edge, thickness: made.plate, distance, steel: made.steel });
  }
}

export function addChamber(
  built: BuiltPit,
  design: Design,
  chamber: Chamber,
  geometry: PartGeometry,
  count: number,
): void {
  const { network } = built;
  const names: StationName[] = ['fireEnd', 'middle', 'stackEnd'];
  if (!chamber.reverse) {
    built.chamber = addPart(network, design, geometry, chamber, count, names, 0);
    return;
  }
  const plate = splitByPlate(chamber, geometry);
  const under: StationName[] = ['plenumFireEnd', 'plenumMiddle', 'plenumStackEnd'];
  built.plenum = addPart(network, design, geometry, chamber, count, under, 0, plate.below);
  built.chamber = addPart(network, design, geometry, chamber, count, names, 0, plate.above);
  const width = plate.width;
  const each = geometry.length / count;
  const area = reversePlateArea(chamber) / count;
  let before = -1;
  for (let i = 0; i < count; i++) {
    const node = addSharedPlate(network, {
      name: `reverse plate ${i + 1}`,
      part: 'chamber',
      zones: [built.plenum.zones[i], built.chamber.zones[i]],
      shapes: ['up', 'down'],
      area,
      mass: area * chamber.reverse.plate * steelDensity(chamber.steel),
      thickness: chamber.reverse.plate,
      length: (width * geometry.length) / (2 * (width + geometry.length)),
      steel: chamber.steel,
      emissivity: design.estimates.insideEmissivity,
    });
    if (before >= 0) {
      const join = { edge: width, thickness: chamber.reverse.plate, distance: each, steel: chamber.steel };
      joinPlates(network, { a: before, b: node, ...join });
    }
    before = node;
  }
  for (const [name, lower] of built.plenum.along) {
    const upper = built.chamber.along.get(name);
    if (!upper) continue;
    const distance = 0.5 * (girth(network, built.plenum, lower) + girth(network, built.chamber, upper)) * 0.5;
    lower.forEach((a, i) =>
      joinPlates(network, { a, b: upper[i], edge: 2 * each, thickness: chamber.plate, distance, steel: chamber.steel }),
    );
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
