/** Checks of surface and gas radiation. */
import { airConductivity, airPrandtl, airViscosity } from '../../physics/air.js';
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { gasEmissivity, meanBeamLength, sootEmissivity } from '../../physics/gasRadiation.js';
import { blackPower, netGreyFlux, radiantCoefficient, surfaceLoss } from '../../physics/radiation.js';
import { choice, defineCheck, list, optional, quantity, table, type Check, type Values } from '../check.js';
import { nusseltDittusBoelter } from '../relations/convection.js';
import { enclosureHeat } from '../relations/enclosure.js';
import { greyGasEmissivity } from '../relations/greyGases.js';
import { gasAbsorptivity, shieldedExchange, twoSurfaceExchange } from '../relations/radiation.js';
import { coefficientForTemperature, equilibriumTemperature, trueGasTemperature } from '../relations/surfaceBalance.js';
import { cornerViewFactor } from '../relations/viewFactor.js';

const emissivity = quantity('number', 'grey emissivity');
const surface = quantity('temperature', 'surface temperature');
const setting = {
  air: quantity('temperature', 'air or gas temperature'),
  surroundings: quantity('temperature', 'radiant surroundings'),
  coefficient: quantity('coefficient', 'convection coefficient'),
  emissivity,
} as const;
const lossOf = (v: Values<typeof setting> & { surface: number }) =>
  surfaceLoss(v.coefficient, v.surface, v.air, v.emissivity, v.surroundings);
const absorbed = optional('heatFlux', 'other radiation absorbed; 0 when left out');

const twoSurfaces = {
  firstArea: quantity('area', 'of the first surface (per length: its perimeter)'),
  firstEmissivity: quantity('number', 'of the first surface'),
  firstTemperature: quantity('temperature', 'of the first surface'),
  secondArea: quantity('area', 'of the second surface (per length: its perimeter)'),
  secondEmissivity: quantity('number', 'of the second surface'),
  secondTemperature: quantity('temperature', 'of the second surface'),
} as const;

const ends = (v: Values<typeof twoSurfaces>) =>
  [
    { area: v.firstArea, emissivity: v.firstEmissivity, temperature: v.firstTemperature },
    { area: v.secondArea, emissivity: v.secondEmissivity, temperature: v.secondTemperature },
  ] as const;

const shieldInputs = {
  ...twoSurfaces,
  shieldAreas: list('area', 'of each shield, from the first surface outwards'),
  shieldEmissivities: list('number', 'of each shield, both faces alike'),
} as const;

const shields = (v: Values<typeof shieldInputs>) =>
  v.shieldAreas.map((area, n) => {
    const each = v.shieldEmissivities[n];
    return { area, emissivities: [each, each] as [number, number] };
  });

const gas = {
  temperature: quantity('temperature', 'gas temperature'),
  carbonDioxide: quantity('pressure', 'partial pressure of CO2'),
  waterVapour: quantity('pressure', 'partial pressure of water vapour'),
  beam: quantity('length', 'mean beam length'),
  pressure: optional('pressure', 'total, absolute; 1 atm when left out'),
} as const;

const inAtmospheres = ({ carbonDioxide, waterVapour, pressure = STANDARD_PRESSURE }: Values<typeof gas>) =>
  [carbonDioxide, waterVapour, pressure].map((each) => each / STANDARD_PRESSURE);
const emissivityOf = (v: Values<typeof gas>) => {
  const [dioxide, water, total] = inAtmospheres(v);
  return gasEmissivity(v.temperature, dioxide, water, v.beam, total);
};
const absorptivityOf = (v: Values<typeof gas>, source: number) => {
  const [dioxide, water, total] = inAtmospheres(v);
  return gasAbsorptivity(v.temperature, source, dioxide, water, v.beam, total);
};

const duct = {
  radius: quantity('length', 'of the half-round duct'),
  heated: quantity('temperature', 'of the flat wall'),
  emissivity,
  flow: quantity('massFlow', 'of air'),
  air: quantity('temperature', 'of the air'),
} as const;

