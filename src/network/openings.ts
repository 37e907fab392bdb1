import { hasGaps } from '../design/decks.js';
import type { Design } from '../design/design.js';
import { ashDoorCentre, fireGrateOf } from '../design/fireGrate.js';
import type { Geometry } from '../design/geometry.js';
import { cellAtHeight, chamberEnd, type BuiltPit } from './cells.js';
import { OUTDOORS, type NetworkOpening } from './types.js';
import { DISCHARGE, addSliced, addPlateGaps, addAlong } from './openingCuts.js';
import { addStackOpenings } from './stackOpenings.js';
import { addGaps } from './doorGaps.js';

/** Add every opening of the design: intakes, throat, passages between cells, stacks, door gaps. */
export function addOpenings(built: BuiltPit, design: Design, geometry: Geometry): void {
  const { network } = built;
  const { zones } = network;
  const add = (
    o: Partial<NetworkOpening> & Pick<NetworkOpening, 'name' | 'role' | 'from' | 'to' | 'area' | 'centre'>,
  ) => {
    if (o.area > 0) network.openings.push({ discharge: DISCHARGE, extent: 0, windPressure: 0, ...o });
  };
  const fire = built.firebox.zones;
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
      from: cellAtHeight(network, fire, low ? grate!.height : vent.centre),
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
    from: fire,
    to: top ? [built.upright!.zones[0]] : design.chamber ? chamberEnd(built, 'fire') : built.upright!.zones,
    area: throat.area,
    discharge: throat.discharge,
    centre: throat.centre,
    extent: top ? 0 : Math.sqrt(throat.area),
    level: top,
    jet: Math.sqrt(throat.area),
  });
  if (built.plenum) addAlong(network, built.plenum.columns, 'plenum', add, true);
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
  if (design.chamber && hasGaps(design.chamber)) addPlateGaps(built, design.chamber, add);
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
