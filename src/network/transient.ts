import { bracketedRoot } from '../solve/root.js';
import { nextStep } from '../solve/esdirk.js';
import type { Recall } from '../solve/recall.js';
import { StiffStepper } from '../solve/stiff.js';
import type { Demand } from './balances.js';
import { bridgeFrom } from './bridge.js';
import { heatCapacity } from './materials.js';
import { NetworkSystem } from './networkSystem.js';
import type { SteadyOutcome, QuasiSteadySolver } from './quasiSteady.js';
import { EVENT_TIME, SHORTEST, type StopAt } from './stopAt.js';
import { cubicWeights, type Moment, type Stride } from './stride.js';

/** A draft that tips over more often than this is not followed any further. */
const MOST_BRIDGES = 24;
/** Nor is a run of more steps than this, accepted or not. */
const MOST_STEPS = 4000;

/** Next to no time [s]. */
const AT_ONCE = 1e-6;

/** Steps a network through time. Knows fires and events, not what they are for. */
export class Transient {
  readonly system: NetworkSystem;
  private readonly stepper: StiffStepper;
  moment: Moment;
  steps = 0;
  rejected = 0;
  private h = 1;
  private bridges = 0;
  /** the last step; none after a jump */
  stride: Stride | null = null;
  /** moments on the way of the bridge that the last step was, if it was one */
  trail: Moment[] = [];
  /** the gas is on its way from one branch of flows to another: a bridge has stopped half way */
  private adrift = false;

  constructor(
    readonly solver: QuasiSteadySolver,
    x: Float64Array,
    time = 0,
    private readonly recall?: Recall,
  ) {
    this.system = new NetworkSystem(solver);
    this.stepper = new StiffStepper(this.system, solver.lu);
    this.moment = { time, x: x.slice(), fireHeat: 0, lost: 0, stored: 0, loss: 0, massError: 0 };
  }

  get evaluations(): number {
    return this.stepper.evaluations;
  }

  /**
   * Start from here under another fire: gas, flows and fire settle to it at once, plates stay.
   *
   * @param fits whether what comes of it will do
   * @param guess gas and flows that are near to where they settle, unknowns whole; default: none are
   * @returns false: they do not settle or it does not do, and all goes on as before
   */
  change(
    demandAt: (t: number) => Demand,
    firstStep: number,
    fits: (moment: Moment) => boolean = () => true,
    guess?: Float64Array,
  ): boolean {
    const { moment: before, system } = this;
    const asBefore = system.demandAt;
    system.demandAt = demandAt;
    const x = before.x.slice();
    const outcome = this.solveGas(x, system.at(before.time), guess);
    const loss = this.solver.balances.totalLoss();
    // what heat the gas had of its own leaves with it
    const left = system.ownHeat ? this.gasHeat(before.x) - this.gasHeat(x) : 0;
    const { lost, stored } = before;
    const moment = { ...before, x, loss, lost: lost + left, stored: stored - left, massError: outcome.massError };
    if (!outcome.converged || !fits(moment)) {
      system.demandAt = asBefore;
      return false;
    }
    system.ownHeat = false;
    this.moment = moment;
    this.trail = [];
    this.begin();
    this.h = firstStep;
    return true;
  }

  /** Solve gas and flows, plates as they are at x; from a guess near by, where there is one that leads there. */
  private solveGas(x: Float64Array, demand: Demand, guess?: Float64Array): SteadyOutcome {
    const { solver } = this;
    if (guess) {
      const trial = x.slice();
      const { surfaceNode } = solver.model;
      trial.set(guess.subarray(surfaceNode), surfaceNode);
      const outcome = solver.newton(trial, demand, 'nodes');
      if (outcome.converged) {
        x.set(trial);
        return outcome;
      }
    }
    return solver.solve(x, demand, 'nodes');
  }

  /**
   * Go on from here under a fire, gas as it is: it takes up heat of its own until the next change, and so goes the way
   * that gas goes.
   */
  goOn(demandAt: (t: number) => Demand, firstStep: number): void {
    this.system.demandAt = demandAt;
    this.system.ownHeat = true;
    const { moment, solver } = this;
    const demand = this.system.at(moment.time);
    solver.balanceFlows(moment.x);
    // in no time gas stays, and what has no heat of its own is solved for it
    if (demand.mode === 'release') solver.implicitStep(moment.x, moment.x.slice(), demand, 'nodes', AT_ONCE);
    solver.balanceFlows(moment.x);
    this.begin();
    this.h = firstStep;
  }

  /** Make the next step no longer than this [s]. */
  shorten(h: number): void {
    this.h = Math.min(this.h, h);
  }

  /** Step from the moment as it stands. */
  private begin(): void {
    this.stride = null;
    this.adrift = false;
    this.stepper.begin(this.moment.time, this.moment.x);
  }

