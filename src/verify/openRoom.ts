/**
 * Rooms whose walls are each at one temperature, clear of gas that radiates, and what they send through an open area,
 * by the pit's own balances.
 */
import { Balances } from '../network/balances.js';
import { Model } from '../network/model.js';
import { OUTDOORS } from '../network/types.js';
import { STANDARD_PRESSURE } from '../physics/constants.js';
import { bracketedRoot } from '../solve/root.js';
import { bareNetwork, bareZone } from './rooms/bareNetwork.js';

interface OpenRoom {
  /** of its walls [m2], [-], [K] */
  area: number;
  emissivity: number;
  temperature: number;
}

/** Sweeps over the surface nodes of two rooms: each moves the other's by little. */
const SWEEPS = 40;

/**
 * Heat that the walls of the first room lose through an open area [W].
 * @param rooms one that is open to the outdoors, or two that are open to each other
 */
export function heatThrough(rooms: readonly OpenRoom[], opening: number, outdoors: number): number {
  const network = bareNetwork({ temperature: outdoors, pressure: STANDARD_PRESSURE, wind: 0 });
  rooms.forEach(({ area, emissivity }, zone) => {
    const name = `room ${zone + 1}`;
    network.zones.push(bareZone(name, { floor: 0, roof: 1, section: 1 }));
    network.nodes.push({ name, part: name, mass: 1, material: 'carbon', specificHeat: 0, thickness: 0, area: 0 });
    const face = { area, emissivity, shape: 'vertical', length: 1, windLength: 1, sunShare: 0, wet: 0 } as const;
    network.faces.push({ ...face, node: zone, zone });
  });
  network.windows.push({ a: 0, b: rooms.length > 1 ? 1 : OUTDOORS, area: opening });
  const model = new Model(network);
  const balances = new Balances(model);
  const x = new Float64Array(model.size);
  rooms.forEach(({ temperature }, zone) => {
    x[zone] = x[model.surfaceOf[zone]] = x[model.gas + zone] = temperature;
  });
  const solveNode = (zone: number) => {
    const off = (temperature: number): number => {
      x[model.surfaceOf[zone]] = temperature;
      balances.evaluate(x, { mode: 'release', heat: 0 });
      return balances.algebraic[model.surfaceOf[zone] - model.differential];
    };
    x[model.surfaceOf[zone]] = bracketedRoot(off, { low: 1, high: 5000, tolerance: 1e-9 }).root;
  };
  for (let sweep = 0; sweep < SWEEPS; sweep++) rooms.forEach((_, zone) => solveNode(zone));
  balances.evaluate(x, { mode: 'release', heat: 0 });
  return -balances.rate[0];
}
