/** Radiation between grey, diffuse surfaces: emission, two surfaces, shields. Heat flows are positive out of the first. */
import { STEFAN_BOLTZMANN } from './constants.js';

/**
 * Emissive power of a grey surface, eps sigma T^4.
 * @param emissivity [-]; 1 gives the irradiation from large surroundings at T
 * @param T [K]
 * @returns [W/m2]
 * @example emissivePower(0.8, 473.15) // 2273
 * Reference: Stefan-Boltzmann law.
 */
export function emissivePower(emissivity: number, T: number): number {
  const square = T * T;
  return emissivity * STEFAN_BOLTZMANN * square * square;
}

/**
 * Net flux from a small grey surface to large surroundings, eps sigma (Ts^4 - Tsur^4).
 * @param emissivity of the small surface [-]
 * @param surface, surroundings [K]
 * @returns [W/m2], positive when the surface loses
 * Reference: Incropera et al. (2007), 6th ed., eq. 1.7.
 */
export function netGreyFlux(emissivity: number, surface: number, surroundings: number): number {
  return emissivePower(emissivity, surface) - emissivePower(emissivity, surroundings);
}

/** One surface of an exchange. */
export interface GreySurface {
  /** [m2], or [m] per length of a long body */
  area: number;
  /** 0..1, above 0 */
  emissivity: number;
}

/**
 * Two grey surfaces that see each other and nothing else: sigma (T1^4 - T2^4) over the sum of the surface resistances
 * (1 - eps)/(eps A) and the space resistance 1/(A1 F12).
 * @param first, second with temperatures [K]; a black aperture is a surface of emissivity 1
 * @param viewFactor from the first to the second [-]
 * @returns [W], or [W/m] when areas are per length
 * Reference: Incropera et al. (2007), 6th ed., eq. 13.18.
 */
export function twoSurfaceExchange(
  first: GreySurface & { temperature: number },
  second: GreySurface & { temperature: number },
  viewFactor: number,
): number {
  const resistance = surfaceResistance(first) + 1 / (first.area * viewFactor) + surfaceResistance(second);
  return netGreyFlux(1, first.temperature, second.temperature) / resistance;
}

function surfaceResistance({ area, emissivity }: GreySurface): number {
  return (1 - emissivity) / (emissivity * area);
}

/** A shield between two surfaces: its area (both faces alike) and the emissivity of each face. */
export interface Shield {
  area: number;
  /** of the face towards the first surface, and of that towards the second */
  emissivities: [number, number];
}

/**
 * Two surfaces, the first enclosed by or parallel to the second, with shields between, each seen wholly by the next.
 * @param shields from the first surface outwards; none gives the plain exchange with view factor 1
 * @returns [W], or [W/m] when areas are per length
 * Reference: Incropera et al. (2007), 6th ed., eq. 13.28.
 */
export function shieldedExchange(
  first: GreySurface & { temperature: number },
  second: GreySurface & { temperature: number },
  shields: readonly Shield[],
): number {
  let resistance = surfaceResistance(first) + 1 / first.area + surfaceResistance(second);
  for (const { area, emissivities } of shields) {
    resistance += 1 / area;
    for (const emissivity of emissivities) resistance += surfaceResistance({ area, emissivity });
  }
  return netGreyFlux(1, first.temperature, second.temperature) / resistance;
}
