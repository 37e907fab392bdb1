import { evaporation, rainCooling } from '../physics/evaporation.js';
import { blackPower, blackPowerSlope, surfaceLoss } from '../physics/radiation.js';
import { gasWallFactor, surfaceConductance } from '../physics/surfaceNode.js';
import { gapHeat, type GapHeat } from './airGap.js';
import { flowState, streamState } from './flow.js';
import { Convection } from './convection.js';
import { jetFlux, struckExcess } from './heat.js';
import { conductance, HeatContents } from './materials.js';
import type { Model } from './model.js';
import { FUEL_ROW, MASS_ROW } from './rows.js';
import { fillSlopes } from './slopes.js';
import { Stems } from './stems.js';
import { OUTDOORS, type Window } from './types.js';

/** What the fire is asked to do: release heat (as far as air allows), or whatever keeps the gauge's settled reading. */
/** `radiant`: share of the heat that leaves as radiation, where it is not the fire's own [-]. */
export type Demand = { mode: 'release'; heat: number; radiant?: number } | { mode: 'hold'; target: number };

/** Width of the band below the oxygen limit over which the fire goes from full to none, as a share of the limit. */
export const LIMIT_WIDTH = 0.02;
/** Heat capacity that a zone's gas is given on the way to a steady state [J/(kg K)]; it has no part in the answer. */
const GAS_HEAT = 1000;

/**
 * Heat, mass and fuel balances of a network: rates of change of the heat contents, residuals of everything that follows
 * at once, and their derivatives. One evaluation allocates nothing.
 */
export class Balances {
  /** net heat into each node, then into each stem per surface [W], [W/m2] */
  readonly rate: Float64Array;
  /** residuals: surface nodes [W], then zone by zone gas heat [W], fuel, mass (scaled); last the fire */
  readonly algebraic: Float64Array;
  /** outdoors loss by node's part [W] */
  readonly partLoss: Map<string, number> = new Map();
  private readonly partOfNode: Int32Array;
  private readonly partNames: string[];
  readonly lossOfPart: Float64Array;
  /** heat carried off by evaporation from wet surfaces [W] */
  evaporated = 0;
  /**
   * heat that gas carries outdoors through stacks, and through everything else; what open areas radiate outdoors [W]
   */
  stackGasLoss = 0;
  leakLoss = 0;
  radiatedLoss = 0;
  readonly surface4: Float64Array;
  readonly gas4: Float64Array;
  readonly stems: Stems;
  /** heat from gas to walls of each zone [W], and its conductance [W/K] */
  private readonly toWalls: Float64Array;
  private readonly wallConductance: Float64Array;
  /** work space of air gaps */
  private readonly gapHeat: GapHeat = { across: 0, fromWall: 0, fromShield: 0 };
  readonly convection: Convection;
  readonly heats: HeatContents;

  /**
   * What the gas of each zone takes up per kelvin [J/K], and per share of fuel, in the rows of `algebraic`; 0 in the
   * others. Gas is taken as dense as the air that the pit stands in when it is made ready.
   */
  readonly inertia: Float64Array;

  constructor(readonly model: Model) {
    const { network } = model;
    this.rate = new Float64Array(model.differential);
    this.algebraic = new Float64Array(model.size - model.differential);
    this.partNames = [...new Set(network.nodes.map((n) => n.part))];
    this.partOfNode = Int32Array.from(network.nodes, (n) => this.partNames.indexOf(n.part));
    this.lossOfPart = new Float64Array(this.partNames.length);
    this.surface4 = new Float64Array(model.zoneCount);
    this.gas4 = new Float64Array(model.zoneCount);
    this.convection = new Convection(model);
    this.heats = new HeatContents(network.nodes);
    this.toWalls = new Float64Array(model.zoneCount);
    this.wallConductance = new Float64Array(model.zoneCount);
    this.stems = new Stems(model);
    this.inertia = new Float64Array(model.size - model.differential);
    for (let z = 0; z < model.zoneCount; z++) {
      const mass = network.zones[z].volume * model.outdoorDensity;
      this.inertia[model.gas + z - model.differential] = mass * GAS_HEAT;
      this.inertia[model.fuel + z - model.differential] = mass * FUEL_ROW;
    }
  }

