/**
 * Wood as a fuel: net heat, air demand, combustion products and flame temperature. Complete combustion; the balance of the
 * elements closes exactly, since the atomic masses here are the differences of the molar masses of the gases.
 */
import { MOLAR_MASS, dryAir, gasEnthalpy, mixturePolynomial } from './gasMixture.js';
import type { Composition } from './gasMixture.js';

/** Ultimate analysis: mass fractions of dry wood. */
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

/** Latent heat of water at 25 °C [J/kg]; the wood-fuel handbooks round it to 2.44 MJ/kg. */
export const LATENT_HEAT_25C = 2.442e6;
const LATENT_HEAT_HANDBOOK = 2.44e6;

/** Heat released per kg of oxygen consumed by organic fuels [J/kg], within 5 %. Huggett (1980), Fire and Materials 4, 61. */
export const heatPerOxygen = 13.1e6;

/**
 * Net heat of wood as fired: qd (1 - M) - 2.44 M MJ/kg.
 * @param moisture share of the wet mass [-]; 0-0.6
 * @param dryNetHeat net heat of dry wood [J/kg]; default 19.0 MJ/kg
 * @returns [J per kg as fired]
 * @example netHeatAsFired(0.2) // 14.71e6
 * Reference: AIEL, Wood Fuels Handbook; OENORM and EN ISO 18125 use the same relation.
 */
export function netHeatAsFired(moisture: number, dryNetHeat = 19e6): number {
  return dryNetHeat * (1 - moisture) - LATENT_HEAT_HANDBOOK * moisture;
}

/**
 * Net heat of dry wood from its gross heat: gross less the latent heat of the water its hydrogen forms.
 * @param grossHeat [J/kg dry]
 * @param hydrogen mass fraction of dry wood
 * @returns [J/kg dry]
 * Reference: definition of net heat, EN ISO 18125.
 */
export function netFromGrossHeat(grossHeat: number, hydrogen: number): number {
  return grossHeat - LATENT_HEAT_25C * waterFormed(hydrogen);
}

/**
 * Water formed by the hydrogen of a fuel, H M(H2O)/M(H2).
 * @param hydrogen mass fraction
 * @returns [kg per kg fuel]; 8.94 times the hydrogen
 */
export function waterFormed(hydrogen: number): number {
  return (hydrogen * MOLAR_MASS.H2O) / HYDROGEN_PAIR;
}

/**
 * Oxygen to burn dry wood completely, less what it holds: O2/C per mole of carbon, half an O2 per H2.
 * @returns [kg per kg dry wood]
 * @example stoichiometricOxygen({ carbon: 0.5, hydrogen: 0.06, oxygen: 0.44, nitrogen: 0, ash: 0 }) // 1.368
 * Reference: balance of the elements.
 */
export function stoichiometricOxygen(c: WoodComposition): number {
  return (c.carbon * MOLAR_MASS.O2) / CARBON_ATOM + (c.hydrogen * OXYGEN_ATOM) / HYDROGEN_PAIR - c.oxygen;
}

/**
 * Dry air that holds the stoichiometric oxygen.
 * @returns [kg per kg dry wood]; 5.91 for C 50, H 6, O 44 %
 * Reference: balance of the elements, air 20.95 % O2 by volume.
 */
export function stoichiometricAir(c: WoodComposition): number {
  return stoichiometricOxygen(c) / dryAir.O2;
}

export interface CombustionYields {
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

export interface Burning {
  composition: WoodComposition;
  /** share of the wet mass [-] */
  moisture: number;
  /** air over stoichiometric air [-], 1 or more */
  excessAir: number;
}

/** Kilograms of each gas after complete combustion with dry air, per kg of wood as fired, and their sum. */
export interface FlueGas extends Composition {
  total: number;
}

/**
 * Flue gas of wood burnt completely in dry air.
 * @returns [kg per kg as fired]
 * @throws RangeError when the air is less than stoichiometric: combustion would not be complete
 * Reference: balance of the elements.
 */
export function flueGas({ composition, moisture, excessAir }: Burning): FlueGas {
  if (!(excessAir >= 1)) throw new RangeError(`flueGas: excess-air ratio ${excessAir} must be 1 or more`);
  const yields = combustionYields(composition, moisture);
  const air = excessAir * (1 - moisture) * stoichiometricAir(composition);
  const gas = {
    N2: air * dryAir.N2 + yields.N2,
    O2: air * dryAir.O2 + yields.O2,
    CO2: yields.CO2,
    H2O: yields.H2O,
  };
  return { ...gas, total: gas.N2 + gas.O2 + gas.CO2 + gas.H2O };
}

const REFERENCE_TEMPERATURE = 298.15;

/**
 * Flame temperature with no loss and no dissociation: the flue gas holds all the net heat, h(T) - h(25 °C) = q/m.
 * @param netHeat [J per kg as fired], at 25 °C
 * @param inletTemperature of air and wood [K]; the wood's own sensible heat is left out
 * @returns [K]; dissociation lowers the true one above some 1900 K
 * Reference: first law; enthalpies of GRI-Mech 3.0.
 */
export function adiabaticFlameTemperature({
  netHeat,
  inletTemperature = REFERENCE_TEMPERATURE,
  ...burning
}: Burning & { netHeat: number; inletTemperature?: number }): number {
  const gas = flueGas(burning);
  const poly = mixturePolynomial(gas);
  const air = burning.excessAir * (1 - burning.moisture) * stoichiometricAir(burning.composition);
  const airPoly = mixturePolynomial(dryAir);
  const wanted =
    gasEnthalpy(poly, REFERENCE_TEMPERATURE) +
    netHeat +
    air * (gasEnthalpy(airPoly, inletTemperature) - gasEnthalpy(airPoly, REFERENCE_TEMPERATURE));
  let low = 200;
  let high = 6000;
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (gasEnthalpy(poly, middle) > wanted) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
