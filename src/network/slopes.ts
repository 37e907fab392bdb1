import { evaporation, rainCooling } from '../physics/evaporation.js';
import { blackPower, blackPowerSlope } from '../physics/radiation.js';
import { gasWallFactor, surfaceConductance } from '../physics/surfaceNode.js';
import type { Balances, Demand } from './balances.js';
import { addFlowSlopes } from './flowSlopes.js';
import { gapHeat } from './airGap.js';
import { filmSlope } from './convection.js';
import { jetFlux, struckExcess } from './heat.js';
import { conductance, heatCapacity, isSteel } from './materials.js';
import type { Model } from './model.js';
import { FUEL_ROW, MASS_ROW } from './rows.js';
import { OUTDOORS, type Network } from './types.js';

/** Steps of the differences by which slopes without a formula are taken [K], [kg/kg]. */
const T_STEP = 0.01;
const FUEL_STEP = 1e-6;

/**
 * Matrix of the Newton step at x: rows of nodes and stems `capacity` dH/dT - gamma dRate/dx, other rows the negative
 * derivatives of `algebraic`; so that solving against (gamma rate - capacity dH, algebraic) gives the step. Needs an
 * evaluation at x first, and a matrix that is zero. The slope of the through-flow speed in the convection is left out:
 * it costs the Newton iteration a step, not its answer.
 */
export function fillSlopes(
  balances: Balances,
  x: Float64Array,
  demand: Demand,
  m: Float64Array,
  capacity: number,
  gamma: number,
): void {
  balances.model.emissivitySlopes(x);
  capacityRows(balances, x, m, capacity, gamma);
  faceRows(balances, x, m, gamma);
  for (const column of balances.model.columns) column.addSlopes(x, m);
  addFlowSlopes(balances.model, x, m);
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
    const slope = balances.stems.slope(x, i, Tt);
    m[row * n + row] = capacity * balances.stems.capacity - gamma * slope;
    if (m[row * n + row] === 0) m[row * n + row] = 1;
  }
  if (gamma === 0) return;
  for (const link of links) {
    const { a, b } = link;
    const mean = 0.5 * (x[a] + x[b]);
    const g = gamma * conductance(link, mean);
    // insulation lets through twice as much when it is hot; steel all but the same
    const more = isSteel(link.conductivity) ? 0 : gamma * conductance(link, mean + T_STEP) - g;
    const byMean = (0.5 * more * (x[a] - x[b])) / T_STEP;
    m[a * n + a] += g + byMean;
    m[b * n + b] += g - byMean;
    m[a * n + b] -= g - byMean;
    m[b * n + a] -= g + byMean;
  }
  gapRows(network, x, m, n, gamma);
}

function gapRows({ gaps, outdoors }: Network, x: Float64Array, m: Float64Array, n: number, gamma: number): void {
  const [here, moved] = [0, 1].map(() => ({ across: 0, fromWall: 0, fromShield: 0 }));
  for (const gap of gaps) {
    const { wall, shield } = gap;
    gapHeat(gap, x[wall], x[shield], outdoors, here);
    for (const node of [wall, shield]) {
      gapHeat(gap, x[wall] + (node === wall ? T_STEP : 0), x[shield] + (node === shield ? T_STEP : 0), outdoors, moved);
      const across = (moved.across - here.across) / T_STEP;
      m[wall * n + node] += gamma * (across + (moved.fromWall - here.fromWall) / T_STEP);
      m[shield * n + node] -= gamma * (across - (moved.fromShield - here.fromShield) / T_STEP);
    }
  }
}

