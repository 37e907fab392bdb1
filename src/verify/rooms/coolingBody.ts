/** A piece of steel outdoors, followed by the pit's network and time steps. */
import { Balances } from '../../network/balances.js';
import { Model } from '../../network/model.js';
import { OUTDOORS, type FaceShape } from '../../network/types.js';
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { QuasiSteadySolver } from '../../network/quasiSteady.js';
import { Transient } from '../../network/transient.js';
import { bareNetwork, bareZone } from './bareNetwork.js';

interface CoolingBody {
  mass: number;
  area: number;
  shape: FaceShape;
  length: number;
  windLength: number;
  emissivity: number;
  air: number;
  wind: number;
  start: number;
  time: number;
}

/** @returns temperature after the time [K]. @throws RangeError when a step does not converge */
export function coolingOutdoors(body: CoolingBody): number {
  const network = bareNetwork({ temperature: body.air, pressure: STANDARD_PRESSURE, wind: body.wind });
  network.zones.push(bareZone('air', { floor: 0, roof: 1, section: 1 }));
  network.openings.push({
    name: 'opening',
    role: 'doorway',
    from: 0,
    to: OUTDOORS,
    area: 1,
    discharge: 0.6,
    centre: 0.5,
    extent: 1,
    windPressure: 0,
  });
  const { mass, area, shape, length, windLength, emissivity } = body;
  network.nodes.push({
    name: 'body',
    part: 'body',
    mass,
    material: 'carbon',
    specificHeat: 0,
    thickness: 0,
    area: 0,
  });
  network.faces.push({ node: 0, zone: OUTDOORS, area, shape, length, windLength, emissivity, sunShare: 0, wet: 0 });
  const solver = new QuasiSteadySolver(new Balances(new Model(network)));
  const x = solver.coldState();
  x[0] = body.start;
  const run = new Transient(solver, x);
  run.system.tolerance = { absolute: 1e-3, relative: 1e-5 };
  const still = () => ({ mode: 'release' as const, heat: 0 });
  if (!run.change(still, 1)) throw new RangeError('the air beside the body does not settle');
  while (run.moment.time < body.time - 1e-9) {
    if (run.step(body.time) === 'failed') throw new RangeError(`no time step converges at ${run.moment.time} s`);
  }
  return run.moment.x[0];
}
