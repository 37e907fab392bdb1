import { GRAVITY } from '../physics/constants.js';
import { evaporation, rainCooling } from '../physics/evaporation.js';
import { levelExchange } from '../physics/levelExchange.js';
import { blackPower, blackPowerSlope } from '../physics/radiation.js';
import { gasWallFactor, starConductance } from '../physics/starNetwork.js';
import type { Balances, Demand } from './balances.js';
import { convectionSlope, filmSlope, jetFlux, struckExcess } from './heat.js';
import { conductance, heatCapacity } from './materials.js';
import { FUEL_ROW, MASS_ROW, type Model } from './model.js';
import { OUTDOORS } from './types.js';

/** Steps of the differences by which slopes without a formula are taken [K], [kg/kg]. */
const T_STEP = 0.01;
const FUEL_STEP = 1e-6;
const NONE = new Int32Array(0);

/**
 * Matrix of the Newton step at x: rows of nodes and stems `capacity` dH/dT - gamma dRate/dx, other rows the negative
 * derivatives of `algebraic`; so that solving against (gamma rate - capacity dH, algebraic) gives the step.
 * Needs an evaluation at x first. The slope of the through-flow speed in
 * the convection is left out: it costs the Newton iteration a step, not its answer.
 */
export function fillSlopes(
  balances: Balances,
  x: Float64Array,
  demand: Demand,
  m: Float64Array,
  capacity: number,
  gamma: number,
): void {
  m.fill(0);
  balances.model.emissivitySlopes(x);
  capacityRows(balances, x, m, capacity, gamma);
  faceRows(balances, x, m, gamma);
  for (const column of balances.model.columns) column.addSlopes(x, m);
  flowRows(balances, x, m);
  windowRows(balances, x, m);
  fireRows(balances, x, demand, m, gamma);
}

function capacityRows(balances: Balances, x: Float64Array, m: Float64Array, capacity: number, gamma: number): void {
  const { model } = balances;
  const { network, size: n } = model;
  const { stems, links, nodes } = network;
  if (capacity !== 0) {
    for (let i = 0; i < model.nodeCount; i++) m[i * n + i] += capacity * heatCapacity(nodes[i], x[i]);
  }
  // stems follow the rest; their rows stand for themselves, so that an error of heat content becomes one of temperature
  for (let i = 0; i < stems.length; i++) {
    const row = model.nodeCount + i;
    const Tt = x[row];
    const slope = (balances.stemRate(x, i, Tt + T_STEP) - balances.stemRate(x, i, Tt)) / T_STEP;
    m[row * n + row] = capacity * balances.stemCapacity - gamma * slope;
    if (m[row * n + row] === 0) m[row * n + row] = 1;
  }
  if (gamma === 0) return;
  for (const link of links) {
    const { a, b } = link;
    const g = gamma * conductance(link, 0.5 * (x[a] + x[b]));
    m[a * n + a] += g;
    m[b * n + b] += g;
    m[a * n + b] -= g;
    m[b * n + a] -= g;
  }
}

/** What a struck face takes beyond its free convection, given how that changes with the face and with the gas. */
function struckRows(
  { model, coefficient }: Balances,
  x: Float64Array,
  m: Float64Array,
  i: number,
  gamma: number,
  bySurface: number,
  byGas: number,
): void {
  const { size: n, faceNode, faceZone, faceArea } = model;
  const node = faceNode[i];
  const gasIndex = model.gas + faceZone[i];
  const [Ts, Tg, release] = [x[node], x[gasIndex], x[model.fire]];
  const free = coefficient[i] * (Tg - Ts);
  const base = struckExcess(free, jetFlux(model, release, Ts, Tg));
  const enter = (unknown: number, step: number, freeThen: number, jetThen: number) => {
    const slope = (faceArea[i] * (struckExcess(freeThen, jetThen) - base)) / step;
    m[node * n + unknown] -= gamma * slope;
    m[gasIndex * n + unknown] += slope;
  };
  enter(node, T_STEP, free + bySurface * T_STEP, jetFlux(model, release, Ts + T_STEP, Tg));
  enter(gasIndex, T_STEP, free + byGas * T_STEP, jetFlux(model, release, Ts, Tg + T_STEP));
  enter(model.fire, 1, free, jetFlux(model, release + 1, Ts, Tg));
}

