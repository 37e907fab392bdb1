import type { Balances, Demand } from '../network/balances.js';
import { bracketedRoot } from '../solve/root.js';
import { LuSolver } from '../solve/linear.js';
import { nextStep, StiffStepper, type StiffSystem } from '../solve/stiff.js';
import type { Settler } from './settle.js';
import { stepLimit, stepMeasure } from './settle.js';

/** What Newton may leave over in a stage of a step: far below the local error that is allowed. */
const STEP_LEFT = { temperature: 2e-3, pressure: 2e-6, fuel: 1e-5, fireShare: 1e-5 };

/** How closely in time the end of a step is laid on an event [s]. */
const EVENT_TIME = 0.2;

/** A draft that tips over more often than this is not followed any further. */
const MOST_BRIDGES = 24;
/** Nor is a run of more steps than this, accepted or not. */
const MOST_STEPS = 4000;

/** No step shorter than this is tried [s]. */
const SHORTEST = 1e-3;

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

  readonly balances: Balances;

  constructor(private readonly settler: Settler) {
    const { balances } = settler;
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

  evaluate(t: number, x: Float64Array, rate: Float64Array, algebraic: Float64Array, inner = false): void {
    this.lastFire = x[this.balances.model.fire];
    this.balances.evaluate(x, this.at(t), false, !inner);
    rate.set(this.balances.rate);
    algebraic.set(this.balances.algebraic);
  }

  jacobian(t: number, x: Float64Array, matrix: Float64Array, gamma: number): void {
    this.balances.jacobian(x, this.at(t), matrix, 1, gamma, false);
  }

  limit(x: Float64Array, step: Float64Array): number {
    return stepLimit(this.balances.model, x, step);
  }

  measure(x: Float64Array, step: Float64Array): number {
    return stepMeasure(this.balances.model, x, step, STEP_LEFT);
  }

  settle(x: Float64Array, fixed: Float64Array, gamma: number): void {
    this.settler.balanceFlows(x);
    this.balances.settleStems(x, fixed, gamma);
  }

  private lastFire = 0;

  quadrature(out: Float64Array): void {
    out[0] = this.lastFire;
    out[1] = this.balances.totalLoss();
  }

  errorWeights(x: Float64Array, out: Float64Array): void {
    const outdoors = this.balances.model.network.outdoors.temperature;
    for (let i = 0; i < this.differential; i++) {
      out[i] = 1 / (this.tolerance.absolute + this.tolerance.relative * Math.abs(x[i] - outdoors));
    }
  }
}

/** What is known after a step. */
export interface Moment {
  time: number;
  x: Float64Array;
  /** integrals since the start [J] */
  fireHeat: number;
  lost: number;
  stored: number;
  massError: number;
}

/** A sign change to stop at: value at a moment; the step that crosses zero is shortened until it ends there. */
export type EventFunction = (moment: Moment) => number;

/** Steps a network through time. Knows fires and events, not what they are for. */
export class Transient {
  readonly system: NetworkSystem;
  private readonly stepper: StiffStepper;
  moment: Moment;
  steps = 0;
  rejected = 0;
  private h = 1;
  private bridges = 0;
  /** where the last step began; none after a jump */
  private before: Moment | null = null;

  constructor(
    readonly settler: Settler,
    x: Float64Array,
    time = 0,
  ) {
    const { balances } = settler;
    this.system = new NetworkSystem(settler);
    this.stepper = new StiffStepper(this.system, new LuSolver(balances.model.size, balances.model.differential));
    this.moment = { time, x: x.slice(), fireHeat: 0, lost: 0, stored: 0, massError: 0 };
  }

  get evaluations(): number {
    return this.stepper.evaluations;
  }

  /** Start from here under another fire: gas, flows and fire settle to it at once, plates stay. @returns false: they do not */
  change(demandAt: (t: number) => Demand, firstStep: number): boolean {
    this.system.demandAt = demandAt;
    const { time, x } = this.moment;
    const settled = this.settler.settle(x, this.system.at(time), 'nodes');
    if (!settled.converged) return false;
    this.before = null;
    this.stepper.begin(time, x);
    this.h = firstStep;
    return true;
  }

