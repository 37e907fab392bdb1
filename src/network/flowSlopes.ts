/** How what flows through openings changes with the unknowns. */
import { GRAVITY } from '../physics/constants.js';
import { levelExchange } from '../physics/levelExchange.js';
import type { Model } from './model.js';
import { FUEL_ROW, MASS_ROW } from './rows.js';
import { OUTDOORS } from './types.js';

/** Enter the slopes of the flows through all openings into the matrix of `fillSlopes`. */
export function addFlowSlopes(model: Model, x: Float64Array, m: Float64Array): void {
  const { network, flows, exchange, density } = model;
  for (let i = 0; i < flows.length; i++) {
    const o = network.openings[i];
    const f = flows[i];
    const a = o.from;
    const b = o.to;
    const out = b === OUTDOORS;
    transport(model, x, m, a, b, f.forward, f.backward);
    // how the flows follow pressures and, through density, temperatures
    const low = o.centre - 0.5 * o.extent;
    const high = o.centre + 0.5 * o.extent;
    const through = f.forward - exchange[i];
    const back = f.backward - exchange[i];
    let byNet = 0;
    let byDensityA = 0;
    let byDensityB = 0;
    if (o.level && !out) {
      const net = through - back;
      const step = 1e-6 * (1e-3 + Math.abs(net));
      const small = 1e-6;
      byNet = (levelExchange(o.area, density[a], density[b], net + step) - exchange[i]) / step;
      byDensityA = (levelExchange(o.area, density[a] + small, density[b], net) - exchange[i]) / small;
      byDensityB = (levelExchange(o.area, density[a], density[b] + small, net) - exchange[i]) / small;
    }
    // an opening's flow goes by the root of the density it comes from, a full section's by that of the mean
    const mean = o.inner ? (through - back) / (2 * (density[a] + density[b])) : 0;
    const ownA = o.inner ? Math.max(0, mean) : through / (2 * density[a]);
    const backA = o.inner ? Math.max(0, -mean) : 0;
    columnSlopes(model, x, m, i, a, 1, low, high, byNet, ownA, backA, byDensityA);
    if (out) continue;
    const ownB = o.inner ? Math.max(0, -mean) : back / (2 * density[b]);
    const forwardB = o.inner ? Math.max(0, mean) : 0;
    columnSlopes(model, x, m, i, b, -1, low, high, byNet, forwardB, ownB, byDensityB);
  }
}

/** What gas carries through an opening with its flows as they are. */
function transport(
  model: Model,
  x: Float64Array,
  m: Float64Array,
  a: number,
  b: number,
  forward: number,
  backward: number,
): void {
  const { size: n, gas, fuel, heatCapacity: cp } = model;
  const out = b === OUTDOORS;
  const fuelSlopeA = model.enthalpyOfFuel(x[gas + a]);
  m[(gas + a) * n + gas + a] += forward * cp[a];
  m[(gas + a) * n + fuel + a] += forward * fuelSlopeA;
  m[(fuel + a) * n + fuel + a] += forward * FUEL_ROW;
  if (out) return;
  const fuelSlopeB = model.enthalpyOfFuel(x[gas + b]);
  m[(gas + a) * n + gas + b] -= backward * cp[b];
  m[(gas + a) * n + fuel + b] -= backward * fuelSlopeB;
  m[(fuel + a) * n + fuel + b] -= backward * FUEL_ROW;
  m[(gas + b) * n + gas + a] -= forward * cp[a];
  m[(gas + b) * n + fuel + a] -= forward * fuelSlopeA;
  m[(fuel + b) * n + fuel + a] -= forward * FUEL_ROW;
  m[(gas + b) * n + gas + b] += backward * cp[b];
  m[(gas + b) * n + fuel + b] += backward * fuelSlopeB;
  m[(fuel + b) * n + fuel + b] += backward * FUEL_ROW;
}

