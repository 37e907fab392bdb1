/** Openings of the stacks, and the box that gathers gas before one. */
import type { Design, Stack } from '../design/design.js';
import { damperHeight } from '../design/stackSection.js';
import type { Geometry } from '../design/geometry.js';
import { damperLoss, dischargeFromLosses, EXIT_LOSS } from '../physics/friction.js';
import { cellAtHeight, type BuiltPit } from './cells.js';
import { addGatherWall } from './parts.js';
import { OUTDOORS } from './types.js';
import { type Add, addSliced } from './openingCuts.js';

/** The openings of a stack: into it from its part, within it, and out of its top. */
export function addStackOpenings(
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
