import { humidAir, moistureFraction } from '../physics/atmosphere.js';
import {
  gasConstantOf,
  gasDensity,
  gasEnthalpy,
  gasSpecificHeat,
  mixturePolynomial,
  type Composition,
  type GasPolynomial,
} from '../physics/gasMixture.js';
import { zoneEmissivity } from '../physics/gasRadiation.js';
import type { DuctFlow } from '../physics/ductFlow.js';
import { emptyOpeningFlow, type OpeningFlow } from '../physics/opening.js';
import { fuelShareLimit } from '../physics/wood.js';
import { fireShares, fireViews } from './fireViews.js';
import type { FaceShape, Network } from './types.js';
import { PlugFlow } from './plugFlow.js';
import { ColumnStreams } from './streams.js';
import { OUTDOORS } from './types.js';

/** Shapes as small numbers, for the hot loops. */
export const SHAPE: Record<FaceShape, number> = {
  horizontalCylinder: 0,
  verticalCylinder: 1,
  vertical: 2,
  up: 3,
  down: 4,
};

/**
 * A network made ready for the solver: structure in typed arrays, the order of the unknowns, and work space.
 *
 * Unknowns, in this order: node temperatures [K], stem temperatures [K], surface-node temperatures [K], then a zone
 * each: gas temperature [K], fuel share of the gas [kg/kg], pressure against outdoors at the ground [Pa]; last the fire
 * [W]. Where zones stand on each other the weight of their gas sets the pressure of all but the lowest; in place of
 * theirs stands what rises into them from the zone below [kg/s].
 */
export class Model {
  readonly nodeCount: number;
  readonly stemCount: number;
  readonly zoneCount: number;
  readonly surfaceCount: number;
  readonly differential: number;
  readonly size: number;
  /** first index of each block of unknowns */
  readonly surfaceNode: number;
  readonly gas: number;
  readonly fuel: number;
  readonly pressure: number;
  readonly fire: number;
  /**
   * first row of each block of balances behind those of the plates: of surface nodes from 0 on, of gas, fuel, mass and
   * the fire
   */
  readonly gasRow: number;
  readonly fuelRow: number;
  readonly massRow: number;
  readonly fireRow: number;

  /** per zone: the unknown of the surface node through which its walls exchange */
  readonly surfaceOf: Int32Array;
  readonly faceNode: Int32Array;
  readonly faceZone: Int32Array;
  readonly faceArea: Float64Array;
  readonly faceShape: Int32Array;
  readonly faceLength: Float64Array;
  readonly faceWindLength: Float64Array;
  readonly faceEmissivity: Float64Array;
  readonly faceFireShare: Float64Array;
  /** share of the fire's radiation that leaves for outdoors */
  readonly fireOutShare: number;
  /** 1 where the fire's plume strikes */
  readonly faceStruck: Uint8Array;
  /** per zone: 1 where its surface node has walls */
  readonly zoneHasFaces: Uint8Array;
  readonly faceSunShare: Float64Array;
  readonly faceWet: Float64Array;
  /** faces inside, and those outdoors */
  readonly insideFaces: Int32Array;
  readonly outsideFaces: Int32Array;

  /**
   * gas: outdoor air and fully burnt fuel gas, enthalpies counted from outdoors, so that what leaves carries its loss
   */
  readonly airPolynomial: GasPolynomial;
  readonly fuelPolynomial: GasPolynomial;
  airDatum = 0;
  fuelDatum = 0;
  readonly airConstant: number;
  readonly fuelConstant: number;
  outdoorDensity = 0;
  /** share of the fire that leaves as radiation, where it was last reckoned [-] */
  radiantShare: number;
  /** fuel share of the gas at which the usable oxygen is spent; Infinity where the fire is not limited */
  readonly fuelLimit: number;
  readonly airComposition: Composition;
  /** water vapour in the outdoor air, mass fraction */
  readonly outdoorVapour: number;

