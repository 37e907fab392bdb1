import type { StiffSystem } from '../solve/stiffSystem.js';
import type { Balances, Demand } from './balances.js';
import { stepLimit, stepMeasure, type QuasiSteadySolver } from './quasiSteady.js';

/**
 * What Newton may leave over in a stage of a step by the default tolerance, by others as much more or less: far below
 * the local error that is allowed.
 */
const STEP_LEFT = { temperature: 1e-2, pressure: 1e-4, fuel: 3e-5, fireShare: 1e-5 };
/**
 * The same where a run is held against another of nearly the same pit, stages of which are not closed: pressures count,
 * a hundredth of a kelvin does not.
 */
const REPEATING_LEFT = { temperature: 3e-2, pressure: 2e-5, fuel: 1e-4, fireShare: 1e-4 };

/** Share of that which may be left over where it is only told from how Newton's steps shrink. */
const AHEAD = 0.3;

/** Local error allowed in a step: this much, plus this share of the rise above outdoors. */
export const DEFAULT_TOLERANCE = { absolute: 0.05, relative: 1e-3 };

/**
 * A network under a fire as a stiff system. Integrated along: fire heat, all losses [J].
 * The fire is a function of time, or holds the gauge; whoever steps it changes `demand` between steps.
 */
export class NetworkSystem implements StiffSystem {
  readonly size: number;
  readonly differential: number;
  readonly quadratures = 2;
  readonly followers: number;
  demandAt: (t: number) => Demand;
  /** turns outdoors to what it is at a time; default: it stays */
  weatherAt: (t: number) => void = () => undefined;
  tolerance = DEFAULT_TOLERANCE;
  /** differences of its runs are slopes: the same steps come to the same, and like ones to what is like it */
  repeats = false;

  readonly balances: Balances;
  /** gas takes up heat of its own, so that it goes where gas can stay; else it follows at once */
  ownHeat = false;

  constructor(private readonly solver: QuasiSteadySolver) {
    const { balances } = solver;
    this.balances = balances;
    this.size = balances.model.size;
    this.differential = balances.model.differential;
    this.followers = balances.model.stemCount;
    this.demandAt = () => ({ mode: 'release', heat: 0 });
  }

  /** Turn the weather to a time. @returns what the fire is asked to do then */
  at(t: number): Demand {
    this.weatherAt(t);
    return this.demandAt(t);
  }

  contents(x: Float64Array, out: Float64Array): void {
    this.balances.contents(x, out);
  }

  evaluate(t: number, x: Float64Array, rate: Float64Array, algebraic: Float64Array, how?: 'inner' | 'closed'): void {
    this.lastFire = x[this.balances.model.fire];
    this.balances.evaluate(x, this.at(t), how !== 'inner', how === 'closed');
    rate.set(this.balances.rate);
    algebraic.set(this.balances.algebraic);
  }

  inertia(): Float64Array | null {
    return this.ownHeat ? this.balances.inertia : null;
  }

  get ahead(): number {
    return this.repeats ? 0 : AHEAD;
  }

  jacobian(t: number, x: Float64Array, matrix: Float64Array, gamma: number): void {
    this.balances.jacobian(x, this.at(t), matrix, 1, gamma);
    if (this.ownHeat) this.balances.addGasCapacity(gamma, matrix);
  }

  limit(x: Float64Array, step: Float64Array): number {
    return stepLimit(this.balances.model, x, step);
  }

  measure(x: Float64Array, step: Float64Array): number {
    const sharper = DEFAULT_TOLERANCE.relative / this.tolerance.relative;
    return sharper * stepMeasure(this.balances.model, x, step, this.repeats ? REPEATING_LEFT : STEP_LEFT);
  }

  /** Pressures follow temperatures so steeply that a guess a little off sends gas where none goes. */
  balance(x: Float64Array): void {
    this.solver.balanceFlows(x);
  }

  close(x: Float64Array, fixed: Float64Array, gamma: number): void {
    this.solver.balanceFlows(x);
    this.balances.stems.solve(x, fixed, gamma);
  }

  solveFollowers(x: Float64Array, fixed: Float64Array, gamma: number): void {
    this.balances.stems.solve(x, fixed, gamma);
  }

  private lastFire = 0;

  quadrature(out: Float64Array): void {
    out[0] = this.lastFire;
    out[1] = this.balances.totalLoss();
  }

  /**
   * What the fire gives and what leaves change by, given what heat rates and balances of surfaces and gas do: what goes
   * nowhere else leaves.
   */
  quadratureMoves(moves: Float64Array, step: Float64Array, out: Float64Array): void {
    const { nodeCount, surfaceNode, fuel, fire } = this.balances.model;
    let kept = 0;
    for (let i = 0; i < nodeCount; i++) kept += moves[i];
    for (let i = surfaceNode; i < fuel; i++) kept += moves[i];
    out[0] += step[fire];
    out[1] += step[fire] - kept;
  }

  errorWeights(x: Float64Array, out: Float64Array): void {
    const outdoors = this.balances.model.network.outdoors.temperature;
    const weight = (i: number) => 1 / (this.tolerance.absolute + this.tolerance.relative * Math.abs(x[i] - outdoors));
    const { gas, zoneCount } = this.balances.model;
    for (let i = 0; i < this.differential; i++) out[i] = weight(i);
    if (this.ownHeat) for (let z = 0; z < zoneCount; z++) out[gas + z] = weight(gas + z);
  }
}
