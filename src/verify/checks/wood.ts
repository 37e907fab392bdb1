/** Checks of wood as a fuel. */
import {
  airHolds,
  alight,
  charcoalLeft,
  charred,
  charringRate,
  cylinderThickness,
  glowPace,
  meanFlame,
} from '../../physics/splits.js';
import { gasEnthalpy, mixturePolynomial } from '../../physics/gasMixture.js';
import {
  combustionYields,
  fuelShareLimit,
  HEAT_PER_OXYGEN,
  netHeatAsFired,
  stoichiometricAir,
  stoichiometricOxygen,
  waterFormed,
  type WoodComposition,
} from '../../physics/wood.js';
import { choice, defineCheck, optional, quantity, type Check, type Values } from '../check.js';
import {
  adiabaticFlameTemperature,
  airByRule,
  flueGas,
  moleFractions,
  netFromGrossHeat,
} from '../relations/combustion.js';

const analysis = {
  carbon: quantity('share', 'mass fraction of dry wood'),
  hydrogen: quantity('share', 'mass fraction of dry wood'),
  oxygen: quantity('share', 'mass fraction of dry wood'),
  nitrogen: optional('share', 'mass fraction of dry wood; 0 when left out'),
} as const;

/** What the analysis leaves is ash. */
function woodOf(v: Values<typeof analysis>): WoodComposition {
  const nitrogen = v.nitrogen ?? 0;
  return { ...v, nitrogen, ash: 1 - v.carbon - v.hydrogen - v.oxygen - nitrogen };
}

const wetBasis = quantity('share', 'moisture, share of the wet mass');
const dryBasis = quantity('number', 'moisture, kg per kg of dry wood');
const grossHeat = quantity('energyPerMass', 'gross heat of dry wood');
const excessAir = quantity('number', 'air over stoichiometric air');
const burning = { ...analysis, moistureDryBasis: dryBasis, excessAir } as const;
const SPECIES = ['CO2', 'H2O', 'O2', 'N2'] as const;

const wetOf = (dry: number) => dry / (1 + dry);
const flueOf = (v: Values<typeof burning>) =>
  flueGas({ composition: woodOf(v), moisture: wetOf(v.moistureDryBasis), excessAir: v.excessAir });
const REFERENCE = 298.15;

