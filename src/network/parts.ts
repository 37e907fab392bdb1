import type { Chamber, Design, HorizontalPart, Stack, StationName, Upright } from '../design/design.js';
import type { GatherBox } from '../design/gather.js';
import type { Geometry, PartGeometry } from '../design/geometry.js';
import { deckArea, deckOf, hasGaps, plateGaps, type PlateGap } from '../design/decks.js';
import { stackSection } from '../design/stackSection.js';
import { steelDensity } from '../physics/steel.js';
import { girth, girthStrips, jointPlate, type BuiltPit, type Cells } from './cells.js';
import { addPatch, addSharedPlate, joinPlates } from './patches.js';
import { addHorizontalPlates, addUprightPlates } from './plates.js';
import { slicesOf, widthAtHeight } from './slices.js';
import type { Network } from './types.js';

/** How finely a part is cut. */
interface Cut {
  /** cells along a horizontal part, or up an upright */
  count: number;
  /** level slices of its plates */
  plates: number;
  /** does its gas stand in those slices too, or is it mixed over its height? */
  layered: boolean;
  /** where does gas leave it as from a pipe? default: nowhere */
  plug?: 'out' | 'along';
  /** of the part's inside height [m above its floor]; default: all */
  range?: { low: number; high: number };
  /** its zones lie under a plate of the chamber */
  under?: true;
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
  // gas in the heads belongs to the cells at the ends
  const beyond = (i: number) =>
    ((i === 0 ? (geometry.heads?.fireEnd ?? 0) : 0) + (i === count - 1 ? (geometry.heads?.farEnd ?? 0) : 0)) /
    geometry.section;
  const addZone = (i: number, space: { floor: number; roof: number; section: number }): number => {
    network.zones.push({
      name: stationOf(i),
      part: geometry.name,
      station: stationOf(i),
      ...space,
      centre: 0.5 * (space.floor + space.roof),
      volume: space.section * (cellLength + beyond(i)),
      length: geometry.length,
      hydraulicDiameter: 0,
      beamLength: 0,
      soot,
      ...(cut.plug ? { plug: cut.plug } : {}),
      ...(cut.under ? { under: cut.under } : {}),
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

/**
 * Tell the network which zones stand on each other, with the level area between them and the walls along which gas
 * sinks.
 */
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
    // racks and what lies on them stand between the layers of an upright
    network.columns.push({ zones, areas, edges, clear: !upright });
  });
}

/** Area of a gap between plates that lies over a cell along the chamber [m2]. */
export function gapIn({ from, to, area }: PlateGap, i: number, count: number): number {
  const over = Math.min(to, (i + 1) / count) - Math.max(from, i / count);
  return over > 0 ? (area * over) / (to - from) : 0;
}

/** Cells along the chamber get these names; under a reverse-flow plate they are the plenum's. */
const STATIONS: StationName[] = ['fireEnd', 'middle', 'stackEnd'];
const UNDER: StationName[] = ['plenumFireEnd', 'plenumMiddle', 'plenumStackEnd'];

/** The chamber with what lies in it: its zones, plates and openings between cells. */
export function addChamber(
  built: BuiltPit,
  design: Design,
  chamber: Chamber,
  geometry: PartGeometry,
  { count, levels }: { count: number; levels: number },
): void {
  const { network } = built;
  const deck = deckOf(chamber);
  if (!deck) {
    built.chamber = addPart(network, design, geometry, chamber, STATIONS, 0, {
      count,
      plates: levels,
      layered: true,
      plug: 'along',
    });
    return;
  }
  const height = geometry.roof - geometry.floor;
  const { height: level, plate: thickness } = deck;
  const under = { low: 0, high: level };
  const above = { low: level, high: height };
  // under a row of plates the stream from the throat, thrown six of its widths before it has spread, stirs all there is
  // to one body
  const stirred = hasGaps(chamber);
  built.plenum = addPart(network, design, geometry, chamber, stirred ? ['plenumMiddle'] : UNDER, 0, {
    count: stirred ? 1 : count,
    plates: 1,
    layered: false,
    plug: stirred ? undefined : 'out',
    range: under,
    under: true,
  });
  built.chamber = addPart(network, design, geometry, chamber, STATIONS, 0, {
    count,
    plates: levels,
    layered: true,
    plug: 'along',
    range: above,
  });
  const width = widthAtHeight(geometry, level);
  const each = geometry.length / count;
  const gaps = plateGaps(chamber);
  const whole = deckArea(chamber) + gaps.reduce((sum, gap) => sum + gap.area, 0);
  let before = -1;
  const body = chamber.reverse ? 'reverse plate' : 'row of plates';
  for (let i = 0; i < count; i++) {
    const area = whole / count - gaps.reduce((sum, gap) => sum + gapIn(gap, i, count), 0);
    if (area <= 0) continue;
    const node = addSharedPlate(network, {
      name: `${body} ${i + 1}`,
      body,
      part: 'chamber',
      zones: [built.plenum.columns[stirred ? 0 : i][0], built.chamber.columns[i][0]],
      shapes: ['up', 'down'],
      area,
      mass: area * thickness * steelDensity(chamber.steel),
      thickness,
      length: (width * geometry.length) / (2 * (width + geometry.length)),
      steel: chamber.steel,
      emissivity: design.estimates.insideEmissivity,
      linings: [undefined, undefined],
    });
    if (before >= 0) {
      joinPlates(network, { a: before, b: node, edge: width, thickness, distance: each, steel: chamber.steel });
    }
    before = node;
  }
  const lower = girthStrips(built.plenum).at(-1);
  const [upper] = girthStrips(built.chamber);
  if (!lower || !upper) return;
  const distance = 0.25 * (girth(network, built.plenum, lower.nodes) + girth(network, built.chamber, upper.nodes));
  const join = { edge: 2 * each, thickness: jointPlate(lower.plate, upper.plate), distance, steel: chamber.steel };
  upper.nodes.forEach((b, i) => joinPlates(network, { a: lower.nodes[stirred ? 0 : i], b, ...join }));
}

/**
 * The box before a stack: its gas, its walls outdoors. The wall that it shares with its part comes with the openings.
 */
function addGather(network: Network, design: Design, stack: Stack, box: GatherBox, index: number): number {
  const zone = network.zones.length;
  const { low, high, section, volume, insideArea, outsideArea, mass } = box;
  network.zones.push({
    name: `stack ${index + 1} gather box`,
    part: 'stack',
    floor: low,
    roof: high,
    centre: 0.5 * (low + high),
    volume,
    section,
    length: high - low,
    hydraulicDiameter: 0,
    beamLength: 0,
    soot: 0,
  });
  addPatch(network, {
    name: `stack ${index + 1} gather box`,
    part: 'stack',
    zone,
    shape: 'vertical',
    insideArea,
    outsideArea,
    mass,
    thickness: stack.gather!.plate,
    length: high - low,
    windLength: stack.gather!.width,
    steel: stack.steel,
    insideEmissivity: design.estimates.insideEmissivity,
    outsideEmissivity: stack.emissivity,
  });
  return zone;
}

/** The wall of a part that a gather box covers: gas of both on its sides. */
export function addGatherWall(
  network: Network,
  design: Design,
  stack: Stack,
  box: GatherBox,
  zones: [number, number],
): void {
  const made = design[stack.part]!;
  if (box.contact <= 0) return;
  addSharedPlate(network, {
    name: `${stack.part} wall of the gather box`,
    part: stack.part,
    zones,
    shapes: box.onRoof ? ['up', 'down'] : ['vertical', 'vertical'],
    area: box.contact,
    mass: box.contactMass,
    thickness: box.plate,
    length: Math.sqrt(box.contact),
    steel: made.steel,
    emissivity: design.estimates.insideEmissivity,
    linings: [undefined, undefined],
  });
}

/** A stack: its zones and walls. @returns its zones from the base up */
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
  if (shape.gather) zones.push(addGather(network, design, stack, shape.gather, index));
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
      body: `stack ${index + 1} wall`,
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