/** Flat wall hot, round wall insulated: what it takes by radiation it gives off to the air. */
function insulatedDuct(v: Values<typeof duct>): { insulated: number; heat: number } {
  const flat = 2 * v.radius;
  const round = Math.PI * v.radius;
  const section = (Math.PI * v.radius ** 2) / 2;
  const hydraulic = (4 * section) / (flat + round);
  const Re = (v.flow * hydraulic) / (section * airViscosity(v.air));
  const h = (nusseltDittusBoelter(Re, airPrandtl(v.air), true) * airConductivity(v.air)) / hydraulic;
  const radiated = (T: number) =>
    twoSurfaceExchange(
      { area: flat, emissivity: v.emissivity, temperature: v.heated },
      { area: round, emissivity: v.emissivity, temperature: T },
      1,
    );
  let low = Math.min(v.air, v.heated);
  let high = Math.max(v.air, v.heated);
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (radiated(middle) > h * round * (middle - v.air)) low = middle;
    else high = middle;
  }
  return { insulated: low, heat: radiated(low) + h * flat * (v.heated - v.air) };
}

export const radiationChecks: Record<string, Check> = {
  emissivePower: defineCheck(
    'emissive power of a grey surface',
    { emissivity, temperature: surface },
    'heatFlux',
    (v) => v.emissivity * blackPower(v.temperature),
  ),
  netGreyFlux: defineCheck(
    'net radiant flux from a grey surface to large surroundings',
    { emissivity, surface, surroundings: setting.surroundings },
    'heatFlux',
    (v) => netGreyFlux(v.emissivity, v.surface, v.surroundings),
  ),
  radiantHeat: defineCheck(
    'net radiation from a grey surface to large surroundings: netGreyFlux times area',
    { emissivity, surface, surroundings: setting.surroundings, area: quantity('area', 'of the surface') },
    'power',
    (v) => netGreyFlux(v.emissivity, v.surface, v.surroundings) * v.area,
  ),
  radiantCoefficient: defineCheck(
    'radiation between two black temperatures per kelvin between them',
    { surface, surroundings: setting.surroundings },
    'coefficient',
    (v) => radiantCoefficient(v.surface, v.surroundings),
  ),
  surfaceLoss: defineCheck(
    'flux that a surface loses by convection and radiation',
    { surface, ...setting },
    'heatFlux',
    lossOf,
  ),
  pipeLossPerLength: defineCheck(
    'heat per length that a bare pipe loses: surfaceLoss times circumference',
    { surface, ...setting, diameter: quantity('length', 'of the pipe') },
    'heatPerLength',
    (v) => lossOf(v) * Math.PI * v.diameter,
  ),
  equilibriumTemperature: defineCheck(
    'temperature at which a surface loses just what it absorbs',
    { ...setting, absorbed },
    'temperature',
    (v) => equilibriumTemperature(v, v.absorbed ?? 0),
  ),
  coefficientForTemperature: defineCheck(
    'coefficient that holds a surface at a temperature',
    {
      surface,
      air: setting.air,
      surroundings: setting.surroundings,
      emissivity,
      absorbed: quantity('heatFlux', 'radiation absorbed'),
    },
    'coefficient',
    (v) => coefficientForTemperature(v.surface, v, v.absorbed),
  ),
  trueGasTemperature: defineCheck(
    'true gas temperature from what a thermometer reads',
    {
      reading: quantity('temperature', 'of the thermometer'),
      surroundings: setting.surroundings,
      coefficient: setting.coefficient,
      emissivity,
    },
    'temperature',
    (v) => trueGasTemperature(v.reading, v),
  ),
  twoSurfaceExchange: defineCheck(
    'radiation between two grey surfaces',
    { ...twoSurfaces, viewFactor: quantity('number', 'from the first to the second') },
    'power',
    (v) => twoSurfaceExchange(...ends(v), v.viewFactor),
  ),
  shieldedExchangePerLength: defineCheck(
    'radiation per length between two long surfaces with shields between (areas per length)',
    shieldInputs,
    'heatPerLength',
    (v) => shieldedExchange(...ends(v), shields(v)),
  ),
  shieldEffect: defineCheck(
    'change of the exchange that shields bring, as a share of the one without',
    shieldInputs,
    'share',
    (v) => shieldedExchange(...ends(v), shields(v)) / shieldedExchange(...ends(v), []) - 1,
  ),
  shieldReduction: defineCheck(
    'reduction of the exchange by shields, as a share',
    shieldInputs,
    'share',
    (v) => 1 - shieldedExchange(...ends(v), shields(v)) / shieldedExchange(...ends(v), []),
  ),
  enclosureHeat: defineCheck(
    'net heat that surfaces of a grey enclosure give off',
    {
      areas: list('area', 'of each surface'),
      emissivities: list('number', 'of each surface; 1 for an opening'),
      temperatures: list('temperature', 'of each surface'),
      viewFactors: table('number', 'row i: shares of what leaves surface i that reach each surface'),
      surfaces: list('number', 'numbers of the surfaces whose heat is added, from 1'),
    },
    'power',
    (v) => {
      const heat = enclosureHeat(v);
      return v.surfaces.reduce((sum, number) => {
        if (heat[number - 1] === undefined) throw new RangeError(`enclosureHeat: there is no surface ${number}`);
        return sum + heat[number - 1];
      }, 0);
    },
  ),
  cornerViewFactor: defineCheck(
    'view factor from a point opposite a corner to a parallel rectangle; times rectangles that meet there',
    {
      width: quantity('length', 'of one rectangle'),
      height: quantity('length', 'of one rectangle'),
      distance: quantity('length', 'of the point'),
      rectangles: optional('number', 'equal rectangles that meet opposite the point; 1 when left out'),
    },
    'number',
    (v) => (v.rectangles ?? 1) * cornerViewFactor(v),
  ),
  insulatedDuctTemperature: defineCheck(
    'temperature of the insulated round wall of a half-round duct with air in it',
    duct,
    'temperature',
    (v) => insulatedDuct(v).insulated,
  ),
  insulatedDuctHeat: defineCheck(
    'heat per length that the flat wall of that duct gives off',
    duct,
    'heatPerLength',
    (v) => insulatedDuct(v).heat,
  ),
  meanBeamLength: defineCheck(
    'mean beam length, 3.6 V/A',
    { volume: quantity('volume', 'of the gas'), area: quantity('area', 'of its boundary') },
    'length',
    (v) => meanBeamLength(v.volume, v.area),
  ),
  gasEmissivity: defineCheck('emissivity of combustion gas (Leckner)', gas, 'number', emissivityOf),
  greyGasEmissivity: defineCheck(
    'emissivity of combustion gas (weighted sum of grey gases; not used by the tool)',
    gas,
    'number',
    (v) => {
      const [dioxide, water] = inAtmospheres(v);
      return greyGasEmissivity(v.temperature, dioxide, water, v.beam);
    },
  ),
  gasAbsorptivity: defineCheck(
    'absorptivity of combustion gas for radiation from a surface (rule of Hottel; the tool itself takes emissivity)',
    { ...gas, source: quantity('temperature', 'of the surface that radiates') },
    'number',
    (v) => absorptivityOf(v, v.source),
  ),
  gasNetRadiation: defineCheck(
    'net radiation from gas to black walls, sigma A (eps Tg^4 - alpha Tw^4)',
    {
      ...gas,
      walls: quantity('temperature', 'of the walls'),
      area: quantity('area', 'of the walls'),
      rule: choice(['hottel', 'grey'], 'absorptivity: scaled rule, or equal to emissivity as in the tool'),
    },
    'power',
    (v) => {
      const eps = emissivityOf(v);
      const alpha = v.rule === 'grey' ? eps : absorptivityOf(v, v.walls);
      return v.area * (eps * blackPower(v.temperature) - alpha * blackPower(v.walls));
    },
  ),
  sootEmissivity: defineCheck(
    'emissivity of gas with soot',
    {
      gasEmissivity: quantity('number', 'of the clear gas'),
      soot: quantity('perLength', 'absorption coefficient'),
      beam: gas.beam,
    },
    'number',
    (v) => sootEmissivity(v.gasEmissivity, v.soot, v.beam),
  ),
};
