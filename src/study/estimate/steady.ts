import type { PartName, StationName } from '../../design/design.js';
import type { Demand } from '../../network/balances.js';
import { outdoorPressure, pressureDifference, zonePressure } from '../../network/flow.js';
import { OUTDOORS, type NetworkOpening, type NetworkStem } from '../../network/types.js';
import { columnPressure, neutralHeight, theoreticalDraft } from '../../physics/draft.js';
import { bracketedRoot } from '../../solve/root.js';
import { gasAtStem, stationGas, stationLayers, stationSteel, steelAt, type Pit } from '../../network/pit.js';
import type { HottestOutside, OpeningState, PlaceState, StationState, SteadyState } from './result.js';
import type { Settled } from '../../network/settle.js';

/** Below this share of the heat asked for, the release counts as held down by air. */
const LIMITED = 0.995;
/** A state that holds the target reads it this closely [K]. */
const HELD_WITHIN = 0.05;

export interface Solved {
  x: Float64Array;
  settled: Settled;
  asked: number;
}

/**
 * Steady state under a given fire [W].
 *
 * @param start unknowns near the answer, where there are any
 * @returns the unknowns; `settled.converged` false when no solution was found
 */
export function solveUnderFire(pit: Pit, heat: number, start?: Float64Array): Solved {
  const { settler } = pit;
  const demand: Demand = { mode: 'release', heat };
  if (start) {
    const x = start.slice();
    const settled = settler.polish(x, demand);
    if (settled.converged) return { x, settled, asked: heat };
  }
  const x = settler.burningState(heat);
  const settled = settler.settle(x, demand);
  return { x, settled, asked: heat };
}

/** The steady state under a fire [W] that a pit goes to from the unknowns x, its gas keeping to the way it goes; null: none found. */
export function solveFrom(pit: Pit, x: Float64Array, heat: number): Solved | null {
  const at = x.slice();
  const settled = pit.settler.settle(at, { mode: 'release', heat });
  return settled.converged ? { x: at, settled, asked: heat } : null;
}

/** The steady state that the unknowns x are near to; null: none is found from there, or only under a fire that can't be. */
export function solveNear(pit: Pit, x: Float64Array, demand: Demand): Solved | null {
  const { settler, model } = pit;
  let at = x.slice();
  let settled = settler.polish(at, demand, 'nothing', 0, true);
  if (!settled.converged) settled = settler.settle((at = x.slice()), demand);
  if (!settled.converged) return null;
  if (demand.mode === 'release') return { x: at, settled, asked: demand.heat };
  const possible = at[model.fire] >= 0 && at[model.fuel + model.network.fire.zone] < model.fuelLimit;
  return possible ? { x: at, settled, asked: at[model.fire] } : null;
}

/**
 * Steady state in which the gauge's settled reading is `target`, by the fire it takes.
 *
 * From the assumed state's solution Newton with the fire as an unknown gets there in most designs; where it does not, the
 * fire is bracketed and every trial fire solved in full.
 *
 * @returns null when no fire that air allows reaches the target; `reached` then says how far the largest gets [K]
 */
export function solveHoldFire(pit: Pit, target: number, assumed: Solved): { solved: Solved | null; reached: number } {
  const { settler, balances, model } = pit;
  const outdoors = model.network.outdoors.temperature;
  const assumedReading = readingOf(pit, assumed);
  const x = assumed.x.slice();
  const ratio = (target - outdoors) / Math.max(1, assumedReading - outdoors);
  for (let i = 0; i < model.fuel; i++) x[i] = outdoors + (x[i] - outdoors) * Math.min(2, ratio);
  x[model.fire] *= Math.min(3, ratio ** 1.15);
  const settled = settler.settle(x, { mode: 'hold', target });
  if (settled.converged && x[model.fire] >= 0 && !balances.starved(x)) {
    return { solved: { x, settled, asked: x[model.fire] }, reached: target };
  }
  return heldByBracket(pit, target, assumed, assumedReading);
}

/** The same, by larger fires than the one of a state that does not reach the target. */
export function heldAbove(pit: Pit, target: number, state: Solved): ReturnType<typeof solveHoldFire> {
  return heldByBracket(pit, target, state, readingOf(pit, state));
}

/** What the gauge settles at in a state [K]. */
export function readingOf({ balances, model }: Pit, { x, asked }: Solved): number {
  balances.evaluate(x, { mode: 'release', heat: asked });
  return balances.settled(x, model.network.gauge);
}