/**
 * How an opening's flows follow the pressure of one of its sides, and the densities that set it: of the side's own gas
 * and, where it stands on others, of theirs.
 *
 * @param sign 1: pressure there drives forwards; -1: backwards
 * @param byNet change of what trades places with the net flow
 * @param forward, backward change of the flows with the side's own density, pressures held
 * @param traded the same of what trades places, the net flow held
 */
function columnSlopes(
  model: Model,
  x: Float64Array,
  m: Float64Array,
  i: number,
  side: number,
  sign: number,
  low: number,
  high: number,
  byNet: number,
  forward: number,
  backward: number,
  traded: number,
): void {
  const { gas, fuel, density, under, network, flows } = model;
  const f = flows[i];
  const forwardP = sign * (f.forwardLow + f.forwardHigh);
  const backwardP = sign * (f.backwardLow + f.backwardHigh);
  const lowest = model.lowest[side];
  spread(model, x, m, i, model.pressure + lowest, forwardP, backwardP, byNet * (forwardP - backwardP));
  for (let z = side; z >= 0; z = under[z]) {
    const bottom = z === lowest ? 0 : network.zones[z].floor;
    const top = network.zones[z].roof;
    const lowWeight = -GRAVITY * sign * (z === side ? low - bottom : top - bottom);
    const highWeight = -GRAVITY * sign * (z === side ? high - bottom : top - bottom);
    let ahead = f.forwardLow * lowWeight + f.forwardHigh * highWeight;
    let back = f.backwardLow * lowWeight + f.backwardHigh * highWeight;
    let both = byNet * (ahead - back);
    if (z === side) {
      both += byNet * (forward - backward) + traded;
      ahead += forward;
      back += backward;
    }
    const byHeat = -density[z] / x[gas + z];
    const byFuel = -density[z] * model.fuelLightness(x[fuel + z]);
    spread(model, x, m, i, gas + z, ahead * byHeat, back * byHeat, both * byHeat);
    spread(model, x, m, i, fuel + z, ahead * byFuel, back * byFuel, both * byFuel);
  }
}

/**
 * Enter the change of opening i's flows with an unknown into the rows of its two zones, and of the column whose jet it
 * feeds.
 */
function spread(
  model: Model,
  x: Float64Array,
  m: Float64Array,
  i: number,
  unknown: number,
  forward: number,
  backward: number,
  both: number,
): void {
  const { size: n, gas, fuel, pressure, enthalpy, plugFlow } = model;
  const from = model.openFrom[i];
  const to = model.openTo[i];
  const { deficitByFlow } = plugFlow;
  const out = to === OUTDOORS;
  const ahead = forward + both;
  const back = backward + both;
  const heat =
    ahead * (enthalpy[from] - deficitByFlow[2 * i]) - (out ? 0 : back * (enthalpy[to] - deficitByFlow[2 * i + 1]));
  const share = (ahead * x[fuel + from] - (out ? 0 : back * x[fuel + to])) * FUEL_ROW;
  const mass = (ahead - back) * MASS_ROW;
  m[(gas + from) * n + unknown] += heat;
  m[(fuel + from) * n + unknown] += share;
  m[(pressure + from) * n + unknown] += mass;
  plugFlow.leaveSlopes(m, from, unknown, ahead);
  if (out) return;
  plugFlow.leaveSlopes(m, to, unknown, back);
  m[(gas + to) * n + unknown] -= heat;
  m[(fuel + to) * n + unknown] -= share;
  m[(pressure + to) * n + unknown] -= mass;
  const jet = model.jetOf[i];
  if (jet === undefined) return;
  const { zones, byFlow } = jet;
  for (let k = 0; k < zones.length; k++) {
    m[(gas + zones[k]) * n + unknown] -= ahead * byFlow[3 * k + 1];
    m[(fuel + zones[k]) * n + unknown] -= ahead * byFlow[3 * k + 2] * FUEL_ROW;
    m[(pressure + zones[k]) * n + unknown] -= ahead * byFlow[3 * k] * MASS_ROW;
  }
}
