/**
 * Gas that a column's layers trade by itself: hot streams from openings that rise as plumes and take in what they pass, and
 * gas that sinks along walls colder than itself.
 */
import { gasEnthalpy } from '../physics/gasMixture.js';
import { jetEntrainment } from '../physics/plume.js';
import { SINKING_COLDNESS, wallDownflow } from '../physics/wallFlow.js';
import type { Model } from './model.js';
import { OUTDOORS, type Column } from './types.js';

/** Layers less apart than this count as so much apart, where a stream's gas is shared out between them [K]. */
const LEAST_APART = 5;
/** Mean specific heat in the excess of a stream [J/(kg K)]. */
const HEAT = 1006;

/** An opening through which gas enters a column. */
interface Jet {
  opening: number;
  source: number;
  /** place of its zone in the column */
  level: number;
  width: number;
  centre: number;
}

/** A column with its streams, as arrays. Origins of gas: the column's layers, lowest first, then the jets' sources. */
export class ColumnStreams {
  readonly zones: number[];
  readonly jets: Jet[];
  /** net inflow into each zone, three a zone: mass [kg/s], heat [W], fuel [kg/s] */
  readonly net: Float64Array;
  /** change of the net inflows with the mass flow of each jet */
  readonly byJet: Float64Array[];
  readonly work: Float64Array;
  /** unknowns that the streams follow */
  readonly follows: Int32Array;
  /** mass from each origin into each layer [kg/s], origin by origin; and what sinks from each layer into the one below */
  readonly moved: Float64Array;
  readonly sunk: Float64Array;
  private readonly origins: number[];
  private readonly wallNodes: number[][];
  private readonly wallShares: number[][];
  private readonly floors: number[];
  private readonly roof: number;
  private readonly temperature: Float64Array;
  private readonly enthalpy: Float64Array;
  private readonly fuel: Float64Array;
  private readonly wall: Float64Array;
  private readonly plume: Float64Array;

  constructor(
    private readonly model: Model,
    private readonly column: Column,
  ) {
    const { network } = model;
    const { zones } = column;
    this.zones = zones;
    this.floors = zones.map((z) => network.zones[z].floor);
    this.roof = network.zones[zones[zones.length - 1]].roof;
    this.jets = network.openings.flatMap((o, opening) =>
      o.jet !== undefined && o.to !== OUTDOORS && zones.includes(o.to)
        ? [{ opening, source: o.from, level: zones.indexOf(o.to), width: o.jet, centre: o.centre }]
        : [],
    );
    const faces = zones.map((zone) => network.faces.filter((f) => f.zone === zone && f.shape !== 'down' && f.wet === 0));
    this.wallNodes = faces.map((own) => own.map(({ node }) => node));
    this.wallShares = faces.map((own) => {
      const whole = own.reduce((sum, { area }) => sum + area, 0);
      return own.map(({ area }) => area / whole);
    });
    const n = zones.length;
    this.origins = [...zones, ...this.jets.map(({ source }) => source)];
    const count = this.origins.length;
    this.net = new Float64Array(3 * n);
    this.work = new Float64Array(3 * n);
    this.byJet = this.jets.map(() => new Float64Array(3 * n));
    this.moved = new Float64Array(count * n);
    this.sunk = new Float64Array(n);
    this.temperature = new Float64Array(count);
    this.enthalpy = new Float64Array(count);
    this.fuel = new Float64Array(count);
    this.wall = new Float64Array(n);
    this.plume = new Float64Array(count);
    const seen = new Set<number>();
    for (const z of this.origins) seen.add(model.gas + z).add(model.fuel + z);
    for (const node of this.wallNodes.flat()) seen.add(node);
    this.follows = Int32Array.from(seen);
  }

  /** Net inflows at x. @param held masses stay what they were; only what they carry follows x */
  evaluate(x: Float64Array, held = false, out: Float64Array = this.net): void {
    const { model, zones, temperature, wall } = this;
    this.readGas(x);
    for (let k = 0; k < zones.length; k++) {
      let mean = 0;
      const nodes = this.wallNodes[k];
      for (let i = 0; i < nodes.length; i++) mean += this.wallShares[k][i] * x[nodes[i]];
      wall[k] = nodes.length > 0 ? mean : temperature[k];
    }
    if (!held) {
      this.moved.fill(0);
      for (let j = 0; j < this.jets.length; j++) this.rise(j, model.flows[this.jets[j].opening].forward);
      this.sink();
    }
    this.carry(out);
  }

  /** How the net inflows change with the flow of jet j, by difference; the masses at x are found again after. */
  jetSlope(x: Float64Array, j: number, out: Float64Array): void {
    const flow = this.model.flows[this.jets[j].opening].forward;
    const step = 1e-4 * flow + 1e-7;
    this.evaluate(x);
    this.rise(j, -flow);
    this.rise(j, flow + step);
    this.carry(out);
    for (let i = 0; i < out.length; i++) out[i] = (out[i] - this.net[i]) / step;
    this.evaluate(x);
  }

