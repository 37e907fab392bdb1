import { columnPressure } from '../physics/draft.js';
import { evaporation, rainCooling } from '../physics/evaporation.js';
import { exchangedMass } from './flow.js';
import { blackPower, blackPowerSlope } from '../physics/radiation.js';
import { gasWallFactor, starConductance } from '../physics/starNetwork.js';
import type { Balances, Demand } from './balances.js';
import { insideCoefficient, outsideCoefficient } from './heat.js';
import { conductance, heatCapacity } from './materials.js';
import { FUEL_ROW, MASS_ROW, type Model } from './model.js';
import { OUTDOORS } from './types.js';

/** Steps of the differences by which slopes without a formula are taken [K], [kg/kg]. */
const T_STEP = 0.01;
const FUEL_STEP = 1e-6;

/**
 * Matrix of the Newton step at x: rows of nodes and stems `capacity` dH/dT - gamma dRate/dx, other rows the negative
 * derivatives of `algebraic`; so that solving against (gamma rate - capacity dH, algebraic) gives the step.
 * Needs an evaluation at x first. The slope of the through-flow speed in
 * the convection is left out: it costs the Newton iteration a step, not its answer.
 *
 * @param frozen flows held: pressures stay where they are
 */
export function fillSlopes(
  balances: Balances,
  x: Float64Array,
  demand: Demand,
  m: Float64Array,
  capacity: number,
  gamma: number,
  frozen: boolean,
): void {
  m.fill(0);
  balances.model.emissivitySlopes(x);
  capacityRows(balances, x, m, capacity, gamma);
  faceRows(balances, x, m, gamma);
  flowRows(balances, x, m, frozen);
  streamRows(balances, x, m, frozen);
  windowRows(balances, x, m);
  fireRows(balances, x, demand, m, gamma, frozen);
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
  for (const { a, b, ...link } of links) {
    const g = gamma * conductance({ a, b, ...link }, 0.5 * (x[a] + x[b]));
    m[a * n + a] += g;
    m[b * n + b] += g;
    m[a * n + b] -= g;
    m[b * n + a] -= g;
  }
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
      const f = network.faces[i];
      const after = Ts + T_STEP;
      const h = outsideCoefficient(model, i, after);
      const dried = (coefficient: number, T: number) =>
        rainCooling(coefficient, T, model.outdoorVapour, outdoors.pressure);
      const wet = outdoors.rain > 0 ? outdoors.rain * f.sunShare * (dried(h, after) - dried(coefficient[i], Ts)) : 0;
      const base = coefficient[i] * (Ts - outdoors.temperature);
      const slope = (h * (after - outdoors.temperature) - base + wet) / T_STEP;
      m[node * n + node] += gamma * area * (slope + eps * slopeOwn);
      continue;
    }
    const gasIndex = model.gas + z;
    const starIndex = model.star + z;
    const Tg = x[gasIndex];
    const eg = model.emissivity[z];
    const h = coefficient[i];
    const base = h * (Tg - Ts);
    const bySurface = (insideCoefficient(model, i, z, Ts + T_STEP, Tg) * (Tg - Ts - T_STEP) - base) / T_STEP;
    const byGas = (insideCoefficient(model, i, z, Ts, Tg + T_STEP) * (Tg + T_STEP - Ts) - base) / T_STEP;
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

