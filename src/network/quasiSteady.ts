import type { Balances } from './balances.js';
import { LIMIT_WIDTH, type Demand } from './balances.js';
import { massBalance, solveFlows } from './flow.js';
import { foresee } from './foreseen.js';
import type { Model } from './model.js';
import { LuSolver } from '../solve/linear.js';
import { newton, type NewtonOutcome, type NewtonProblem } from '../solve/newton.js';

/** What may be left over when an iteration counts as converged. */
const LEFT = { temperature: 1e-6, pressure: 1e-8, fuel: 1e-9, fireShare: 1e-8 };
/**
 * Pseudo-transient continuation: length of its first step [s], most steps, most that one is longer than the last. Where
 * a reading is held short steps ask for a fire that warms the gas within them, and the fire swings.
 */
const CONTINUATION = { first: { release: 5, hold: 20 }, most: 80, growth: 3 };
/**
 * One whose steps are this long [s] and move no temperature by more than this [K] has come near enough for Newton
 * alone.
 */
const NEAR = { after: 10, move: 3 };
/** What may be left over in an implicit Euler step, which only has to stay on its way. */
const EULER_LEFT = { temperature: 1e-2, pressure: 1e-5, fuel: 1e-5, fireShare: 1e-4 };
/** How what may be left over of a pressure grows with it [1/Pa]. */
const DRAWING = 2;
/** Most that a temperature may move in one Newton step [K]. */
const STRIDE = 120;
const LOWEST = 150;
const HIGHEST = 4000;
/** Largest net mass flow into a zone that a solution may have [kg/s]. */
const MASS_TOLERANCE = 1e-9;

/** What keeps its temperature: 'nothing' for a steady state, 'nodes' for a quasi-steady one of gas, flows and fire. */
type Held = 'nothing' | 'nodes';

/** Whether a state settled, and what is left over in it. */
export interface SteadyOutcome {
  converged: boolean;
  iterations: number;
  /** largest net mass flow into a zone [kg/s] */
  massError: number;
  /** largest heat imbalance of a node or zone [W] */
  heatError: number;
}

/** Solves one model's balances, steady or with plates held (quasi-steady); its work space is kept for repeated use. */
export class QuasiSteadySolver {
  readonly model: Model;
  /** may be shared by whoever steps in time: each factors anew where it begins */
  readonly lu: LuSolver;
  private readonly flowLu: LuSolver;
  private readonly rhs: Float64Array;
  private readonly before: Float64Array;
  private readonly trial: Float64Array;
  private readonly masses: Float64Array;

  constructor(readonly balances: Balances) {
    const { model } = balances;
    this.model = model;
    // the fire's own entry is there where it is given, and not where a reading asks for it: last, one order does for
    // both
    this.lu = new LuSolver(model.size, model.fire);
    this.flowLu = new LuSolver(model.columnCount);
    this.rhs = new Float64Array(model.size);
    this.before = new Float64Array(model.size);
    this.trial = new Float64Array(model.size);
    this.masses = new Float64Array(model.zoneCount);
    foresee(balances, this.lu, (heat) => this.burningState(heat));
  }

  /** Everything at outdoor temperature, no fire, no flow. */
  coldState(): Float64Array {
    const { model } = this;
    const x = new Float64Array(model.size);
    x.fill(model.network.outdoors.temperature, 0, model.fuel);
    return x;
  }

  /**
   * A hot first guess that draws: gas well above outdoors in every zone, plates somewhat, so that iterations start
   * burning.
   */
  burningState(heat: number, nodes?: Float64Array): Float64Array {
    const { model } = this;
    const x = this.coldState();
    const outdoors = model.network.outdoors.temperature;
    for (let i = 0; i < model.differential; i++) x[i] = nodes ? nodes[i] : outdoors + 60;
    for (let z = 0; z < model.zoneCount; z++) {
      x[model.gas + z] = outdoors + (z === model.network.fire.zone ? 220 : 110);
      x[model.surfaceOf[z]] = outdoors + 60;
    }
    x[model.fire] = heat;
    return x;
  }