/** The slow, sure way: bracket the fire, each trial a full steady solution from its neighbour. */
function heldByBracket(
  pit: Pit,
  target: number,
  assumed: Solved,
  assumedReading: number,
): { solved: Solved | null; reached: number } {
  const { model, settler } = pit;
  let last = assumed;
  let reached = assumedReading;
  const readingAt = (heat: number): number => {
    const solved = solveUnderFire(pit, heat, last.x);
    if (!solved.settled.converged) return Number.NaN;
    last = solved;
    const value = readingOf(pit, solved);
    reached = Math.max(reached, value);
    return value - target;
  };
  let low = 0;
  let high = assumed.asked;
  let fHigh = assumedReading - target;
  for (let i = 0; i < 12 && fHigh < 0; i++) {
    low = high;
    high *= 1.6;
    const before = fHigh;
    fHigh = readingAt(high);
    const starved = last.x[model.fire] < LIMITED * high;
    if (Number.isNaN(fHigh) || (starved && fHigh < 0 && fHigh - before < 0.5)) return { solved: null, reached };
  }
  if (fHigh < 0) return { solved: null, reached };
  const fLow = low === 0 ? model.network.outdoors.temperature - target : readingAt(low);
  if (!(fLow < 0)) return { solved: null, reached };
  let root: number;
  try {
    ({ root } = bracketedRoot(readingAt, { low, high, fLow, fHigh, tolerance: 1e-7 * high }));
  } catch (error) {
    // a fire on the way has no steady state of its own
    if (error instanceof RangeError) return { solved: null, reached };
    throw error;
  }
  const solved = solveUnderFire(pit, root, last.x);
  if (!solved.settled.converged) return { solved: null, reached };
  const x = solved.x.slice();
  const settled = settler.polish(x, { mode: 'hold', target });
  if (settled.converged && Math.abs(x[model.fire] - solved.x[model.fire]) < 1e-3 * root) {
    return { solved: { x, settled, asked: x[model.fire] }, reached: target };
  }
  // between two ways of flowing the reading jumps past the target: no fire holds it there
  const met = Math.abs(readingOf(pit, solved) - target) < HELD_WITHIN;
  return { solved: met ? solved : null, reached };
}

/** Everything the result tree says about a solved state. */
export function describeState(pit: Pit, solved: Solved): SteadyState {
  const { balances, model } = pit;
  const { x } = solved;
  const { network } = model;
  balances.evaluate(x, { mode: 'release', heat: solved.asked });
  const release = x[model.fire];
  const wood = release / network.fire.heatValue;
  const openings = openingStates(pit);
  const air = airIntoFirebox(pit);
  const total = balances.totalLoss();
  return {
    fire_W: release,
    fireAsked_W: solved.asked,
    wood_kg_per_s: wood,
    air_kg_per_s: air,
    excessAirRatio: wood > 0 ? air / (wood * network.fire.airPerFuel) : 0,
    converged: solved.settled.converged,
    iterations: solved.settled.iterations,
    residual: solved.settled.massError,
    stations: network.stems.flatMap(({ place, station }, i) => (place ? [] : [stationState(pit, x, station, i)])),
    ...cookingPlaces(network.stems.flatMap((stem, i) => (stem.place ? [placeState(pit, x, stem, i)] : []))),
    hottestOutside: hottestOutside(pit, x),
    heatLoss_W: {
      firebox: balances.lossOf('firebox'),
      chamber: balances.lossOf('chamber'),
      upright: balances.lossOf('upright'),
      stackWall: balances.lossOf('stack'),
      stackGas: balances.stackGasLoss + balances.evaporated,
      leaks: balances.leakLoss,
      total,
    },
    draft: draftOf(pit),
    pressurePath: pressurePath(pit),
    openings,
    limitedByAir: release < LIMITED * solved.asked,
    energyError: release > 0 ? Math.abs(release - total) / release : 0,
    massError_kg_per_s: balances.massError(),
  };
}

function stationState(pit: Pit, x: Float64Array, station: string, stem: number): StationState {
  let outside = -Infinity;
  for (const face of pit.built.network.faces) {
    if (face.zone === OUTDOORS && face.station === station) outside = Math.max(outside, x[face.node]);
  }
  return {
    name: station as StationName,
    gas_K: stationGas(pit, x, station),
    dial_m: pit.model.network.stems[stem].height,
    thermometer_K: pit.balances.settled(x, stem),
    steel_K: stationSteel(pit, x, station),
    outside_K: outside,
    layers: stationLayers(pit, x, station),
    steelBy: {
      roof_K: steelAt(pit, x, station, 'roof'),
      upper_K: steelAt(pit, x, station, 'upperSide'),
      lower_K: steelAt(pit, x, station, 'lowerSide'),
      floor_K: steelAt(pit, x, station, 'floor'),
    },
  };
}