  /**
   * One accepted step, ending at `end` at the latest, or where a stop is due.
   *
   * A step that goes past the stop is tried again up to where the stop seems to be. If that falls short it counts, and
   * the next one begins there: nearer by, where the guess is better and Newton surer. So nothing ever has to be taken
   * that is off.
   *
   * @returns 'step', 'event', or 'failed' when neither a step of any length nor a bridge converges
   */
  step(end: number, stop?: StopAt): 'step' | 'event' | 'failed' {
    if (this.adrift) return this.bridge(stop);
    const left = stop ? stop.left(this.moment) : 1;
    const room = end - this.moment.time;
    let h = Math.min(this.h, room);
    let tooFar = Infinity;
    for (;;) {
      if (this.steps + this.rejected > MOST_STEPS) return 'failed';
      const like = this.recall?.like(this.moment.time, h, this.system.size);
      const error = this.stepper.attempt(this.moment.time, h, undefined, like);
      if (error > 1 || Number.isNaN(error)) {
        this.rejected++;
        h =
          error === Infinity || Number.isNaN(error)
            ? 0.25 * h
            : Math.max(0.2 * h, Math.min(0.9 * h, nextStep(h, error)));
        if (h < SHORTEST) return ++this.bridges > MOST_BRIDGES ? 'failed' : this.bridge(stop);
        continue;
      }
      const candidate = this.candidate(h);
      const passed = stop && left > 0 ? this.passed(h, stop, left, candidate) : null;
      if (!passed) {
        this.take(candidate);
        // a step cut short at the end is no reason for short ones from there on
        const next = h < room ? nextStep(h, error) : Math.max(this.h, nextStep(h, error));
        this.h = Math.min(next, Math.max(tooFar - h, SHORTEST));
        return 'step';
      }
      if (passed.there || h - passed.guess <= (stop!.grace ?? 0)) {
        this.take(candidate);
        return 'event';
      }
      // it jumps there: gas goes another way from now on
      if (h <= SHORTEST) return ++this.bridges > MOST_BRIDGES ? 'failed' : this.bridge(stop);
      tooFar = h;
      h = Math.max(passed.guess, SHORTEST);
    }
  }

  /**
   * Does the step just tried go past a stop?
   *
   * @returns null: no; else whether it ends there closely enough, and a guess of the length that does
   */
  private passed(
    h: number,
    { left, within }: StopAt,
    before: number,
    candidate: Moment,
  ): { there: boolean; guess: number } | null {
    const shares = [0, ...this.stepper.stageShares, 1];
    const values = [before, ...this.stepper.stageStates.map((x) => left({ ...candidate, x })), left(candidate)];
    const first = values.findIndex((value) => !(value > 0));
    if (first < 0) return null;
    const end = values[values.length - 1];
    const past = Math.min(...values.slice(first));
    const near = Math.min(within, (EVENT_TIME * Math.abs(end - before)) / h);
    // aimed a little past zero, so that what is landed on has happened
    const cubic = (at: number) => {
      const weights = cubicWeights(shares, at);
      return values.reduce((sum, value, i) => sum + value * weights[i], 0.5 * near);
    };
    const [low, high] = [0, shares[first]];
    const [fLow, fHigh] = [before + 0.5 * near, cubic(high)];
    const share = fHigh < 0 ? bracketedRoot(cubic, { low, high, tolerance: 1e-7, fLow, fHigh }).root : high;
    return { there: end <= 0 && past >= -near, guess: Math.min(share, 0.98) * h };
  }

  /**
   * One step that ends at `end` whatever its local error.
   *
   * @param beside a network of the same structure that has just taken this step, from the same time
   * @returns false: a stage of it does not converge, nothing changed
   */
  stepTo(end: number, beside?: Transient): boolean {
    const h = end - this.moment.time;
    const other = beside?.stride && beside.system.size === this.system.size ? beside.stepper : undefined;
    if (!(this.stepper.attempt(this.moment.time, h, other) < Infinity)) return false;
    this.take(this.candidate(h));
    return true;
  }

  /** Carry the gas over to another branch of flows. */
  private bridge(stop?: StopAt): 'step' | 'event' | 'failed' {
    const bridge = bridgeFrom(this.moment, this.solver, (t) => this.system.at(t), stop);
    if (!bridge) return 'failed';
    this.trail = bridge.trail;
    this.moment = bridge.moment;
    if (!bridge.settled) {
      this.stride = null;
      this.adrift = true;
      return 'event';
    }
    this.begin();
    this.h = 1;
    return 'step';
  }

  /** Heat of the gas, from an arbitrary zero [J]. */
  private gasHeat(x: Float64Array): number {
    const { gas, zoneCount, differential } = this.solver.model;
    let sum = 0;
    for (let z = 0; z < zoneCount; z++) sum += this.solver.balances.inertia[gas + z - differential] * x[gas + z];
    return sum;
  }

  /** How fast nodes and stems go where the next step starts [K/s]. */
  private ratesNow(x: Float64Array): Float64Array {
    const { model, balances } = this.solver;
    const { nodes } = model.network;
    return this.stepper
      .startRates()
      .map((rate, i) => rate / (i < nodes.length ? heatCapacity(nodes[i], x[i]) : balances.stems.capacity));
  }

  private candidate(h: number): Moment {
    const { gained, stored, moved, next } = this.stepper;
    const { gas, zoneCount, differential } = this.solver.model;
    const { inertia } = this.solver.balances;
    let sum = 0;
    for (let i = 0; i < this.solver.model.nodeCount; i++) sum += stored[i];
    if (this.system.ownHeat)
      for (let k = gas - differential; k < gas - differential + zoneCount; k++) sum += inertia[k] * moved[k];
    return {
      time: this.moment.time + h,
      x: next.slice(),
      fireHeat: this.moment.fireHeat + gained[0],
      lost: this.moment.lost + gained[1],
      stored: this.moment.stored + sum,
      loss: this.solver.balances.totalLoss(),
      massError: this.solver.balances.massError(),
    };
  }

  private take(candidate: Moment): void {
    const before = this.stride?.rates[1] ?? this.ratesNow(this.moment.x);
    const h = candidate.time - this.moment.time;
    this.recall?.note(this.moment.time, h, this.stepper.surprises);
    this.stepper.accept(h);
    this.stride = {
      rates: [before, this.ratesNow(candidate.x)],
      before: this.moment,
      after: candidate,
      shares: [0, ...this.stepper.stageShares, 1],
      states: [this.moment.x, ...this.stepper.stageStates.map((x) => x.slice()), candidate.x],
    };
    this.trail = [];
    this.moment = candidate;
    this.steps++;
  }
}