function flowRows(balances: Balances, x: Float64Array, m: Float64Array, frozen: boolean): void {
  const { model } = balances;
  const { network, size: n, flows, exchange, enthalpy, heatCapacity: cp, density } = model;
  const { gas, fuel, pressure } = model;
  const jets = frozen
    ? []
    : model.columns.flatMap((column) =>
        column.jets.map(({ opening }, j) => {
          column.jetSlope(x, j, column.byJet[j]);
          return { opening, zones: column.zones, slope: column.byJet[j] };
        }),
      );
  for (let i = 0; i < flows.length; i++) {
    const o = network.openings[i];
    const f = flows[i];
    const a = o.from;
    const b = o.to;
    const out = b === OUTDOORS;
    const Ta = x[gas + a];
    const fa = x[fuel + a];
    const fb = out ? 0 : x[fuel + b];
    const ha = enthalpy[a];
    const hb = out ? 0 : enthalpy[b];
    // transport with the flows as they are
    add(m, n, gas + a, gas + a, f.forward * cp[a]);
    add(m, n, fuel + a, fuel + a, f.forward * FUEL_ROW);
    const fuelSlopeA = model.enthalpyOfFuel(Ta);
    add(m, n, gas + a, fuel + a, f.forward * fuelSlopeA);
    if (!out) {
      const fuelSlopeB = model.enthalpyOfFuel(x[gas + b]);
      add(m, n, gas + a, gas + b, -f.backward * cp[b]);
      add(m, n, gas + a, fuel + b, -f.backward * fuelSlopeB);
      add(m, n, fuel + a, fuel + b, -f.backward * FUEL_ROW);
      add(m, n, gas + b, gas + a, -f.forward * cp[a]);
      add(m, n, gas + b, fuel + a, -f.forward * fuelSlopeA);
      add(m, n, fuel + b, fuel + a, -f.forward * FUEL_ROW);
      add(m, n, gas + b, gas + b, f.backward * cp[b]);
      add(m, n, gas + b, fuel + b, f.backward * fuelSlopeB);
      add(m, n, fuel + b, fuel + b, f.backward * FUEL_ROW);
    }
    if (frozen) continue;
    // how the flows follow pressures and, through density, temperatures
    const low = o.centre - 0.5 * o.extent;
    const high = o.centre + 0.5 * o.extent;
    const through = f.forward - exchange[i];
    const back = f.backward - exchange[i];
    const forwardP = f.forwardLow + f.forwardHigh;
    const backwardP = f.backwardLow + f.backwardHigh;
    const forwardZ = f.forwardLow * columnPressure(1, low) + f.forwardHigh * columnPressure(1, high);
    const backwardZ = f.backwardLow * columnPressure(1, low) + f.backwardHigh * columnPressure(1, high);
    let [byNet, byDensityA, byDensityB] = [0, 0, 0];
    if (o.level && !out) {
      const net = through - back;
      const step = 1e-6 * (1e-3 + Math.abs(net));
      const small = 1e-6;
      const at = (n0: number, d0: number, d1: number) => exchangedMass(o, d0, d1, n0);
      byNet = (at(net + step, density[a], density[b]) - exchange[i]) / step;
      byDensityA = (at(net, density[a] + small, density[b]) - exchange[i]) / small;
      byDensityB = (at(net, density[a], density[b] + small) - exchange[i]) / small;
    }
    const entered = jets.find(({ opening }) => opening === i);
    const column = (unknown: number, forward: number, backward: number, both: number) => {
      const traded = byNet * (forward - backward) + both;
      flowColumn(model, m, i, unknown, forward + traded, backward + traded, ha, hb, fa, fb);
      if (entered) addStreams(model, m, entered.zones, unknown, entered.slope, forward + traded, frozen);
    };
    const byDensity = (zone: number, forward: number, backward: number, both: number) => {
      const byHeat = -density[zone] / x[gas + zone];
      const byFuel = -density[zone] * model.fuelLightness(x[fuel + zone]);
      column(gas + zone, forward * byHeat, backward * byHeat, both * byHeat);
      column(fuel + zone, forward * byFuel, backward * byFuel, both * byFuel);
    };
    column(pressure + a, forwardP, backwardP, 0);
    // an opening's flow goes by the root of the density it comes from; in a level section by neither, else by the mean
    const [ownA, ownB] = !o.inner
      ? [through / (2 * density[a]), back / (2 * density[b])]
      : [0, 0];
    const mean = o.inner && !o.level ? (through - back) / (2 * (density[a] + density[b])) : 0;
    byDensity(a, ownA + Math.max(0, mean) - forwardZ, Math.max(0, -mean) - backwardZ, byDensityA);
    if (!out) {
      column(pressure + b, -forwardP, -backwardP, 0);
      byDensity(b, Math.max(0, mean) + forwardZ, ownB + Math.max(0, -mean) + backwardZ, byDensityB);
    }
  }
  if (frozen) for (let z = 0; z < model.zoneCount; z++) m[(pressure + z) * n + pressure + z] = 1;
}

