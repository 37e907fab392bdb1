/** Checks of what carries gas between layers and along a pipe, and of how the fire is seen through the throat. */
import { flameHeight, jetCoefficient, jetShape, plumeExcess, plumeOrigin } from '../../physics/ceilingJet.js';
import { emptyOpeningFlow, innerFlow, overturn } from '../../physics/opening.js';
import { AIR_HEAT, jetEntrainment, plumeFlow } from '../../physics/plume.js';
import { outflowDeficit } from '../../physics/plugFlow.js';
import { coaxialDisks } from '../../physics/viewFactor.js';
import { SINKING_COLDNESS, wallDownflow } from '../../physics/wallFlow.js';
import { choice, defineCheck, quantity } from '../check.js';
import { MIRRORED } from '../relations/mirrored.js';

const STRUCK = {
  length: quantity('length', 'of the roof, the fire under its middle'),
  width: quantity('length', 'of the roof'),
  height: quantity('length', 'of the roof over the fire'),
  convective: quantity('power', 'heat of the fire less what it radiates'),
  temperature: quantity('temperature', 'of the gas under the roof'),
  pressure: quantity('pressure', 'absolute'),
} as const;

export const layerChecks = {
  jetMass: defineCheck(
    'gas that a hot stream takes in on its rise through a colder layer',
    {
      flow: quantity('massFlow', 'of the stream'),
      temperature: quantity('temperature', 'of the stream'),
      layer: quantity('temperature', 'of the gas that it rises through'),
      density: quantity('density', 'of that gas'),
      width: quantity('length', 'of the opening'),
      rise: quantity('length', 'through the layer'),
    },
    'massFlow',
    (v) =>
      v.rise *
      jetEntrainment(v.flow * AIR_HEAT * (v.temperature - v.layer), v.temperature, v.width, v.density, v.layer),
  ),
  wallDownflow: defineCheck(
    'gas that sinks along a metre of a colder wall',
    {
      distance: quantity('length', 'below where it began'),
      gas: quantity('temperature', 'away from the wall'),
      wall: quantity('temperature', 'of the wall'),
      pressure: quantity('pressure', 'absolute'),
    },
    'massFlow',
    (v) => wallDownflow(v.distance, v.gas, v.wall, v.pressure),
  ),
  sinkingColdness: defineCheck(
    "part of the wall's coldness that sinking gas has",
    {},
    'number',
    () => SINKING_COLDNESS,
  ),
  pipeOutflow: defineCheck(
    'what leaves a pipe with cold walls, above them, over its mean above them',
    { transferUnits: quantity('number', 'conductance over capacity flow') },
    'number',
    (v) => 1 - v.transferUnits * outflowDeficit(v.transferUnits, 1),
  ),
  sectionFlow: defineCheck(
    'flow through the full section between two cells',
    {
      area: quantity('area', 'of the section'),
      discharge: quantity('number', 'coefficient'),
      density: quantity('density', 'mean of both sides'),
      pressure: quantity('pressure', 'difference'),
    },
    'massFlow',
    (v) => innerFlow(emptyOpeningFlow(), v.area, v.discharge, v.density, v.pressure).forward,
  ),
  overturn: defineCheck(
    'gas that trades places through a level section under denser gas',
    {
      above: quantity('density', 'of the gas above'),
      below: quantity('density', 'of the gas below'),
      area: quantity('area', 'of the section'),
    },
    'massFlow',
    (v) => overturn(v.above, v.below, v.area),
  ),
  plumeOrigin: defineCheck(
    'virtual origin of a fire plume over its fire',
    {
      heat: quantity('power', 'of the fire'),
      across: quantity('length', 'diameter of the fire'),
      density: quantity('density', 'of the gas that it rises in'),
      temperature: quantity('temperature', 'of that gas'),
    },
    'length',
    (v) => plumeOrigin(v.heat, v.across, v.density, v.temperature),
  ),
  plumeFlow: defineCheck(
    "gas that a fire's plume carries at a height over the fire",
    {
      heat: quantity('power', 'of the fire'),
      radiantShare: quantity('number', 'share of it that leaves as radiation'),
      across: quantity('length', 'diameter of the fire'),
      height: quantity('length', 'over the fire'),
      density: quantity('density', 'of the gas that it rises in'),
      temperature: quantity('temperature', 'of that gas'),
    },
    'massFlow',
    ({ heat, radiantShare, across, height, density, temperature }) => {
      const origin = plumeOrigin(heat, across, density, temperature);
      return plumeFlow((1 - radiantShare) * heat, height, origin, across, density, temperature);
    },
  ),
  mirroredPlume: defineCheck(
    'share of a free plume that one by a wall or in a corner takes in',
    { stands: choice(['by a wall', 'in a corner'], 'where the fire stands') },
    'number',
    (v) => MIRRORED[v.stands],
  ),
  flameHeight: defineCheck(
    "mean height of a fire's flames",
    { heat: quantity('power', 'of the fire'), across: quantity('length', 'its diameter') },
    'length',
    (v) => flameHeight(v.heat, v.across),
  ),
  plumeExcess: defineCheck(
    "excess of a plume's axis over the gas that it rises in",
    {
      convective: quantity('power', 'heat of the fire less what it radiates'),
      rise: quantity('length', 'above the virtual origin'),
      height: quantity('length', 'of the roof over the fire'),
      temperature: quantity('temperature', 'of the gas that it rises in'),
      ambient: quantity('temperature', 'outdoors'),
      pressure: quantity('pressure', 'absolute'),
    },
    'temperatureDifference',
    (v) => plumeExcess(v.convective, v.rise, v.height, v.temperature, v.ambient, v.pressure),
  ),
  struckRoofExcess: defineCheck(
    'excess of the gas that runs along under a roof that a plume strikes, mean over the roof',
    {
      ...STRUCK,
      rise: quantity('length', 'of the roof above the virtual origin'),
      ambient: quantity('temperature', 'that a flame is 900 K above'),
    },
    'temperatureDifference',
    (v) => jetShape(v).excess * plumeExcess(v.convective, v.rise, v.height, v.temperature, v.ambient, v.pressure),
  ),
  struckRoofCoefficient: defineCheck(
    'convection coefficient of a roof that a plume strikes, mean over the roof',
    STRUCK,
    'coefficient',
    (v) => jetCoefficient(v.convective, jetShape(v).speed, v.temperature, v.pressure),
  ),
  coaxialDisks: defineCheck(
    'view factor from a disk to another on its axis',
    {
      from: quantity('length', 'radius of the first'),
      to: quantity('length', 'radius of the second'),
      distance: quantity('length', 'between them'),
    },
    'number',
    (v) => coaxialDisks(v.from, v.to, v.distance),
  ),
};