function placeState(pit: Pit, x: Float64Array, { place, station, height }: NetworkStem, stem: number): PlaceState {
  const { name, kind, part, along } = place!;
  return {
    name,
    kind,
    part: part as PartName,
    station: station as StationName,
    along,
    height_m: height,
    gas_K: gasAtStem(pit, x, stem),
    thermometer_K: pit.balances.settled(x, stem),
  };
}

/** The places, and how even they are. */
function cookingPlaces(places: PlaceState[]): Pick<SteadyState, 'places' | 'evenness'> {
  const grates = places.filter(({ kind }) => kind === 'grate');
  const apart = (those: PlaceState[]) => {
    const readings = those.map(({ thermometer_K }) => thermometer_K);
    return Math.max(...readings) - Math.min(...readings);
  };
  const by = (key: 'name' | 'station') => [...new Set(grates.map((place) => place[key]))];
  const stacked = by('station')
    .map((station) => grates.filter((place) => place.station === station))
    .filter((those) => those.length > 1);
  const racks = places.filter(({ kind }) => kind === 'rack');
  return {
    places,
    evenness: {
      grates: by('name').map((name) => ({ name, endToEnd_K: apart(grates.filter((place) => place.name === name)) })),
      topToBottom_K: stacked.length > 0 ? Math.max(...stacked.map(apart)) : null,
      racks_K: racks.length > 1 ? apart(racks) : null,
    },
  };
}

function hottestOutside(pit: Pit, x: Float64Array): HottestOutside {
  const { faces, nodes } = pit.built.network;
  const hottest = faces
    .filter(({ zone }) => zone === OUTDOORS)
    .reduce((most, face) => (x[face.node] > x[most.node] ? face : most));
  return {
    part: nodes[hottest.node].part,
    station: (hottest.station as StationName | undefined) ?? null,
    place: hottest.place ?? null,
    steel_K: x[hottest.node],
  };
}

/** Air that enters the fire's zone from outdoors [kg/s]. */
function airIntoFirebox({ model }: Pit): number {
  let air = 0;
  model.network.openings.forEach((o, i) => {
    if (o.from === model.network.fire.zone && o.to === OUTDOORS) air += model.flows[i].backward;
  });
  return air;
}

/** Openings as the design has them: one that is cut by height counts as a whole. */
function openingStates({ model }: Pit): OpeningState[] {
  const { openings, zones } = model.network;
  return [...new Set(openings.map(({ name }) => name))].map((name) => {
    const slices = openings.flatMap((o, i) => (o.name === name ? [i] : []));
    const { role, from } = openings[slices[0]];
    const inwards = role === 'intake' ? -1 : 1;
    const sum = (of: (i: number) => number) => slices.reduce((total, i) => total + of(i), 0);
    const area = sum((i) => openings[i].area);
    const dp = (i: number) => pressureDifference(model, openings[i], openings[i].centre);
    return {
      name,
      role,
      ...(role === 'gap' ? { part: zones[from].part as PartName, station: zones[from].station as StationName } : {}),
      area_m2: area,
      flow_kg_per_s: inwards * sum((i) => model.flows[i].forward - model.flows[i].backward) + 0,
      back_kg_per_s: sum((i) => (role === 'intake' ? model.flows[i].forward : model.flows[i].backward)),
      dp_Pa: inwards * (sum((i) => openings[i].area * dp(i)) / area) + 0,
    };
  });
}

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

function draftOf(pit: Pit): SteadyState['draft'] {
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

/** Gauge pressure along the gas's way: at the intake, through firebox and throat, each station, stack base and stack top. */
function pressurePath(pit: Pit): SteadyState['pressurePath'] {
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

/** Of each station of chamber, plenum and upright the zone at its middle, in the order in which gas passes them. */
function gasOrder({ built }: Pit): number[] {
  const { plenum, chamber, upright } = built;
  const { zones } = built.network;
  const middles = (columns: number[][] = []) => columns.map((column) => column[column.length >> 1]);
  const chambers = middles(chamber?.columns);
  const path = plenum ? [...middles(plenum.columns), ...chambers.reverse()] : chambers;
  const up = (upright?.zones ?? []).filter((z, i, all) => i === 0 || zones[z].station !== zones[all[i - 1]].station);
  return [...path, ...up];
}
