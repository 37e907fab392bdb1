import type { Balances, Demand } from '../network/balances.js';
import { LuSolver } from '../solve/linear.js';
import { nextStep, StiffStepper, type StiffSystem } from '../solve/stiff.js';
import type { Settler } from './settle.js';
import { stepLimit, stepMeasure } from './settle.js';

/** Local error allowed in a step: this much, plus this share of the rise above outdoors. */
export const DEFAULT_TOLERANCE = { absolute: 0.1, relative: 2e-3 };

/**
 * A network under a fire as a stiff system. Integrated along: fire heat, all losses [J].
 * The fire is a function of time, or holds the gauge; whoever steps it changes `demand` between steps.
 */
export class NetworkSystem implements StiffSystem {
  readonly size: number;
  readonly differential: number;
  readonly quadratures = 2;
  demandAt: (t: number) => Demand;
  tolerance = DEFAULT_TOLERANCE;

  constructor(readonly balances: Balances) {
    this.size = balances.model.size;
    this.differential = balances.model.differential;
    this.demandAt = () => ({ mode: 'release', heat: 0 });
  }

  contents(x: Float64Array, out: Float64Array): void {
    this.balances.contents(x, out);
  }

  evaluate(t: number, x: Float64Array, rate: Float64Array, algebraic: Float64Array): void {
    this.lastFire = x[this.balances.model.fire];
    this.balances.evaluate(x, this.demandAt(t));
    rate.set(this.balances.rate);
    algebraic.set(this.balances.algebraic);
  }

  jacobian(t: number, x: Float64Array, matrix: Float64Array, gamma: number): void {
    this.balances.jacobian(x, this.demandAt(t), matrix, 1, gamma, false);
  }

  limit(x: Float64Array, step: Float64Array): number {
    return stepLimit(this.balances.model, x, step);
  }

  measure(x: Float64Array, step: Float64Array): number {
    return stepMeasure(this.balances.model, x, step);
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

  constructor(
    readonly settler: Settler,
    x: Float64Array,
    time = 0,
  ) {
    const { balances } = settler;
    this.system = new NetworkSystem(balances);
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
    const settled = this.settler.settle(x, demandAt(time), 'nodes');
    if (!settled.converged) return false;
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
      const error = this.stepper.attempt(this.moment.time, h);
      if (error > 1 || Number.isNaN(error)) {
        this.rejected++;
        h = error === Infinity || Number.isNaN(error) ? 0.25 * h : Math.max(0.2 * h, Math.min(0.9 * h, nextStep(h, error)));
        if (h < 1e-6) return 'failed';
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
    this.stepper.accept();
    this.moment = candidate;
    this.steps++;
  }

  /** Shorten the step by regula falsi (Illinois) until it ends on the event, and take it. */
  private landOn(h: number, event: EventFunction, before: number, after: number): void {
    let [low, high] = [0, h];
    let [fLow, fHigh] = [before, after];
    let best = this.candidate(h);
    let side = 0;
    for (let i = 0; i < 30 && high - low > 0.02; i++) {
      if (fHigh === 0) break;
      const guess = high - (fHigh * (high - low)) / (fHigh - fLow);
      const error = this.stepper.attempt(this.moment.time, guess);
      if (error === Infinity) break;
      const candidate = this.candidate(guess);
      const value = event(candidate);
      if (value * before <= 0) {
        [high, fHigh, best] = [guess, value, candidate];
        if (side === 1) fLow *= 0.5;
        side = 1;
        if (Math.abs(value) < 1e-6 * Math.abs(before)) break;
      } else {
        [low, fLow] = [guess, value];
        if (side === -1) fHigh *= 0.5;
        side = -1;
      }
    }
    this.stepper.attempt(this.moment.time, best.time - this.moment.time);
    this.take(this.candidate(best.time - this.moment.time));
  }
}
