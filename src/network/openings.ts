import type { Chamber, Design, Stack } from '../design/design.js';
import { deckWidth, plateGaps } from '../design/decks.js';
import { damperHeight } from '../design/stackSection.js';
import { doorLabel, doorsOf, type PlacedDoor } from '../design/doors.js';
import { ashDoorCentre, fireGrateOf } from '../design/fireGrate.js';
import type { Geometry } from '../design/geometry.js';
import { PARTS } from '../design/stations.js';
import { damperLoss, dischargeFromLosses, EXIT_LOSS } from '../physics/friction.js';
import { cellAtHeight, chamberEnd, cutsBetween, type BuiltPit, type Cells } from './cells.js';
import { addGatherWall, gapIn } from './parts.js';
import { OUTDOORS, type Network, type NetworkOpening } from './types.js';

/** Discharge coefficient of gaps, and of full cross-sections between cells (estimate, spread 0.55-0.70). */
const DISCHARGE = 0.62;
/** A door gap counts at this share of the part's height above and below its middle. */
const GAP_HEIGHT = 0.35;

/** Add every opening of the design: intakes, throat, passages between cells, stacks, door gaps. */
export function addOpenings(built: BuiltPit, design: Design, geometry: Geometry): void {
  const { network } = built;
  const { zones } = network;
  const add = (
    o: Partial<NetworkOpening> & Pick<NetworkOpening, 'name' | 'role' | 'from' | 'to' | 'area' | 'centre'>,
  ) => {
    if (o.area > 0) network.openings.push({ discharge: DISCHARGE, extent: 0, windPressure: 0, ...o });
  };
  const fire = built.firebox.zones[0];
  const vents = ventsOf(design);
  const grate = fireGrateOf(design.firebox);
  // what comes in under the grate goes through it, and meets hot gas no lower than there
  const under = vents.filter(({ centre }) => grate !== undefined && centre < grate.height);
  const effective = under.reduce((sum, { area, discharge }) => sum + discharge * area, 0);
  const through = grate ? 1 / Math.sqrt(1 + (effective / (DISCHARGE * grate.free)) ** 2) : 1;
  for (const vent of vents) {
    const low = under.includes(vent);
    add({
      ...vent,
      role: 'intake',
      from: fire,
      to: OUTDOORS,
      centre: low ? grate!.height : vent.centre,
      discharge: vent.discharge * (low ? through : 1),
      windPressure: design.site.windPressure.intake,
      // under a grate is ash, and air as cold as it came in
      sees: !low,
    });
  }
  const { throat } = design;
  const top = throat.through === 'top';
  addSliced(network, add, {
    name: 'throat',
    role: 'throat',
    from: [fire],
    to: top ? [built.upright!.zones[0]] : design.chamber ? chamberEnd(built, 'fire') : built.upright!.zones,
    area: throat.area,
    discharge: throat.discharge,
    centre: throat.centre,
    extent: top ? 0 : Math.sqrt(throat.area),
    level: top,
    jet: Math.sqrt(throat.area),
  });
  if (built.plenum) addAlong(network, built.plenum.columns, 'plenum', add);
  if (built.chamber) addAlong(network, built.chamber.columns, 'chamber', add);
  if (design.chamber?.reverse) {
    const [from, to] = chamberEnd(built, 'far');
    const { turn } = design.chamber.reverse;
    add({
      name: 'turn',
      role: 'passage',
      from,
      to,
      area: turn,
      centre: zones[from].roof,
      level: true,
      jet: Math.sqrt(turn),
    });
  }
  if (design.chamber?.plates) addPlateGaps(built, design.chamber, add);
  if (built.chamber && built.upright && design.upright!.opening) {
    const { area, centre, discharge } = design.upright!.opening;
    addSliced(network, add, {
      name: 'upright opening',
      role: 'passage',
      from: chamberEnd(built, 'far'),
      to: built.upright.zones,
      area,
      centre,
      discharge,
      extent: Math.sqrt(area),
      jet: Math.sqrt(area),
    });
  }
  design.stacks.forEach((stack, i) => addStackOpenings(built, design, geometry, stack, i, add));
  addGaps(built, design, add);
}

/** Vents of the firebox as they are set, the ash door among them. */
function ventsOf({ firebox }: Design): { name: string; area: number; centre: number; discharge: number }[] {
  const { intakes, ashDoor } = firebox;
  return [
    ...intakes.map(({ count, area, open, centre, discharge }, i) => ({
      name: intakes.length > 1 ? `intake ${i + 1}` : 'intake',
      area: count * area * open,
      centre,
      discharge,
    })),
    ...(ashDoor
      ? [
          {
            name: 'ash door',
            area: ashDoor.width * ashDoor.height * ashDoor.open,
            centre: ashDoorCentre(firebox),
            discharge: DISCHARGE,
          },
        ]
      : []),
  ];
}

/** The leak of the ash door, under the grate. */
function addAshGap(built: BuiltPit, design: Design, add: Add): void {
  const { ashDoor } = design.firebox;
  if (!ashDoor) return;
  const centre = fireGrateOf(design.firebox)?.height ?? ashDoorCentre(design.firebox);
  const from = built.firebox.zones[0];
  add({ name: 'ash door gap', role: 'gap', from, to: OUTDOORS, area: ashDoor.gap, centre });
}