/** Enter the change of a column's streams with unknown `column`: what they bring per unit of it, times a factor. */
function addStreams(
  model: Model,
  m: Float64Array,
  zones: readonly number[],
  column: number,
  change: Float64Array,
  factor: number,
  frozen: boolean,
): void {
  const { size: n, gas, fuel, pressure } = model;
  for (let k = 0; k < zones.length; k++) {
    add(m, n, gas + zones[k], column, -factor * change[3 * k + 1]);
    add(m, n, fuel + zones[k], column, -factor * change[3 * k + 2] * FUEL_ROW);
    if (!frozen) add(m, n, pressure + zones[k], column, -factor * change[3 * k] * MASS_ROW);
  }
}

/** Streams of the columns by difference: they follow the gas of their column and sources, and the walls. */
function streamRows({ model }: Balances, x: Float64Array, m: Float64Array, frozen: boolean): void {
  for (const column of model.columns) {
    const { zones, net, follows } = column;
    const changed = column.work;
    for (let i = 0; i < follows.length; i++) {
      const unknown = follows[i];
      const step = unknown >= model.fuel ? FUEL_STEP : T_STEP;
      const kept = x[unknown];
      x[unknown] = kept + step;
      column.evaluate(x, frozen, changed);
      x[unknown] = kept;
      for (let k = 0; k < changed.length; k++) changed[k] -= net[k];
      addStreams(model, m, zones, unknown, changed, 1 / step, frozen);
    }
    if (!frozen) column.evaluate(x);
  }
}

/** Radiation through open areas. How the emissivities of the gas change is left out: it costs a step, not the answer. */
function windowRows({ model }: Balances, x: Float64Array, m: Float64Array): void {
  const { size: n, gas, star, emissivity } = model;
  const slope = blackPowerSlope;
  for (const { a, b, area } of model.network.windows) {
    for (const [own, other] of [
      [a, b],
      [b, a],
    ]) {
      const [e, eo] = [emissivity[own], emissivity[other]];
      const [g, s] = [slope(x[gas + own]), slope(x[star + own])];
      const [go, so] = [eo * slope(x[gas + other]), (1 - eo) * slope(x[star + other])];
      add(m, n, gas + own, gas + own, area * e * g);
      add(m, n, gas + own, gas + other, -area * e * go);
      add(m, n, gas + own, star + other, -area * e * so);
      add(m, n, star + own, star + own, area * (1 - e) * s);
      add(m, n, star + own, gas + other, -area * (1 - e) * go);
      add(m, n, star + own, star + other, -area * (1 - e) * so);
    }
  }
}

/** Enter the change of opening i's flows with unknown `column` into the heat, fuel and mass rows of its two zones. */
function flowColumn(
  model: Model,
  m: Float64Array,
  i: number,
  column: number,
  forward: number,
  backward: number,
  ha: number,
  hb: number,
  fa: number,
  fb: number,
): void {
  const { size: n, gas, fuel, pressure } = model;
  const o = model.network.openings[i];
  const heat = forward * ha - backward * hb;
  const share = (forward * fa - backward * fb) * FUEL_ROW;
  const mass = (forward - backward) * MASS_ROW;
  add(m, n, gas + o.from, column, heat);
  add(m, n, fuel + o.from, column, share);
  add(m, n, pressure + o.from, column, mass);
  if (o.to !== OUTDOORS) {
    add(m, n, gas + o.to, column, -heat);
    add(m, n, fuel + o.to, column, -share);
    add(m, n, pressure + o.to, column, -mass);
  }
}

function fireRows(
  balances: Balances,
  x: Float64Array,
  demand: Demand,
  m: Float64Array,
  gamma: number,
  frozen: boolean,
): void {
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
  if (!frozen) add(m, n, model.pressure + fire.zone, column, -fuelGas * MASS_ROW);
  if (demand.mode === 'hold') {
    const { zone, other } = network.stems[network.gauge];
    const base = balances.stemRate(x, network.gauge, demand.target);
    for (const z of new Set([zone, other])) {
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
