/** A gas burner as the network's fire: heat and products from the make-up of the gas. */
import type { NetworkFire } from '../../network/types.js';
import { dryAir, gasEnthalpy, MOLAR_MASS, SPECIES_POLYNOMIAL } from '../../physics/gasMixture.js';

interface FuelGas {
  /** atoms in a molecule */
  carbon: number;
  hydrogen: number;
  /** enthalpy of formation at 298.15 K [J/mol] */
  formation: number;
  /** share of the heat that an open flame radiates */
  radiantShare: number;
}

/**
 * Enthalpies of formation: NIST Chemistry WebBook (from memory). Radiant shares are estimates: 0.20 for methane is what
 * the model inputs released with the vent-flow rooms take; 0.29 for propane is Tewarson's figure in the SFPE Handbook
 * (from memory), which the inputs released with the thin steel room take by default (from memory too).
 */
export const FUEL_GASES = {
  methane: { carbon: 1, hydrogen: 4, formation: -74.6e3, radiantShare: 0.2 },
  propane: { carbon: 3, hydrogen: 8, formation: -104.7e3, radiantShare: 0.29 },
} as const satisfies Record<string, FuelGas>;

type FuelName = keyof typeof FUEL_GASES;

/** Molar masses of the atoms [kg/mol]. IUPAC standard atomic weights 2013 (abridged). */
const ATOM = { carbon: 12.011e-3, hydrogen: 1.008e-3 } as const;
const STANDARD_TEMPERATURE = 298.15; // K

const unlimited: Pick<NetworkFire, 'zone' | 'throatArea' | 'seen' | 'outArea' | 'oxygenUse'> = {
  zone: 0,
  throatArea: 0,
  seen: [],
  outArea: 0,
  oxygenUse: 0,
};

/**
 * Fire of a gas that burns completely and is not limited by its air: CxHy + (x + y/4) O2 -> x CO2 + y/2 H2O.
 *
 * @param radiantShare share of the heat that leaves the flame as radiation
 */
export function burnerFire(name: FuelName, radiantShare: number): NetworkFire {
  const { carbon, hydrogen, formation } = FUEL_GASES[name];
  const oxygen = carbon + hydrogen / 4;
  const mass = carbon * ATOM.carbon + hydrogen * ATOM.hydrogen;
  const standard = (species: 'CO2' | 'H2O') => gasEnthalpy(SPECIES_POLYNOMIAL[species], STANDARD_TEMPERATURE);
  const heat = formation - carbon * standard('CO2') - (hydrogen / 2) * standard('H2O');
  const made = {
    O2: (-oxygen * MOLAR_MASS.O2) / mass,
    CO2: (carbon * MOLAR_MASS.CO2) / mass,
    H2O: ((hydrogen / 2) * MOLAR_MASS.H2O) / mass,
  };
  const gas = made.O2 + made.CO2 + made.H2O;
  return {
    ...unlimited,
    radiantShare,
    heatValue: heat / mass,
    gasPerFuel: gas,
    gasComposition: { N2: 0, O2: made.O2 / gas, CO2: made.CO2 / gas, H2O: made.H2O / gas },
    heatPerOxygen: heat / (oxygen * MOLAR_MASS.O2),
    airPerFuel: -made.O2 / dryAir.O2,
  };
}

/** A source of heat that makes no gas: an electric heater. */
export function heaterFire(radiantShare: number): NetworkFire {
  return {
    ...unlimited,
    radiantShare,
    heatValue: 1e9,
    gasPerFuel: 0,
    gasComposition: dryAir,
    heatPerOxygen: 1,
    airPerFuel: 0,
  };
}
