/** Whole-model checks: a plate in a furnace, a stack of given gas temperature, a body that cools. */
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { surfaceLoss } from '../../physics/radiation.js';
import {
  stainlessEnthalpy,
  stainlessSpecificHeat,
  steelEnthalpy,
  steelSpecificHeat,
  steelDensity,
} from '../../physics/steel.js';
import { choice, defineCheck, optional, optionalList, quantity, type Check, type Values } from '../check.js';
import { givenCurve } from '../givenCurve.js';
import { heatBody, type Body } from '../heatBody.js';
import { standardFurnace } from '../relations/furnaceCurve.js';
import { coolingOutdoors } from '../rooms/coolingBody.js';
import { stackOfGivenGas } from '../rooms/stack.js';

const furnace = {
  thickness: quantity('length', 'of the plate'),
  steel: choice(['carbon', 'stainless'], 'of the plate'),
  sides: choice(['one', 'both'], 'in the furnace; the other side gives off nothing unless behind is given'),
  emissivity: quantity('number', 'of the plate (the furnace counts as black)'),
  coefficient: quantity('coefficient', 'convection in the furnace'),
  start: quantity('temperature', 'of the plate at first'),
  time: quantity('time', 'in the furnace'),
  times: optionalList('time', 'of a furnace curve of your own; the standard furnace when left out'),
  gas: optionalList('temperature', 'of the furnace at these times, straight lines between, held after the last'),
  behind: optional('temperature', 'of air and surroundings behind a plate with one side in the furnace'),
  behindCoefficient: optional('coefficient', 'convection behind; 0 when left out'),
  behindEmissivity: optional('number', 'behind; 0 when left out'),
} as const;

/** Furnace temperature against time, checked. */
function furnaceCurve({ times, gas }: Pick<Values<typeof furnace>, 'times' | 'gas'>): (time: number) => number {
  if (times === undefined && gas === undefined) return standardFurnace;
  return givenCurve('a furnace curve', times ?? [], gas ?? []);
}

function plateInFurnace(v: Values<typeof furnace>): number {
  const mass = steelDensity('carbon') * v.thickness;
  const [content, capacity] =
    v.steel === 'carbon' ? [steelEnthalpy, steelSpecificHeat] : [stainlessEnthalpy, stainlessSpecificHeat];
  const curve = furnaceCurve(v);
  const heated = v.sides === 'both' ? 2 : 1;
  if (v.sides === 'both' && v.behind !== undefined)
    throw new RangeError('a plate with both sides heated has no behind');
  const { behind } = v;
  const body: Body = {
    content: (T) => mass * content(T),
    capacity: (T) => mass * capacity(T),
    uptake: (time, T) => {
      const air = curve(time);
      const [h, eps] = [v.behindCoefficient ?? 0, v.behindEmissivity ?? 0];
      const lost = behind === undefined ? 0 : surfaceLoss(h, T, behind, eps, behind);
      return -heated * surfaceLoss(v.coefficient, T, air, v.emissivity, air) - lost;
    },
  };
  return heatBody(body, { time: 0, temperature: v.start }, { time: v.time }).temperature;
}

const stack = {
  height: quantity('length', 'of the stack above its base'),
  bore: quantity('length', 'inside diameter'),
  gas: quantity('temperature', 'of the gas in the box below and in the stack'),
  outdoors: quantity('temperature', 'outdoor air'),
  pressure: optional('pressure', 'outdoors; one standard atmosphere when left out'),
  inletArea: quantity('area', 'of the opening that lets air into the box'),
  inletDischarge: quantity('number', 'its discharge coefficient'),
  inletBelow: optional('length', 'height of the stack base above that opening; 0 when left out'),
  entryLoss: optional('number', 'at the stack base; 0.5 when left out'),
  loss: optional('number', 'bends, cap and damper; 0 when left out. The exit adds 1'),
  roughness: optional('length', 'of the wall; 0.1 mm when left out'),
} as const;

const asStack = (v: Values<typeof stack>) =>
  stackOfGivenGas({
    ...v,
    pressure: v.pressure ?? STANDARD_PRESSURE,
    inletBelow: v.inletBelow ?? 0,
    entryLoss: v.entryLoss ?? 0.5,
    loss: v.loss ?? 0,
    roughness: v.roughness ?? 1e-4,
  });

export const wholeModelChecks: Record<string, Check> = {
  plateInFurnace: defineCheck(
    'temperature of a steel plate heated in a furnace curve',
    furnace,
    'temperature',
    plateInFurnace,
  ),
  stackFlow: defineCheck(
    'mass flow up a stack of given gas temperature over a box with one inlet',
    stack,
    'massFlow',
    (v) => asStack(v).flow,
  ),
  stackSpeed: defineCheck(
    'gas speed in a stack of given gas temperature over a box with one inlet',
    stack,
    'speed',
    (v) => asStack(v).speed,
  ),
  stackBaseDraft: defineCheck(
    'draft at the base of a stack of given gas temperature over a box with one inlet',
    stack,
    'pressure',
    (v) => asStack(v).baseDraft,
  ),
  lumpedBodyCooling: defineCheck(
    'temperature of a body that cools (or warms) by a given coefficient and by radiation',
    {
      mass: quantity('mass', 'of the body'),
      specificHeat: quantity('specificHeat', 'of the body'),
      area: quantity('area', 'of its surface'),
      coefficient: quantity('coefficient', 'convection coefficient'),
      emissivity: optional('number', 'of its surface; 0 when left out'),
      air: quantity('temperature', 'of the air'),
      surroundings: optional('temperature', 'radiant surroundings; the air when left out'),
      start: quantity('temperature', 'of the body at first'),
      time: quantity('time', 'passed'),
    },
    'temperature',
    (v) => {
      const capacity = (v.mass * v.specificHeat) / v.area;
      const body: Body = {
        content: (T) => capacity * T,
        capacity: () => capacity,
        uptake: (_, T) => -surfaceLoss(v.coefficient, T, v.air, v.emissivity ?? 0, v.surroundings ?? v.air),
      };
      return heatBody(body, { time: 0, temperature: v.start }, { time: v.time }).temperature;
    },
  ),
  steelCoolingOutdoors: defineCheck(
    'temperature of carbon steel that cools outdoors by the relations of a pit, natural and wind',
    {
      mass: quantity('mass', 'of the steel'),
      area: quantity('area', 'of its outside, the rest gives off nothing'),
      shape: choice(['horizontalCylinder', 'verticalCylinder', 'vertical', 'up', 'down'], 'how the surface stands'),
      length: quantity('length', 'in the free-convection relation: diameter, height, or area over perimeter'),
      windLength: optional(
        'length',
        'in the wind relation: diameter, height, or root of the area; length when left out',
      ),
      emissivity: quantity('number', 'of its surface'),
      air: quantity('temperature', 'of air and surroundings'),
      wind: optional('speed', 'still air when left out'),
      start: quantity('temperature', 'of the steel at first'),
      time: quantity('time', 'passed'),
    },
    'temperature',
    (v) => coolingOutdoors({ ...v, windLength: v.windLength ?? v.length, wind: v.wind ?? 0 }),
  ),
};