  /** per zone, refreshed by `gasState` */
  readonly density: Float64Array;
  readonly enthalpy: Float64Array;
  readonly heatCapacity: Float64Array;
  readonly emissivity: Float64Array;
  readonly emissivitySlope: Float64Array;
  readonly emissivityFuelSlope: Float64Array;
  readonly vapour: Float64Array;
  /** per zone, refreshed by `flowState`: through-flow [kg/s], its mean speed [m/s] */
  readonly through: Float64Array;
  readonly speed: Float64Array;
  /** per opening */
  readonly flows: OpeningFlow[];
  readonly exchange: Float64Array;
  readonly openFrom: Int32Array;
  readonly openTo: Int32Array;
  /** heights of its lower and upper edge [m], and the wind's pressure coefficient there */
  readonly openLow: Float64Array;
  readonly openHigh: Float64Array;
  readonly openWind: Float64Array;
  /** pressure difference at its lower and upper edge [Pa], refreshed by `flowState` */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** openings that are neither stacks nor slices of a full section */
  readonly holes: Int32Array;
  readonly columns: ColumnStreams[];
  /**
   * per opening: the column in which its gas rises as a jet, how the column's streams change with its flow, where its
   * own gas ends
   */
  readonly jetOf: ({ zones: readonly number[]; byFlow: Float64Array; own: Float64Array } | undefined)[];
  /**
   * per zone: the zone that it stands on (-1: none), the lowest of its column, and which mass balance of all columns is
   * its own
   */
  readonly under: Int32Array;
  readonly lowest: Int32Array;
  readonly columnOf: Int32Array;
  readonly columnCount: number;
  /**
   * per zone, refreshed by `flowState`: pressure against outdoors at the ground, as if its gas reached down there [Pa]
   */
  readonly grounded: Float64Array;
  readonly plugFlow: PlugFlow;
  /** work space of stack flows */
  readonly duct: DuctFlow = { velocity: 0, slope: 0 };

