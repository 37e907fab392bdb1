/**
 * Gas that a column's layers trade: hot streams from openings that rise as plumes and take in what they pass, gas that
 * sinks along walls colder than itself, and what rises or sinks through the level sections between them to keep the
 * mass of each.
 */
import { overturn } from '../physics/opening.js';
import { AIR_HEAT } from '../physics/plume.js';
import { SINKING_COLDNESS, wallDownflow } from '../physics/wallFlow.js';
import { enter, shift } from './carried.js';
import { FirePlume } from './firePlume.js';
import { Jet } from './jet.js';
import type { Model } from './model.js';
import { OUTDOORS, type Column } from './types.js';

/**
 * What goes to and fro through a level section at no flow [kg/(s m2)]: where the gas comes from turns over smoothly.
 */
const UNSTEADY = 7e-4;
/** Rounding of how a layer's lower edge follows a colder layer below it [K]. */
const EDGE = 1;
/** Steps of the differences by which slopes without a formula are taken: [K], [kg/m3]. */
const T_STEP = 0.01;
const DENSITY_STEP = 1e-6;

export class ColumnStreams {
  readonly zones: number[];
  readonly jets: Jet[];
  /** of a fire that burns in the column */
  readonly fire?: FirePlume;
  /** net inflow into each zone, three a zone: mass [kg/s], heat [W], fuel [kg/s] */
  readonly net: Float64Array;
  /** what leaves each layer for others of the column [kg/s] */
  readonly left: Float64Array;
  private readonly leftByStreams: Float64Array;
  /** net mass of jets and sinking gas alone, a layer each [kg/s] */
  readonly streamed: Float64Array;
  /** `net` of jets and sinking gas alone */
  private readonly streams: Float64Array;
  /** what sinks from each layer into the one below [kg/s] */
  private readonly sunk: Float64Array;
  private readonly wallNodes: Int32Array[];
  private readonly wallShares: Float64Array[];
  private readonly floors: number[];
  private readonly roof: number;
  private readonly temperature: Float64Array;
  private readonly wall: Float64Array;

  constructor(
    private readonly model: Model,
    private readonly column: Column,
  ) {
    const { network } = model;
    const { zones } = column;
    const n = zones.length;
    this.zones = zones;
    this.floors = zones.map((z) => network.zones[z].floor);
    this.roof = network.zones[zones[n - 1]].roof;
    const faces = zones.map((zone) =>
      network.faces.filter((f) => f.zone === zone && f.shape !== 'down' && f.wet === 0),
    );
    this.wallNodes = faces.map((own) => Int32Array.from(own, ({ node }) => node));
    this.wallShares = faces.map((own) => {
      const whole = own.reduce((sum, { area }) => sum + area, 0);
      return Float64Array.from(own, ({ area }) => area / whole);
    });
    this.net = new Float64Array(3 * n);
    this.left = new Float64Array(n);
    this.leftByStreams = new Float64Array(n);
    this.streamed = new Float64Array(n);
    this.streams = new Float64Array(3 * n);
    this.sunk = new Float64Array(n);
    this.temperature = new Float64Array(n);
    this.jets = network.openings.flatMap((o, opening) =>
      o.jet !== undefined && o.to !== OUTDOORS && zones.includes(o.to)
        ? [new Jet(model, zones, this.floors, this.temperature, opening)]
        : [],
    );
    this.wall = new Float64Array(n);
    if (network.fire.plume && zones.includes(network.fire.zone)) {
      this.fire = new FirePlume(model, zones, [...this.floors, this.roof], this.temperature);
    }
  }

