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
  theoreticalDraft: defineCheck({
    about: 'no-flow draft of a column of hot gas',
    inputs: column,
    result: 'pressure',
    run: (v) => draftOfAir(asColumn(v)),
  }),
  theoreticalDraftPerHeight: defineCheck({
    about: 'no-flow draft per height of the column',
    inputs: { outdoor, gas, pressure },
    result: 'pressureGradient',
    run: (v) => draftOfAir(asColumn({ ...v, height: 1 })),
  }),
  draftByCoefficient: defineCheck({
    about: 'no-flow draft by a handbook coefficient in K/m',
    inputs: { ...column, coefficient: quantity('number', 'in K/m') },
    result: 'pressure',
    run: (v) => draftByCoefficient({ ...asColumn(v), coefficient: v.coefficient }),
  }),
  heightForDraft: defineCheck({
    about: 'height that gives a wanted draft',
    inputs: { draft: quantity('pressure', 'wanted'), outdoor, gas, pressure },
    result: 'length',
    run: (v) =>
      heightForDraft({
        draft: v.draft,
        outdoorTemperature: v.outdoor,
        gasTemperature: v.gas,
        pressure: v.pressure,
      }),
  }),
  draftOfFlueGas: defineCheck({
    about: 'no-flow draft with the mass of the fuel added to the gas',
    inputs: flue,
    result: 'pressure',
    run: (v) => draftOfFlueGas(asFlue(v)),
  }),
  flueHeightForDraft: defineCheck({
    about: 'height that gives a wanted draft, by draftOfFlueGas',
    inputs: { draft: quantity('pressure', 'wanted'), ...fuelSide },
    result: 'length',
    run: (v) => v.draft / draftOfFlueGas(asFlue({ ...v, height: 1 })),
  }),
  flueTemperatureForDraft: defineCheck({
    about: 'gas temperature that gives a wanted draft, by draftOfFlueGas',
    inputs: { draft: quantity('pressure', 'wanted'), height, outdoor, airPerFuel },
    result: 'temperature',
    run: (v) => {
      // draft is linear in 1/Tg: two points give the line
      const at = (inverse: number) => draftOfFlueGas(asFlue({ ...v, gas: 1 / inverse }));
      const [cold, hot] = [1 / v.outdoor, 0.5 / v.outdoor];
      return 1 / (cold + ((v.draft - at(cold)) * (hot - cold)) / (at(hot) - at(cold)));
    },
  }),
  draftAsGasColumn: defineCheck({
    about: 'no-flow draft as a height of the hot gas',
    inputs: flue,
    result: 'length',
    run: (v) => draftAsGasColumn(asFlue(v)),
  }),
  haaland: defineCheck({
    about: 'Darcy friction factor (Haaland)',
    inputs: { Re, relativeRoughness },
    result: 'number',
    run: (v) => haaland(v.Re, v.relativeRoughness),
  }),
  colebrook: defineCheck({
    about: 'Darcy friction factor (Colebrook)',
    inputs: { Re, relativeRoughness },
    result: 'number',
    run: (v) => colebrook(v.Re, v.relativeRoughness),
  }),
  stackFrictionConstant: defineCheck({
    about: 'haaland as the boiler makers write it: f of loss [in H2O] = f W^2 C H/A^3, W lb/s, C and H ft, A ft2',
    inputs: {
      Re,
      relativeRoughness,
      density: quantity('density', 'of the gas'),
    },
    result: 'number',
    run: (v) => {
      // loss = f_Darcy (C H/4 A) W^2/(2 rho A^2), in SI; the lines below put W, C, H, A and the loss in the units of the book
      const [pound, foot, inchOfWater] = [0.45359237, 0.3048, 25.4 * GRAVITY];
      return (haaland(v.Re, v.relativeRoughness) * pound ** 2) / (8 * v.density * foot ** 4 * inchOfWater);
    },
  }),
  entranceLoss: defineCheck({
    about: 'loss coefficient of a sharp entrance, as used',
    inputs: {},
    result: 'number',
    run: () => ENTRANCE_LOSS,
  }),
  exitLoss: defineCheck({
    about: 'loss coefficient of an exit, as used',
    inputs: {},
    result: 'number',
    run: () => EXIT_LOSS,
  }),
  expansionLoss: defineCheck({
    about: 'loss coefficient of a sudden expansion, on the small side',
    inputs: { areaRatio: quantity('number', 'small over large area') },
    result: 'number',
    run: (v) => expansionLoss(v.areaRatio),
  }),
  contraction: defineCheck({
    about: 'share of an opening in a plate across a pipe that the jet narrows to',
    inputs: { open },
    result: 'number',
    run: (v) => contraction(v.open),
  }),
  damperLoss: defineCheck({
    about: 'loss coefficient of a damper, on the full bore',
    inputs: { open },
    result: 'number',
    run: (v) => damperLoss(v.open),
  }),
  dischargeFromLosses: defineCheck({
    about: 'flow coefficient of losses in series',
    inputs: { losses: quantity('number', 'sum of loss coefficients and f L/D') },
    result: 'number',
    run: (v) => dischargeFromLosses(v.losses),
  }),
  openingFlow: defineCheck({
    about: 'mass flow one way through an opening between two bodies of gas',
    inputs: {
      area: quantity('area', 'of the opening'),
      discharge: quantity('number', 'discharge coefficient'),
      densityA: quantity('density', 'on side a'),
      densityB: quantity('density', 'on side b'),
      low: quantity('pressure', 'of a less that of b at the lower edge'),
      high: quantity('pressure', 'the same at the upper edge'),
      direction: choice(['forward', 'backward'], 'a to b, or b to a'),
    },
    result: 'massFlow',
    run: (v) =>
      openingFlow(emptyOpeningFlow(), v.area, v.discharge, v.densityA, v.densityB, v.low, v.high)[v.direction],
  }),
  ductFlow: defineCheck({
    about: 'mean velocity in a duct under a pressure difference',
    inputs: {
      difference: quantity('pressure', 'over the duct'),
      density: quantity('density', 'of the gas'),
      temperature: quantity('temperature', 'of the gas'),
      loss: quantity('number', 'sum of loss coefficients'),
      length: quantity('length', 'with wall friction'),
      bore: quantity('length', 'inside diameter'),
      roughness: quantity('length', 'of the wall'),
    },
    result: 'speed',
    run: (v) => ductFlow({ velocity: 0, slope: 0 }, v.difference, v.density, v.temperature, v).velocity,
  }),
  levelExchange: defineCheck({
    about: 'volume flow each way that a level opening exchanges by itself',
    inputs: {
      densityAbove: quantity('density', 'above'),
      densityBelow: quantity('density', 'below'),
      area: quantity('area', 'of the opening'),
      netFlow: quantity('volumeFlow', 'through it'),
    },
    result: 'volumeFlow',
    run: (v) => {
      const mean = (v.densityAbove + v.densityBelow) / 2;
      return levelExchange(v.area, v.densityBelow, v.densityAbove, v.netFlow * mean) / mean;
    },
  }),
  levelFloodingPressure: defineCheck({
    about: 'pressure difference whose flow through a level opening leaves nothing to exchange',
    inputs: {
      densityAbove: quantity('density', 'above'),
      densityBelow: quantity('density', 'below'),
      area: quantity('area', 'of the opening'),
      discharge: quantity('number', 'discharge coefficient'),
    },
    result: 'pressure',
    run: (v) => {
      let [low, high] = [0, 10 * v.area];
      for (let n = 0; n < 60; n++) {
        const middle = (low + high) / 2;
        if (levelExchange(v.area, v.densityBelow, v.densityAbove, middle) > 0) low = middle;
        else high = middle;
      }
      return (high / (v.discharge * v.area)) ** 2 / (v.densityAbove + v.densityBelow);
    },
  }),
  windPressure: defineCheck({
    about: 'pressure of wind at an opening',
    inputs: {
      coefficient: quantity('number', 'pressure coefficient'),
      density: quantity('density', 'of the air'),
      wind: quantity('speed', 'of the wind'),
    },
    result: 'pressure',
    run: (v) => windPressure(v.coefficient, v.density, v.wind),
  }),
  twoWayDischarge: defineCheck({
    about: 'discharge coefficient of an opening with two-way flow (building practice; not used by the tool)',
    inputs: { deltaT: quantity('temperatureDifference', 'between both sides') },
    result: 'number',
    run: (v) => twoWayDischarge(v.deltaT),
  }),
};