  constructor(readonly network: Network) {
    const { zones, nodes, stems, faces, openings, outdoors } = network;
    this.radiantShare = network.fire.radiantShare;
    this.nodeCount = nodes.length;
    this.stemCount = stems.length;
    this.zoneCount = zones.length;
    this.differential = this.nodeCount + this.stemCount;
    this.surfaceNode = this.differential;
    this.surfaceOf = surfacesOf(network, this.surfaceNode);
    this.surfaceCount = 1 + Math.max(...this.surfaceOf) - this.surfaceNode;
    this.gas = this.surfaceNode + this.surfaceCount;
    this.fuel = this.gas + this.zoneCount;
    this.pressure = this.fuel + this.zoneCount;
    this.fire = this.pressure + this.zoneCount;
    this.size = this.fire + 1;
    this.gasRow = this.gas - this.differential;
    this.fuelRow = this.fuel - this.differential;
    this.massRow = this.pressure - this.differential;
    this.fireRow = this.fire - this.differential;

    this.faceNode = Int32Array.from(faces, (f) => f.node);
    this.faceZone = Int32Array.from(faces, (f) => f.zone);
    this.faceArea = Float64Array.from(faces, (f) => f.area);
    this.faceShape = Int32Array.from(faces, (f) => SHAPE[f.shape]);
    this.faceLength = Float64Array.from(faces, (f) => f.length);
    this.faceWindLength = Float64Array.from(faces, (f) => f.windLength);
    this.faceEmissivity = Float64Array.from(faces, (f) => f.emissivity);
    this.faceFireShare = fireShares(network);
    this.fireOutShare = network.fire.outArea / fireViews(network);
    this.faceStruck = new Uint8Array(faces.length);
    for (const i of network.fire.roof?.faces ?? []) this.faceStruck[i] = 1;
    this.faceSunShare = Float64Array.from(faces, (f) => f.sunShare);
    this.faceWet = Float64Array.from(faces, (f) => f.wet);
    const indices = Int32Array.from(faces.keys());
    this.insideFaces = indices.filter((i) => faces[i].zone !== OUTDOORS);
    this.outsideFaces = indices.filter((i) => faces[i].zone === OUTDOORS);
    const withFaces = new Set(faces.flatMap(({ zone }) => (zone === OUTDOORS ? [] : [this.surfaceOf[zone]])));
    this.zoneHasFaces = Uint8Array.from(zones, (_, z) => (withFaces.has(this.surfaceOf[z]) ? 1 : 0));

    this.airComposition = humidAir(outdoors.air, outdoors.humidityRatio);
    this.outdoorVapour = moistureFraction(outdoors.humidityRatio);
    this.airPolynomial = mixturePolynomial(this.airComposition);
    this.fuelPolynomial = mixturePolynomial(network.fire.gasComposition);
    this.airConstant = gasConstantOf(this.airComposition);
    this.fuelConstant = gasConstantOf(network.fire.gasComposition);
    this.turnOutdoors(outdoors.temperature, outdoors.wind);

    this.fuelLimit = fuelShareLimit(network.fire, this.airComposition.O2);

    const zone = () => new Float64Array(zones.length);
    this.density = zone();
    this.enthalpy = zone();
    this.heatCapacity = zone();
    this.emissivity = zone();
    this.emissivitySlope = zone();
    this.emissivityFuelSlope = zone();
    this.vapour = zone();
    this.through = zone();
    this.speed = zone();
    this.flows = openings.map(() => emptyOpeningFlow());
    this.exchange = new Float64Array(openings.length);
    this.openFrom = Int32Array.from(openings, ({ from }) => from);
    this.openTo = Int32Array.from(openings, ({ to }) => to);
    this.openLow = Float64Array.from(openings, ({ centre, extent }) => centre - 0.5 * extent);
    this.openHigh = Float64Array.from(openings, ({ centre, extent }) => centre + 0.5 * extent);
    this.openWind = Float64Array.from(openings, ({ windPressure }) => windPressure);
    this.low = new Float64Array(openings.length);
    this.high = new Float64Array(openings.length);
    this.holes = Int32Array.from(openings.keys()).filter((i) => !openings[i].stack && !openings[i].inner);
    this.grounded = zone();
    this.under = new Int32Array(zones.length).fill(-1);
    this.lowest = Int32Array.from(zones, (_, z) => z);
    this.columnOf = new Int32Array(zones.length);
    for (const { zones: stacked } of network.columns) {
      for (let k = 1; k < stacked.length; k++) {
        this.under[stacked[k]] = stacked[k - 1];
        this.lowest[stacked[k]] = stacked[0];
      }
    }
    const bottoms = [...new Set(this.lowest)];
    this.lowest.forEach((lowest, z) => (this.columnOf[z] = bottoms.indexOf(lowest)));
    this.columnCount = bottoms.length;
    this.columns = network.columns.map((column) => new ColumnStreams(this, column));
    this.jetOf = openings.map((_, i) => {
      for (const { zones: stacked, jets } of this.columns) {
        const jet = jets.find(({ opening }) => opening === i);
        if (jet) return { zones: stacked, byFlow: jet.byFlow, own: jet.own };
      }
      return undefined;
    });
    this.plugFlow = new PlugFlow(this);
  }

  /**
   * Other air [K] and wind [m/s] from now on; what surrounds the pit goes with the air. Nothing stored changes: plates
   * count their heat from no outdoors, and gas stores none.
   */
  turnOutdoors(temperature: number, wind: number): void {
    const { outdoors } = this.network;
    outdoors.surroundings += temperature - outdoors.temperature;
    outdoors.temperature = temperature;
    outdoors.wind = wind;
    this.airDatum = gasEnthalpy(this.airPolynomial, temperature);
    this.fuelDatum = gasEnthalpy(this.fuelPolynomial, temperature);
    this.outdoorDensity = gasDensity(temperature, outdoors.pressure, this.airConstant);
  }

  /**
   * Density, enthalpy, heat capacity and emissivity of each zone's gas at the unknowns x. In short passes, as
   * convection is: see there.
   */
  gasState(x: Float64Array): void {
    this.densities(x);
    this.enthalpies(x);
    for (let z = 0; z < this.zoneCount; z++) this.emissivity[z] = this.zoneEmissivity(x, z, 0, 0);
  }

