import { GRAVITY } from '../physics/constants.js';
import { airViscosity } from '../physics/air.js';
import { haaland } from '../physics/friction.js';
import { levelExchange, openingFlow } from '../physics/opening.js';
import type { LuSolver } from '../solve/linear.js';
import type { Model } from './model.js';
import { OUTDOORS, type NetworkOpening } from './types.js';

/** Pressure of the zone (gauge, against outdoors at the ground) at height z, less its own outdoor share. */
function gauge(model: Model, x: Float64Array, zone: number, z: number): number {
  return x[model.pressure + zone] - model.density[zone] * GRAVITY * z;
}

/** Outdoor pressure at height z on an opening's outdoor side, wind included [Pa, zero at the ground in still air]. */
export function outdoorPressure(model: Model, opening: NetworkOpening, z: number): number {
  const { wind } = model.network.outdoors;
  return -model.outdoorDensity * GRAVITY * z + opening.windPressure * 0.5 * model.outdoorDensity * wind * wind;
}

/** Pressure of side `from` less that of side `to` at height z [Pa]. */
export function pressureDifference(model: Model, x: Float64Array, opening: NetworkOpening, z: number): number {
  const to = opening.to === OUTDOORS ? outdoorPressure(model, opening, z) : gauge(model, x, opening.to, z);
  return gauge(model, x, opening.from, z) - to;
}

/**
 * Discharge coefficient that a stack's losses come to: 1 / sqrt(losses + f L/D), the friction factor by a few passes over
 * the flow it lets through (f falls slowly with the flow, so that each pass gains about a digit).
 */
function stackDischarge(opening: NetworkOpening, density: number, temperature: number, dp: number): number {
  const { loss, length, bore, roughness } = opening.stack!;
  const ratio = length / bore;
  const viscosity = airViscosity(temperature);
  const drive = Math.sqrt((2 * Math.abs(dp)) / density);
  let friction = 0.03;
  let cd = 1;
  for (let pass = 0; pass < 5; pass++) {
    cd = 1 / Math.sqrt(loss + friction * ratio);
    const reynolds = (density * drive * cd * bore) / viscosity;
    friction = haaland(reynolds > 1 ? reynolds : 1, roughness / bore);
  }
  return cd;
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
    const cd = o.stack ? stackDischarge(o, rhoFrom, x[model.gas + o.from], low) : o.discharge;
    const flow = flows[i];
    openingFlow(flow, o.area, cd, rhoFrom, rhoTo, low, high);
    exchange[i] = 0;
    if (o.level) {
      // `from` lies below `to`
      const net = (flow.forward - flow.backward) / (0.5 * (rhoFrom + rhoTo));
      const both = levelExchange(rhoTo, rhoFrom, o.area, net) * 0.5 * (rhoFrom + rhoTo);
      exchange[i] = both;
      flow.forward += both;
      flow.backward += both;
    }
    const through = flow.forward - flow.backward;
    if (through < 0) inflow[o.from] -= through;
    else if (o.to !== OUTDOORS) inflow[o.to] += through;
  }
  for (let z = 0; z < model.zoneCount; z++) speed[z] = inflow[z] / (density[z] * network.zones[z].section);
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
  const { fire } = network;
  out[offset + fire.zone] += (x[model.fire] / fire.heatValue) * fire.gasPerFuel;
}

/**
 * Pressures that balance the mass of every zone, gas temperatures held: damped Newton. The network is monotone (more
 * pressure in a zone always drives more out of it), so that the damped step cannot stall away from the one solution.
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
  const { network, flows, pressure } = model;
  const balance = new Float64Array(n);
  const trial = new Float64Array(n);
  const start = new Float64Array(n);
  flowState(model, x);
  massBalance(model, x, balance, 0);
  let norm = largest(balance);
  let iterations = 0;
  while (norm > tolerance && iterations < 80) {
    iterations++;
    lu.matrix.fill(0);
    for (let i = 0; i < flows.length; i++) {
      const o = network.openings[i];
      const f = flows[i];
      const slope = f.forwardLow + f.forwardHigh - f.backwardLow - f.backwardHigh;
      lu.matrix[o.from * n + o.from] += slope;
      if (o.to !== OUTDOORS) {
        lu.matrix[o.to * n + o.to] += slope;
        lu.matrix[o.from * n + o.to] -= slope;
        lu.matrix[o.to * n + o.from] -= slope;
      }
    }
    for (let z = 0; z < n; z++) lu.matrix[z * n + z] += 1e-14;
    if (!lu.factor()) break;
    trial.set(balance);
    lu.solve(trial);
    for (let z = 0; z < n; z++) start[z] = x[pressure + z];
    let step = 1;
    let accepted = false;
    for (let halving = 0; halving < 12; halving++) {
      for (let z = 0; z < n; z++) x[pressure + z] = start[z] + step * trial[z];
      flowState(model, x);
      massBalance(model, x, balance, 0);
      const next = largest(balance);
      if (next < norm * (1 - 1e-3 * step) || next <= tolerance) {
        norm = next;
        accepted = true;
        break;
      }
      step *= 0.5;
    }
    if (!accepted) break;
  }
  return { iterations, residual: norm };
}

function largest(values: Float64Array): number {
  let worst = 0;
  for (let i = 0; i < values.length; i++) {
    const size = Math.abs(values[i]);
    if (size > worst) worst = size;
  }
  return worst;
}
