/**
 * Convection coefficients of all faces of a network: which relation a face takes, and free and forced flow together.
 */
import { airConductivity, airKinematicViscosity, airPrandtl } from '../physics/air.js';
import { nusseltCrossCylinder, nusseltFlatPlate, nusseltPipe } from '../physics/forcedConvection.js';
import {
  nusseltHorizontalCylinder,
  nusseltPlateDown,
  nusseltPlateUp,
  nusseltVerticalPlate,
  rayleigh,
} from '../physics/freeConvection.js';
import { mixedConvection } from '../physics/mixedConvection.js';
import { SHAPE, type Model } from './model.js';
import { OUTDOORS } from './types.js';

/**
 * About how a coefficient goes with its film temperature at the same difference: by this power. Guides iterations
 * alone.
 */
const FILM_POWER = -0.5;
/** Nusselt number at which a level plate that heats what is above it turns from the fourth to the third root. */
const PLATE_TURNS = 25;

type FreeRelation = 'nusseltHorizontalCylinder' | 'nusseltVerticalPlate' | 'nusseltPlateUp' | 'nusseltPlateDown';

/** Free-convection relation of a face by how it stands; `rises` says that heat goes upwards off a level surface. */
export function freeRelation(shape: number, rises: boolean): FreeRelation {
  if (shape === SHAPE.horizontalCylinder) return 'nusseltHorizontalCylinder';
  if (shape === SHAPE.vertical || shape === SHAPE.verticalCylinder) return 'nusseltVerticalPlate';
  return rises ? 'nusseltPlateUp' : 'nusseltPlateDown';
}

/**
 * Does heat rise off a level face inside? A roof that takes heat from hotter gas is a hot plate facing up turned over.
 */
export function risesInside(shape: number, surface: number, gas: number): boolean {
  return (shape === SHAPE.up) === gas > surface;
}

/** Does heat rise off a level face outdoors? */
export function risesOutside(shape: number, surface: number, air: number): boolean {
  return (shape === SHAPE.up) === surface > air;
}

/** Is a face a roof or a floor? */
function isLevel(shape: number): boolean {
  return shape === SHAPE.up || shape === SHAPE.down;
}

/** Does wind cross a face as it crosses a cylinder? */
export function windCrosses(shape: number): boolean {
  return shape === SHAPE.horizontalCylinder || shape === SHAPE.verticalCylinder;
}

/**
 * Convection coefficient of each face, and how it goes with the difference of temperature.
 *
 * It is reckoned in short passes over all faces and not face by face: a pass is small enough for the engine to take the
 * relations into it, where each call of one with its numbers would cost as much again as the relation.
 */
export class Convection {
  /** at the last `evaluate` [W/(m2 K)] */
  readonly coefficient: Float64Array;
  /** power of the temperature difference that each goes by there */
  private readonly power: Float64Array;
  /** free convection alone [W/(m2 K)] */
  private readonly free: Float64Array;
  /** forced convection alone [W/(m2 K)] */
  private readonly forced: Float64Array;
  /** on both together [-] */
  private readonly factor: Float64Array;
  /**
   * what is before each face less the face [K], the mean of both, and of the air there: [W/(m K)], [-], [m2/s];
   * Rayleigh number
   */
  private readonly difference: Float64Array;
  private readonly film: Float64Array;
  private readonly conductivity: Float64Array;
  private readonly prandtl: Float64Array;
  private readonly viscosity: Float64Array;
  private readonly ra: Float64Array;
  private readonly inside: Int32Array;
  private readonly outside: Int32Array;
  /** per zone: [m], [-] */
  private readonly diameter: Float64Array;
  private readonly diameterOverLength: Float64Array;

  constructor(private readonly model: Model) {
    const { faces, zones } = model.network;
    const face = () => new Float64Array(faces.length);
    this.coefficient = face();
    this.power = face();
    this.free = face();
    this.forced = face();
    const { innerConvection, levelConvection, outsideConvection } = model.network;
    this.factor = Float64Array.from(faces, ({ zone }, i) => {
      if (zone !== OUTDOORS) return innerConvection;
      return isLevel(model.faceShape[i]) ? levelConvection : outsideConvection;
    });
    this.difference = face();
    this.film = face();
    this.conductivity = face();
    this.prandtl = face();
    this.viscosity = face();
    this.ra = face();
    this.inside = model.insideFaces;
    this.outside = model.outsideFaces;
    this.diameter = Float64Array.from(zones, ({ hydraulicDiameter }) => hydraulicDiameter);
    this.diameterOverLength = Float64Array.from(zones, ({ hydraulicDiameter, length }) => hydraulicDiameter / length);
  }

  /** Coefficients at the unknowns x, with the speeds of the last `flowState`. */
  evaluate(x: Float64Array): void {
    const { outdoors } = this.model.network;
    this.films(x);
    this.numbers();
    this.alone();
    this.through();
    if (outdoors.wind > 0) this.windy();
    else this.calm();
    this.together();
  }