export type Add = (
  o: Partial<NetworkOpening> & Pick<NetworkOpening, 'name' | 'role' | 'from' | 'to' | 'area' | 'centre'>,
) => void;

/** An opening that zones of a part look through, cut where they end. */
export function addSliced(
  network: Network,
  add: Add,
  opening: Omit<Parameters<Add>[0], 'from' | 'to'> & { from: number[]; to: number[]; extent: number },
): void {
  const { from, area, centre, jet, ...rest } = opening;
  const to = sameSide(network, opening.to, centre);
  const [floor, roof] = [network.zones[to[0]].floor, network.zones[to[to.length - 1]].roof];
  const room = to.length < opening.to.length ? 2 * Math.max(0, Math.min(centre - floor, roof - centre)) : Infinity;
  const extent = Math.min(opening.extent, room);
  const cuts = cutsBetween(network, [from, to], centre - 0.5 * extent, centre + 0.5 * extent);
  for (let i = 1; i < cuts.length; i++) {
    const middle = 0.5 * (cuts[i - 1] + cuts[i]);
    const share = extent > 0 ? (cuts[i] - cuts[i - 1]) / extent : 1;
    add({
      ...rest,
      from: cellAtHeight(network, from, middle),
      to: cellAtHeight(network, to, middle),
      area: area * share,
      centre: middle,
      extent: cuts[i] - cuts[i - 1],
      ...(jet === undefined ? {} : { jet: jet * share }),
    });
  }
}

/** Of zones under and over a reverse-flow plate those on the side of a height: no opening is cut by the plate. */
function sameSide(network: Network, zones: number[], z: number): number[] {
  const at = cellAtHeight(network, zones, z);
  const isUnder = (zone: number) => network.zones[zone].station?.startsWith('plenum') ?? false;
  return zones.filter((each) => isUnder(each) === isUnder(at));
}

/** Gaps in a row of plates: gas rises through each into the cells over it, a stream as wide as the plates. */
function addPlateGaps({ network, plenum, chamber }: BuiltPit, made: Chamber, add: Add): void {
  const wide = deckWidth(made);
  plateGaps(made).forEach((gap, k) => {
    const [from] = plenum!.zones;
    chamber!.columns.forEach(([to], i) => {
      add({
        name: `gap ${k + 1} in the plates`,
        role: 'passage',
        from,
        to,
        area: gapIn(gap, i, chamber!.columns.length),
        centre: network.zones[from].roof,
        level: true,
        jet: wide,
      });
    });
  });
}

/** Full cross-sections between the cells of a horizontal part: all of them together take what one opening would. */
export function addAlong({ zones }: Network, columns: number[][], name: string, add: Add): void {
  const passages = columns.length - 1;
  const layered = columns[0].length > 1;
  for (let i = 1; i <= passages; i++) {
    columns[i].forEach((to, j) => {
      const from = columns[i - 1][j];
      const { section, centre, roof, floor } = zones[from];
      add({
        name: `${name} passage ${i}`,
        role: 'passage',
        from,
        to,
        area: section,
        centre,
        extent: roof - floor,
        discharge: layered ? DISCHARGE * Math.sqrt(passages) : DISCHARGE,
        // where gas is mixed over the height, hot gas runs along the top and cold gas back under it
        inner: layered,
      });
    });
  }
}

function addStackOpenings(
  built: BuiltPit,
  design: Design,
  geometry: Geometry,
  stack: Stack,
  index: number,
  add: Add,
): void {
  const { network } = built;
  // a shut one lets no gas through wherever it sits: the tube is left as a dead end of the pit
  const shut = stack.damper <= 0;
  const shape = geometry.stacks[index];
  const gather = shape.gather;
  const cells = built.stacks[index].slice(gather ? 1 : 0);
  const below = zonesUnder(built, design, stack);
  const name = design.stacks.length > 1 ? `stack ${index + 1}` : 'stack';
  const bore = { bore: shape.bore, roughness: stack.roughness, length: stack.height / cells.length };
  const area = shape.flowArea;
  // the damper's loss stands at the joint of cells nearest to it, the foot and the top among them
  const up = damperHeight(stack) - stack.base;
  const joint = Math.min(cells.length, Math.max(0, Math.round((up / stack.height) * cells.length)));
  const lossAt = (i: number) => (i === joint && !shut ? damperLoss(stack.damper) : 0);
  if (gather) {
    const [box] = built.stacks[index];
    const { mouth } = stack.gather!;
    addSliced(network, add, {
      name: `${name} entry`,
      role: 'stackEntry',
      from: below,
      to: [box],
      area: mouth,
      centre: gather.mouthCentre,
      extent: gather.onRoof ? 0 : Math.min(Math.sqrt(mouth), gather.high - gather.low),
      discharge: dischargeFromLosses(gather.mouthLoss),
      sees: true,
    });
    const discharge = dischargeFromLosses(gather.footLoss + lossAt(0));
    add({ name: `${name} foot`, role: 'passage', from: box, to: cells[0], area, centre: stack.base, discharge });
  } else {
    // from the side it draws over its bore; on a roof from what stands under that
    const highest = network.zones[below[below.length - 1]].roof;
    addSliced(network, add, {
      name: `${name} entry`,
      role: 'stackEntry',
      from: below,
      to: [cells[0]],
      area,
      centre: stack.base,
      extent: Math.max(0, Math.min(shape.bore, 2 * (highest - stack.base))),
      discharge: dischargeFromLosses(stack.entryLoss + lossAt(0)),
      sees: true,
    });
  }
  for (let i = 1; i < cells.length; i++) {
    add({
      name: `${name} passage ${i}`,
      role: 'passage',
      from: cells[i - 1],
      to: cells[i],
      area,
      centre: stack.base + i * bore.length,
      stack: { ...bore, loss: lossAt(i) },
    });
  }
  if (shut) return;
  add({
    name,
    role: 'stackExit',
    from: cells[cells.length - 1],
    to: OUTDOORS,
    area,
    centre: stack.base + stack.height,
    stack: { ...bore, loss: EXIT_LOSS + stack.bendLoss + stack.capLoss + lossAt(cells.length) },
    windPressure: design.site.windPressure.stack,
  });
}