  private readGas(x: Float64Array): void {
    const { model, origins } = this;
    for (let i = 0; i < origins.length; i++) {
      const T = x[model.gas + origins[i]];
      const f = x[model.fuel + origins[i]];
      this.temperature[i] = T;
      this.fuel[i] = f;
      this.enthalpy[i] =
        (1 - f) * (gasEnthalpy(model.airPolynomial, T) - model.airDatum) +
        f * (gasEnthalpy(model.fuelPolynomial, T) - model.fuelDatum);
    }
  }

  /** What the masses carry from layer to layer. A jet's gas has been set down by its opening where it enters. */
  private carry(out: Float64Array): void {
    const { zones, jets, moved, sunk, enthalpy, fuel, temperature, wall } = this;
    const n = zones.length;
    out.fill(0);
    for (let i = 0; i < n + jets.length; i++) {
      const leaves = 3 * (i < n ? i : jets[i - n].level);
      for (let k = 0; k < n; k++) {
        const mass = moved[i * n + k];
        if (mass === 0) continue;
        shift(out, leaves, 3 * k, mass, mass * enthalpy[i], mass * fuel[i]);
      }
    }
    for (let k = 1; k < n; k++) {
      if (sunk[k] === 0) continue;
      const colder = 0.5 * (temperature[k] - wall[k] + temperature[k - 1] - wall[k - 1]);
      const heat = 0.5 * (enthalpy[k] + enthalpy[k - 1]) - SINKING_COLDNESS * HEAT * colder;
      shift(out, 3 * k, 3 * k - 3, sunk[k], sunk[k] * heat, sunk[k] * 0.5 * (fuel[k] + fuel[k - 1]));
    }
  }

  /**
   * A hot stream rises from the layer that it enters, takes in gas of every layer that it passes, and spreads out where what
   * stands above is as hot as it has become. Adds its masses by origin; a negative flow takes the same flow's back.
   */
  private rise(j: number, signed: number): void {
    const { model, zones, temperature, moved, plume, floors } = this;
    const n = zones.length;
    const jet = this.jets[j];
    const flow = Math.abs(signed);
    const sign = Math.sign(signed);
    if (flow === 0) return;
    plume.fill(0);
    plume[n + j] = flow;
    let T = temperature[n + j];
    let mass = flow;
    let share = 1;
    for (let k = jet.level; k < n; k++) {
      const on = k < n - 1 ? within((T - temperature[k]) / apart(temperature[k + 1] - temperature[k])) : 0;
      for (let i = 0; i < plume.length; i++) {
        moved[i * n + k] += sign * (1 - on) * plume[i];
        plume[i] *= on;
      }
      if (on <= 0) return;
      mass *= on;
      share *= on;
      const from = k === jet.level ? Math.max(floors[k], Math.min(jet.centre, floors[k + 1])) : floors[k];
      const Tk = temperature[k];
      const ambient = { density: model.network.outdoors.pressure / (model.airConstant * Tk), temperature: Tk };
      const perMetre = jetEntrainment(mass * HEAT * (T - Tk), { temperature: T, width: jet.width }, ambient);
      const taken = share * model.network.entrainment * perMetre * (floors[k + 1] - from);
      plume[k] += taken;
      T = (mass * T + taken * Tk) / (mass + taken);
      mass += taken;
    }
  }

  /**
   * Gas cooled by the walls sinks along them. At the edge of two layers gas and wall are half the one's, half the other's: what
   * the layer above is in its middle would carry its heat down, the more the thicker the layers.
   */
  private sink(): void {
    const { model, column, temperature, wall, sunk } = this;
    const { pressure } = model.network.outdoors;
    for (let k = this.zones.length - 1; k > 0; k--) {
      const edge = { gas: 0.5 * (temperature[k] + temperature[k - 1]), wall: 0.5 * (wall[k] + wall[k - 1]) };
      const along = wallDownflow(this.roof - this.floors[k], edge, pressure);
      sunk[k] = model.network.downflow * along * column.edges[k - 1];
    }
  }
}

/** Take mass, heat and fuel from one place of `out` to another. */
function shift(out: Float64Array, from: number, to: number, mass: number, heat: number, fuel: number): void {
  out[from] -= mass;
  out[from + 1] -= heat;
  out[from + 2] -= fuel;
  out[to] += mass;
  out[to + 1] += heat;
  out[to + 2] += fuel;
}

/** Rounding of the ends of a share. */
const ROUND = 0.1;

/** A share between 0 and 1, its ends rounded. */
function within(x: number): number {
  if (x <= -ROUND) return 0;
  if (x >= 1 + ROUND) return 1;
  if (x < ROUND) return ((x + ROUND) * (x + ROUND)) / (4 * ROUND);
  if (x > 1 - ROUND) return 1 - ((1 + ROUND - x) * (1 + ROUND - x)) / (4 * ROUND);
  return x;
}

/** A difference of temperatures in a divisor: never below some kelvins, without a corner. */
function apart(difference: number): number {
  return 0.5 * (difference + Math.sqrt(difference * difference + 4 * LEAST_APART * LEAST_APART));
}