export const woodChecks: Record<string, Check> = {
  netHeatAsFired: defineCheck(
    'net heat of wood as fired',
    {
      moisture: wetBasis,
      dryNetHeat: optional('energyPerMass', 'net heat of dry wood; 19.0 MJ/kg when left out'),
    },
    'energyPerMass',
    (v) => netHeatAsFired(v.moisture, v.dryNetHeat),
  ),
  netFromGrossHeat: defineCheck(
    'net heat of dry wood from its gross heat',
    { grossHeat, hydrogen: analysis.hydrogen },
    'energyPerMass',
    (v) => netFromGrossHeat(v.grossHeat, v.hydrogen),
  ),
  netHeatFromGross: defineCheck(
    'net heat as fired from gross heat, hydrogen and moisture: netFromGrossHeat, then netHeatAsFired',
    { grossHeat, hydrogen: analysis.hydrogen, moisture: wetBasis },
    'energyPerMass',
    (v) => netHeatAsFired(v.moisture, netFromGrossHeat(v.grossHeat, v.hydrogen)),
  ),
  stoichiometricOxygen: defineCheck('oxygen to burn dry wood, kg per kg', analysis, 'number', (v) =>
    stoichiometricOxygen(woodOf(v)),
  ),
  stoichiometricAir: defineCheck('air to burn dry wood, kg per kg', analysis, 'number', (v) =>
    stoichiometricAir(woodOf(v)),
  ),
  airByRule: defineCheck(
    'air to burn dry wood by the boiler makers rule, kg per kg (not used by the tool)',
    analysis,
    'number',
    (v) => airByRule(woodOf(v)),
  ),
  waterFormed: defineCheck(
    'water formed by the hydrogen of dry wood, kg per kg',
    { hydrogen: analysis.hydrogen },
    'number',
    (v) => waterFormed(v.hydrogen),
  ),
  combustionYields: defineCheck(
    'gas or ash made by burning 1 kg of wood as fired (oxygen negative)',
    { ...analysis, moisture: wetBasis, of: choice([...SPECIES, 'ash'], 'product') },
    'number',
    ({ moisture, of, ...v }) => combustionYields(woodOf(v), moisture)[of],
  ),
  heatPerOxygen: defineCheck(
    'heat per oxygen consumed, as used for the limit by air',
    {},
    'energyPerMass',
    () => HEAT_PER_OXYGEN,
  ),
  fuelShareLimit: defineCheck(
    'fuel share of a gas when the fire has burned all the oxygen that it can use',
    {
      heatValue: quantity('energyPerMass', 'net heat of the fuel as fired'),
      oxygenUse: quantity('share', 'of the oxygen that can be used'),
      oxygen: quantity('share', 'mass fraction of oxygen in the air'),
    },
    'number',
    (v) => fuelShareLimit({ ...v, heatPerOxygen: HEAT_PER_OXYGEN, gasPerFuel: 1 }, v.oxygen),
  ),
  charringRate: defineCheck(
    'speed at which hardwood chars in the standard fire, mm/min',
    { density: quantity('density', 'of the air-dry wood') },
    'number',
    (v) => charringRate(v.density) * 60e3,
  ),
  meanFlame: defineCheck(
    'mean time at which the flaming heat of a split leaves it',
    { thickness: quantity('length', 'of the split'), rate: quantity('number', 'of charring, mm/min') },
    'time',
    (v) => meanFlame(v.thickness, v.rate / 60e3),
  ),
  cylinderThickness: defineCheck(
    'thickness of a split as a cylinder of its wood',
    {
      mass: quantity('mass', 'of the split'),
      density: quantity('density', 'of its wood'),
      length: quantity('length', 'of the split'),
    },
    'length',
    (v) => cylinderThickness(v.mass, v.density, v.length),
  ),
  charred: defineCheck(
    'share of a cylinder that has charred',
    { depth: quantity('number', 'of the front, of the radius') },
    'number',
    (v) => charred(v.depth),
  ),
  alight: defineCheck(
    'time of burning all over that a split that catches evenly has had',
    { age: quantity('time', 'since it was laid on'), catching: quantity('time', 'until it burns all over') },
    'time',
    (v) => alight(v.age, v.catching).burned,
  ),
  charcoalLeft: defineCheck(
    'charcoal left as it glows away and more is made, MJ',
    {
      store: quantity('number', 'at first, MJ'),
      made: quantity('power', 'evenly'),
      pace: quantity('number', 'against the usual'),
      glow: quantity('time', 'in which it falls to 1/e'),
      time: quantity('time', 'since'),
    },
    'number',
    (v) => charcoalLeft(v.store * 1e6, v.made, v.pace, v.glow, v.time) / 1e6,
  ),
  airHolds: defineCheck(
    'what flames burn of what they would, by the air they get',
    { ratio: quantity('number', 'air had over air wanted') },
    'number',
    (v) => airHolds(v.ratio),
  ),
  glowPace: defineCheck(
    'pace of charcoal, against fresh air at 0.1 m/s',
    { speed: quantity('speed', 'of the air through the bed'), oxygen: quantity('share', 'mass share in the gas') },
    'number',
    (v) => glowPace(v.speed, v.oxygen),
  ),
  netHeatPerOxygen: defineCheck(
    'net heat of dry wood per kg of oxygen it takes',
    { ...analysis, grossHeat },
    'energyPerMass',
    (v) => netFromGrossHeat(v.grossHeat, v.hydrogen) / stoichiometricOxygen(woodOf(v)),
  ),
  flueFraction: defineCheck(
    'volume share of one gas in the flue gas',
    { ...burning, of: choice(SPECIES, 'gas'), basis: choice(['wet', 'dry'], 'with or without vapour') },
    'share',
    ({ of, basis, ...v }) => moleFractions(flueOf(v), basis === 'wet')[of],
  ),
  flueMass: defineCheck(
    'flue gas per kg of dry wood',
    burning,
    'number',
    (v) => flueOf(v).total * (1 + v.moistureDryBasis),
  ),
  flueMeanSpecificHeat: defineCheck(
    'mean specific heat of the flue gas from 298.15 K',
    { ...burning, temperature: quantity('temperature', 'upper end') },
    'specificHeat',
    ({ temperature: T, ...v }) => {
      const gas = flueOf(v);
      const poly = mixturePolynomial(gas);
      return (gasEnthalpy(poly, T) - gasEnthalpy(poly, REFERENCE)) / gas.total / (T - REFERENCE);
    },
  ),
  adiabaticFlameTemperature: defineCheck(
    'flame temperature with no loss and no dissociation',
    { ...burning, grossHeat, inlet: optional('temperature', 'of air and wood; 25 °C when left out') },
    'temperature',
    ({ grossHeat: gross, inlet, ...v }) => {
      const moisture = wetOf(v.moistureDryBasis);
      return adiabaticFlameTemperature({
        composition: woodOf(v),
        moisture,
        excessAir: v.excessAir,
        netHeat: netHeatAsFired(moisture, netFromGrossHeat(gross, v.hydrogen)),
        inletTemperature: inlet,
      });
    },
  ),
};
