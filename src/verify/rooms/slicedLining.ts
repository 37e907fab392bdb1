/** A lined plate as the network has it, heated on its hot face by a fluid and giving no heat off behind. */
import { conductance, heatCapacity } from '../../network/materials.js';
import { addPatch } from '../../network/patches.js';
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { bareNetwork } from './bareNetwork.js';

/** Steel so thin that it stores next to nothing [m]. */
const THIN = 1e-9;

/**
 * Slices of a lining followed in time by the classical Runge-Kutta method, with steps far below what they need to be
 * stable.
 * @param coefficient between fluid and hot face [W/(m2 K)]
 * @param time [s]
 * @returns temperatures of its hot face and of the steel behind it [K]
 */
export function heatedLining(lining: {
  material: string;
  thickness: number;
  coefficient: number;
  start: number;
  fluid: number;
  time: number;
}): { hot: number; behind: number } {
  const { material, thickness, coefficient, start, fluid, time } = lining;
  const network = bareNetwork({ temperature: start, pressure: STANDARD_PRESSURE, wind: 0 });
  addPatch(network, {
    name: 'plate',
    part: 'plate',
    zone: 0,
    shape: 'vertical',
    insideArea: 1,
    outsideArea: 1,
    mass: 1000 * THIN,
    thickness: THIN,
    length: 1,
    windLength: 1,
    steel: 'carbon',
    insideEmissivity: 1,
    outsideEmissivity: 1,
    lining: { material, thickness, faces: [] },
    liningVolume: thickness,
  });
  const { nodes, links } = network;
  const hot = network.faces[0].node;
  // what is behind stores nothing: it is as hot as the slice before it
  const slices = nodes.length - 1;
  const inner = links.filter(({ a, b }) => a > 0 && b > 0);
  const rates = (T: Float64Array): Float64Array => {
    const heat = new Float64Array(nodes.length);
    heat[hot] += coefficient * (fluid - T[hot]);
    for (const link of inner) {
      const flow = conductance(link, 0.5 * (T[link.a] + T[link.b])) * (T[link.a] - T[link.b]);
      heat[link.a] -= flow;
      heat[link.b] += flow;
    }
    return heat.map((each, i) => (i === 0 ? 0 : each / heatCapacity(nodes[i], T[i])));
  };
  const steps = Math.ceil(time / 2);
  const h = time / steps;
  let T = new Float64Array(nodes.length).fill(start);
  const moved = (by: number, k: Float64Array) => T.map((each, i) => each + by * k[i]);
  for (let i = 0; i < steps; i++) {
    const a = rates(T);
    const b = rates(moved(h / 2, a));
    const c = rates(moved(h / 2, b));
    const d = rates(moved(h, c));
    T = T.map((each, j) => each + (h / 6) * (a[j] + 2 * b[j] + 2 * c[j] + d[j]));
  }
  return { hot: T[hot], behind: T[slices] };
}
