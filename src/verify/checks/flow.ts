/** Checks of friction, openings, draft and natural ventilation. */
import { GRAVITY } from '../../physics/constants.js';
import { windPressure } from '../../physics/draft.js';
import { ductFlow } from '../../physics/ductFlow.js';
import {
  contraction,
  damperLoss,
  dischargeFromLosses,
  ENTRANCE_LOSS,
  EXIT_LOSS,
  expansionLoss,
  haaland,
} from '../../physics/friction.js';
import { levelExchange } from '../../physics/levelExchange.js';
import { emptyOpeningFlow, openingFlow } from '../../physics/opening.js';
import { choice, defineCheck, quantity, type Check, type Values } from '../check.js';
import {
  draftAsGasColumn,
  draftByCoefficient,
  draftOfAir,
  draftOfFlueGas,
  heightForDraft,
} from '../relations/draft.js';
import { colebrook } from '../relations/friction.js';
import { twoWayDischarge } from '../relations/ventilation.js';

const outdoor = quantity('temperature', 'outdoor air');
const gas = quantity('temperature', 'mean gas in the column');
const height = quantity('length', 'of the column');
const pressure = quantity('pressure', 'outdoor pressure, absolute');
const airPerFuel = quantity('number', 'kg of air per kg of fuel');

const column = { height, outdoor, gas, pressure } as const;
const asColumn = (v: Values<typeof column>) => ({
  height: v.height,
  outdoorTemperature: v.outdoor,
  gasTemperature: v.gas,
  pressure: v.pressure,
});

const flue = { height, outdoor, gas, airPerFuel } as const;
const asFlue = (v: Values<typeof flue>) => ({
  height: v.height,
  outdoorTemperature: v.outdoor,
  gasTemperature: v.gas,
  airPerFuel: v.airPerFuel,
});

const fuelSide = { outdoor, gas, airPerFuel } as const;

const Re = quantity('number', 'Reynolds number');
const open = quantity('share', 'of the bore that is left open');
const relativeRoughness = quantity('number', 'roughness over diameter');

