import { GRAVITY } from '../physics/constants.js';
import { columnPressure, windPressure } from '../physics/draft.js';
import { ductFlow } from '../physics/ductFlow.js';
import { levelExchange } from '../physics/levelExchange.js';
import { addTrickle, innerFlow, openingFlow } from '../physics/opening.js';
import type { LuSolver } from '../solve/linear.js';
import type { Model } from './model.js';
import { OUTDOORS, type NetworkOpening } from './types.js';

/** Pressure of the zone (gauge, against outdoors at the ground) at height z, after `flowState`. */
export function zonePressure(model: Model, zone: number, z: number): number {
  return model.grounded[zone] - columnPressure(model.density[zone], z);
}

/** Outdoor pressure at height z on an opening's outdoor side, wind included [Pa, zero at the ground in still air]. */
export function outdoorPressure(model: Model, opening: NetworkOpening, z: number): number {
  const { wind } = model.network.outdoors;
  return -columnPressure(model.outdoorDensity, z) + windPressure(opening.windPressure, model.outdoorDensity, wind);
}

/** Pressure of side `from` less that of side `to` at height z [Pa], after `flowState`. */
export function pressureDifference(model: Model, opening: NetworkOpening, z: number): number {
  const to = opening.to === OUTDOORS ? outdoorPressure(model, opening, z) : zonePressure(model, opening.to, z);
  return zonePressure(model, opening.from, z) - to;
}

/** Flow through a stack or a length of it: one way by its losses and friction, and the trickle of every opening. */
function stackFlow(model: Model, x: Float64Array, i: number, dp: number): void {
  const o = model.network.openings[i];
  const flow = model.flows[i];
  const outdoors = model.network.outdoors.temperature;
  let source = x[model.gas + o.from];
  let density = model.density[o.from];
  if (dp < 0) {
    source = o.to === OUTDOORS ? outdoors : x[model.gas + o.to];
    density = o.to === OUTDOORS ? model.outdoorDensity : model.density[o.to];
  }
  ductFlow(model.duct, Math.abs(dp), density, source, o.stack!);
  const mass = density * o.area * model.duct.velocity;
  const slope = 0.5 * density * o.area * model.duct.slope;
  flow.forward = dp >= 0 ? mass : 0;
  flow.backward = dp >= 0 ? 0 : mass;
  flow.forwardLow = flow.forwardHigh = dp >= 0 ? slope : 0;
  flow.backwardLow = flow.backwardHigh = dp >= 0 ? 0 : -slope;
  addTrickle(flow, o.area, density);
}

/** Pressures of the zones led down to the ground: of those that stand on others by the weight of what is below. */
function groundPressures(model: Model, x: Float64Array): void {
  const { grounded, under, density, pressure, network } = model;
  for (let z = 0; z < model.zoneCount; z++) {
    const below = under[z];
    grounded[z] =
      below < 0 ? x[pressure + z] : grounded[below] + (density[z] - density[below]) * GRAVITY * network.zones[z].floor;
  }
}

/** `pressureDifference` at the lower and upper edge of each opening. */
function edgePressures(model: Model): void {
  const { low, high, openFrom, openTo, openLow, openHigh, openWind, grounded, density, outdoorDensity } = model;
  const { wind } = model.network.outdoors;
  for (let i = 0; i < openFrom.length; i++) {
    const from = openFrom[i];
    const to = openTo[i];
    const ground = grounded[from] - (to < 0 ? windPressure(openWind[i], outdoorDensity, wind) : grounded[to]);
    const lighter = (to < 0 ? outdoorDensity : density[to]) - density[from];
    low[i] = ground + columnPressure(lighter, openLow[i]);
    high[i] = ground + columnPressure(lighter, openHigh[i]);
  }
}

/** Flows through openings but stacks and slices of a full section. */
function holeFlows(model: Model): void {
  const { flows, density, outdoorDensity, openFrom, openTo, low, high, holes, network } = model;
  for (let k = 0; k < holes.length; k++) {
    const i = holes[k];
    const { area, discharge } = network.openings[i];
    const to = openTo[i] < 0 ? outdoorDensity : density[openTo[i]];
    openingFlow(flows[i], area, discharge, density[openFrom[i]], to, low[i], high[i]);
  }
}

/** Gas that trades places through an opening that lies level; `from` lies below `to`. */
function tradedFlow(model: Model, i: number): void {
  const { from, to, area } = model.network.openings[i];
  const flow = model.flows[i];
  const above = to < 0 ? model.outdoorDensity : model.density[to];
  const both = levelExchange(area, model.density[from], above, flow.forward - flow.backward);
  model.exchange[i] = both;
  flow.forward += both;
  flow.backward += both;
}

/**
 * Flows through every opening, and the through-flow of every zone and its mean speed, at the unknowns x. Needs
 * `gasState` first. Through-flow is the mean of what comes in and what goes out by openings: where gas rises into a
 * layer and leaves it along the part, half of it counts. Gas that only trades places through an opening does not.
 */
