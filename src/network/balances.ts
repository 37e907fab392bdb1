import { GRAVITY, STEFAN_BOLTZMANN } from '../physics/constants.js';
import { settledReading, STEM, stemHeating } from '../physics/thermometer.js';
import { exchangedMass, flowState } from './flow.js';
import { evaporation, insideCoefficient, outsideCoefficient, rainCooling } from './heat.js';
import { conductance, heatCapacity, heatContent } from './materials.js';
import type { Model } from './model.js';
import { OUTDOORS } from './types.js';

/** What the fire is asked to do: release heat (as far as air allows), or whatever keeps the gauge's settled reading. */
export type Demand = { mode: 'release'; heat: number } | { mode: 'hold'; target: number };

/** Width of the band below the oxygen limit over which the fire goes from full to none, as a share of the limit. */
const LIMIT_WIDTH = 0.02;
/** Rows of mass (kg/s) are scaled to the size of the heat rows (W), so that pivoting compares like with like. */
const MASS_ROW = 1e5;
const FUEL_ROW = 1e3;
/** Heat capacity that a zone's gas is given while a state is marched to [J/(kg K)]; it has no part in the answer. */
const GAS_HEAT = 1000;
const T_STEP = 0.01;
const FUEL_STEP = 1e-6;

/**
 * Heat, mass and fuel balances of a network: rates of change of the heat contents, residuals of everything that follows at
 * once, and their derivatives. One evaluation allocates nothing.
 */
export class Balances {
  /** net heat into each node, then into each stem per surface [W], [W/m2] */
  readonly rate: Float64Array;
  /** residuals, zone by zone: star [W], gas heat [W], fuel, mass (scaled); last the fire */
  readonly algebraic: Float64Array;
  /** outdoors loss by node's part [W] */
  readonly partLoss: Map<string, number> = new Map();
  private readonly partOfNode: Int32Array;
  private readonly partNames: string[];
  readonly lossOfPart: Float64Array;
  /** heat carried off by evaporation from wet surfaces [W] */
  evaporated = 0;
  /** heat that gas carries outdoors through stacks, and through everything else [W] */
  stackGasLoss = 0;
  leakLoss = 0;
  private readonly star4: Float64Array;
  private readonly gas4: Float64Array;
  private readonly stemCapacity: number;
  /** convection coefficient of each face at the last evaluation [W/(m2 K)] */
  private readonly coefficient: Float64Array;

  constructor(readonly model: Model) {
    const { network } = model;
    this.rate = new Float64Array(model.differential);
    this.algebraic = new Float64Array(model.size - model.differential);
    this.partNames = [...new Set(network.nodes.map((n) => n.part))];
    this.partOfNode = Int32Array.from(network.nodes, (n) => this.partNames.indexOf(n.part));
    this.lossOfPart = new Float64Array(this.partNames.length);
    this.star4 = new Float64Array(model.zoneCount);
    this.gas4 = new Float64Array(model.zoneCount);
    this.coefficient = new Float64Array(network.faces.length);
    this.stemCapacity = (STEM.density * STEM.specificHeat * network.stem.diameter * network.stem.fill) / 4;
  }

  /** Sum of outdoors losses of all parts whose name is given [W]. */
  lossOf(part: string): number {
    const i = this.partNames.indexOf(part);
    return i < 0 ? 0 : this.lossOfPart[i];
  }

  /** All heat that leaves the network [W]. */
  totalLoss(): number {
    let sum = this.evaporated + this.stackGasLoss + this.leakLoss;
    for (let i = 0; i < this.lossOfPart.length; i++) sum += this.lossOfPart[i];
    return sum;
  }

  /**
   * Share of the fire asked for that the oxygen left in its zone lets burn: 1 up to just short of the limit, falling to 0
   * at it. With fresh air drawn in this holds the release at the heat of the usable oxygen, within the width of the fall.
   */
  private oxygenShare(fuelShare: number): number {
    const { fuelLimit } = this.model;
    if (fuelLimit === Infinity) return 1;
    return smoothStep((1 - fuelShare / fuelLimit) / LIMIT_WIDTH);
  }