/** What a struck face takes beyond its free convection, given how that changes with the face and with the gas. */
function struckRows(
  { model, convection }: Balances,
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
  const free = convection.coefficient[i] * (Tg - Ts);
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
  const { model, gas4, surface4, convection } = balances;
  const { coefficient } = convection;
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
      let slope = -convection.slope(i, air - Ts, 0.5 * (air + Ts));
      if (outdoors.rain > 0) slope += outdoors.rain * model.faceSunShare[i] * driedSlope(model, coefficient[i], Ts);
      m[node * n + node] += gamma * area * (slope + eps * slopeOwn);
      continue;
    }
    const gasIndex = model.gas + z;
    const surfaceIndex = model.surfaceOf[z];
    const Tg = x[gasIndex];
    const eg = model.emissivity[z];
    const h = coefficient[i];
    const film = 0.5 * (Ts + Tg);
    const bySurface = convection.slope(i, Tg - Ts, film);
    const byGas = 2 * filmSlope(h, Tg - Ts, film) - bySurface;
    if (model.faceStruck[i]) struckRows(balances, x, m, i, gamma, bySurface, byGas);
    const share = gasWallFactor(eg, eps);
    const own = blackPower(Ts);
    const gasBySurface = area * (bySurface - share * slopeOwn);
    const open = 1 - eg;
    const link = surfaceConductance(area, eps, eg);
    const Tw = x[surfaceIndex];
    // a leaf that stands open has none of its inside left in the pit
    const surfacesByEmissivity = area > 0 ? -((link * link) / (area * open * open)) * (surface4[z] - own) : 0;
    const gasByEmissivity = area * gasWallFactor(1, eps) * (gas4[z] - own);
    const slope = model.emissivitySlope[z];
    const fuelSlope = model.emissivityFuelSlope[z];
    const gasByGas = area * (byGas + share * blackPowerSlope(Tg)) + slope * gasByEmissivity;
    const surfacesSlope = link * blackPowerSlope(Tw);
    const surfacesOwn = link * slopeOwn;
    const fuelIndex = model.fuel + z;
    m[node * n + node] -= gamma * (gasBySurface - surfacesOwn);
    m[node * n + gasIndex] -= gamma * (gasByGas + slope * surfacesByEmissivity);
    m[node * n + surfaceIndex] -= gamma * surfacesSlope;
    m[node * n + fuelIndex] -= gamma * fuelSlope * (gasByEmissivity + surfacesByEmissivity);
    m[gasIndex * n + node] += gasBySurface;
    m[gasIndex * n + gasIndex] += gasByGas;
    m[gasIndex * n + fuelIndex] += fuelSlope * gasByEmissivity;
    model.plugFlow.wallSlopes(m, z, node, gasBySurface);
    model.plugFlow.wallSlopes(m, z, gasIndex, gasByGas);
    model.plugFlow.wallSlopes(m, z, fuelIndex, fuelSlope * gasByEmissivity);
    m[surfaceIndex * n + node] -= surfacesOwn;
    m[surfaceIndex * n + surfaceIndex] += surfacesSlope;
    m[surfaceIndex * n + gasIndex] += slope * surfacesByEmissivity;
    m[surfaceIndex * n + fuelIndex] += fuelSlope * surfacesByEmissivity;
    const wet = model.faceWet[i];
    if (wet > 0 && gamma !== 0) {
      const off = (T: number) => evaporation(h, T, model.vapour[z], outdoors.pressure);
      const now = off(Ts);
      const byFilm = filmSlope(now, 1, film);
      const byDifference = (now * convection.differencePower(i)) / awayFromZero(Tg - Ts);
      m[node * n + node] += gamma * wet * area * ((off(Ts + T_STEP) - now) / T_STEP + byFilm - byDifference);
      m[node * n + gasIndex] += gamma * wet * area * (byFilm + byDifference);
    }
  }
  for (let z = 0; z < model.zoneCount; z++) {
    if (model.zoneHasFaces[z]) continue;
    m[model.surfaceOf[z] * n + model.surfaceOf[z]] = 1;
    m[model.surfaceOf[z] * n + model.gas + z] = -1;
  }
}

/** A difference of temperature that slopes may be divided by [K]. */
function awayFromZero(difference: number): number {
  return Math.abs(difference) > T_STEP ? difference : difference < 0 ? -T_STEP : T_STEP;
}