export function flowState(model: Model, x: Float64Array): void {
  const { network, flows, exchange, density, openFrom, openTo, through, speed, low, high } = model;
  groundPressures(model, x);
  edgePressures(model);
  holeFlows(model);
  through.fill(0);
  const { openings } = network;
  for (let i = 0; i < openings.length; i++) {
    const o = openings[i];
    const flow = flows[i];
    if (o.stack) stackFlow(model, x, i, low[i]);
    else if (o.inner) {
      const mean = 0.5 * (density[o.from] + (o.to === OUTDOORS ? model.outdoorDensity : density[o.to]));
      innerFlow(flow, o.area, o.discharge, mean, 0.5 * (low[i] + high[i]));
    }
    exchange[i] = 0;
    if (o.level) tradedFlow(model, i);
    const passing = 0.5 * Math.abs(flow.forward - flow.backward);
    through[openFrom[i]] += passing;
    if (openTo[i] !== OUTDOORS) through[openTo[i]] += passing;
  }
  for (let z = 0; z < model.zoneCount; z++) speed[z] = through[z] / (density[z] * network.zones[z].section);
}

/** The columns' own streams at x and the flows of the last `flowState`. */
export function streamState(model: Model, x: Float64Array): void {
  for (const column of model.columns) column.evaluate(x);
}

/**
 * Net mass flow into each zone through its openings [kg/s], fuel gas counted in the fire's zone; written into `out`.
 */
function openBalance(model: Model, x: Float64Array, out: Float64Array): void {
  const { network, flows, openFrom, openTo } = model;
  for (let z = 0; z < model.zoneCount; z++) out[z] = 0;
  for (let i = 0; i < flows.length; i++) {
    const net = flows[i].forward - flows[i].backward;
    out[openFrom[i]] -= net;
    if (openTo[i] !== OUTDOORS) out[openTo[i]] += net;
  }
  const { fire } = network;
  out[fire.zone] += (x[model.fire] / fire.heatValue) * fire.gasPerFuel;
}

/** Net mass flow into each zone [kg/s], after `flowState` and `streamState`; written into `out`. */
export function massBalance(model: Model, x: Float64Array, out: Float64Array): void {
  openBalance(model, x, out);
  for (const { zones, net } of model.columns) {
    for (let k = 0; k < zones.length; k++) out[zones[k]] += net[3 * k];
  }
}

/**
 * Lay down in x what has to rise from zone to zone for each of a column to keep its mass; the openings' balance is
 * given.
 */
function riseOf(model: Model, x: Float64Array, open: Float64Array): void {
  for (const column of model.columns) {
    const { zones, streamed } = column;
    let up = 0;
    for (let k = 1; k < zones.length; k++) {
      up += open[zones[k - 1]] + streamed[k - 1];
      x[model.pressure + zones[k]] = up;
    }
    column.level(x);
  }
}

/**
 * Pressures that balance the mass of every zone, gas temperatures held: Newton with a line search, then what rises
 * inside columns.
 *
 * The balances are the slope of a convex function of the pressures (more pressure in a zone always drives more out of
 * it), so there is one solution. The search follows the slope of that function along the step: where the full step
 * would go far beyond its lowest point, it is shortened to near that point.
 *
 * @param lu solver of as many unknowns as the model has columns
 * @returns iterations and the largest imbalance of a column [kg/s]
 */
export function solveFlows(
  model: Model,
  x: Float64Array,
  lu: LuSolver,
  tolerance: number,
): { iterations: number; residual: number } {
  const { pressure, columnOf, lowest, columnCount: n } = model;
  const open = new Float64Array(model.zoneCount);
  const balance = new Float64Array(n);
  const step = new Float64Array(n);
  const start = new Float64Array(n);
  const balanceNow = () => {
    flowState(model, x);
    openBalance(model, x, open);
    balance.fill(0);
    for (let z = 0; z < model.zoneCount; z++) balance[columnOf[z]] += open[z];
  };
  const slopeAt = (share: number): number => {
    for (let z = 0; z < model.zoneCount; z++) {
      if (lowest[z] === z) x[pressure + z] = start[columnOf[z]] + share * step[columnOf[z]];
    }
    balanceNow();
    return dot(balance, step);
  };
  balanceNow();
  let iterations = 0;
  while (largest(balance) > tolerance && iterations < 100) {
    iterations++;
    fillSlopes(model, lu.matrix);
    if (!lu.factor()) break;
    step.set(balance);
    lu.solve(step);
    for (let z = 0; z < model.zoneCount; z++) if (lowest[z] === z) start[columnOf[z]] = x[pressure + z];
    const slope = dot(balance, step);
    let [low, fLow, high, fHigh] = [0, slope, 1, slopeAt(1)];
    for (let i = 0; i < 30 && fHigh < -0.5 * slope; i++) {
      const middle = i % 3 === 2 ? 0.5 * (low + high) : (low * fHigh - high * fLow) / (fHigh - fLow);
      const f = slopeAt(middle);
      if (f < 0) [high, fHigh] = [middle, f];
      else [low, fLow] = [middle, f];
      if (f >= 0 && f < 0.3 * slope) break;
    }
  }
  streamState(model, x);
  riseOf(model, x, open);
  return { iterations, residual: largest(balance) };
}

/** Change of each column's outflow with the pressures. */
function fillSlopes(model: Model, matrix: Float64Array): void {
  const { network, flows, columnOf, columnCount: n } = model;
  matrix.fill(0);
  for (let i = 0; i < flows.length; i++) {
    const o = network.openings[i];
    const f = flows[i];
    const slope = f.forwardLow + f.forwardHigh - f.backwardLow - f.backwardHigh;
    const a = columnOf[o.from];
    matrix[a * n + a] += slope;
    if (o.to !== OUTDOORS) {
      const b = columnOf[o.to];
      matrix[b * n + b] += slope;
      matrix[a * n + b] -= slope;
      matrix[b * n + a] -= slope;
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
