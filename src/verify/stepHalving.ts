/**
 * Does an answer stop moving as steps get finer, and as fast as the method promises? Fixed steps halved on bodies with
 * an exact answer and on a whole room; tolerances halved on a whole pit; slices doubled in a wall.
 */
import { starterDesign } from '../design/starter.js';
import { readDesign } from '../design/read.js';
import { Balances } from '../network/balances.js';
import { Model } from '../network/model.js';
import { STEFAN_BOLTZMANN } from '../physics/constants.js';
import { LuSolver } from '../solve/linear.js';
import { StiffStepper } from '../solve/stiff.js';
import { type StiffSystem } from '../solve/stiffSystem.js';
import { estimate } from '../study/estimate/estimate.js';
import { QuasiSteadySolver } from '../network/quasiSteady.js';
import { NetworkSystem } from '../network/networkSystem.js';
import { bodySystem, type Body } from './heatBody.js';
import { areaMean, perSurface, surfaceMean, type Room } from './rooms/room.js';

interface StepRow {
  /** number of steps or slices, or the factor on the tolerance */
  steps: number;
  value: number;
  /** against the exact answer or the finest */
  error: number;
}

/** Errors at ever finer steps, and the order at which they fall. */
export interface StepStudy {
  name: string;
  unit: string;
  /** what is halved */
  refined: 'steps' | 'tolerance' | 'slices';
  /** exact answer, or the finest one, and where it comes from */
  against: number;
  source: string;
  rows: StepRow[];
  /** log2 of the ratio of the last two errors; null where nothing promises one */
  order: number | null;
  /** what must hold, in words, and whether it does */
  demand: string;
  met: boolean;
}

const LEAST_ORDER = 2.7;
const ORDER_DEMAND = `order at least ${LEAST_ORDER} (the method's is 3)`;

function orderStudy(
  about: Pick<StepStudy, 'name' | 'unit' | 'against' | 'source'>,
  counts: readonly number[],
  at: (steps: number) => number,
): StepStudy {
  const rows = counts.map((steps) => {
    const value = at(steps);
    return { steps, value, error: value - about.against };
  });
  const [coarse, fine] = rows.slice(-2);
  const order = Math.log2(Math.abs(coarse.error / fine.error));
  return { ...about, refined: 'steps', rows, order, demand: ORDER_DEMAND, met: order >= LEAST_ORDER };
}

/** Equal steps without error control. @throws RangeError when a step does not converge */
function equalSteps(system: StiffSystem, start: Float64Array, duration: number, steps: number): Float64Array {
  const stepper = new StiffStepper(system, new LuSolver(system.size));
  const h = duration / steps;
  stepper.begin(0, start);
  for (let i = 0; i < steps; i++) {
    if (stepper.attempt(i * h, h) === Infinity) throw new RangeError(`step ${i + 1} of ${steps} does not converge`);
    stepper.accept(h);
  }
  return stepper.next;
}

function coolingStudies(): StepStudy[] {
  const capacity = 20_000; // J/(m2 K)
  const [start, air, coefficient, duration] = [600, 300, 20, 2000];
  const linear: Body = {
    content: (T) => capacity * T,
    capacity: () => capacity,
    uptake: (_, T) => coefficient * (air - T),
  };
  const radiating: Body = { ...linear, uptake: (_, T) => -STEFAN_BOLTZMANN * T ** 4 };
  const run = (body: Body) => (steps: number) =>
    equalSteps(bodySystem(body), Float64Array.of(start), duration, steps)[0];
  const counts = [4, 8, 16, 32];
  const common = { unit: 'K' };
  return [
    orderStudy(
      {
        ...common,
        name: 'lumped body cooling in air, temperature after two time constants',
        against: air + (start - air) * Math.exp((-coefficient * duration) / capacity),
        source: 'exact: T = Ta + (T0 - Ta) exp(-t/tau)',
      },
      counts,
      run(linear),
    ),
    orderStudy(
      {
        ...common,
        name: 'black body radiating to empty space, temperature',
        against: (start ** -3 + (3 * STEFAN_BOLTZMANN * duration) / capacity) ** (-1 / 3),
        source: 'exact: T^-3 = T0^-3 + 3 sigma t/C',
      },
      counts,
      run(radiating),
    ),
  ];
}

/**
 * Tolerance that steps of a given length don't ask for, and by which Newton leaves next to nothing over: errors are
 * those of the steps.
 */
const NO_LEFTOVER = { absolute: 1e-4, relative: 2e-6 };

/** The whole network of a bare steel room under a rising fire, gas and flows following at once. */
function roomStudy(room: Room, fire: number): StepStudy {
  const [duration, rise] = [400, 60];
  const demandAt = (time: number) => ({ mode: 'release' as const, heat: fire * (1 - 0.8 * Math.exp(-time / rise)) });
  const at = (steps: number) => {
    const solver = new QuasiSteadySolver(new Balances(new Model(room.network)));
    const x = solver.burningState(fire, solver.coldState());
    if (!solver.solve(x, demandAt(0), 'nodes').converged) throw new RangeError('the room does not settle at first');
    const system = new NetworkSystem(solver);
    system.demandAt = demandAt;
    system.tolerance = NO_LEFTOVER;
    const end = equalSteps(system, x, duration, steps);
    return areaMean(
      room.areas,
      perSurface((surface) => surfaceMean(room.walls[surface], ({ plate }) => end[plate!])),
    );
  };
  const about = {
    name: `bare steel room with a fire rising to ${fire / 1e3} kW, mean plate temperature after ${duration} s`,
    unit: 'K',
    against: at(256),
    source: 'the same with 256 steps',
  };
  return orderStudy(about, [4, 8, 16, 32], at);
}

const MOST_MOVED = 0.005;

/** Gauge and soaked time of the starter design as the tolerance of the time steps is halved twice. */
function pitStudies(): StepStudy[] {
  const { design } = readDesign(starterDesign(), { fileName: 'starter' });
  if (!design) throw new Error('the starter design does not read');
  const factors = [1, 0.5, 0.25];
  const runs = factors.map((tolerance) => estimate(design, { tolerance }).warmUp);
  return (['gauge_s', 'soaked_s'] as const).map((key) => {
    const values = runs.map((run) => run?.[key] ?? NaN);
    const against = values[values.length - 1];
    const rows = factors.map((steps, n) => ({ steps, value: values[n], error: values[n] - against }));
    return {
      name: `starter design, ${key === 'gauge_s' ? 'gauge' : 'soaked'} time`,
      unit: 's',
      refined: 'tolerance',
      against,
      source: 'the same with a quarter of the tolerance',
      rows,
      order: null,
      demand: 'halving the tolerance moves it by less than 0.5 %',
      met: Math.abs(values[0] / values[1] - 1) < MOST_MOVED,
    };
  });
}

/** @param bareRoom as the validation has it */
export function stepStudies(bareRoom: Room): StepStudy[] {
  return [...coolingStudies(), roomStudy(bareRoom, 460e3), ...pitStudies()];
}
