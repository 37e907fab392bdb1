/** Draft and pressures along the way of the gas in a solved state. */
import { outdoorPressure, zonePressure } from '../../network/flow.js';
import type { Pit } from '../../network/pit.js';
import { OUTDOORS, type NetworkOpening } from '../../network/types.js';
import { columnPressure, neutralHeight, theoreticalDraft } from '../../physics/draft.js';
import type { SteadyState } from './result.js';

/** Of the slices of an opening the one in its middle, at that height. */
function middleSlice(slices: NetworkOpening[]): NetworkOpening {
  const area = slices.reduce((sum, o) => sum + o.area, 0);
  const centre = slices.reduce((sum, o) => sum + o.area * o.centre, 0) / area;
  const off = (o: NetworkOpening) => Math.abs(o.centre - centre);
  return { ...slices.reduce((best, o) => (off(o) < off(best) ? o : best)), centre };
}

/** Outdoor pressure less that of a zone at the same height [Pa]; positive where the pit draws in. */
function draftAt({ model }: Pit, zone: number, z: number): number {
  return -columnPressure(model.outdoorDensity, z) - zonePressure(model, zone, z);
}

/** The stack that carries most: index and its last zone's flow [kg/s]. */
function mainStack({ model }: Pit): number {
  const { openings } = model.network;
  let best = -1;
  openings.forEach((o, i) => {
    if (o.role !== 'stackExit') return;
    if (best < 0 || model.flows[i].forward - model.flows[i].backward > model.flows[best].forward) best = i;
  });
  return best;
}

/** Zones of the stack that an exit ends, of the first one where none flows, and the opening at its base. */
function stackBelow({ model, built }: Pit, exit: number): { cells: number[]; entry: NetworkOpening } {
  const { openings } = model.network;
  const cells =
    (exit < 0 ? undefined : built.stacks.find((each) => each.includes(openings[exit].from))) ?? built.stacks[0];
  return { cells, entry: middleSlice(openings.filter((o) => o.role === 'stackEntry' && o.to === cells[0])) };
}

/** Draft at stack base, throat and firebox, speeds, and how fast the gas changes; after an evaluation at the state. */
export function draftOf(pit: Pit): SteadyState['draft'] {
  const { model } = pit;
  const { network } = model;
  const { openings, zones } = network;
  const fire = network.fire.zone;
  const throat = middleSlice(openings.filter((o) => o.role === 'throat'));
  const exit = mainStack(pit);
  const { cells, entry } = stackBelow(pit, exit);
  let theoretical = 0;
  for (const z of cells) {
    theoretical += theoreticalDraft(model.outdoorDensity, model.density[z], zones[z].roof - zones[z].floor);
  }
  let intakeFlow = 0;
  let intakeArea = 0;
  openings.forEach((o, i) => {
    if (o.role !== 'intake') return;
    intakeFlow += model.flows[i].backward - model.flows[i].forward;
    intakeArea += o.area;
  });
  const last = exit < 0 ? cells[0] : openings[exit].from;
  const stackFlow = exit < 0 ? 0 : model.flows[exit].forward - model.flows[exit].backward;
  let inside = 0;
  zones.forEach((zone, z) => (inside += zone.part === 'stack' ? 0 : zone.volume * model.density[z]));
  let through = 0;
  openings.forEach((o, i) => {
    if (o.to === OUTDOORS) through += model.flows[i].backward;
  });
  const gaugeZone = network.stems[network.gauge].parts[0].zone;
  return {
    stackBase_Pa: draftAt(pit, entry.from, entry.centre),
    firebox_Pa: draftAt(pit, fire, zones[fire].centre),
    throat_Pa: draftAt(pit, fire, throat.centre),
    theoretical_Pa: theoretical,
    stackVelocity_m_per_s: stackFlow / (model.density[last] * zones[last].section),
    intakeVelocity_m_per_s: intakeArea > 0 ? intakeFlow / (model.outdoorDensity * intakeArea) : 0,
    neutralPlane_m: neutralHeight(model.grounded[gaugeZone], model.density[gaugeZone], model.outdoorDensity),
    airChanges_per_s: through / inside,
    residence_s: through > 0 ? inside / through : 0,
  };
}

/**
 * Gauge pressure along the gas's way: at the intake, through firebox and throat, each station, stack base and stack
 * top.
 */
export function pressurePath(pit: Pit): SteadyState['pressurePath'] {
  const { model } = pit;
  const { openings, zones, fire } = model.network;
  const path: SteadyState['pressurePath'] = [];
  const at = (where: string, zone: number, z: number) =>
    path.push({ where, height_m: z, gauge_Pa: -draftAt(pit, zone, z) + 0 });
  const intake = openings.find((o) => o.role === 'intake');
  if (intake) {
    const outside =
      outdoorPressure(model, intake, intake.centre) -
      outdoorPressure(model, { ...intake, windPressure: 0 }, intake.centre);
    path.push({ where: 'outdoors at the intake', height_m: intake.centre, gauge_Pa: outside });
    at('behind the intake', fire.zone, intake.centre);
  }
  const throat = middleSlice(openings.filter((o) => o.role === 'throat'));
  at('firebox at the throat', fire.zone, throat.centre);
  at('past the throat', throat.to, throat.centre);
  const order = gasOrder(pit);
  for (const z of order) at(zones[z].name, z, zones[z].centre);
  const exit = mainStack(pit);
  const { entry } = stackBelow(pit, exit);
  at('stack base', entry.from, entry.centre);
  at('inside the stack at its base', entry.to, entry.centre);
  if (exit >= 0) {
    // the jet leaves at the pressure of the air around it; friction and the lost velocity head lie below
    const o = openings[exit];
    const top = outdoorPressure(model, o, o.centre) - outdoorPressure(model, { ...o, windPressure: 0 }, o.centre);
    path.push({ where: 'stack top', height_m: o.centre, gauge_Pa: top });
  }
  return path;
}

/**
 * Of each station of chamber, plenum and upright the zone at its middle, in the order in which gas passes them: back
 * over a reverse-flow plate, on over one that it gets past all along.
 */
function gasOrder({ built, design }: Pit): number[] {
  const { plenum, chamber, upright } = built;
  const { zones } = built.network;
  const middles = (columns: number[][] = []) => columns.map((column) => column[column.length >> 1]);
  const chambers = middles(chamber?.columns);
  const path = [...middles(plenum?.columns), ...(design.chamber?.reverse ? chambers.reverse() : chambers)];
  const up = (upright?.zones ?? []).filter((z, i, all) => i === 0 || zones[z].station !== zones[all[i - 1]].station);
  return [...path, ...up];
}
