/**
 * Wood as a fuel: net heat, air demand, combustion products and the fire that air allows. Complete combustion; the
 * balance of the elements closes exactly, since the atomic masses here are the differences of the molar masses of the
 * gases.
 */
import { MOLAR_MASS, dryAir } from './gasMixture.js';

/** Ultimate analysis: mass fractions of dry wood; they add up to 1. */
export interface WoodComposition {
  carbon: number;
  hydrogen: number;
  oxygen: number;
  nitrogen: number;
  ash: number;
}

const OXYGEN_ATOM = MOLAR_MASS.O2 / 2;
const CARBON_ATOM = MOLAR_MASS.CO2 - MOLAR_MASS.O2;
const HYDROGEN_PAIR = MOLAR_MASS.H2O - OXYGEN_ATOM;

/** Latent heat of water at 25 °C as the wood-fuel handbooks round it [J/kg]. */
const LATENT_HEAT_HANDBOOK = 2.44e6;

/** Net heat of dry wood [J/kg]. AIEL, Wood Fuels Handbook. */
export const DRY_NET_HEAT = 19.0e6;

/**
 * Heat released per kg of oxygen consumed by organic fuels [J/kg], within 5 %. Huggett (1980), Fire and Materials 4,
 * 61.
 */
export const HEAT_PER_OXYGEN = 13.1e6;

/**
 * Net heat of wood as fired: qd (1 - M) - 2.44 M MJ/kg.
 * @param moisture share of the wet mass [-]; 0-0.6
 * @param dryNetHeat net heat of dry wood [J/kg]; default 19.0 MJ/kg
 * @returns [J per kg as fired]
 * @example netHeatAsFired(0.2) // 14.71e6 J/kg
 * Reference: AIEL, Wood Fuels Handbook; OENORM and EN ISO 18125 use the same relation.
 */
export function netHeatAsFired(moisture: number, dryNetHeat = DRY_NET_HEAT): number {
  return dryNetHeat * (1 - moisture) - LATENT_HEAT_HANDBOOK * moisture;
}

/**
 * Water formed by the hydrogen of a fuel, H M(H2O)/M(H2).
 * @param hydrogen mass fraction
 * @returns [kg per kg fuel]
 * @example waterFormed(0.06) // 0.536
 * Reference: balance of the elements, 8.94 times the hydrogen.
 */
export function waterFormed(hydrogen: number): number {
  return (hydrogen * MOLAR_MASS.H2O) / HYDROGEN_PAIR;
}

/**
 * Oxygen to burn dry wood completely, less what it holds: O2/C per mole of carbon, half an O2 per H2.
 * @param c mass fractions of dry wood
 * @returns [kg per kg dry wood]
 * @example stoichiometricOxygen({ carbon: 0.5, hydrogen: 0.06, oxygen: 0.44, nitrogen: 0, ash: 0 }) // 1.368
 * Reference: balance of the elements.
 */
export function stoichiometricOxygen(c: WoodComposition): number {
  return (c.carbon * MOLAR_MASS.O2) / CARBON_ATOM + (c.hydrogen * OXYGEN_ATOM) / HYDROGEN_PAIR - c.oxygen;
}

/**
 * Dry air that holds the stoichiometric oxygen.
 * @param c mass fractions of dry wood
 * @returns [kg per kg dry wood]
 * @example stoichiometricAir({ carbon: 0.5, hydrogen: 0.06, oxygen: 0.44, nitrogen: 0, ash: 0 }) // 5.91
 * Reference: balance of the elements, air 20.95 % O2 by volume.
 */
export function stoichiometricAir(c: WoodComposition): number {
  return stoichiometricOxygen(c) / dryAir.O2;
}

interface CombustionYields {
  CO2: number;
  H2O: number;
  N2: number;
  /** negative: taken from the gas */
  O2: number;
  /** stays in the firebox */
  ash: number;
}

/**
 * What burning adds to the gas, per kg of wood as fired. The five add up to the share of the wood that the composition
 * accounts for (1 when it sums to 1).
 * @param composition mass fractions of dry wood
 * @param moisture share of the wet mass [-]
 * @returns [kg per kg as fired]
 * @example combustionYields({ carbon: 0.5, hydrogen: 0.06, oxygen: 0.44, nitrogen: 0, ash: 0 }, 0.2).CO2 // 1.466
 * Reference: balance of the elements.
 */
export function combustionYields(composition: WoodComposition, moisture: number): CombustionYields {
  const dry = 1 - moisture;
  return {
    CO2: (dry * composition.carbon * MOLAR_MASS.CO2) / CARBON_ATOM,
    H2O: dry * waterFormed(composition.hydrogen) + moisture,
    N2: dry * composition.nitrogen,
    O2: -dry * stoichiometricOxygen(composition),
    ash: dry * composition.ash,
  };
}

/** A fuel as the oxygen limit sees it. */
interface LimitedFuel {
  /** net heat [J per kg of fuel as fired], and per kg of oxygen it takes */
  heatValue: number;
  heatPerOxygen: number;
  /** gas made per kg of fuel */
  gasPerFuel: number;
  /** share of the oxygen that a fire can use [-]; 0: not limited */
  oxygenUse: number;
}

/**
 * Fuel share of a gas when the fire has burned all the oxygen it can use: in fresh air m a fire releases at most its
 * heat per oxygen times the usable oxygen of m; the fuel gas of that heat, over the gas it makes.
 * @param fuel what burns
 * @param oxygen mass fraction of the outdoor air [-]
 * @returns kg of fuel gas per kg of gas [-]; Infinity where the fire is not limited
 * @example fuelShareLimit({ heatValue: 14.71e6, heatPerOxygen: 13.1e6, gasPerFuel: 1, oxygenUse: 0.9 }, 0.2314) // 0.156
 * Reference: oxygen consumption, Huggett (1980), Fire and Materials 4, 61.
 */
export function fuelShareLimit(fuel: LimitedFuel, oxygen: number): number {
  if (!(fuel.oxygenUse > 0)) return Infinity;
  const perAir = (fuel.gasPerFuel * fuel.heatPerOxygen * fuel.oxygenUse * oxygen) / fuel.heatValue;
  return perAir / (1 + perAir);
}