  /**
   * One accepted step, ending at `end` at the latest, or where `event` passes zero.
   *
   * @returns 'step', 'event', or 'failed' when no step length down to a microsecond converges
   */
  step(end: number, event?: EventFunction): 'step' | 'event' | 'failed' {
    const valueBefore = event ? event(this.moment) : 0;
    let h = Math.min(this.h, end - this.moment.time);
    for (;;) {
      if (this.steps + this.rejected > MOST_STEPS) return 'failed';
      const error = this.stepper.attempt(this.moment.time, h);
      if (error > 1 || Number.isNaN(error)) {
        this.rejected++;
        h =
          error === Infinity || Number.isNaN(error)
            ? 0.25 * h
            : Math.max(0.2 * h, Math.min(0.9 * h, nextStep(h, error)));
        if (h < SHORTEST) {
          if (++this.bridges > MOST_BRIDGES || !this.bridge()) return 'failed';
          this.h = 1;
          return 'step';
        }
        continue;
      }
      const candidate = this.candidate(h);
      if (event && valueBefore !== 0 && event(candidate) * valueBefore <= 0) {
        this.landOn(h, event, valueBefore, event(candidate));
        return 'event';
      }
      this.take(candidate);
      this.h = nextStep(h, error);
      return 'step';
    }
  }

  /** One step that ends at `end` whatever its local error. @returns false: a stage of it does not converge, nothing changed */
  stepTo(end: number): boolean {
    const h = end - this.moment.time;
    if (!(this.stepper.attempt(this.moment.time, h) < Infinity)) return false;
    this.take(this.candidate(h));
    return true;
  }

  /**
   * Where no step converges the gas has come to the end of the branch of flows it was on (a plume that tips over, a draft
   * that turns). Carry it over by implicit Euler steps in which gas has its own small heat capacity, until quasi-steady gas
   * settles again. What the gas takes up on the way is booked as stored.
   */
  private bridge(): boolean {
    const { settler } = this;
    const { balances, model } = settler;
    const start = this.moment;
    const x = start.x.slice();
    const from = start.x.slice();
    const storage = new Float64Array(model.size);
    const fixed = new Float64Array(model.differential);
    let { time, fireHeat, lost, stored } = start;
    let h = 0.05;
    for (let attempt = 0; attempt < 120 && h > 1e-6; attempt++) {
      from.set(x);
      const demand = this.releaseAt(time + h, x[model.fire]);
      settler.balanceFlows(x);
      const outcome = settler.implicitStep(x, from, demand, 'nothing', h);
      if (!outcome.converged) {
        x.set(from);
        h *= 0.3;
        continue;
      }
      balances.evaluate(x, demand);
      balances.contents(from, fixed);
      balances.settleStems(x, fixed, h);
      time += h;
      fireHeat += h * x[model.fire];
      lost += h * balances.totalLoss();
      storage.fill(0);
      balances.addGasStorage(x, from, h, storage);
      for (let z = 0; z < model.zoneCount; z++) stored -= h * storage[model.gas + z];
      for (let i = 0; i < model.nodeCount; i++) stored += h * balances.rate[i];
      h *= outcome.iterations <= 6 ? 2 : 1.2;
      if (time < start.time + 1) continue;
      const trial = x.slice();
      const settled = settler.polish(trial, this.system.at(time), 'nodes');
      if (!settled.converged) continue;
      this.before = null;
      this.moment = { time, x: trial, fireHeat, lost, stored, massError: settled.massError };
      this.stepper.begin(time, trial);
      return true;
    }
    return false;
  }

  /** The fire as a release: what is asked for, or where the gauge is held, what burns now. */
  private releaseAt(time: number, now: number): Demand & { mode: 'release' } {
    const demand = this.system.at(time);
    return demand.mode === 'release' ? demand : { mode: 'release', heat: Math.max(0, now) };
  }

