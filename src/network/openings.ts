import type { Design, Stack } from '../design/design.js';
import type { Geometry } from '../design/geometry.js';
import { damperLoss, dischargeFromLosses, EXIT_LOSS } from '../physics/friction.js';
import { cellAtHeight, chamberEnd, type BuiltPit, type Cells } from './cells.js';
import { OUTDOORS, type NetworkOpening } from './types.js';

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
  const beyond = design.chamber ? chamberEnd(built, 'fire') : built.upright!.zones;
  const through = throat.through === 'top';
  add({
    name: 'throat',
    role: 'throat',
    from: fire,
    to: through ? built.upright!.zones[0] : cellAtHeight(network, beyond, throat.centre),
    area: throat.area,
    discharge: throat.discharge,
    centre: throat.centre,
    extent: through ? 0 : Math.sqrt(throat.area),
    level: through,
  });
  for (const cells of [built.plenum, built.chamber]) if (cells) addAlong(built, cells, add);
  if (built.plenum) {
    const [from, to] = chamberEnd(built, 'far');
    const { turn } = design.chamber!.reverse!;
    const centre = zones[from].roof;
    add({ name: 'turn', role: 'passage', from, to, area: turn, centre, level: true });
  }
  if (built.upright) {
    const cells = built.upright;
    for (let i = 1; i < cells.zones.length; i++) {
      const [from, to] = [cells.zones[i - 1], cells.zones[i]];
      add({
        name: `upright passage ${i}`,
        role: 'passage',
        from,
        to,
        area: zones[from].section,
        centre: zones[from].roof,
        level: true,
      });
    }
    if (built.chamber && design.upright!.opening) {
      const { area, centre, discharge } = design.upright!.opening;
      add({
        name: 'upright opening',
        role: 'passage',
        from: cellAtHeight(network, chamberEnd(built, 'far'), centre),
        to: cellAtHeight(network, cells.zones, centre),
        area,
        centre,
        discharge,
        extent: Math.sqrt(area),
      });
    }
  }
  design.stacks.forEach((stack, i) => addStackOpenings(built, design, geometry, stack, i, add));
  addGaps(built, design, add);
}

type Add = (
  o: Partial<NetworkOpening> & Pick<NetworkOpening, 'name' | 'role' | 'from' | 'to' | 'area' | 'centre'>,
) => void;

/** Full cross-sections between the cells of a horizontal part. */
function addAlong(built: BuiltPit, cells: Cells, add: Add): void {
  const { zones } = built.network;
  for (let i = 1; i < cells.zones.length; i++) {
    const [from, to] = [cells.zones[i - 1], cells.zones[i]];
    const zone = zones[from];
    add({
      name: `${cells === built.plenum ? 'plenum' : 'chamber'} passage ${i}`,
      role: 'passage',
      from,
      to,
      area: zone.section,
      centre: zone.centre,
      extent: zone.roof - zone.floor,
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
  const below =
    stack.part === 'upright'
      ? cellAtHeight(network, built.upright!.zones, stack.base)
      : built.plenum
        ? built.chamber!.zones[0]
        : built.chamber!.zones[built.chamber!.zones.length - 1];
  const name = design.stacks.length > 1 ? `stack ${index + 1}` : 'stack';
  const bore = { bore: shape.bore, roughness: stack.roughness, length: stack.height / cells.length };
  const area = shape.flowArea;
  add({
    name: `${name} entry`,
    role: 'stackEntry',
    from: below,
    to: cells[0],
    area,
    centre: stack.base,
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
    const low = Math.max(geometry.centre - reach, zones[cells.zones[0]].floor);
    for (const [where, z] of [
      ['low', low],
      ['high', geometry.centre + reach],
    ] as const) {
      for (const zone of cells.zones) {
        const many = cells.zones.length > 1;
        add({
          name: `${cells.part} door gap ${where}${many ? ` at ${zones[zone].station}` : ''}`,
          role: 'gap',
          from: zone,
          to: OUTDOORS,
          area: gap / (2 * cells.zones.length),
          centre: z,
        });
      }
    }
  }
}
