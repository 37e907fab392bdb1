/**
 * Flue gas and flames of wood, as handbooks work them: to recheck print through the balances and enthalpies of a pit.
 */
import { bracketedRoot } from '../../solve/root.js';
import {
  AIR_NITROGEN_MOLAR_MASS,
  dryAir,
  gasEnthalpy,
  mixturePolynomial,
  MOLAR_MASS,
  type Composition,
} from '../../physics/gasMixture.js';
import { combustionYields, stoichiometricAir, waterFormed, type WoodComposition } from '../../physics/wood.js';

/** Latent heat of water at 25 °C [J/kg]. Steam tables. */
export const LATENT_HEAT_25C = 2.442e6;

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

interface Burning {
  composition: WoodComposition;
  /** share of the wet mass [-] */
  moisture: number;
  /** air over stoichiometric air [-], 1 or more */
  excessAir: number;
}

/** Kilograms of each gas after complete combustion with dry air, per kg of wood as fired, and their sum. */
interface FlueGas extends Composition {
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
  const over = (temperature: number) => gasEnthalpy(poly, temperature) - wanted;
  return bracketedRoot(over, { low: 200, high: 6000, tolerance: 1e-12 }).root;
}

/**
 * Mole (volume) fractions of a gas from masses or mass fractions.
 * @param withWater false: of the dry gas, as flue-gas analysers report
 */
export function moleFractions(gas: Composition, withWater = true): Composition {
  const N2 = gas.N2 / AIR_NITROGEN_MOLAR_MASS;
  const O2 = gas.O2 / MOLAR_MASS.O2;
  const CO2 = gas.CO2 / MOLAR_MASS.CO2;
  const H2O = withWater ? gas.H2O / MOLAR_MASS.H2O : 0;
  const sum = N2 + O2 + CO2 + H2O;
  return { N2: N2 / sum, O2: O2 / sum, CO2: CO2 / sum, H2O: H2O / sum };
}

/**
 * Stoichiometric air by the boiler makers' rule, 11.52 C + 34.56 (H - O/8); 0.4 % above the balance of the elements,
 * since it rounds the atomic masses and the oxygen of air.
 * @returns [kg per kg dry wood]
 * Reference: Babcock & Wilcox, Steam: Its Generation and Use, eq. 10 (its sulphur term left out).
 */
export function airByRule({ carbon, hydrogen, oxygen }: WoodComposition): number {
  return 11.52 * carbon + 34.56 * (hydrogen - oxygen / 8);
}