function faceRows(balances: Balances, x: Float64Array, m: Float64Array, gamma: number): void {
  const { model, gas4, star4, coefficient } = balances;
  const { network, size: n, faceNode, faceZone, faceArea, faceEmissivity } = model;
  const { outdoors } = network;
  for (let i = 0; i < faceNode.length; i++) {
    const node = faceNode[i];
    const z = faceZone[i];
    const area = faceArea[i];
    const Ts = x[node];
    const eps = faceEmissivity[i];
    const slopeOwn = blackPowerSlope(Ts);
    if (z === OUTDOORS) {
      if (gamma === 0) continue;
      const air = outdoors.temperature;
      let slope = -convectionSlope(model, i, coefficient[i], air - Ts, 0.5 * (air + Ts));
      if (outdoors.rain > 0) slope += outdoors.rain * network.faces[i].sunShare * driedSlope(model, coefficient[i], Ts);
      m[node * n + node] += gamma * area * (slope + eps * slopeOwn);
      continue;
    }
    const gasIndex = model.gas + z;
    const starIndex = model.star + z;
    const Tg = x[gasIndex];
    const eg = model.emissivity[z];
    const h = coefficient[i];
    const film = 0.5 * (Ts + Tg);
    const bySurface = convectionSlope(model, i, h, Tg - Ts, film);
    const byGas = 2 * filmSlope(h, Tg - Ts, film) - bySurface;
    if (model.faceStruck[i]) struckRows(balances, x, m, i, gamma, bySurface, byGas);
    const share = gasWallFactor(eg, eps);
    const own = blackPower(Ts);
    const gasBySurface = area * (bySurface - share * slopeOwn);
    const open = 1 - eg;
    const link = starConductance(area, eps, eg);
    const Tw = x[starIndex];
    const starByEmissivity = -((link * link) / (area * open * open)) * (star4[z] - own);
    const gasByEmissivity = area * gasWallFactor(1, eps) * (gas4[z] - own);
    const slope = model.emissivitySlope[z];
    const fuelSlope = model.emissivityFuelSlope[z];
    const gasByGas = area * (byGas + share * blackPowerSlope(Tg)) + slope * gasByEmissivity;
    const starSlope = link * blackPowerSlope(Tw);
    const starOwn = link * slopeOwn;
    const fuelIndex = model.fuel + z;
    m[node * n + node] -= gamma * (gasBySurface - starOwn);
    m[node * n + gasIndex] -= gamma * (gasByGas + slope * starByEmissivity);
    m[node * n + starIndex] -= gamma * starSlope;
    m[node * n + fuelIndex] -= gamma * fuelSlope * (gasByEmissivity + starByEmissivity);
    m[gasIndex * n + node] += gasBySurface;
    m[gasIndex * n + gasIndex] += gasByGas;
    m[gasIndex * n + fuelIndex] += fuelSlope * gasByEmissivity;
    for (const i of network.zones[z].plug ? model.plugs : NONE) {
      const { from, to } = network.openings[i];
      if (from !== z && to !== z) continue;
      const share = balances.missing[from === z ? 2 * i : 2 * i + 1];
      const other = from === z ? to : from;
      const jet = from === z ? model.jetOf[i] : undefined;
      const ends = jet === undefined || !(model.flows[i].forward > 0) ? 0 : jet.zones.length;
      for (let k = -1; k < Math.max(1, ends); k++) {
        const row = model.gas + (k < 0 ? z : ends > 0 ? jet!.zones[k] : other);
        const part = k < 0 ? -share : ends > 0 ? (share * jet!.own[k]) / model.flows[i].forward : share;
        if (row < model.gas) continue;
        m[row * n + node] += part * gasBySurface;
        m[row * n + gasIndex] += part * gasByGas;
        m[row * n + fuelIndex] += part * fuelSlope * gasByEmissivity;
      }
    }
    m[starIndex * n + node] -= starOwn;
    m[starIndex * n + starIndex] += starSlope;
    m[starIndex * n + gasIndex] += slope * starByEmissivity;
    m[starIndex * n + fuelIndex] += fuelSlope * starByEmissivity;
    const wet = network.faces[i].wet;
    if (wet > 0 && gamma !== 0) {
      const off = (T: number) => evaporation(h, T, model.vapour[z], outdoors.pressure);
      m[node * n + node] += (gamma * wet * area * (off(Ts + T_STEP) - off(Ts))) / T_STEP;
    }
  }
  for (let z = 0; z < model.zoneCount; z++) {
    if (model.zoneHasFaces[z]) continue;
    m[(model.star + z) * n + model.star + z] = 1;
    m[(model.star + z) * n + model.gas + z] = -1;
  }
}

/** Change of what rain takes off a hot plate with its temperature, its coefficient held [W/(m2 K)]. */
function driedSlope({ network, outdoorVapour }: Model, coefficient: number, T: number): number {
  const at = (surface: number) => rainCooling(coefficient, surface, outdoorVapour, network.outdoors.pressure);
  return (at(T + T_STEP) - at(T)) / T_STEP;
}

