/** A stack on a box with one inlet, the gas in both at a given temperature: flows by the pit's network. */
import { pressureDifference, solveFlows } from '../../network/flow.js';
import { Model } from '../../network/model.js';
import { OUTDOORS } from '../../network/types.js';
import { LuSolver } from '../../solve/linear.js';
import { bareNetwork, bareZone } from './bareNetwork.js';

interface GivenStack {
  height: number;
  bore: number;
  gas: number;
  outdoors: number;
  pressure: number;
  inletArea: number;
  inletDischarge: number;
  /** height of the stack base above the inlet [m] */
  inletBelow: number;
  entryLoss: number;
  loss: number;
  roughness: number;
}

interface StackState {
  /** up the stack [kg/s] */
  flow: number;
  speed: number;
  /** outdoor less inside pressure at the stack's base, below its entry [Pa] */
  baseDraft: number;
}

/** @throws RangeError when the flows do not balance */
export function stackOfGivenGas(s: GivenStack): StackState {
  const network = bareNetwork({ temperature: s.outdoors, pressure: s.pressure, wind: 0 });
  const area = (Math.PI / 4) * s.bore ** 2;
  const base = s.inletBelow;
  network.zones.push(bareZone('box', { floor: 0, roof: Math.max(base, 0.1), section: 1 }));
  network.zones.push(bareZone('stack', { floor: base, roof: base + s.height, section: area }));
  const common = { extent: 0, windPressure: 0 } as const;
  network.openings.push(
    {
      ...common,
      name: 'inlet',
      role: 'intake',
      from: 0,
      to: OUTDOORS,
      area: s.inletArea,
      discharge: s.inletDischarge,
      centre: 0,
    },
    {
      ...common,
      name: 'stack entry',
      role: 'stackEntry',
      from: 0,
      to: 1,
      area,
      discharge: 1 / Math.sqrt(s.entryLoss),
      centre: base,
    },
    {
      ...common,
      name: 'stack',
      role: 'stackExit',
      from: 1,
      to: OUTDOORS,
      area,
      discharge: 1,
      centre: base + s.height,
      stack: { loss: 1 + s.loss, length: s.height, bore: s.bore, roughness: s.roughness },
    },
  );
  const model = new Model(network);
  const x = new Float64Array(model.size);
  x.fill(s.gas, 0, model.fuel);
  model.gasState(x);
  const { residual } = solveFlows(model, x, new LuSolver(model.zoneCount), 1e-12);
  if (!(residual < 1e-9)) throw new RangeError(`the flows of the stack do not balance: ${residual} kg/s are left`);
  const flow = model.flows[2].forward - model.flows[2].backward;
  const outside = { ...network.openings[0], centre: base };
  return {
    flow,
    speed: flow / (model.density[1] * area),
    baseDraft: -pressureDifference(model, outside, base),
  };
}