  /**
   * Solve all balances for a demand from the first guess x, which is improved in place.
   *
   * Pseudo-transient continuation; where it comes to no end, implicit Euler.
   */
  solve(x: Float64Array, demand: Demand, hold: Held = 'nothing'): SteadyOutcome {
    const held = x.slice(0, this.model.differential);
    const { done, iterations } = this.pseudoTransient(x, demand, hold);
    if (done || demand.mode === 'hold') return this.verdict(x, demand, hold, iterations);
    const start = this.burningState(demand.heat, hold === 'nodes' ? held : undefined);
    const outcome = this.implicitEuler(start, demand, hold);
    x.set(start);
    return { ...outcome, iterations: iterations + outcome.iterations };
  }

  /**
   * Pseudo-transient continuation: Newton steps in which gas has a heat capacity over a time step that lengthens as the
   * steps shrink; pressures are balanced anew before each.
   */
  private pseudoTransient(x: Float64Array, demand: Demand, hold: Held): { done: boolean; iterations: number } {
    const { balances, model, before } = this;
    const d = model.differential;
    const gamma = hold === 'nodes' ? 0 : 1;
    const capacity = hold === 'nodes' ? 1 : 0;
    const step = this.rhs;
    let h = CONTINUATION.first[demand.mode];
    let last = Infinity;
    for (let k = 1; k <= CONTINUATION.most; k++) {
      before.set(x);
      this.balanceFlows(x);
      balances.evaluate(x, demand, false, true);
      for (let i = 0; i < model.nodeCount; i++) step[i] = gamma * balances.rate[i];
      for (let i = model.nodeCount; i < d; i++) step[i] = 0;
      for (let i = d; i < model.size; i++) step[i] = balances.algebraic[i - d];
      this.lu.clear(k > 1);
      balances.jacobian(x, demand, this.lu.matrix, capacity, gamma);
      balances.addGasCapacity(h, this.lu.matrix);
      if (!this.lu.factor(k > 1)) return { done: false, iterations: k };
      this.lu.solve(step);
      const share = stepLimit(model, x, step);
      let move = 0;
      for (let i = 0; i < model.fuel; i++) move = Math.max(move, Math.abs(step[i]));
      for (let i = 0; i < x.length; i++) x[i] += share * step[i];
      if (!allFinite(x)) {
        x.set(before);
        return { done: false, iterations: k };
      }
      if (move < NEAR.move && h > NEAR.after) {
        this.trial.set(x);
        const full = this.iterate(this.trial, demand, hold, 12, { bail: true });
        if (full.converged && this.sound(this.trial)) {
          x.set(this.trial);
          return { done: true, iterations: k + full.iterations };
        }
      }
      const growth = last === Infinity ? 1 : Math.min(CONTINUATION.growth, Math.max(0.3, last / Math.max(move, 1e-9)));
      h = Math.min(1e8, h * Math.max(growth, move < 10 ? 1.5 : 0.3));
      last = move;
    }
    return { done: false, iterations: CONTINUATION.most };
  }

  /**
   * The sure way: implicit Euler through time from x, the gas given its own small heat capacity so that every short
   * step has a solution near the last, and lengthen the step until nothing moves any more. Ends on the state that a
   * real pit would drift into, whatever the guess.
   */
  private implicitEuler(x: Float64Array, demand: Demand & { mode: 'release' }, hold: Held = 'nothing'): SteadyOutcome {
    const { before, trial } = this;
    const longest = hold === 'nodes' ? 1e5 : 1e10;
    let iterations = 0;
    let h = 0.05;
    let growth = 4;
    for (let step = 0; step < 400 && h > 1e-7; step++) {
      before.set(x);
      trial.set(x);
      this.balanceFlows(trial);
      const outcome = this.implicitStep(trial, before, demand, hold, h);
      iterations += outcome.iterations;
      if (!outcome.converged || !this.sound(trial)) {
        h *= 0.25;
        growth = Math.max(1.2, Math.sqrt(growth));
        continue;
      }
      x.set(trial);
      if (h >= longest) break;
      h = Math.min(longest, h * growth);
      growth = Math.min(5, 1.15 * growth);
    }
    return this.newton(x, demand, hold, iterations);
  }