  /** Sum of outdoors losses of all parts whose name is given [W]. */
  lossOf(part: string): number {
    const i = this.partNames.indexOf(part);
    return i < 0 ? 0 : this.lossOfPart[i];
  }

  /** All heat that leaves the network [W]. */
  totalLoss(): number {
    let sum = this.evaporated + this.stackGasLoss + this.leakLoss + this.radiatedLoss;
    for (let i = 0; i < this.lossOfPart.length; i++) sum += this.lossOfPart[i];
    return sum;
  }

  /**
   * Share of the fire asked for that the oxygen left in its zone lets burn: 1 up to just short of the limit, falling to
   * 0 at it. With fresh air drawn in this holds the release at the heat of the usable oxygen, within the width of the
   * fall.
   */
  oxygenShare(fuelShare: number): number {
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
   * @param withStems thermometer stems too; they follow the rest without touching it
   * @param flowing gas and flows stand as x has them: `balanceFlows` was the last to touch both
   */
  evaluate(x: Float64Array, demand: Demand, withStems = true, flowing = false): void {
    const { model, rate, algebraic, surface4, gas4 } = this;
    const { network, zoneCount: nz, differential: d, gasRow, fuelRow, massRow, fireRow } = model;
    const { outdoors, fire } = network;
    const release = x[model.fire];
    model.radiantShare = (demand.mode === 'release' ? demand.radiant : undefined) ?? fire.radiantShare;
    if (!flowing) {
      model.gasState(x);
      flowState(model, x);
      streamState(model, x);
    }
    rate.fill(0);
    algebraic.fill(0);
    this.lossOfPart.fill(0);
    this.toWalls.fill(0);
    this.wallConductance.fill(0);
    this.evaporated = 0;
    for (let z = 0; z < nz; z++) {
      surface4[z] = blackPower(x[model.surfaceOf[z]]);
      gas4[z] = blackPower(x[model.gas + z]);
    }
    const radiant = release * model.radiantShare;
    this.convection.evaluate(x);
    this.evaluateOutside(x);
    this.evaluateInside(x, radiant);
    for (let z = 0; z < nz; z++) {
      const surface = model.surfaceOf[z];
      if (!model.zoneHasFaces[z]) algebraic[surface - d] = x[model.gas + z] - x[surface];
    }
    this.radiatedLoss = radiant * model.fireOutShare;
    for (const window of network.windows) this.evaluateWindow(window);
    this.evaluateLinks(x);
    for (const gap of network.gaps) {
      gapHeat(gap, x[gap.wall], x[gap.shield], outdoors, this.gapHeat);
      const { across, fromWall, fromShield } = this.gapHeat;
      rate[gap.wall] -= across + fromWall;
      rate[gap.shield] += across - fromShield;
      this.lossOfPart[this.partOfNode[gap.wall]] += fromWall + fromShield;
    }
    if (withStems)
      for (let i = 0; i < model.stemCount; i++)
        rate[model.nodeCount + i] = this.stems.rate(x, i, x[model.nodeCount + i]);
    this.evaluateFlows(x);
    model.plugFlow.evaluate(this.toWalls, this.wallConductance, algebraic);
    this.evaluateStreams();
    algebraic[gasRow + fire.zone] += release - radiant;
    const fuelGas = (release / fire.heatValue) * fire.gasPerFuel;
    algebraic[fuelRow + fire.zone] += fuelGas * FUEL_ROW;
    algebraic[massRow + fire.zone] += fuelGas * MASS_ROW;
    if (demand.mode === 'hold') algebraic[fireRow] = -this.stems.rate(x, network.gauge, demand.target);
    else algebraic[fireRow] = demand.heat * this.oxygenShare(x[model.fuel + fire.zone]) - release;
  }

  /** What faces lose outdoors. */
  private evaluateOutside(x: Float64Array): void {
    const { model, rate, lossOfPart, partOfNode } = this;
    const { coefficient } = this.convection;
    const { outsideFaces, faceNode, faceArea, faceEmissivity, faceSunShare } = model;
    const { temperature, surroundings, sun, rain, pressure } = model.network.outdoors;
    for (let k = 0; k < outsideFaces.length; k++) {
      const i = outsideFaces[k];
      const node = faceNode[i];
      const eps = faceEmissivity[i];
      const h = coefficient[i];
      let loss = surfaceLoss(h, x[node], temperature, eps, surroundings);
      loss -= eps * sun * faceSunShare[i];
      if (rain > 0) loss += rain * faceSunShare[i] * rainCooling(h, x[node], model.outdoorVapour, pressure);
      rate[node] -= loss * faceArea[i];
      lossOfPart[partOfNode[node]] += loss * faceArea[i];
    }
  }

  /** What faces take from the gas and from each other. @param radiant what of the fire shines on them [W] */
  private evaluateInside(x: Float64Array, radiant: number): void {
    const { model, rate, algebraic, surface4, gas4, toWalls, wallConductance } = this;
    const { coefficient } = this.convection;
    const { insideFaces, faceNode, faceZone, faceArea, faceEmissivity, faceFireShare, faceWet, faceStruck } = model;
    const { gas, gasRow, surfaceOf, differential: d, emissivity, vapour, network } = model;
    const release = x[model.fire];
    for (let k = 0; k < insideFaces.length; k++) {
      const i = insideFaces[k];
      const node = faceNode[i];
      const z = faceZone[i];
      const area = faceArea[i];
      const Ts = x[node];
      const Tg = x[gas + z];
      const eps = faceEmissivity[i];
      const eg = emissivity[z];
      const h = coefficient[i];
      const own = blackPower(Ts);
      const free = h * (Tg - Ts);
      const struck = faceStruck[i] ? struckExcess(free, jetFlux(model, release, Ts, Tg)) : 0;
      const absorbed = gasWallFactor(eg, eps);
      const fromGas = area * (free + struck + absorbed * (gas4[z] - own));
      const fromSurfaces = surfaceConductance(area, eps, eg) * (surface4[z] - own);
      rate[node] += fromGas + fromSurfaces + radiant * faceFireShare[i];
      algebraic[gasRow + z] -= fromGas;
      algebraic[surfaceOf[z] - d] -= fromSurfaces;
      toWalls[z] += fromGas;
      wallConductance[z] += area * (h + absorbed * blackPowerSlope(Tg));
      if (faceWet[i] > 0) {
        const off = faceWet[i] * area * evaporation(h, Ts, vapour[z], network.outdoors.pressure);
        rate[node] -= off;
        this.evaporated += off;
      }
    }
  }

  /** Conduction between nodes. */
  private evaluateLinks(x: Float64Array): void {
    const { model, rate } = this;
    const { links } = model.network;
    for (let i = 0; i < links.length; i++) {
      const link = links[i];
      const { a, b } = link;
      const heat = conductance(link, 0.5 * (x[a] + x[b])) * (x[a] - x[b]);
      rate[a] -= heat;
      rate[b] += heat;
    }
  }

  /**
   * Radiation through an open area: each side sends what its gas gives off and what its walls send through that gas,
   * and takes the other's with both. Outdoors is black and as warm as what stands there.
   */
  private evaluateWindow({ a, b, area }: Window): void {
    const { model, algebraic, surface4, gas4 } = this;
    const { emissivity, surfaceOf, differential: d, gasRow } = model;
    const ea = emissivity[a];
    const fromA = ea * gas4[a] + (1 - ea) * surface4[a];
    const eb = b === OUTDOORS ? 1 : emissivity[b];
    const fromB =
      b === OUTDOORS ? blackPower(model.network.outdoors.surroundings) : eb * gas4[b] + (1 - eb) * surface4[b];
    algebraic[gasRow + a] += area * ea * (fromB - gas4[a]);
    algebraic[surfaceOf[a] - d] += area * (1 - ea) * (fromB - surface4[a]);
    if (b === OUTDOORS) {
      this.radiatedLoss += area * (fromA - fromB);
      return;
    }
    algebraic[gasRow + b] += area * eb * (fromA - gas4[b]);
    algebraic[surfaceOf[b] - d] += area * (1 - eb) * (fromA - surface4[b]);
  }

  private evaluateFlows(x: Float64Array): void {
    const { model, algebraic } = this;
    const { network, gasRow, fuelRow, massRow, flows, enthalpy, openFrom, openTo } = model;
    this.stackGasLoss = 0;
    this.leakLoss = 0;
    for (let i = 0; i < flows.length; i++) {
      const from = openFrom[i];
      const to = openTo[i];
      const { forward, backward } = flows[i];
      const out = to === OUTDOORS;
      const heat = forward * enthalpy[from] - (out ? 0 : backward * enthalpy[to]);
      const fuel = (forward * x[model.fuel + from] - (out ? 0 : backward * x[model.fuel + to])) * FUEL_ROW;
      const mass = (forward - backward) * MASS_ROW;
      algebraic[gasRow + from] -= heat;
      algebraic[fuelRow + from] -= fuel;
      algebraic[massRow + from] -= mass;
      if (out) {
        if (network.openings[i].role === 'stackExit') this.stackGasLoss += heat;
        else this.leakLoss += heat;
      } else {
        algebraic[gasRow + to] += heat;
        algebraic[fuelRow + to] += fuel;
        algebraic[massRow + to] += mass;
      }
    }
  }

  private evaluateStreams(): void {
    const { model, algebraic } = this;
    const { gasRow, fuelRow, massRow } = model;
    for (const { zones, net } of model.columns) {
      for (let k = 0; k < zones.length; k++) {
        algebraic[gasRow + zones[k]] += net[3 * k + 1];
        algebraic[fuelRow + zones[k]] += net[3 * k + 2] * FUEL_ROW;
        algebraic[massRow + zones[k]] += net[3 * k] * MASS_ROW;
      }
    }
  }

  /** Heat content of each node, and of each stem per surface, at x. */
  contents(x: Float64Array, out: Float64Array): void {
    const { model } = this;
    this.heats.evaluate(x, out);
    for (let i = model.nodeCount; i < model.differential; i++) out[i] = this.stems.capacity * x[i];
  }

  /**
   * Take from the gas and fuel rows of `rhs` what the gas of each zone stores on its way from `from` to x within h [s].
   */
  addGasStorage(x: Float64Array, from: Float64Array, h: number, rhs: Float64Array): void {
    const { inertia, model } = this;
    const { differential: d } = model;
    for (let i = 0; i < inertia.length; i++) {
      if (inertia[i] > 0) rhs[d + i] -= (inertia[i] * (x[d + i] - from[d + i])) / h;
    }
  }

  /** The same in the matrix of `jacobian`. */
  addGasCapacity(h: number, m: Float64Array): void {
    const { inertia, model } = this;
    const { differential: d, size: n } = model;
    for (let i = 0; i < inertia.length; i++) m[(d + i) * n + d + i] += inertia[i] / h;
  }

  /** Largest net mass flow into any zone [kg/s], at the last evaluation. */
  massError(): number {
    const { zoneCount, massRow } = this.model;
    let worst = 0;
    for (let z = 0; z < zoneCount; z++) worst = Math.max(worst, Math.abs(this.algebraic[massRow + z]) / MASS_ROW);
    return worst;
  }

  /** Matrix of the Newton step at x; see `fillSlopes`. Needs an evaluation at x first. */
  jacobian(x: Float64Array, demand: Demand, m: Float64Array, capacity: number, gamma: number): void {
    fillSlopes(this, x, demand, m, capacity, gamma);
  }
}

/** 0 below 0, 1 above 1, a cubic with level ends between. */
function smoothStep(x: number): number {
  if (x <= 0) return 0;
  return x >= 1 ? 1 : x * x * (3 - 2 * x);
}
