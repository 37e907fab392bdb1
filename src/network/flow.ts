import { columnPressure, windPressure } from '../physics/draft.js';
import { ductFlow } from '../physics/ductFlow.js';
import { levelExchange } from '../physics/levelExchange.js';
import { addTrickle, innerFlow, levelFlow, openingFlow, overturn } from '../physics/opening.js';
import type { LuSolver } from '../solve/linear.js';
import type { Model } from './model.js';
import { OUTDOORS, type NetworkOpening } from './types.js';

/** Pressure of the zone (gauge, against outdoors at the ground) at height z. */
export function zonePressure(model: Model, x: Float64Array, zone: number, z: number): number {
  return x[model.pressure + zone] - columnPressure(model.density[zone], z);
}

/** Outdoor pressure at height z on an opening's outdoor side, wind included [Pa, zero at the ground in still air]. */
export function outdoorPressure(model: Model, opening: NetworkOpening, z: number): number {
  const { wind } = model.network.outdoors;
  return -columnPressure(model.outdoorDensity, z) + windPressure(opening.windPressure, model.outdoorDensity, wind);
}

/** Pressure of side `from` less that of side `to` at height z [Pa]. */
export function pressureDifference(model: Model, x: Float64Array, opening: NetworkOpening, z: number): number {
  const to = opening.to === OUTDOORS ? outdoorPressure(model, opening, z) : zonePressure(model, x, opening.to, z);
  return zonePressure(model, x, opening.from, z) - to;
}

/** Flow through a stack or a length of it: one way by its losses and friction, and the trickle of every opening. */
function stackFlow(model: Model, x: Float64Array, i: number, dp: number): void {
  const o = model.network.openings[i];
  const flow = model.flows[i];
  const outdoors = model.network.outdoors.temperature;
  const [source, density] =
    dp >= 0
      ? [x[model.gas + o.from], model.density[o.from]]
      : o.to === OUTDOORS
        ? [outdoors, model.outdoorDensity]
        : [x[model.gas + o.to], model.density[o.to]];
  ductFlow(model.duct, Math.abs(dp), density, source, o.stack!);
  const mass = density * o.area * model.duct.velocity;
  const slope = 0.5 * density * o.area * model.duct.slope;
  flow.forward = dp >= 0 ? mass : 0;
  flow.backward = dp >= 0 ? 0 : mass;
  flow.forwardLow = flow.forwardHigh = dp >= 0 ? slope : 0;
  flow.backwardLow = flow.backwardHigh = dp >= 0 ? 0 : -slope;
  addTrickle(flow, o.area, density);
}

/**
 * Flows through every opening, net inflow and mean through-flow speed of every zone, at the unknowns x. Needs `gasState`
 * first. Gas that only trades places through an opening does not count as through-flow.
 */
export function flowState(model: Model, x: Float64Array): void {
  const { network, flows, exchange, density, inflow, speed } = model;
  inflow.fill(0);
  const { openings } = network;
  for (let i = 0; i < openings.length; i++) {
    const o = openings[i];
    const half = 0.5 * o.extent;
    const low = pressureDifference(model, x, o, o.centre - half);
    const high = o.extent > 0 ? pressureDifference(model, x, o, o.centre + half) : low;
    const rhoFrom = density[o.from];
    const rhoTo = o.to === OUTDOORS ? model.outdoorDensity : density[o.to];
    const flow = flows[i];
    if (o.stack) stackFlow(model, x, i, low);
    else if (o.inner && o.level) levelFlow(flow, o.area, low);
    else if (o.inner) innerFlow(flow, o.area, o.discharge, 0.5 * (rhoFrom + rhoTo), 0.5 * (low + high));
    else openingFlow(flow, o.area, o.discharge, rhoFrom, rhoTo, low, high);
    exchange[i] = 0;
    if (o.level) {
      // `from` lies below `to`
      const both = exchangedMass(o, rhoFrom, rhoTo, flow.forward - flow.backward);
      exchange[i] = both;
      flow.forward += both;
      flow.backward += both;
    }
    const through = flow.forward - flow.backward;
    // what rises or sinks through a level section does not run along the part's length
    if (o.inner && o.level) continue;
    if (through < 0) inflow[o.from] -= through;
    else if (o.to !== OUTDOORS) inflow[o.to] += through;
  }
  for (let z = 0; z < model.zoneCount; z++) speed[z] = inflow[z] / (density[z] * network.zones[z].section);
}