  /** One implicit Euler step of length h from `from` to x (a first guess), the gas with its own small heat capacity. */
  implicitStep(x: Float64Array, from: Float64Array, demand: Demand, hold: Held, h: number): NewtonOutcome {
    const { balances, model } = this;
    const d = model.differential;
    const start = new Float64Array(d);
    const now = new Float64Array(d);
    balances.contents(from, start);
    const gamma = hold === 'nodes' ? 0 : h;
    const problem: NewtonProblem = {
      residual: (at, rhs) => {
        balances.evaluate(at, demand, false);
        balances.contents(at, now);
        for (let i = 0; i < model.nodeCount; i++) rhs[i] = gamma * balances.rate[i] - (now[i] - start[i]);
        for (let i = model.nodeCount; i < d; i++) rhs[i] = 0;
        for (let i = d; i < model.size; i++) rhs[i] = balances.algebraic[i - d];
        balances.addGasStorage(at, from, h, rhs);
      },
      matrix: (at, matrix) => {
        balances.jacobian(at, demand, matrix, 1, gamma);
        balances.addGasCapacity(h, matrix);
      },
      limit: (at, step) => stepLimit(model, at, step),
      measure: (at, step) => stepMeasure(model, at, step, EULER_LEFT),
    };
    return newton(problem, x, this.rhs, this.lu, { maxIterations: 20 });
  }

  /**
   * Full Newton alone, from a guess that is known to be near (a neighbouring state).
   *
   * @param patient for a guess that is all but there: try harder
   */
  newton(x: Float64Array, demand: Demand, hold: Held = 'nothing', before = 0, patient = false): SteadyOutcome {
    const { trial } = this;
    trial.set(x);
    const full = this.iterate(trial, demand, hold, patient ? 60 : 25, { patient });
    if (full.converged && this.sound(trial)) x.set(trial);
    return this.verdict(x, demand, hold, before + full.iterations);
  }

  private iterate(
    x: Float64Array,
    demand: Demand,
    hold: Held,
    maxIterations: number,
    how: { patient?: boolean; bail?: boolean } = {},
  ): NewtonOutcome {
    const { balances, model } = this;
    const gamma = hold === 'nodes' ? 0 : 1;
    const capacity = hold === 'nodes' ? 1 : 0;
    const d = model.differential;
    const problem: NewtonProblem = {
      residual: (at, rhs) => {
        balances.evaluate(at, demand, false);
        for (let i = 0; i < model.nodeCount; i++) rhs[i] = gamma * balances.rate[i];
        for (let i = model.nodeCount; i < d; i++) rhs[i] = 0;
        for (let i = d; i < model.size; i++) rhs[i] = balances.algebraic[i - d];
      },
      matrix: (at, matrix) => balances.jacobian(at, demand, matrix, capacity, gamma),
      limit: (at, step) => stepLimit(model, at, step),
      measure: (at, step) => stepMeasure(model, at, step, LEFT),
    };
    return newton(problem, x, this.rhs, this.lu, { maxIterations, keep: true, ...how });
  }

  /**
   * A solution that physics can mean: finite, no gas colder than its coldest neighbour could make it, fire not
   * negative.
   */
  private sound(x: Float64Array): boolean {
    const { model } = this;
    if (!allFinite(x)) return false;
    for (let i = 0; i < model.fuel; i++) if (x[i] <= LOWEST + 1 || x[i] >= HIGHEST - 1) return false;
    return true;
  }