  /** Shares of the last accepted step, its ends included, at which the unknowns are known, and these. Null after a jump. */
  get track(): { shares: number[]; states: Float64Array[] } | null {
    const { before } = this;
    if (!before || before.time >= this.moment.time) return null;
    return {
      shares: [0, ...this.stepper.stageShares, 1],
      states: [before.x, ...this.stepper.stageStates, this.moment.x],
    };
  }

  /**
   * Moments inside the last accepted step, at the given shares of it: the cubic through its start, stages and end. Sums run
   * straight between its ends, so that they balance as these do. Empty after a bridge.
   */
  within(shares: readonly number[]): Moment[] {
    const { before, track } = this;
    if (!before || !track) return [];
    const { states } = track;
    return shares.map((share) => {
      const weights = cubicWeights(track.shares, share);
      const along = (a: number, b: number) => a + share * (b - a);
      return {
        time: along(before.time, this.moment.time),
        x: this.moment.x.map((_, k) => states.reduce((sum, state, i) => sum + weights[i] * state[k], 0)),
        fireHeat: along(before.fireHeat, this.moment.fireHeat),
        lost: along(before.lost, this.moment.lost),
        stored: along(before.stored, this.moment.stored),
        massError: this.moment.massError,
      };
    });
  }

  private candidate(h: number): Moment {
    const { gained, stored, next } = this.stepper;
    let sum = 0;
    for (let i = 0; i < this.settler.model.nodeCount; i++) sum += stored[i];
    return {
      time: this.moment.time + h,
      x: next.slice(),
      fireHeat: this.moment.fireHeat + gained[0],
      lost: this.moment.lost + gained[1],
      stored: this.moment.stored + sum,
      massError: this.settler.balances.massError(),
    };
  }

  private take(candidate: Moment): void {
    this.stepper.accept(candidate.time - this.moment.time);
    this.before = this.moment;
    this.moment = candidate;
    this.steps++;
  }

  /**
   * Shorten the step until it ends on the event, and take it: first guess from the curve through the stages of the step that
   * went past, then regula falsi (Illinois).
   */
  private landOn(h: number, event: EventFunction, before: number, after: number): void {
    let [low, high] = [0, h];
    let [fLow, fHigh] = [before, after];
    const close = (EVENT_TIME * Math.abs(after - before)) / h;
    let guess = this.guessFromStages(h, event, before, after);
    let side = 0;
    for (let i = 0; i < 30; i++) {
      if (this.stepper.attempt(this.moment.time, guess) === Infinity) break;
      const candidate = this.candidate(guess);
      const value = event(candidate);
      if (Math.abs(value) <= close || high - low < EVENT_TIME) {
        this.take(candidate);
        return;
      }
      if (value * before <= 0) {
        [high, fHigh] = [guess, value];
        if (side === 1) fLow *= 0.5;
        side = 1;
      } else {
        [low, fLow] = [guess, value];
        if (side === -1) fHigh *= 0.5;
        side = -1;
      }
      guess = high - (fHigh * (high - low)) / (fHigh - fLow);
    }
    this.stepper.attempt(this.moment.time, high);
    this.take(this.candidate(high));
  }

  /** Where in a step of length h the event function passes zero, by the cubic through its values at the stages. */
  private guessFromStages(h: number, event: EventFunction, before: number, after: number): number {
    const points = [0, ...this.stepper.stageShares, 1];
    const values = [before, ...this.stepper.stageStates.map((x) => event({ ...this.moment, x })), after];
    const cubic = (at: number) => {
      const weights = cubicWeights(points, at);
      return values.reduce((sum, value, i) => sum + value * weights[i], 0);
    };
    return h * bracketedRoot(cubic, { low: 0, high: 1, tolerance: 1e-6, fLow: before, fHigh: after }).root;
  }
}

/** Weights of the values at some points for the polynomial through them at another place (Lagrange). */
export function cubicWeights(points: readonly number[], at: number): number[] {
  return points.map((p, i) => points.reduce((w, q, j) => (j === i ? w : (w * (at - q)) / (p - q)), 1));
}
