/** Checks of what a pit weighs, what a trailer carries of it, and how hot a rod on it gets. */
import { stackGeometry } from '../../design/geometryOf.js';
import { rodProfile, rodTemperature } from '../../physics/rod.js';
import { steelDensity } from '../../physics/steel.js';
import { trailerLoads } from '../../study/carry/weight.js';
import { choice, defineCheck, quantity, type Check, type Values } from '../check.js';
import { pipeOf } from './catalog.js';

const lever = {
  mass: quantity('mass', 'of all'),
  position: quantity('length', 'where it acts'),
  hitch: quantity('length', 'front support'),
  axle: quantity('length', 'rear support'),
} as const;

function loads(v: Values<typeof lever>) {
  return trailerLoads({ axle: v.axle, hitch: v.hitch, axleRating: v.mass, hitchRating: v.mass }, v.mass, v.position);
}

const rod = {
  diameter: quantity('length', 'of the rod'),
  length: quantity('length', 'of the rod'),
  conductivity: quantity('conductivity', 'of the rod'),
  coefficient: quantity('coefficient', 'convection coefficient'),
  base: quantity('temperature', 'of the base'),
  fluid: quantity('temperature', 'of the fluid'),
} as const;

function along(v: Values<typeof rod>) {
  return rodProfile({
    length: v.length,
    section: (Math.PI / 4) * v.diameter ** 2,
    perimeter: Math.PI * v.diameter,
    base: v.base,
    conductivity: () => v.conductivity,
    loss: (temperature) => v.coefficient * (temperature - v.fluid),
  });
}

export const carryChecks: Record<string, Check> = {
  pipeWeight: defineCheck({
    about: 'weight of a pipe per length, as a stack of it is weighed',
    inputs: {
      nominal: quantity('number', 'nominal pipe size'),
      schedule: choice(['10', '20', '30', '40', 'std', 'xs'], 'schedule'),
    },
    result: 'massPerLength',
    run: (v) => {
      const { diameter, walls } = pipeOf(v.nominal);
      const wall = walls[v.schedule];
      if (wall === undefined) throw new RangeError(`pipe ${v.nominal} has no schedule ${v.schedule}`);
      return stackGeometry({ ...BARE_STACK, diameter, wall, height: 1 }).mass;
    },
  }),
  plateWeight: defineCheck({
    about: 'weight of plate per area',
    inputs: { thickness: quantity('length', 'of the plate'), steel: choice(['carbon', 'stainless'], 'steel') },
    result: 'massPerArea',
    run: (v) => steelDensity(v.steel) * v.thickness,
  }),
  tongueLoad: defineCheck({
    about: 'what the front one of two supports bears of a weight: the tongue of a trailer',
    inputs: lever,
    result: 'mass',
    run: (v) => loads(v).tongueLoad_kg,
  }),
  axleLoad: defineCheck({
    about: 'what the rear one of two supports bears of a weight: the axle of a trailer',
    inputs: lever,
    result: 'mass',
    run: (v) => loads(v).axleLoad_kg,
  }),
  rodHeat: defineCheck({
    about: 'heat into a rod, by the solution along it that handles run through',
    inputs: rod,
    result: 'power',
    run: (v) => along(v).heat,
  }),
  rodTemperature: defineCheck({
    about: 'temperature at a place of a rod, by the solution along it that handles run through',
    inputs: { ...rod, at: quantity('length', 'from the base') },
    result: 'temperature',
    run: (v) => rodTemperature(along(v), v.at),
  }),
};

const BARE_STACK = {
  part: 'chamber',
  steel: 'carbon',
  base: 0,
  damper: 1,
  entryLoss: 0.5,
  bendLoss: 0,
  capLoss: 0,
  roughness: 0,
  finish: 'black paint',
  emissivity: 0.92,
} as const;
