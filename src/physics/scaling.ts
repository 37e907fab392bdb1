/** Hot steel in air turns to scale. */
import { GAS_CONSTANT } from './constants.js';

/**
 * Oxygen taken up [kg2/(m4 s)] and activation energy [J/mol]: W2 = K t, K = 0.37 g2/(cm4 s) exp(-33,000 cal/mol/(R T)).
 */
const UPTAKE = 0.37 * 100;
const ACTIVATION = 33_000 * 4.184;
/**
 * Iron that goes with the oxygen of wustite, by mass: 55.845/15.999. Magnetite takes a quarter less, haematite a third.
 */
const IRON_PER_OXYGEN = 55.845 / 15.999;
/** [kg/m3]. EN 1993-1-2:2005, 3.2.2. */
const DENSITY = 7850;

/**
 * Steel that one face of carbon steel loses to scale, which slows its own growth: (3.49/rho) sqrt(K t).
 *
 * Measured on iron in air, 500-900 °C. Below that the line is carried on: such steel loses next to nothing by either.
 * Above 570 °C most of the scale is wustite, below it is magnetite and takes a quarter less iron than counted here.
 * Flue gas with air to spare scales steel by the same law; steam in it, salt and ash add to that.
 *
 * @param T [K]
 * @param time since the face was bare [s]
 * @returns [m]
 * @example 1e6 * scaleLoss(873.15, 3600) // 12.03 µm
 * Reference: Stanley, von Hoene & Huntoon (1950), Oxidation of Pure Iron, Trans. Am. Soc. Metals 43, 426: K and its
 * temperatures as abstracted by the Bureau of Mines; the units are ours to read (they agree with Paidassi's scale to 15
 * %).
 */
export function scaleLoss(T: number, time: number): number {
  const uptake = UPTAKE * Math.exp(-ACTIVATION / (GAS_CONSTANT * T));
  return (IRON_PER_OXYGEN / DENSITY) * Math.sqrt(uptake * time);
}

/** Steel that goes into a thickness of wustite: 5.7 g/cm3 of it, 77.7 % iron (from memory). */
const STEEL_PER_SCALE = (5700 * 0.777) / DENSITY;

/**
 * Steel that one face loses a second where scale falls off as soon as it has a thickness, and grows anew: K' / (0.56
 * s), with K' t the square of `scaleLoss`. A pit is heated and cooled time and again, and thick scale does not stay on.
 *
 * @param T [K]
 * @param thickness of the scale that falls off [m]
 * @returns [m/s]
 * @example 1e12 * scalingRate(773.15, 1e-4) // 60.9 pm/s, 0.22 µm an hour
 * Reference: the parabolic law of `scaleLoss`, cut off; the thickness is an estimate.
 */
export function scalingRate(T: number, thickness: number): number {
  return scaleLoss(T, 1) ** 2 / (STEEL_PER_SCALE * thickness);
}
