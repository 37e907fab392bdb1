import type { Design, Stack } from '../design/design.js';
import type { Geometry } from '../design/geometry.js';
import { damperLoss, dischargeFromLosses, EXIT_LOSS } from '../physics/friction.js';
import { cellAtHeight, chamberEnd, cutsBetween, type BuiltPit, type Cells } from './cells.js';
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
  design.firebox.intakes.forEach((intake, i) => {
    add({
      name: design.firebox.intakes.length > 1 ? `intake ${i + 1}` : 'intake',
      role: 'intake',
      from: fire,
      to: OUTDOORS,
      area: intake.count * intake.area * intake.open,
      centre: intake.centre,
      discharge: intake.discharge,
      windPressure: design.site.windPressure.intake,
    });
  });
  const { throat } = design;
  const through = throat.through === 'top';
  addSliced(network, add, {
    name: 'throat',
    role: 'throat',
    from: [fire],
    to: through ? [built.upright!.zones[0]] : design.chamber ? chamberEnd(built, 'fire') : built.upright!.zones,
    area: throat.area,
    discharge: throat.discharge,
    centre: throat.centre,
    extent: through ? 0 : Math.sqrt(throat.area),
    level: through,
    jet: Math.sqrt(throat.area),
  });
  if (built.plenum) addAlong(network, built.plenum.columns, 'plenum', add);
  if (built.chamber) addAlong(network, built.chamber.columns, 'chamber', add);
  if (built.plenum) {
    const [from, to] = chamberEnd(built, 'far');
    const { turn } = design.chamber!.reverse!;
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
  const { plug } = network.zones[at];
  return zones.filter((each) => network.zones[each].plug === plug);
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
  const shape = geometry.stacks[index];
  const cells = built.stacks[index];
  const chamber = built.chamber?.columns ?? [];
  const below =
    stack.part === 'upright' ? built.upright!.zones : built.plenum ? chamber[0] : chamber[chamber.length - 1];
  const name = design.stacks.length > 1 ? `stack ${index + 1}` : 'stack';
  const bore = { bore: shape.bore, roughness: stack.roughness, length: stack.height / cells.length };
  const area = shape.flowArea;
  // from the side it draws over its bore; on a roof from what stands under that
  const highest = network.zones[below[below.length - 1]].roof;
  const extent = Math.max(0, Math.min(shape.bore, 2 * (highest - stack.base)));
  addSliced(network, add, {
    name: `${name} entry`,
    role: 'stackEntry',
    from: below,
    to: [cells[0]],
    area,
    centre: stack.base,
    extent,
    discharge: dischargeFromLosses(stack.entryLoss),
  });
  for (let i = 1; i < cells.length; i++) {
    add({
      name: `${name} passage ${i}`,
      role: 'passage',
      from: cells[i - 1],
      to: cells[i],
      area,
      centre: stack.base + i * bore.length,
      stack: { ...bore, loss: 0 },
    });
  }
  if (stack.damper <= 0) return;
  add({
    name,
    role: 'stackExit',
    from: cells[cells.length - 1],
    to: OUTDOORS,
    area,
    centre: stack.base + stack.height,
    stack: { ...bore, loss: EXIT_LOSS + stack.bendLoss + stack.capLoss + damperLoss(stack.damper) },
    windPressure: design.site.windPressure.stack,
  });
}

/** Door gaps: half above and half below each part's middle, shared equally by its cells. */
function addGaps(built: BuiltPit, design: Design, add: Add): void {
  const { zones } = built.network;
  const parts: [Cells | undefined, number][] = [
    [built.firebox, design.firebox.doorGap],
    [built.chamber, design.chamber?.doorGap ?? 0],
    [built.upright, design.upright?.doorGap ?? 0],
  ];
  for (const [cells, gap] of parts) {
    if (!cells || gap <= 0) continue;
    const { geometry } = cells;
    const reach = GAP_HEIGHT * (geometry.roof - geometry.floor);
    const low = Math.max(geometry.centre - reach, Math.min(...cells.zones.map((zone) => zones[zone].floor)));
    for (const [where, z] of [
      ['low', low],
      ['high', geometry.centre + reach],
    ] as const) {
      const upright = geometry.axis === 'vertical';
      const places = upright ? [...new Set(cells.zones.map((zone) => zones[zone].station))] : cells.columns;
      for (const place of places) {
        const zone = cellAtHeight(
          built.network,
          typeof place === 'object' ? place : cells.zones.filter((each) => zones[each].station === place),
          z,
        );
        const many = places.length > 1;
        add({
          name: `${cells.part} door gap ${where}${many ? ` at ${zones[zone].station}` : ''}`,
          role: 'gap',
          from: zone,
          to: OUTDOORS,
          area: gap / (2 * places.length),
          centre: z,
        });
      }
    }
  }
}
