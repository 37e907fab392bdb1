/** Checks of what a pit weighs, what a trailer carries of it, and how hot a rod on it gets. */
import { stackGeometry } from '../../design/geometryOf.js';
import { rodProfile, rodTemperature } from '../../physics/rod.js';
import { steelDensity } from '../../physics/steel.js';
import { trailerLoads } from '../../study/carry/trailerLoads.js';
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
  pipeWeight: defineCheck(
    'weight of a pipe per length, as a stack of it is weighed',
    {
      nominal: quantity('number', 'nominal pipe size'),
      schedule: choice(['10', '20', '30', '40', 'std', 'xs'], 'schedule'),
    },
    'massPerLength',
    (v) => {
      const { diameter, walls } = pipeOf(v.nominal);
      const wall = walls[v.schedule];
      if (wall === undefined) throw new RangeError(`pipe ${v.nominal} has no schedule ${v.schedule}`);
      return stackGeometry({ ...BARE_STACK, diameter, wall, height: 1 }).mass;
    },
  ),
  plateWeight: defineCheck(
    'weight of plate per area',
    { thickness: quantity('length', 'of the plate'), steel: choice(['carbon', 'stainless'], 'steel') },
    'massPerArea',
    (v) => steelDensity(v.steel) * v.thickness,
  ),
  tongueLoad: defineCheck(
    'what the front one of two supports bears of a weight: the tongue of a trailer',
    lever,
    'mass',
    (v) => loads(v).tongueLoad_kg,
  ),
  axleLoad: defineCheck(
    'what the rear one of two supports bears of a weight: the axle of a trailer',
    lever,
    'mass',
    (v) => loads(v).axleLoad_kg,
  ),
  rodHeat: defineCheck(
    'heat into a rod, by the solution along it that handles run through',
    rod,
    'power',
    (v) => along(v).heat,
  ),
  rodTemperature: defineCheck(
    'temperature at a place of a rod, by the solution along it that handles run through',
    { ...rod, at: quantity('length', 'from the base') },
    'temperature',
    (v) => rodTemperature(along(v), v.at),
  ),
};

const BARE_STACK = {
  part: 'chamber',
  steel: 'carbon',
  base: 0,
  damper: 1,
  damperAt: 'top',
  entryLoss: 0.5,
  bendLoss: 0,
  capLoss: 0,
  roughness: 0,
  finish: 'black paint',
  emissivity: 0.92,
} as const;
