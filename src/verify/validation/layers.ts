/**
 * What layering does to an opening's flow: the same opening law, fed with the layers that were measured instead of one
 * mixed gas. It is no part of the model; it shows how much of an error in the neutral plane the mixing makes.
 */
import { GRAVITY, STANDARD_PRESSURE } from '../../physics/constants.js';
import { airDensity } from '../../physics/air.js';
import { emptyOpeningFlow, openingFlow } from '../../physics/opening.js';
import { bracketedRoot } from '../../solve/root.js';

interface LayeredOpening {
  width: number;
  height: number;
  sill: number;
  discharge: number;
  outdoors: number;
  lower: number;
  upper: number;
  /** height of the join between the layers [m] */
  join: number;
}

interface LayeredFlow {
  outflow: number;
  inflow: number;
  neutralHeight: number;
}

/** Flows that balance, the fuel's mass left out. @throws RangeError when no pressure balances them */
export function layeredOpeningFlow(o: LayeredOpening): LayeredFlow {
  const top = o.sill + o.height;
  const join = Math.min(Math.max(o.join, o.sill), top);
  const [rhoOut, rhoLow, rhoUp] = [
    airDensity(o.outdoors, STANDARD_PRESSURE),
    airDensity(o.lower, STANDARD_PRESSURE),
    airDensity(o.upper, STANDARD_PRESSURE),
  ];
  /** pressure inside less outside at height z, with `floor` at the floor */
  const difference = (floor: number, z: number) =>
    floor + GRAVITY * (rhoOut * z - rhoLow * Math.min(z, o.join) - rhoUp * Math.max(0, z - o.join));
  const flows = (floor: number) => {
    let [outflow, inflow] = [0, 0];
    for (const [low, high, rho] of [
      [o.sill, join, rhoLow],
      [join, top, rhoUp],
    ]) {
      if (high <= low) continue;
      const flow = emptyOpeningFlow();
      const area = o.width * (high - low);
      openingFlow(flow, area, o.discharge, rho, rhoOut, difference(floor, low), difference(floor, high));
      outflow += flow.forward;
      inflow += flow.backward;
    }
    return { outflow, inflow };
  };
  const net = (floor: number) => flows(floor).outflow - flows(floor).inflow;
  const { root } = bracketedRoot(net, { low: -20, high: 20, tolerance: 1e-9 });
  const plane = bracketedRoot((z) => difference(root, z), { low: o.sill, high: top, tolerance: 1e-9 });
  return { ...flows(root), neutralHeight: plane.root };
}