  private verdict(x: Float64Array, demand: Demand, hold: Held, iterations: number): SteadyOutcome {
    const { balances, model } = this;
    this.balanceFlows(x);
    balances.evaluate(x, demand, true, true);
    let heatError = 0;
    if (hold === 'nothing') {
      for (let i = 0; i < model.stemCount; i++) x[model.nodeCount + i] = balances.stems.settled(x, i);
      for (let i = 0; i < model.nodeCount; i++) heatError = Math.max(heatError, Math.abs(balances.rate[i]));
    }
    for (let z = 0; z < model.zoneCount; z++) {
      heatError = Math.max(heatError, Math.abs(balances.algebraic[model.gasRow + z]));
    }
    const massError = balances.massError();
    const scale = 1e-6 * Math.max(1, Math.abs(x[model.fire]));
    const fireError = Math.abs(balances.algebraic[model.fireRow]);
    const met = demand.mode === 'hold' ? fireError < 1e-4 : fireError <= scale;
    const converged = massError < MASS_TOLERANCE && heatError < Math.max(scale, 1e-3) && met && this.sound(x);
    return { converged, iterations, massError, heatError };
  }

  /** Close the mass balances at x to rounding, temperatures held. */
  balanceFlows(x: Float64Array): void {
    this.model.gasState(x);
    solveFlows(this.model, x, this.flowLu, 1e-12);
  }

  /** Net mass flow into each zone at x, for tests and reports [kg/s]. */
  imbalance(x: Float64Array): Float64Array {
    massBalance(this.model, x, this.masses);
    return this.masses;
  }
}

/** Share of a Newton step that keeps every temperature within a stride and inside what the property functions cover. */
export function stepLimit(model: Model, x: Float64Array, step: Float64Array): number {
  let share = 1;
  for (let i = 0; i < model.fuel; i++) {
    const size = Math.abs(step[i]);
    if (size * share > STRIDE) share = STRIDE / size;
    const room = step[i] < 0 ? x[i] - LOWEST : HIGHEST - x[i];
    if (size * share > 0.9 * room) share = (0.9 * room) / size;
  }
  for (let i = model.fuel; i < model.pressure; i++) {
    if (Math.abs(step[i]) * share > 0.1) share = 0.1 / Math.abs(step[i]);
  }
  return stopInBand(model, x[model.fuel + model.network.fire.zone], step[model.fuel + model.network.fire.zone], share);
}

/**
 * A step that would carry the fire's gas across the band in which a fire goes out for want of air, from the one side to
 * the other, ends in the middle of it: the slope of neither side knows of the fall between.
 */
function stopInBand(model: Model, fuel: number, step: number, share: number): number {
  const { fuelLimit } = model;
  if (fuelLimit === Infinity) return share;
  const from = fuelLimit - fuel;
  const to = from - share * step;
  const band = LIMIT_WIDTH * fuelLimit;
  const crosses = (from > band && to < 0) || (from < 0 && to > band);
  return crosses ? (from - 0.5 * band) / step : share;
}

/** Size of a Newton step in units of what may be left over. */
export function stepMeasure(model: Model, x: Float64Array, step: Float64Array, left: typeof LEFT): number {
  let worst = 0;
  for (let i = 0; i < model.fuel; i++) worst = Math.max(worst, Math.abs(step[i]) / left.temperature);
  for (let i = model.fuel; i < model.pressure; i++) worst = Math.max(worst, Math.abs(step[i]) / left.fuel);
  // the less a pit draws, the nearer its pressures have to be
  for (let i = model.pressure; i < model.fire; i++) {
    worst = Math.max(worst, Math.abs(step[i]) / (left.pressure * (1 + DRAWING * Math.abs(x[i]))));
  }
  const fire = Math.max(1, Math.abs(x[model.fire])) * left.fireShare;
  return Math.max(worst, Math.abs(step[model.fire]) / fire);
}

function allFinite(x: Float64Array): boolean {
  for (let i = 0; i < x.length; i++) if (!Number.isFinite(x[i])) return false;
  return true;
}
