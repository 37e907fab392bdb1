/**
 * Bodies stepped through time by the pit's own integrator: furnace curves and worked examples of heating and cooling.
 */
import { surfaceLoss } from '../../physics/radiation.js';
import { steelEnthalpy, steelSpecificHeat, steelDensity } from '../../physics/steel.js';
import { defineCheck, quantity, type Check, type Values } from '../check.js';
import { heatBody, type Body, type BodyMoment } from '../heatBody.js';
import { standardFurnace } from '../relations/furnaceCurve.js';
import { equilibriumTemperature } from '../relations/surfaceBalance.js';

/** A day: worked examples that take longer are not of this kind. */
const LONGEST = 86400;

const solid = {
  density: quantity('density', 'of the body'),
  specificHeat: quantity('specificHeat', 'of the body'),
  volumePerArea: quantity('length', 'volume over exposed area'),
  emissivity: quantity('number', 'grey emissivity; 0 for none'),
} as const;

const around = {
  coefficient: quantity('coefficient', 'convection coefficient'),
  air: quantity('temperature', 'of the air'),
  surroundings: quantity('temperature', 'radiant surroundings'),
} as const;

const start = quantity('temperature', 'of the body at first');

function bodyOf(v: Values<typeof solid> & Values<typeof around>): Body {
  const capacity = v.density * v.specificHeat * v.volumePerArea;
  return {
    content: (T) => capacity * T,
    capacity: () => capacity,
    uptake: (_, T) => -surfaceLoss(v.coefficient, T, v.air, v.emissivity, v.surroundings),
  };
}

const cycle = {
  ...solid,
  ...around,
  start,
  turn: quantity('temperature', 'that the time to hold counts from'),
  hold: quantity('time', 'heated on after reaching it'),
  coolingCoefficient: quantity('coefficient', 'while it cools'),
  coolingAir: quantity('temperature', 'of air and surroundings while it cools'),
  end: quantity('temperature', 'to be cooled to'),
} as const;

/** State when heating ends, then when the end temperature is passed. */
function heatAndCool(v: Values<typeof cycle>): { peak: BodyMoment; end: BodyMoment } {
  const heating = bodyOf(v);
  const turned = heatBody(heating, { time: 0, temperature: v.start }, { time: LONGEST, temperature: v.turn });
  const peak = heatBody(heating, turned, { time: turned.time + v.hold });
  const cooling = bodyOf({ ...v, coefficient: v.coolingCoefficient, air: v.coolingAir, surroundings: v.coolingAir });
  return { peak, end: heatBody(cooling, peak, { time: LONGEST, temperature: v.end }) };
}

export const integratedChecks: Record<string, Check> = {
  steelInFurnace: defineCheck(
    'bare carbon steel in the standard furnace, stepped by the integrator of the pit',
    {
      sectionFactor: quantity('perLength', 'exposed area over volume'),
      emissivity: quantity('number', 'of steel (the fire counts as black)'),
      coefficient: around.coefficient,
      start,
      time: quantity('time', 'in the furnace'),
    },
    'temperature',
    (v) => {
      const mass = steelDensity('carbon') / v.sectionFactor;
      const body: Body = {
        content: (T) => mass * steelEnthalpy(T),
        capacity: (T) => mass * steelSpecificHeat(T),
        uptake: (t, T) => -surfaceLoss(v.coefficient, T, standardFurnace(t), v.emissivity, standardFurnace(t)),
      };
      return heatBody(body, { time: 0, temperature: v.start }, { time: v.time }).temperature;
    },
  ),
  bodyTemperatureAfter: defineCheck(
    'temperature of a lumped body after a time, stepped by the integrator of the pit',
    { ...solid, ...around, start, time: quantity('time', 'passed') },
    'temperature',
    (v) => heatBody(bodyOf(v), { time: 0, temperature: v.start }, { time: v.time }).temperature,
  ),
  bodyTimeTo: defineCheck(
    'time for a lumped body to pass a temperature, stepped by the integrator of the pit',
    { ...solid, ...around, start, temperature: quantity('temperature', 'to be passed') },
    'time',
    (v) => heatBody(bodyOf(v), { time: 0, temperature: v.start }, { time: LONGEST, temperature: v.temperature }).time,
  ),
  bodyTimeToSteady: defineCheck(
    'time for a lumped body to come within an amount of its steady temperature, by the integrator of the pit',
    { ...solid, ...around, start, within: quantity('temperatureDifference', 'of the steady temperature') },
    'time',
    (v) => {
      const steady = equilibriumTemperature(v);
      const temperature = steady + Math.sign(v.start - steady) * v.within;
      return heatBody(bodyOf(v), { time: 0, temperature: v.start }, { time: LONGEST, temperature }).time;
    },
  ),
  heatAndCoolPeak: defineCheck(
    'temperature when heating ends, of a body heated past a temperature, held, then cooled',
    cycle,
    'temperature',
    (v) => heatAndCool(v).peak.temperature,
  ),
  heatAndCoolTime: defineCheck(
    'whole time of a body heated past a temperature, held, then cooled to another',
    cycle,
    'time',
    (v) => heatAndCool(v).end.time,
  ),
};