function flowRows({ model }: Balances, x: Float64Array, m: Float64Array): void {
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
 * How an opening's flows follow the pressure of one of its sides, and the densities that set it: of the side's own gas and, where
 * it stands on others, of theirs.
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

/** Enter the change of opening i's flows with an unknown into the rows of its two zones, and of the column whose jet it feeds. */
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
  const { size: n, gas, fuel, pressure, enthalpy, network } = model;
  const { from, to } = network.openings[i];
  const out = to === OUTDOORS;
  const ahead = forward + both;
  const back = backward + both;
  const heat = ahead * enthalpy[from] - (out ? 0 : back * enthalpy[to]);
  const share = (ahead * x[fuel + from] - (out ? 0 : back * x[fuel + to])) * FUEL_ROW;
  const mass = (ahead - back) * MASS_ROW;
  m[(gas + from) * n + unknown] += heat;
  m[(fuel + from) * n + unknown] += share;
  m[(pressure + from) * n + unknown] += mass;
  if (out) return;
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

/** Radiation through open areas. */
function windowRows({ model, gas4, star4 }: Balances, x: Float64Array, m: Float64Array): void {
  const { size: n, gas, star, fuel, emissivity, emissivitySlope, emissivityFuelSlope } = model;
  const slope = blackPowerSlope;
  for (const { a, b, area } of model.network.windows) {
    for (let side = 0; side < 2; side++) {
      const own = side === 0 ? a : b;
      const other = side === 0 ? b : a;
      const e = emissivity[own];
      const eo = emissivity[other];
      const g = slope(x[gas + own]);
      const s = slope(x[star + own]);
      const go = eo * slope(x[gas + other]);
      const so = (1 - eo) * slope(x[star + other]);
      add(m, n, gas + own, gas + own, area * e * g);
      add(m, n, gas + own, gas + other, -area * e * go);
      add(m, n, gas + own, star + other, -area * e * so);
      add(m, n, star + own, star + own, area * (1 - e) * s);
      add(m, n, star + own, gas + other, -area * (1 - e) * go);
      add(m, n, star + own, star + other, -area * (1 - e) * so);
      // how the own gas's emissivity changes what both sides take
      const coming = eo * gas4[other] + (1 - eo) * star4[other];
      const going = gas4[own] - star4[own];
      for (let k = 0; k < 2; k++) {
        const unknown = (k === 0 ? gas : fuel) + own;
        const byUnknown = (k === 0 ? emissivitySlope : emissivityFuelSlope)[own];
        add(m, n, gas + own, unknown, -area * byUnknown * (coming - gas4[own]));
        add(m, n, star + own, unknown, area * byUnknown * (coming - star4[own]));
        add(m, n, gas + other, unknown, -area * byUnknown * eo * going);
        add(m, n, star + other, unknown, -area * byUnknown * (1 - eo) * going);
      }
    }
  }
}

function fireRows(balances: Balances, x: Float64Array, demand: Demand, m: Float64Array, gamma: number): void {
  const { model } = balances;
  const { network, size: n, faceNode, faceFireShare } = model;
  const { fire } = network;
  const column = model.fire;
  for (let i = 0; i < faceNode.length; i++) {
    if (faceFireShare[i] !== 0) add(m, n, faceNode[i], column, -gamma * fire.radiantShare * faceFireShare[i]);
  }
  const fuelGas = fire.gasPerFuel / fire.heatValue;
  add(m, n, model.gas + fire.zone, column, -(1 - fire.radiantShare));
  add(m, n, model.fuel + fire.zone, column, -fuelGas * FUEL_ROW);
  add(m, n, model.pressure + fire.zone, column, -fuelGas * MASS_ROW);
  if (demand.mode === 'hold') {
    const base = balances.stemRate(x, network.gauge, demand.target);
    for (const { zone: z } of network.stems[network.gauge].parts) {
      for (const index of [model.gas + z, model.star + z]) {
        const kept = x[index];
        x[index] = kept + T_STEP;
        add(m, n, column, index, (balances.stemRate(x, network.gauge, demand.target) - base) / T_STEP);
        x[index] = kept;
      }
    }
    return;
  }
  add(m, n, column, column, 1);
  const share = x[model.fuel + fire.zone];
  const slope = (balances.oxygenShare(share + FUEL_STEP) - balances.oxygenShare(share - FUEL_STEP)) / (2 * FUEL_STEP);
  if (slope !== 0) add(m, n, column, model.fuel + fire.zone, -demand.heat * slope);
}

function add(m: Float64Array, n: number, row: number, column: number, value: number): void {
  m[row * n + column] += value;
}
