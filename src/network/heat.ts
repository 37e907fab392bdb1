/** What the fire's plume gives the roof that it strikes. */
import { AIR_GAS_CONSTANT } from '../physics/air.js';
import { jetCoefficient, plumeExcess, plumeOrigin } from '../physics/ceilingJet.js';
import type { Model } from './model.js';

/** Heat flux below which what the struck roof takes beyond free convection fades out [W/m2]. */
const LEAST_FLUX = 20;

/**
 * Heat that the jet under a struck roof gives it [W/m2], whatever else convection does.
 * @param release of the fire [W]
 */
export function jetFlux({ network, radiantShare }: Model, release: number, surface: number, gas: number): number {
  const { roof } = network.fire;
  const { temperature: ambient, pressure } = network.outdoors;
  const { across, height, jet } = roof!;
  const convective = (1 - radiantShare) * release;
  const origin = plumeOrigin(release, across, pressure / (AIR_GAS_CONSTANT * gas), gas);
  const axis = plumeExcess(convective, height - origin, height, gas, ambient, pressure);
  return jetCoefficient(convective, jet.speed, gas, pressure) * (gas + jet.excess * axis - surface);
}

/**
 * What a struck roof takes beyond its free convection [W/m2]: the larger of the two counts, joined without a corner.
 */
export function struckExcess(free: number, jet: number): number {
  const more = jet - Math.max(0, free);
  return more > 0 ? (more * more) / (more + LEAST_FLUX) : 0;
}