  /** Net inflows at x, with the gas of the last `gasState` and the flows of the last `flowState`. */
  evaluate(x: Float64Array): void {
    const { model, zones, temperature, wall, net, streamed, jets, leftByStreams: left } = this;
    const { fuel, gas } = model;
    const n = zones.length;
    for (let k = 0; k < n; k++) {
      temperature[k] = x[gas + zones[k]];
      const nodes = this.wallNodes[k];
      const shares = this.wallShares[k];
      let mean = 0;
      for (let i = 0; i < nodes.length; i++) mean += shares[i] * x[nodes[i]];
      wall[k] = nodes.length > 0 ? mean : temperature[k];
    }
    net.fill(0);
    left.fill(0);
    for (const jet of jets) jet.evaluate(x, net, left);
    this.fire?.evaluate(x, net, left);
    for (let k = 1; k < n; k++) {
      const mass = this.downflow(k, 0, 0);
      this.sunk[k] = mass;
      left[k] += mass;
      const a = zones[k - 1];
      const b = zones[k];
      const share = this.belowSlope(k);
      const mixed = (1 - share) * x[fuel + b] + share * x[fuel + a];
      shift(net, 3 * k, 3 * k - 3, mass, mass * this.sunkHeat(k), mass * mixed);
    }
    for (let k = 0; k < n; k++) streamed[k] = net[3 * k];
    this.streams.set(net);
    this.level(x);
  }

  /** What rises and sinks through the level sections at x, with jets and sinking gas as they were last reckoned. */
  level(x: Float64Array): void {
    const { model, zones, net, left } = this;
    const { enthalpy, fuel } = model;
    net.set(this.streams);
    left.set(this.leftByStreams);
    for (let k = 1; k < zones.length; k++) {
      const a = zones[k - 1];
      const b = zones[k];
      const up = x[model.pressure + b];
      const traffic = trafficOf(up, this.column.areas[k - 1]);
      const both = overturn(model.density[b], model.density[a], this.column.areas[k - 1]);
      const rising = 0.5 * (traffic + up) + both;
      const sinking = 0.5 * (traffic - up) + both;
      left[k - 1] += rising;
      left[k] += sinking;
      const heat = rising * enthalpy[a] - sinking * enthalpy[b];
      shift(net, 3 * k - 3, 3 * k, up, heat, rising * x[fuel + a] - sinking * x[fuel + b]);
    }
  }

  /**
   * Gas that sinks along the walls through the lower edge of layer k [kg/s]. There gas and wall are half this layer's,
   * half the lower one's: what the layer is in its middle would carry its heat down, the more the thicker the layers.
   */
  private downflow(k: number, warmer: number, hotterWall: number): number {
    const { wall, model, column } = this;
    const along = wallDownflow(
      this.roof - this.floors[k],
      this.edge(k) + warmer,
      0.5 * (wall[k] + wall[k - 1]) + hotterWall,
      model.network.outdoors.pressure,
    );
    return model.network.downflow * along * column.edges[k - 1];
  }

  /**
   * How much colder the gas at the lower edge of layer k is than the layer [K]: half way to a colder one below, else
   * nothing.
   */
  private below(k: number): number {
    const apart = this.temperature[k] - this.temperature[k - 1];
    return 0.25 * (apart + Math.sqrt(apart * apart + EDGE * EDGE));
  }

  /** Change of that with the layer's temperature less the lower one's: 0 to a half. */
  private belowSlope(k: number): number {
    const apart = this.temperature[k] - this.temperature[k - 1];
    return 0.25 * (1 + apart / Math.sqrt(apart * apart + EDGE * EDGE));
  }

  /** Temperature of the gas at the lower edge of layer k [K]. */
  private edge(k: number): number {
    return this.temperature[k] - this.below(k);
  }

  /** Enthalpy of what sinks there [J/kg]: colder than that gas by part of the wall's coldness. */
  private sunkHeat(k: number): number {
    const { wall, zones, model } = this;
    const z = zones[k];
    const colder = this.edge(k) - 0.5 * (wall[k] + wall[k - 1]);
    return model.enthalpy[z] - model.heatCapacity[z] * this.below(k) - SINKING_COLDNESS * AIR_HEAT * colder;
  }

  /**
   * Enter the slopes of the net inflows into the matrix of `fillSlopes`, but for what follows the flows of the jets'
   * openings.
   */
  addSlopes(x: Float64Array, m: Float64Array): void {
    for (const jet of this.jets) jet.addSlopes(x, m);
    this.fire?.addSlopes(x, m);
    for (let k = 1; k < this.zones.length; k++) {
      this.sinkSlopes(x, k, m);
      this.levelSlopes(x, k, m);
    }
  }

