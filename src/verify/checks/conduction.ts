/** Checks of fins, layers and lumped bodies. */
import {
  finEfficiency,
  finHeat,
  finnedCylinderHeat,
  finParameter,
  infiniteFinHeat,
  infiniteFinLength,
  type FinSection,
} from '../relations/fin.js';
import { airConductivity, airKinematicViscosity, airPrandtl } from '../../physics/air.js';
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { biot } from '../../physics/lumped.js';
import { LININGS } from '../../design/catalog/index.js';
import { choice, defineCheck, optional, quantity, type Check, type Values } from '../check.js';
import { annulusConductivity, openGapNusselt, shutLevelNusselt, shutUprightNusselt } from '../../physics/airGap.js';
import { roundLayerHeat } from '../relations/layers.js';
import { lumpedTime, lumpedTimeConstant } from '../relations/lumped.js';
import { slabDifference } from '../relations/slab.js';
import { heatedLining } from '../rooms/slicedLining.js';

const conductivity = quantity('conductivity', 'of the solid');
const coefficient = quantity('coefficient', 'convection coefficient');
const excess = quantity('temperatureDifference', 'base less fluid');
const thickness = quantity('length', 'of the fin');
const length = quantity('length', 'of the fin');

const pin = { diameter: quantity('length', 'of the rod'), conductivity, coefficient } as const;
const pinSection = (v: Values<typeof pin>): FinSection => ({
  perimeter: Math.PI * v.diameter,
  section: (Math.PI * v.diameter ** 2) / 4,
  conductivity: v.conductivity,
  coefficient: v.coefficient,
});

const straight = { thickness, length, conductivity, coefficient } as const;
/** Per metre of depth, both faces; the tip met by half the thickness. */
const straightSection = (v: Values<typeof straight>): FinSection => ({
  perimeter: 2,
  section: v.thickness,
  conductivity: v.conductivity,
  coefficient: v.coefficient,
});

const annular = {
  baseRadius: quantity('length', 'of the cylinder'),
  tipRadius: quantity('length', 'of the fin, corrected by half its thickness'),
  thickness,
  coefficient,
} as const;

const body = {
  density: quantity('density', 'of the body'),
  specificHeat: quantity('specificHeat', 'of the body'),
  volumePerArea: quantity('length', 'volume over exposed area'),
  coefficient,
} as const;

const change = {
  timeConstant: quantity('time', 'of the body'),
  start: quantity('temperature', 'of the body at first'),
  fluid: quantity('temperature', 'of the fluid'),
} as const;

const gap = {
  innerRadius: quantity('length', 'of the inner cylinder'),
  outerRadius: quantity('length', 'of the outer cylinder'),
  inner: quantity('temperature', 'of the inner cylinder'),
  outer: quantity('temperature', 'of the outer cylinder'),
} as const;

/** Small enough that a lining's properties don't change with it [K]. */
const STEP = 0.1;

