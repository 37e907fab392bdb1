import { conductance, isSteel } from '../../network/materials.js';
import { OUTDOORS } from '../../network/types.js';
import { biot } from '../../physics/lumped.js';
import { radiantCoefficient } from '../../physics/radiation.js';
import { gasWallFactor, surfaceConductance } from '../../physics/surfaceNode.js';
import type { Pit } from '../../network/pit.js';

/**
 * A plate counts as one temperature while its Biot number stays below this (lumped-capacitance rule of every textbook).
 */
export const BIOT_LIMIT = 0.1;

/**
 * Biot number h t / k of each node that is a plate, at x: h of its busier side, radiation counted in, t the whole
 * thickness. Others get 0. Needs an evaluation of the balances at x first.
 */
export function biotNumbers(pit: Pit, x: Float64Array): Float64Array {
  const { model, balances } = pit;
  const { network } = model;
  const out = new Float64Array(network.nodes.length);
  network.faces.forEach((face, i) => {
    const node = network.nodes[face.node];
    if (node.thickness <= 0 || !isSteel(node.material)) return;
    const surface = x[face.node];
    const eps = face.emissivity;
    let h = balances.convection.coefficient[i];
    if (face.zone === OUTDOORS) {
      h += eps * radiantCoefficient(surface, network.outdoors.surroundings);
    } else {
      const gas = x[model.gas + face.zone];
      const eg = model.emissivity[face.zone];
      h +=
        gasWallFactor(eg, eps) * radiantCoefficient(surface, gas) +
        surfaceConductance(1, eps, eg) * radiantCoefficient(surface, x[model.surfaceOf[face.zone]]);
    }
    const k = conductance({ a: 0, b: 0, factor: 1, conductivity: node.material }, surface);
    out[face.node] = Math.max(out[face.node], biot(h, node.thickness, k));
  });
  return out;
}