/** Zones of a part that a stack on it draws from. */
function zonesUnder({ upright, chamber }: BuiltPit, design: Design, { part }: Stack): number[] {
  if (part === 'upright') return upright!.zones;
  const columns = chamber?.columns ?? [];
  return design.chamber?.reverse ? columns[0] : columns[columns.length - 1];
}

/** The walls between parts and the boxes that gather their gas. */
export function addGatherWalls(built: BuiltPit, design: Design, geometry: Geometry): void {
  design.stacks.forEach((stack, i) => {
    const { gather } = geometry.stacks[i];
    if (!gather) return;
    const from = cellAtHeight(built.network, zonesUnder(built, design, stack), gather.mouthCentre);
    addGatherWall(built.network, design, stack, gather, [from, built.stacks[i][0]]);
  });
}

/** Door gaps: half above and half below each part's middle, shared equally by its cells; of several doors each at its own edges. */
function addGaps(built: BuiltPit, design: Design, add: Add): void {
  for (const name of PARTS) {
    const cells = built[name];
    const part = design[name];
    if (!cells || !part) continue;
    if (name === 'firebox') addAshGap(built, design, add);
    if (part.doors) for (const door of doorsOf(design, name)) addGap(built, design, cells, door, add);
    else addGap(built, design, cells, { name: '', gap: part.doorGap }, add);
  }
}

/** Half of a leak at the top and half at the bottom of a door, in the cells that it reaches over. */
function addGap(
  built: BuiltPit,
  design: Design,
  cells: Cells,
  door: Pick<PlacedDoor, 'name' | 'gap'> & Partial<PlacedDoor>,
  add: Add,
): void {
  const { zones } = built.network;
  const { geometry, part } = cells;
  const whole = geometry.roof - geometry.floor;
  const { centre = geometry.centre, straight = 2 * GAP_HEIGHT * whole } = door;
  const reach = 0.5 * Math.min(straight, whole);
  const floor = Math.min(...cells.zones.map((zone) => zones[zone].floor));
  const upright = geometry.axis === 'vertical';
  const grate = part === 'firebox' ? fireGrateOf(design.firebox) : undefined;
  for (const [where, z] of [
    ['low', Math.max(centre - reach, floor)],
    ['high', centre + reach],
  ] as const) {
    const stations = upright ? [...new Set(cells.zones.map((zone) => zones[zone].station))] : [];
    const places = upright
      ? stations.map((station) => cells.zones.filter((each) => zones[each].station === station))
      : cells.columns;
    // a door of its own height leaks where it is; the leak of a whole part all over it
    const there = upright && door.straight !== undefined ? [cells.zones] : places;
    const shares = there.map((_, i) => (upright ? 1 / there.length : coverage(cells, door, i)));
    there.forEach((place, i) => {
      const zone = cellAtHeight(built.network, place, z);
      add({
        name: `${doorLabel(part, door.name)} gap ${where}${there.length > 1 ? ` at ${zones[zone].station}` : ''}`,
        role: 'gap',
        from: zone,
        to: OUTDOORS,
        area: 0.5 * door.gap * shares[i],
        centre: Math.max(z, grate?.height ?? z),
      });
    });
  }
}

/** Share of a door's width that reaches over a cell of a lying part; without its place the door of a whole part, all over it. */
export function coverage(
  { columns }: Cells,
  { along = 0.5, share = 1 }: Partial<Pick<PlacedDoor, 'along' | 'share'>>,
  i: number,
): number {
  const each = 1 / columns.length;
  const half = 0.5 * Math.min(1, share);
  const [from, to] = [Math.max(0, along - half), Math.min(1, along + half)];
  return Math.max(0, Math.min(to, (i + 1) * each) - Math.max(from, i * each)) / (to - from);
}