  /** Is the fire at x held down by the air it gets? */
  starved(x: Float64Array): boolean {
    const { model } = this;
    return x[model.fuel + model.network.fire.zone] > (1 - LIMIT_WIDTH) * model.fuelLimit;
  }

  /**
   * Fill `rate` and `algebraic` at the unknowns x.
   *
   * @param frozen keep the flows of the evaluation before
   */
  evaluate(x: Float64Array, demand: Demand, frozen = false): void {
    const { model, rate, algebraic, star4, gas4 } = this;
    const { network, zoneCount: nz } = model;
    const { outdoors, fire } = network;
    const release = x[model.fire];
    model.gasState(x);
    if (!frozen) flowState(model, x);
    rate.fill(0);
    algebraic.fill(0);
    this.lossOfPart.fill(0);
    this.evaporated = 0;
    for (let z = 0; z < nz; z++) {
      star4[z] = STEFAN_BOLTZMANN * fourth(x[model.star + z]);
      gas4[z] = STEFAN_BOLTZMANN * fourth(x[model.gas + z]);
    }
    const surround = STEFAN_BOLTZMANN * fourth(outdoors.surroundings);
    const radiant = release * fire.radiantShare;
    const { faceNode, faceZone, faceArea, faceEmissivity, faceFireShare } = model;
    const { coefficient } = this;
    for (let i = 0; i < faceNode.length; i++) {
      const node = faceNode[i];
      const z = faceZone[i];
      const area = faceArea[i];
      const Ts = x[node];
      const own = STEFAN_BOLTZMANN * fourth(Ts);
      const eps = faceEmissivity[i];
      if (z === OUTDOORS) {
        const f = network.faces[i];
        const h = outsideCoefficient(model, i, Ts);
        coefficient[i] = h;
        let loss = h * (Ts - outdoors.temperature) + eps * (own - surround) - eps * outdoors.sun * f.sunShare;
        if (outdoors.rain > 0) loss += outdoors.rain * f.sunShare * rainCooling(h, Ts, model);
        rate[node] -= loss * area;
        this.lossOfPart[this.partOfNode[node]] += loss * area;
        continue;
      }
      const Tg = x[model.gas + z];
      const eg = model.emissivity[z];
      const h = insideCoefficient(model, i, z, Ts, Tg);
      coefficient[i] = h;
      const fromGas = area * (h * (Tg - Ts) + eg * 0.5 * (eps + 1) * (gas4[z] - own));
      const fromStar = (area / ((1 - eps) / eps + 1 / (1 - eg))) * (star4[z] - own);
      rate[node] += fromGas + fromStar + radiant * faceFireShare[i];
      algebraic[nz + z] -= fromGas;
      algebraic[z] -= fromStar;
      const wet = network.faces[i].wet;
      if (wet > 0) {
        const off = wet * area * evaporation(h, Ts, model.vapour[z], outdoors.pressure);
        rate[node] -= off;
        this.evaporated += off;
      }
    }
    for (let z = 0; z < nz; z++) if (!model.zoneHasFaces[z]) algebraic[z] = x[model.gas + z] - x[model.star + z];
    for (const link of network.links) {
      const heat = conductance(link, 0.5 * (x[link.a] + x[link.b])) * (x[link.a] - x[link.b]);
      rate[link.a] -= heat;
      rate[link.b] += heat;
    }
    this.evaluateStems(x);
    this.evaluateFlows(x);
    algebraic[nz + fire.zone] += (1 - fire.radiantShare) * release;
    const fuelGas = (release / fire.heatValue) * fire.gasPerFuel;
    algebraic[2 * nz + fire.zone] += fuelGas * FUEL_ROW;
    algebraic[3 * nz + fire.zone] += fuelGas * MASS_ROW;
    if (demand.mode === 'hold') algebraic[4 * nz] = -this.stemRate(x, network.gauge, demand.target);
    else algebraic[4 * nz] = demand.heat * this.oxygenShare(x[model.fuel + fire.zone]) - release;
  }

  private evaluateStems(x: Float64Array): void {
    const { model, rate } = this;
    const { stems } = model.network;
    for (let i = 0; i < stems.length; i++) {
      rate[model.nodeCount + i] = this.stemRate(x, i, x[model.nodeCount + i]);
    }
  }

