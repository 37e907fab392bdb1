import { insideCoefficient, outsideCoefficient } from '../network/heat.js';
import { conductance } from '../network/materials.js';
import { OUTDOORS } from '../network/types.js';
import { STEFAN_BOLTZMANN } from '../physics/constants.js';
import type { Pit } from './pit.js';

/** A plate counts as one temperature while its Biot number stays below this (lumped-capacitance rule of every textbook). */
export const BIOT_LIMIT = 0.1;

/**
 * Biot number h t / k of each node that is a plate, at x: h of its busier side, radiation counted in, t the whole
 * thickness. Others get 0. Needs an evaluation of the balances at x first.
 */
export function biotNumbers(pit: Pit, x: Float64Array): Float64Array {
  const { model } = pit;
  const { network } = model;
  const out = new Float64Array(network.nodes.length);
  network.faces.forEach((face, i) => {
    const node = network.nodes[face.node];
    if (node.thickness <= 0 || node.material === 'constant') return;
    const surface = x[face.node];
    const eps = face.emissivity;
    let h: number;
    if (face.zone === OUTDOORS) {
      h = outsideCoefficient(model, i, surface) + eps * radiative(surface, network.outdoors.surroundings);
    } else {
      const gas = x[model.gas + face.zone];
      const eg = model.emissivity[face.zone];
      const star = 1 / ((1 - eps) / eps + 1 / (1 - eg));
      h =
        insideCoefficient(model, i, face.zone, surface, gas) +
        0.5 * (eps + 1) * eg * radiative(surface, gas) +
        star * radiative(surface, x[model.star + face.zone]);
    }
    const k = conductance({ a: 0, b: 0, factor: 1, conductivity: node.material }, surface);
    out[face.node] = Math.max(out[face.node], (h * node.thickness) / k);
  });
  return out;
}

/** Radiation between two black temperatures per kelvin between them [W/(m2 K)]. */
function radiative(a: number, b: number): number {
  return STEFAN_BOLTZMANN * (a * a + b * b) * (a + b);
}