export const conductionChecks: Record<string, Check> = {
  finParameter: defineCheck('fin parameter m of a pin', pin, 'perLength', (v) => finParameter(pinSection(v))),
  infiniteFinHeat: defineCheck('heat into an infinitely long pin', { ...pin, excess }, 'power', (v) =>
    infiniteFinHeat(pinSection(v), v.excess),
  ),
  infiniteFinLength: defineCheck('length from which a pin counts as infinite', pin, 'length', (v) =>
    infiniteFinLength(pinSection(v)),
  ),
  finHeat: defineCheck(
    'heat per depth into a straight fin with corrected length',
    { ...straight, excess },
    'heatPerLength',
    (v) => finHeat(straightSection(v), v.length + v.thickness / 2, v.excess),
  ),
  finEfficiency: defineCheck('efficiency of a straight fin with corrected length', straight, 'number', (v) =>
    finEfficiency(finParameter(straightSection(v)), v.length + v.thickness / 2),
  ),
  finnedCylinderHeat: defineCheck(
    'heat from a cylinder with annular fins, or bare with a count of 0',
    {
      ...annular,
      height: quantity('length', 'of the cylinder'),
      count: quantity('number', 'of fins'),
      efficiency: quantity('number', 'of one fin'),
      excess,
    },
    'power',
    (v) => finnedCylinderHeat(v, v),
  ),
  biot: defineCheck(
    'Biot number',
    { coefficient, length: quantity('length', 'volume over area'), conductivity },
    'number',
    (v) => biot(v.coefficient, v.length, v.conductivity),
  ),
  lumpedTimeConstant: defineCheck('time constant of a lumped body', body, 'time', (v) => lumpedTimeConstant(v)),
  lumpedSphereDiameter: defineCheck(
    'diameter of the sphere that has a given time constant: lumpedTimeConstant is linear in V/A = D/6',
    {
      density: body.density,
      specificHeat: body.specificHeat,
      coefficient,
      timeConstant: quantity('time', 'wanted'),
    },
    'length',
    (v) => (6 * v.timeConstant) / lumpedTimeConstant({ ...v, volumePerArea: 1 }),
  ),
  lumpedTime: defineCheck(
    'time for a lumped body to reach a temperature',
    { ...change, temperature: quantity('temperature', 'to be reached') },
    'time',
    (v) => lumpedTime(v.temperature, v),
  ),
  shutUprightNusselt: defineCheck(
    'Nusselt number of air shut in between upright walls',
    {
      rayleigh: quantity('number', 'on the gap'),
      aspect: quantity('number', 'height over gap'),
      prandtl: quantity('number', 'of the air'),
    },
    'number',
    (v) => shutUprightNusselt(v.rayleigh, v.aspect, v.prandtl),
  ),
  shutLevelNusselt: defineCheck(
    'Nusselt number of air shut in over a level plate that heats it',
    { rayleigh: quantity('number', 'on the gap') },
    'number',
    (v) => shutLevelNusselt(v.rayleigh),
  ),
  openGapNusselt: defineCheck(
    'Nusselt number of a wall of an upright channel that is open below and above',
    { elenbaas: quantity('number', 'Rayleigh number on the gap, times gap over height') },
    'number',
    (v) => openGapNusselt(v.elenbaas),
  ),
  slabTemperature: defineCheck(
    'temperature in a slab that takes heat on one face',
    {
      biot: quantity('number', 'on its thickness'),
      fourier: quantity('number', 'on its thickness'),
      place: quantity('number', '0 at the face that takes no heat, 1 at the one that does'),
      start: change.start,
      fluid: change.fluid,
    },
    'temperature',
    (v) => v.fluid + slabDifference(v) * (v.start - v.fluid),
  ),
  liningRise: defineCheck(
    'share of a small step of the fluid that a lining, cut into slices as in a pit, has followed',
    {
      material: choice(Object.keys(LININGS), 'lining of the catalog'),
      thickness: quantity('length', 'of the lining'),
      coefficient,
      start: change.start,
      time: quantity('time', 'since the step'),
      of: choice(['hot face', 'behind'], 'where'),
    },
    'number',
    ({ of, start, ...v }) => {
      const { hot, behind } = heatedLining({ ...v, start, fluid: start + STEP });
      return ((of === 'hot face' ? hot : behind) - start) / STEP;
    },
  ),
  roundLayerHeat: defineCheck(
    'heat per length through a round layer',
    { ...gap, conductivity: quantity('conductivity', 'of the layer') },
    'heatPerLength',
    (v) => roundLayerHeat(v, v.inner - v.outer),
  ),
  annulusConductivity: defineCheck(
    'effective conductivity of air between horizontal cylinders',
    { ...gap, temperature: optional('temperature', 'of the properties; mean of both when left out') },
    'conductivity',
    (v) => airGap(v),
  ),
  annulusHeat: defineCheck(
    'heat per length through air between horizontal cylinders',
    { ...gap, temperature: optional('temperature', 'of the properties; mean of both when left out') },
    'heatPerLength',
    (v) => roundLayerHeat({ ...v, conductivity: airGap(v) }, v.inner - v.outer),
  ),
};

function airGap(v: Values<typeof gap> & { temperature?: number }): number {
  const T = v.temperature ?? (v.inner + v.outer) / 2;
  const nu = airKinematicViscosity(T, STANDARD_PRESSURE);
  const gas = {
    temperature: T,
    kinematicViscosity: nu,
    diffusivity: nu / airPrandtl(T),
    conductivity: airConductivity(T),
  };
  return annulusConductivity(v, gas, v.inner - v.outer);
}