  /** Heat that stem i takes up per surface when it is at `temperature` [W/m2]; zero where it reads true. */
  private stemRate(x: Float64Array, i: number, temperature: number): number {
    const { model } = this;
    const { stems, stem, outdoors } = model.network;
    const z = stems[i].zone;
    return stemHeating(
      x[model.gas + z],
      x[model.star + z],
      temperature,
      model.speed[z],
      outdoors.pressure,
      stem.diameter,
      stem.emissivity,
    );
  }

  /** Change of a stem's uptake with the star temperature of its zone [W/(m2 K)]. */
  private stemRadiant(x: Float64Array, z: number): number {
    const T = x[this.model.star + z];
    return 4 * this.model.network.stem.emissivity * STEFAN_BOLTZMANN * T * T * T;
  }

  private evaluateFlows(x: Float64Array): void {
    const { model, algebraic } = this;
    const { network, zoneCount: nz, flows, enthalpy } = model;
    this.stackGasLoss = 0;
    this.leakLoss = 0;
    for (let i = 0; i < flows.length; i++) {
      const o = network.openings[i];
      const { forward, backward } = flows[i];
      const out = o.to === OUTDOORS;
      const heat = forward * enthalpy[o.from] - (out ? 0 : backward * enthalpy[o.to]);
      const fuel = (forward * x[model.fuel + o.from] - (out ? 0 : backward * x[model.fuel + o.to])) * FUEL_ROW;
      const mass = (forward - backward) * MASS_ROW;
      algebraic[nz + o.from] -= heat;
      algebraic[2 * nz + o.from] -= fuel;
      algebraic[3 * nz + o.from] -= mass;
      if (out) {
        if (o.role === 'stackExit') this.stackGasLoss += heat;
        else this.leakLoss += heat;
      } else {
        algebraic[nz + o.to] += heat;
        algebraic[2 * nz + o.to] += fuel;
        algebraic[3 * nz + o.to] += mass;
      }
    }
  }

  /** Settled reading of stem i at x [K]. Needs an evaluation at x first. */
  settled(x: Float64Array, i: number): number {
    const { model } = this;
    const { stems, stem, outdoors } = model.network;
    const z = stems[i].zone;
    return settledReading(
      x[model.gas + z],
      x[model.star + z],
      model.speed[z],
      outdoors.pressure,
      stem.diameter,
      stem.emissivity,
    );
  }

  /** Heat content of each node, and of each stem per surface, at x. */
  contents(x: Float64Array, out: Float64Array): void {
    const { model } = this;
    const { nodes } = model.network;
    for (let i = 0; i < model.nodeCount; i++) out[i] = heatContent(nodes[i], x[i]);
    for (let i = model.nodeCount; i < model.differential; i++) out[i] = this.stemCapacity * x[i];
  }

  /** Take from the gas and fuel rows of `rhs` what the gas of each zone stores on its way from `from` to x within h [s]. */
  addGasStorage(x: Float64Array, from: Float64Array, h: number, rhs: Float64Array): void {
    const { model } = this;
    const { zones } = model.network;
    for (let z = 0; z < model.zoneCount; z++) {
      const mass = zones[z].volume * model.outdoorDensity;
      const heat = mass * GAS_HEAT * (x[model.gas + z] - from[model.gas + z]);
      rhs[model.gas + z] -= heat / h;
      rhs[model.fuel + z] -= ((mass * (x[model.fuel + z] - from[model.fuel + z])) / h) * FUEL_ROW;
    }
  }

  /** The same in the matrix. */
  addGasCapacity(h: number, m: Float64Array): void {
    const { model } = this;
    const { size: n } = model;
    for (let z = 0; z < model.zoneCount; z++) {
      const mass = model.network.zones[z].volume * model.outdoorDensity;
      add(m, n, model.gas + z, model.gas + z, (mass * GAS_HEAT) / h);
      add(m, n, model.fuel + z, model.fuel + z, (mass / h) * FUEL_ROW);
    }
  }

  /** Largest net mass flow into any zone [kg/s], at the last evaluation. */
  massError(): number {
    const { zoneCount: nz } = this.model;
    let worst = 0;
    for (let z = 0; z < nz; z++) worst = Math.max(worst, Math.abs(this.algebraic[3 * nz + z]) / MASS_ROW);
    return worst;
  }