/** Change of what rain takes off a hot plate with its temperature, its coefficient held [W/(m2 K)]. */
function driedSlope({ network, outdoorVapour }: Model, coefficient: number, T: number): number {
  const at = (surface: number) => rainCooling(coefficient, surface, outdoorVapour, network.outdoors.pressure);
  return (at(T + T_STEP) - at(T)) / T_STEP;
}

/** Radiation through open areas; outdoors has no unknowns. */
function windowRows({ model, gas4, surface4 }: Balances, x: Float64Array, m: Float64Array): void {
  const { size: n, gas, surfaceOf, fuel, emissivity, emissivitySlope, emissivityFuelSlope } = model;
  const slope = blackPowerSlope;
  for (const { a, b, area } of model.network.windows) {
    for (let side = 0; side < 2; side++) {
      const own = side === 0 ? a : b;
      const other = side === 0 ? b : a;
      if (own === OUTDOORS) continue;
      const e = emissivity[own];
      const out = other === OUTDOORS;
      const eo = out ? 1 : emissivity[other];
      const g = slope(x[gas + own]);
      const s = slope(x[surfaceOf[own]]);
      add(m, n, gas + own, gas + own, area * e * g);
      add(m, n, surfaceOf[own], surfaceOf[own], area * (1 - e) * s);
      if (!out) {
        const go = eo * slope(x[gas + other]);
        const so = (1 - eo) * slope(x[surfaceOf[other]]);
        add(m, n, gas + own, gas + other, -area * e * go);
        add(m, n, gas + own, surfaceOf[other], -area * e * so);
        add(m, n, surfaceOf[own], gas + other, -area * (1 - e) * go);
        add(m, n, surfaceOf[own], surfaceOf[other], -area * (1 - e) * so);
      }
      // how the own gas's emissivity changes what both sides take
      const coming = out
        ? blackPower(model.network.outdoors.surroundings)
        : eo * gas4[other] + (1 - eo) * surface4[other];
      const going = gas4[own] - surface4[own];
      for (let k = 0; k < 2; k++) {
        const unknown = (k === 0 ? gas : fuel) + own;
        const byUnknown = (k === 0 ? emissivitySlope : emissivityFuelSlope)[own];
        add(m, n, gas + own, unknown, -area * byUnknown * (coming - gas4[own]));
        add(m, n, surfaceOf[own], unknown, area * byUnknown * (coming - surface4[own]));
        if (out) continue;
        add(m, n, gas + other, unknown, -area * byUnknown * eo * going);
        add(m, n, surfaceOf[other], unknown, -area * byUnknown * (1 - eo) * going);
      }
    }
  }
}

function fireRows(balances: Balances, x: Float64Array, demand: Demand, m: Float64Array, gamma: number): void {
  const { model } = balances;
  const { network, size: n, faceNode, faceFireShare, radiantShare } = model;
  const { fire } = network;
  const column = model.fire;
  for (let i = 0; i < faceNode.length; i++) {
    if (faceFireShare[i] !== 0) add(m, n, faceNode[i], column, -gamma * radiantShare * faceFireShare[i]);
  }
  const fuelGas = fire.gasPerFuel / fire.heatValue;
  add(m, n, model.gas + fire.zone, column, -(1 - radiantShare));
  add(m, n, model.fuel + fire.zone, column, -fuelGas * FUEL_ROW);
  add(m, n, model.pressure + fire.zone, column, -fuelGas * MASS_ROW);
  if (demand.mode === 'hold') {
    const base = balances.stems.rate(x, network.gauge, demand.target);
    // layers that see the same walls share their surface node
    const { parts } = network.stems[network.gauge];
    const unknowns = new Set(parts.flatMap(({ zone }) => [model.gas + zone, model.surfaceOf[zone]]));
    for (const index of unknowns) {
      const kept = x[index];
      x[index] = kept + T_STEP;
      add(m, n, column, index, (balances.stems.rate(x, network.gauge, demand.target) - base) / T_STEP);
      x[index] = kept;
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