/** Gas that trades places through a level opening besides the net flow [kg/s each way]. */
export function exchangedMass({ area, inner }: NetworkOpening, below: number, above: number, net: number): number {
  if (inner) return overturn(above, below, area);
  return levelExchange(area, below, above, net);
}

/** The columns' own streams at x and the flows of the last `flowState`. @param held their masses stay as they are */
export function streamState(model: Model, x: Float64Array, held = false): void {
  for (const column of model.columns) column.evaluate(x, held);
}

/** Net mass flow into each zone [kg/s], fuel gas counted in the fire's zone; written into `out`. */
export function massBalance(model: Model, x: Float64Array, out: Float64Array, offset: number): void {
  const { network, flows } = model;
  for (let z = 0; z < model.zoneCount; z++) out[offset + z] = 0;
  for (let i = 0; i < flows.length; i++) {
    const o = network.openings[i];
    const net = flows[i].forward - flows[i].backward;
    out[offset + o.from] -= net;
    if (o.to !== OUTDOORS) out[offset + o.to] += net;
  }
  for (const { zones, net } of model.columns) {
    for (let k = 0; k < zones.length; k++) out[offset + zones[k]] += net[3 * k];
  }
  const { fire } = network;
  out[offset + fire.zone] += (x[model.fire] / fire.heatValue) * fire.gasPerFuel;
}

/**
 * Pressures that balance the mass of every zone, gas temperatures held: Newton with a line search.
 *
 * The balances are the slope of a convex function of the pressures (more pressure in a zone always drives more out of it),
 * so there is one solution. The search follows the slope of that function along the step: where the full step would go far
 * beyond its lowest point, it is shortened to near that point.
 *
 * @param lu solver of the zones' size
 * @returns iterations and the largest imbalance [kg/s]
 */
export function solveFlows(
  model: Model,
  x: Float64Array,
  lu: LuSolver,
  tolerance: number,
): { iterations: number; residual: number } {
  const n = model.zoneCount;
  const { pressure } = model;
  const balance = new Float64Array(n);
  const step = new Float64Array(n);
  const start = new Float64Array(n);
  const slopeAt = (share: number): number => {
    for (let z = 0; z < n; z++) x[pressure + z] = start[z] + share * step[z];
    flowState(model, x);
    massBalance(model, x, balance, 0);
    return dot(balance, step);
  };
  flowState(model, x);
  streamState(model, x);
  massBalance(model, x, balance, 0);
  let iterations = 0;
  while (largest(balance) > tolerance && iterations < 100) {
    iterations++;
    fillSlopes(model, lu.matrix);
    if (!lu.factor()) break;
    step.set(balance);
    lu.solve(step);
    for (let z = 0; z < n; z++) start[z] = x[pressure + z];
    const slope = dot(balance, step);
    let [low, fLow, high, fHigh] = [0, slope, 1, slopeAt(1)];
    for (let i = 0; i < 30 && fHigh < -0.5 * slope; i++) {
      const middle = i % 3 === 2 ? 0.5 * (low + high) : (low * fHigh - high * fLow) / (fHigh - fLow);
      const f = slopeAt(middle);
      if (f < 0) [high, fHigh] = [middle, f];
      else [low, fLow] = [middle, f];
      if (f >= 0 && f < 0.3 * slope) break;
    }
    // streams stood still along the step, so that its function stays convex; they follow now
    streamState(model, x);
    massBalance(model, x, balance, 0);
  }
  return { iterations, residual: largest(balance) };
}

/** Change of each zone's outflow with the pressures. */
function fillSlopes(model: Model, matrix: Float64Array): void {
  const n = model.zoneCount;
  const { network, flows } = model;
  matrix.fill(0);
  for (let i = 0; i < flows.length; i++) {
    const o = network.openings[i];
    const f = flows[i];
    const slope = f.forwardLow + f.forwardHigh - f.backwardLow - f.backwardHigh;
    matrix[o.from * n + o.from] += slope;
    if (o.to !== OUTDOORS) {
      matrix[o.to * n + o.to] += slope;
      matrix[o.from * n + o.to] -= slope;
      matrix[o.to * n + o.from] -= slope;
    }
  }
  for (let z = 0; z < n; z++) matrix[z * n + z] += 1e-14;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

function largest(values: Float64Array): number {
  let worst = 0;
  for (let i = 0; i < values.length; i++) {
    const size = Math.abs(values[i]);
    if (size > worst) worst = size;
  }
  return worst;
}