export const flowChecks: Record<string, Check> = {
  theoreticalDraft: defineCheck('no-flow draft of a column of hot gas', column, 'pressure', (v) =>
    draftOfAir(asColumn(v)),
  ),
  theoreticalDraftPerHeight: defineCheck(
    'no-flow draft per height of the column',
    { outdoor, gas, pressure },
    'pressureGradient',
    (v) => draftOfAir(asColumn({ ...v, height: 1 })),
  ),
  draftByCoefficient: defineCheck(
    'no-flow draft by a handbook coefficient in K/m',
    { ...column, coefficient: quantity('number', 'in K/m') },
    'pressure',
    (v) => draftByCoefficient({ ...asColumn(v), coefficient: v.coefficient }),
  ),
  heightForDraft: defineCheck(
    'height that gives a wanted draft',
    { draft: quantity('pressure', 'wanted'), outdoor, gas, pressure },
    'length',
    (v) =>
      heightForDraft({
        draft: v.draft,
        outdoorTemperature: v.outdoor,
        gasTemperature: v.gas,
        pressure: v.pressure,
      }),
  ),
  draftOfFlueGas: defineCheck('no-flow draft with the mass of the fuel added to the gas', flue, 'pressure', (v) =>
    draftOfFlueGas(asFlue(v)),
  ),
  flueHeightForDraft: defineCheck(
    'height that gives a wanted draft, by draftOfFlueGas',
    { draft: quantity('pressure', 'wanted'), ...fuelSide },
    'length',
    (v) => v.draft / draftOfFlueGas(asFlue({ ...v, height: 1 })),
  ),
  flueTemperatureForDraft: defineCheck(
    'gas temperature that gives a wanted draft, by draftOfFlueGas',
    { draft: quantity('pressure', 'wanted'), height, outdoor, airPerFuel },
    'temperature',
    (v) => {
      // draft is linear in 1/Tg: two points give the line
      const at = (inverse: number) => draftOfFlueGas(asFlue({ ...v, gas: 1 / inverse }));
      const [cold, hot] = [1 / v.outdoor, 0.5 / v.outdoor];
      return 1 / (cold + ((v.draft - at(cold)) * (hot - cold)) / (at(hot) - at(cold)));
    },
  ),
  draftAsGasColumn: defineCheck('no-flow draft as a height of the hot gas', flue, 'length', (v) =>
    draftAsGasColumn(asFlue(v)),
  ),
  haaland: defineCheck('Darcy friction factor (Haaland)', { Re, relativeRoughness }, 'number', (v) =>
    haaland(v.Re, v.relativeRoughness),
  ),
  colebrook: defineCheck('Darcy friction factor (Colebrook)', { Re, relativeRoughness }, 'number', (v) =>
    colebrook(v.Re, v.relativeRoughness),
  ),
  stackFrictionConstant: defineCheck(
    'haaland as the boiler makers write it: f of loss [in H2O] = f W^2 C H/A^3, W lb/s, C and H ft, A ft2',
    {
      Re,
      relativeRoughness,
      density: quantity('density', 'of the gas'),
    },
    'number',
    (v) => {
      // loss = f_Darcy (C H/4 A) W^2/(2 rho A^2), in SI; the lines below put W, C, H, A and the loss in the units of
      // the book
      const [pound, foot, inchOfWater] = [0.45359237, 0.3048, 25.4 * GRAVITY];
      return (haaland(v.Re, v.relativeRoughness) * pound ** 2) / (8 * v.density * foot ** 4 * inchOfWater);
    },
  ),
  entranceLoss: defineCheck('loss coefficient of a sharp entrance, as used', {}, 'number', () => ENTRANCE_LOSS),
  exitLoss: defineCheck('loss coefficient of an exit, as used', {}, 'number', () => EXIT_LOSS),
  expansionLoss: defineCheck(
    'loss coefficient of a sudden expansion, on the small side',
    { areaRatio: quantity('number', 'small over large area') },
    'number',
    (v) => expansionLoss(v.areaRatio),
  ),
  contraction: defineCheck(
    'share of an opening in a plate across a pipe that the jet narrows to',
    { open },
    'number',
    (v) => contraction(v.open),
  ),
  damperLoss: defineCheck('loss coefficient of a damper, on the full bore', { open }, 'number', (v) =>
    damperLoss(v.open),
  ),
  dischargeFromLosses: defineCheck(
    'flow coefficient of losses in series',
    { losses: quantity('number', 'sum of loss coefficients and f L/D') },
    'number',
    (v) => dischargeFromLosses(v.losses),
  ),
  openingFlow: defineCheck(
    'mass flow one way through an opening between two bodies of gas',
    {
      area: quantity('area', 'of the opening'),
      discharge: quantity('number', 'discharge coefficient'),
      densityA: quantity('density', 'on side a'),
      densityB: quantity('density', 'on side b'),
      low: quantity('pressure', 'of a less that of b at the lower edge'),
      high: quantity('pressure', 'the same at the upper edge'),
      direction: choice(['forward', 'backward'], 'a to b, or b to a'),
    },
    'massFlow',
    (v) => openingFlow(emptyOpeningFlow(), v.area, v.discharge, v.densityA, v.densityB, v.low, v.high)[v.direction],
  ),
  ductFlow: defineCheck(
    'mean velocity in a duct under a pressure difference',
    {
      difference: quantity('pressure', 'over the duct'),
      density: quantity('density', 'of the gas'),
      temperature: quantity('temperature', 'of the gas'),
      loss: quantity('number', 'sum of loss coefficients'),
      length: quantity('length', 'with wall friction'),
      bore: quantity('length', 'inside diameter'),
      roughness: quantity('length', 'of the wall'),
    },
    'speed',
    (v) => ductFlow({ velocity: 0, slope: 0 }, v.difference, v.density, v.temperature, v).velocity,
  ),
  levelExchange: defineCheck(
    'volume flow each way that a level opening exchanges by itself',
    {
      densityAbove: quantity('density', 'above'),
      densityBelow: quantity('density', 'below'),
      area: quantity('area', 'of the opening'),
      netFlow: quantity('volumeFlow', 'through it'),
    },
    'volumeFlow',
    (v) => {
      const mean = (v.densityAbove + v.densityBelow) / 2;
      return levelExchange(v.area, v.densityBelow, v.densityAbove, v.netFlow * mean) / mean;
    },
  ),
  levelFloodingPressure: defineCheck(
    'pressure difference whose flow through a level opening leaves nothing to exchange',
    {
      densityAbove: quantity('density', 'above'),
      densityBelow: quantity('density', 'below'),
      area: quantity('area', 'of the opening'),
      discharge: quantity('number', 'discharge coefficient'),
    },
    'pressure',
    (v) => {
      let [low, high] = [0, 10 * v.area];
      for (let n = 0; n < 60; n++) {
        const middle = (low + high) / 2;
        if (levelExchange(v.area, v.densityBelow, v.densityAbove, middle) > 0) low = middle;
        else high = middle;
      }
      return (high / (v.discharge * v.area)) ** 2 / (v.densityAbove + v.densityBelow);
    },
  ),
  windPressure: defineCheck(
    'pressure of wind at an opening',
    {
      coefficient: quantity('number', 'pressure coefficient'),
      density: quantity('density', 'of the air'),
      wind: quantity('speed', 'of the wind'),
    },
    'pressure',
    (v) => windPressure(v.coefficient, v.density, v.wind),
  ),
  twoWayDischarge: defineCheck(
    'discharge coefficient of an opening with two-way flow (building practice; not used by the tool)',
    { deltaT: quantity('temperatureDifference', 'between both sides') },
    'number',
    (v) => twoWayDischarge(v.deltaT),
  ),
};