  private densities(x: Float64Array): void {
    const { network, gas, fuel, density, vapour, airConstant, fuelConstant } = this;
    const p = network.outdoors.pressure;
    const [inAir, inFuel] = [this.airComposition.H2O, network.fire.gasComposition.H2O];
    for (let z = 0; z < density.length; z++) {
      const f = x[fuel + z];
      density[z] = gasDensity(x[gas + z], p, (1 - f) * airConstant + f * fuelConstant);
      vapour[z] = blend(inAir, inFuel, f);
    }
  }

  private enthalpies(x: Float64Array): void {
    const { gas, fuel, enthalpy, heatCapacity, airPolynomial, fuelPolynomial, airDatum, fuelDatum } = this;
    for (let z = 0; z < enthalpy.length; z++) {
      const T = x[gas + z];
      const f = x[fuel + z];
      enthalpy[z] =
        (1 - f) * (gasEnthalpy(airPolynomial, T) - airDatum) + f * (gasEnthalpy(fuelPolynomial, T) - fuelDatum);
      heatCapacity[z] = (1 - f) * gasSpecificHeat(airPolynomial, T) + f * gasSpecificHeat(fuelPolynomial, T);
    }
  }

  /** Change of each zone's emissivity with its gas temperature [1/K] and with its fuel share [-], after `gasState`. */
  emissivitySlopes(x: Float64Array): void {
    const step = 1e-5;
    for (let z = 0; z < this.zoneCount; z++) {
      this.emissivitySlope[z] = this.zoneEmissivity(x, z, 1, 0) - this.emissivity[z];
      this.emissivityFuelSlope[z] = (this.zoneEmissivity(x, z, 0, step) - this.emissivity[z]) / step;
    }
  }

  /** Relative change of the gas constant with the fuel share: how much lighter the gas gets [-]. */
  fuelLightness(fuelShare: number): number {
    const step = this.fuelConstant - this.airConstant;
    return step / (this.airConstant + fuelShare * step);
  }

  /** Change of a zone's specific enthalpy with its fuel share [J/kg]. */
  enthalpyOfFuel(temperature: number): number {
    return (
      gasEnthalpy(this.fuelPolynomial, temperature) -
      this.fuelDatum -
      gasEnthalpy(this.airPolynomial, temperature) +
      this.airDatum
    );
  }

  /** Mass fraction of a species in a zone, never below zero. */
  massFraction(species: keyof Composition, fuelShare: number): number {
    return blend(this.airComposition[species], this.network.fire.gasComposition[species], fuelShare);
  }

  /** At x, its gas so much warmer [K] and with so much more fuel. */
  private zoneEmissivity(x: Float64Array, z: number, warmer: number, richer: number): number {
    const T = x[this.gas + z] + warmer;
    const f = x[this.fuel + z] + richer;
    const { airComposition: air, network } = this;
    const { gasComposition: fuel } = network.fire;
    const { beamLength, soot } = network.zones[z];
    const N2 = blend(air.N2, fuel.N2, f);
    const O2 = blend(air.O2, fuel.O2, f);
    const CO2 = blend(air.CO2, fuel.CO2, f);
    const H2O = blend(air.H2O, fuel.H2O, f);
    return zoneEmissivity(T, N2, O2, CO2, H2O, network.outdoors.pressure, beamLength, soot);
  }
}

/** Mass fraction in air with a share of fuel gas, never below zero. */
function blend(air: number, fuel: number, share: number): number {
  const y = (1 - share) * air + share * fuel;
  return y > 0 ? y : 0;
}

/** Per zone the index of its surface node, counted from `first`: the zones of a clear column share one. */
function surfacesOf({ zones, columns }: Network, first: number): Int32Array {
  const surfaceOf = new Int32Array(zones.length);
  let next = first;
  zones.forEach((_, z) => {
    const below = columns.find(({ clear, zones: all }) => clear && all.includes(z) && all[0] !== z);
    surfaceOf[z] = below ? surfaceOf[below.zones[0]] : next++;
  });
  return surfaceOf;
}