  /**
   * Matrix of the Newton step at x: rows of nodes and stems `capacity` dH/dT - gamma dRate/dx, other rows the negative
   * derivatives of `algebraic`; so that solving against (gamma rate - capacity dH, algebraic) gives the step.
   * Needs an evaluation at x first. The slope of small effect (of through-flow speed in the convection) is
   * left out: they cost the Newton iteration a step, not its answer.
   *
   * @param frozen flows held: pressures stay where they are
   */
  jacobian(x: Float64Array, demand: Demand, m: Float64Array, capacity: number, gamma: number, frozen: boolean): void {
    m.fill(0);
    this.model.emissivitySlopes(x);
    this.capacityRows(x, m, capacity, gamma);
    this.faceRows(x, m, gamma);
    this.flowRows(x, m, frozen);
    this.fireRows(x, demand, m, gamma, frozen);
  }

  private capacityRows(x: Float64Array, m: Float64Array, capacity: number, gamma: number): void {
    const { model } = this;
    const { network, size: n } = model;
    const { stems, stem, links, nodes } = network;
    if (capacity !== 0) {
      for (let i = 0; i < model.nodeCount; i++) m[i * n + i] += capacity * heatCapacity(nodes[i], x[i]);
    }
    for (let i = 0; i < stems.length; i++) {
      const row = model.nodeCount + i;
      const z = stems[i].zone;
      const Tt = x[row];
      const own = 4 * stem.emissivity * STEFAN_BOLTZMANN * Tt * Tt * Tt;
      const slope = (this.stemRate(x, i, Tt + T_STEP) - this.rate[row]) / T_STEP;
      // convection goes with the difference of gas and stem, so that its slopes differ in sign alone
      m[row * n + row] += capacity * this.stemCapacity - gamma * slope;
      m[row * n + model.gas + z] += gamma * (slope + own);
      m[row * n + model.star + z] -= gamma * this.stemRadiant(x, z);
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

  private faceRows(x: Float64Array, m: Float64Array, gamma: number): void {
    const { model, gas4 } = this;
    const { network, size: n, faceNode, faceZone, faceArea, faceEmissivity } = model;
    const { outdoors } = network;
    for (let i = 0; i < faceNode.length; i++) {
      const node = faceNode[i];
      const z = faceZone[i];
      const area = faceArea[i];
      const Ts = x[node];
      const eps = faceEmissivity[i];
      const slopeOwn = 4 * STEFAN_BOLTZMANN * Ts * Ts * Ts;
      if (z === OUTDOORS) {
        if (gamma === 0) continue;
        const f = network.faces[i];
        const after = Ts + T_STEP;
        const h = outsideCoefficient(model, i, after);
        const wet =
          outdoors.rain > 0
            ? outdoors.rain * f.sunShare * (rainCooling(h, after, model) - rainCooling(this.coefficient[i], Ts, model))
            : 0;
        const base = this.coefficient[i] * (Ts - outdoors.temperature);
        const slope = (h * (after - outdoors.temperature) - base + wet) / T_STEP;
        m[node * n + node] += gamma * area * (slope + eps * slopeOwn);
        continue;
      }
      const gasIndex = model.gas + z;
      const starIndex = model.star + z;
      const Tg = x[gasIndex];
      const eg = model.emissivity[z];
      const h = this.coefficient[i];
      const base = h * (Tg - Ts);
      const bySurface = (insideCoefficient(model, i, z, Ts + T_STEP, Tg) * (Tg - Ts - T_STEP) - base) / T_STEP;
      const byGas = (insideCoefficient(model, i, z, Ts, Tg + T_STEP) * (Tg + T_STEP - Ts) - base) / T_STEP;
      const half = 0.5 * (eps + 1);
      const own = STEFAN_BOLTZMANN * fourth(Ts);
      const gasBySurface = area * (bySurface - eg * half * slopeOwn);
      const open = 1 - eg;
      const link = area / ((1 - eps) / eps + 1 / open);
      const Tw = x[starIndex];
      const starByEmissivity = -((link * link) / (area * open * open)) * (this.star4[z] - own);
      const gasByEmissivity = area * half * (gas4[z] - own);
      const slope = model.emissivitySlope[z];
      const fuelSlope = model.emissivityFuelSlope[z];
      const gasByGas = area * (byGas + eg * half * 4 * STEFAN_BOLTZMANN * Tg * Tg * Tg) + slope * gasByEmissivity;
      const starSlope = link * 4 * STEFAN_BOLTZMANN * Tw * Tw * Tw;
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

  private flowRows(x: Float64Array, m: Float64Array, frozen: boolean): void {
    const { model } = this;
    const { network, size: n, flows, exchange, enthalpy, heatCapacity: cp, density } = model;
    const { gas, fuel, pressure } = model;
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
      const forwardZ = (f.forwardLow * low + f.forwardHigh * high) * GRAVITY;
      const backwardZ = (f.backwardLow * low + f.backwardHigh * high) * GRAVITY;
      let [byNet, byDensityA, byDensityB] = [0, 0, 0];
      if (o.level && !out) {
        const net = through - back;
        const step = 1e-6 * (1e-3 + Math.abs(net));
        const small = 1e-6;
        const at = (n0: number, d0: number, d1: number) => exchangedMass(o.area, d0, d1, n0);
        byNet = (at(net + step, density[a], density[b]) - exchange[i]) / step;
        byDensityA = (at(net, density[a] + small, density[b]) - exchange[i]) / small;
        byDensityB = (at(net, density[a], density[b] + small) - exchange[i]) / small;
      }
      const column = (unknown: number, forward: number, backward: number, both: number) => {
        const traded = byNet * (forward - backward) + both;
        this.flowColumn(m, i, unknown, forward + traded, backward + traded, ha, hb, fa, fb);
      };
      const byDensity = (zone: number, forward: number, backward: number, both: number) => {
        const byHeat = -density[zone] / x[gas + zone];
        const byFuel = -density[zone] * model.fuelLightness(x[fuel + zone]);
        column(gas + zone, forward * byHeat, backward * byHeat, both * byHeat);
        column(fuel + zone, forward * byFuel, backward * byFuel, both * byFuel);
      };
      column(pressure + a, forwardP, backwardP, 0);
      byDensity(a, through / (2 * density[a]) - forwardZ, -backwardZ, byDensityA);
      if (!out) {
        column(pressure + b, -forwardP, -backwardP, 0);
        byDensity(b, forwardZ, backwardZ + back / (2 * density[b]), byDensityB);
      }
    }
    if (frozen) for (let z = 0; z < model.zoneCount; z++) m[(pressure + z) * n + pressure + z] = 1;
  }

  /** Enter the change of opening i's flows with unknown `column` into the heat, fuel and mass rows of its two zones. */
  private flowColumn(
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
    const { model } = this;
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

  private fireRows(x: Float64Array, demand: Demand, m: Float64Array, gamma: number, frozen: boolean): void {
    const { model } = this;
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
      const z = network.stems[network.gauge].zone;
      const base = this.stemRate(x, network.gauge, demand.target);
      const index = model.gas + z;
      const kept = x[index];
      x[index] = kept + T_STEP;
      add(m, n, column, index, (this.stemRate(x, network.gauge, demand.target) - base) / T_STEP);
      x[index] = kept;
      add(m, n, column, model.star + z, this.stemRadiant(x, z));
      return;
    }
    add(m, n, column, column, 1);
    const share = x[model.fuel + fire.zone];
    const slope = (this.oxygenShare(share + FUEL_STEP) - this.oxygenShare(share - FUEL_STEP)) / (2 * FUEL_STEP);
    if (slope !== 0) add(m, n, column, model.fuel + fire.zone, -demand.heat * slope);
  }
}

function fourth(T: number): number {
  const square = T * T;
  return square * square;
}

function add(m: Float64Array, n: number, row: number, column: number, value: number): void {
  m[row * n + column] += value;
}

/** 0 below 0, 1 above 1, a cubic with level ends between. */
function smoothStep(x: number): number {
  if (x <= 0) return 0;
  return x >= 1 ? 1 : x * x * (3 - 2 * x);
}
