/** Checks of what carries gas between layers and along a pipe, and of how the fire is seen through the throat. */
import { jetEntrainment } from '../../physics/plume.js';
import { outflowDeficit } from '../../physics/plugFlow.js';
import { coaxialDisks } from '../../physics/viewFactor.js';
import { SINKING_COLDNESS, wallDownflow } from '../../physics/wallFlow.js';
import { defineCheck, quantity } from '../check.js';

/** Specific heat in the excess of a stream [J/(kg K)]. */
const HEAT = 1006;

export const layerChecks = {
  jetMass: defineCheck({
    about: 'gas that a hot stream takes in on its rise through a colder layer',
    inputs: {
      flow: quantity('massFlow', 'of the stream'),
      temperature: quantity('temperature', 'of the stream'),
      layer: quantity('temperature', 'of the gas that it rises through'),
      density: quantity('density', 'of that gas'),
      width: quantity('length', 'of the opening'),
      rise: quantity('length', 'through the layer'),
    },
    result: 'massFlow',
    run: (v) =>
      v.rise * jetEntrainment(v.flow * HEAT * (v.temperature - v.layer), v.temperature, v.width, v.density, v.layer),
  }),
  wallDownflow: defineCheck({
    about: 'gas that sinks along a metre of a colder wall',
    inputs: {
      distance: quantity('length', 'below where it began'),
      gas: quantity('temperature', 'away from the wall'),
      wall: quantity('temperature', 'of the wall'),
      pressure: quantity('pressure', 'absolute'),
    },
    result: 'massFlow',
    run: (v) => wallDownflow(v.distance, v.gas, v.wall, v.pressure),
  }),
  sinkingColdness: defineCheck({
    about: "part of the wall's coldness that sinking gas has",
    inputs: {},
    result: 'number',
    run: () => SINKING_COLDNESS,
  }),
  pipeOutflow: defineCheck({
    about: 'what leaves a pipe with cold walls, above them, over its mean above them',
    inputs: { transferUnits: quantity('number', 'conductance over capacity flow') },
    result: 'number',
    run: (v) => 1 - v.transferUnits * outflowDeficit(v.transferUnits, 1),
  }),
  coaxialDisks: defineCheck({
    about: 'view factor from a disk to another on its axis',
    inputs: {
      from: quantity('length', 'radius of the first'),
      to: quantity('length', 'radius of the second'),
      distance: quantity('length', 'between them'),
    },
    result: 'number',
    run: (v) => coaxialDisks(v.from, v.to, v.distance),
  }),
};