  /**
   * Change of a face's convected heat per area with its own temperature, to within the change of air's properties
   * [W/(m2 K)]; with the other side's it changes by the same and -2 `filmSlope`.
   * @param difference other side less the face [K]
   */
  slope(face: number, difference: number, film: number): number {
    const coefficient = this.coefficient[face];
    return -coefficient * (1 + this.power[face]) + filmSlope(coefficient, difference, film);
  }

  /** Power of the temperature difference that a face's coefficient goes by. */
  differencePower(face: number): number {
    return this.power[face];
  }

  /** Air between each face and what is before it. */
  private films(x: Float64Array): void {
    const { model, difference, film, conductivity, viscosity } = this;
    const { faceNode, faceZone, gas } = model;
    const { temperature, pressure } = model.network.outdoors;
    for (let i = 0; i < faceNode.length; i++) {
      const zone = faceZone[i];
      const surface = x[faceNode[i]];
      const other = zone < 0 ? temperature : x[gas + zone];
      const mean = 0.5 * (surface + other);
      film[i] = mean;
      difference[i] = other - surface;
      conductivity[i] = airConductivity(mean);
      viscosity[i] = airKinematicViscosity(mean, pressure);
    }
  }

  private numbers(): void {
    const { model, difference, film, viscosity, prandtl, ra } = this;
    const { faceLength } = model;
    for (let i = 0; i < film.length; i++) {
      prandtl[i] = airPrandtl(film[i]);
      ra[i] = rayleigh(difference[i], film[i], faceLength[i], viscosity[i], prandtl[i]);
    }
  }

  /** Free convection, and by which power of the difference it goes. */
  private alone(): void {
    const { free, power, difference, ra, prandtl, conductivity, model } = this;
    const { faceShape, faceLength, faceZone } = model;
    for (let i = 0; i < free.length; i++) {
      const shape = faceShape[i];
      let nusselt: number;
      if (shape === SHAPE.horizontalCylinder) {
        nusselt = nusseltHorizontalCylinder(ra[i], prandtl[i]);
        power[i] = (1 - 0.6 / Math.sqrt(nusselt)) / 3;
      } else if (shape === SHAPE.vertical || shape === SHAPE.verticalCylinder) {
        nusselt = nusseltVerticalPlate(ra[i], prandtl[i]);
        power[i] = (1 - 0.825 / Math.sqrt(nusselt)) / 3;
      } else if ((shape === SHAPE.up) === (faceZone[i] < 0 ? difference[i] < 0 : difference[i] > 0)) {
        nusselt = nusseltPlateUp(ra[i]);
        power[i] = nusselt < PLATE_TURNS ? 1 / 4 : 1 / 3;
      } else {
        nusselt = nusseltPlateDown(ra[i]);
        power[i] = 1 / 5;
      }
      free[i] = (nusselt * conductivity[i]) / faceLength[i];
    }
  }

  /** Inside: by the through-flow. */
  private through(): void {
    const { inside, viscosity, prandtl, conductivity, diameter, diameterOverLength, forced, model } = this;
    const { faceZone, speed } = model;
    for (let k = 0; k < inside.length; k++) {
      const i = inside[k];
      const z = faceZone[i];
      const re = (speed[z] * diameter[z]) / viscosity[i];
      forced[i] = (nusseltPipe(re, prandtl[i], diameterOverLength[z]) * conductivity[i]) / diameter[z];
    }
  }

  /** Outdoors: by the wind. */
  private windy(): void {
    const { outside, viscosity, prandtl, conductivity, forced, model } = this;
    const { faceShape, faceWindLength } = model;
    const { wind } = model.network.outdoors;
    for (let k = 0; k < outside.length; k++) {
      const i = outside[k];
      const length = faceWindLength[i];
      const re = (wind * length) / viscosity[i];
      const nusselt = windCrosses(faceShape[i])
        ? nusseltCrossCylinder(re, prandtl[i])
        : nusseltFlatPlate(re, prandtl[i]);
      forced[i] = (nusselt * conductivity[i]) / length;
    }
  }

  /** Outdoors without wind. */
  private calm(): void {
    const { outside, forced } = this;
    for (let k = 0; k < outside.length; k++) forced[outside[k]] = 0;
  }

  /** Free and forced convection cubed together, times its factor, and how the power of the difference fades in it. */
  private together(): void {
    const { free, forced, power, coefficient, factor } = this;
    for (let i = 0; i < free.length; i++) {
      const both = mixedConvection(free[i], forced[i]);
      const share = free[i] / both;
      power[i] = both > 0 ? power[i] * share * share * share : 0;
      coefficient[i] = factor[i] * both;
    }
  }
}

/** The part of a convected heat's slope that comes of the film temperature [W/(m2 K)]. */
export function filmSlope(coefficient: number, difference: number, film: number): number {
  return (0.5 * FILM_POWER * coefficient * difference) / film;
}