  private sinkSlopes(x: Float64Array, k: number, m: Float64Array): void {
    const { model, zones, sunk } = this;
    const { gas, fuel, heatCapacity } = model;
    const a = zones[k - 1];
    const b = zones[k];
    const mass = sunk[k];
    const heat = this.sunkHeat(k);
    const half = this.belowSlope(k);
    const share = (1 - half) * x[fuel + b] + half * x[fuel + a];
    const byEdge = (this.downflow(k, T_STEP, 0) - mass) / T_STEP;
    const byWall = (0.5 * (this.downflow(k, 0, T_STEP) - mass)) / T_STEP;
    for (let j = k - 1; j <= k; j++) {
      const z = zones[j];
      const part = j === k ? 1 - half : half;
      const byGas = byEdge * part;
      const warmer = part * (heatCapacity[b] - SINKING_COLDNESS * AIR_HEAT);
      enter(model, m, b, a, gas + z, byGas, byGas * heat + mass * warmer, byGas * share);
      enter(model, m, b, a, fuel + z, 0, j === k ? mass * model.enthalpyOfFuel(x[gas + z]) : 0, mass * part);
      const nodes = this.wallNodes[j];
      const shares = this.wallShares[j];
      const carried = byWall * heat + 0.5 * mass * SINKING_COLDNESS * AIR_HEAT;
      for (let i = 0; i < nodes.length; i++) {
        enter(model, m, b, a, nodes[i], shares[i] * byWall, shares[i] * carried, shares[i] * byWall * share);
      }
    }
  }

  private levelSlopes(x: Float64Array, k: number, m: Float64Array): void {
    const { model, zones, column } = this;
    const { gas, fuel, density, enthalpy, heatCapacity } = model;
    const a = zones[k - 1];
    const b = zones[k];
    const unknown = model.pressure + b;
    const up = x[unknown];
    const area = column.areas[k - 1];
    const traffic = trafficOf(up, area);
    const both = overturn(density[b], density[a], area);
    const rising = 0.5 * (traffic + up) + both;
    const sinking = 0.5 * (traffic - up) + both;
    const more = 0.5 * (up / traffic + 1);
    const less = 0.5 * (up / traffic - 1);
    const fa = x[fuel + a];
    const fb = x[fuel + b];
    enter(model, m, a, b, unknown, 1, more * enthalpy[a] - less * enthalpy[b], more * fa - less * fb);
    model.plugFlow.leaveSlopes(m, a, unknown, more);
    model.plugFlow.leaveSlopes(m, b, unknown, less);
    const heat = enthalpy[a] - enthalpy[b];
    const traded = both === 0 ? 0 : 1;
    const byAbove = traded * ((overturn(density[b] + DENSITY_STEP, density[a], area) - both) / DENSITY_STEP);
    const byBelow = traded * ((overturn(density[b], density[a] + DENSITY_STEP, area) - both) / DENSITY_STEP);
    for (let side = 0; side < 2; side++) {
      const z = side === 0 ? a : b;
      const flow = side === 0 ? rising : -sinking;
      const byDensity = side === 0 ? byBelow : byAbove;
      const T = x[gas + z];
      const f = x[fuel + z];
      const byT = (-byDensity * density[z]) / T;
      const byFuel = -byDensity * density[z] * model.fuelLightness(f);
      enter(model, m, a, b, gas + z, 0, flow * heatCapacity[z] + byT * heat, byT * (fa - fb));
      enter(model, m, a, b, fuel + z, 0, flow * model.enthalpyOfFuel(T) + byFuel * heat, flow + byFuel * (fa - fb));
      for (const zone of [a, b]) {
        model.plugFlow.leaveSlopes(m, zone, gas + z, byT);
        model.plugFlow.leaveSlopes(m, zone, fuel + z, byFuel);
      }
    }
  }
}

/** What goes through a level section both ways, without what trades places [kg/s]. */
function trafficOf(up: number, area: number): number {
  const least = UNSTEADY * area;
  return Math.sqrt(up * up + least * least);
}
