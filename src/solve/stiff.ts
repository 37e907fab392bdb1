import { ESDIRK } from './esdirk.js';
import type { LuSolver } from './linear.js';
import { newton, type NewtonProblem } from './newton.js';
import type { StiffSystem } from './stiffSystem.js';

const STAGES = 4;

/** A matrix serves the next step too when that one is longer or shorter by less than this share. */
const ALIKE = 0.2;

/**
 * Newton beside another stepper: with its matrix steps shrink to less than a tenth, so that what one of a fifth leaves
 * is far below one. Differences of such runs are slopes, which must not drown in it.
 */
const NEAR = { maxIterations: 5, reuse: true, keep: true, enough: 0.2 };

/** So many lengths of the last step ahead its curve still tells something. */
const NEAR_AHEAD = 2;

/** Takes single steps; the caller owns time, step size and events. */
export class StiffStepper {
  /** rates at the start of the step and at each stage */
  private readonly rates: Float64Array[];
  /** rates of the rest, at the same places, where it has inertia */
  private readonly drifts: Float64Array[];
  private inertia: Float64Array | null = null;
  /** the rest at the start of the step, as its rates have brought it there */
  private readonly restStart: Float64Array;
  private readonly sums: Float64Array[];
  private readonly start: Float64Array;
  private readonly before: Float64Array;
  private readonly between: Float64Array;
  private readonly stages: Float64Array[];
  /** how far each stage of the last attempted step lay from its first guess */
  readonly surprises: Float64Array[];
  private lastStep = 0;
  /** the factors that serve a like step, by their count, and the length of the step that they were made for */
  private factors = 0;
  private factoredFor = 0;
  private readonly contentsStart: Float64Array;
  private readonly contentsNow: Float64Array;
  private readonly fixed: Float64Array;
  private readonly base: Float64Array;
  private readonly algebraic: Float64Array;
  private readonly rhs: Float64Array;
  private readonly weights: Float64Array;
  /** what the last step of Newton changed of rates and of the rest */
  private readonly moves: Float64Array;
  /** solution of the last attempted step */
  readonly next: Float64Array;
  /** integrals of the quadratures over the last step */
  readonly gained: Float64Array;
  /** change of H over the last step, and of the rest where it has inertia */
  readonly stored: Float64Array;
  readonly moved: Float64Array;
  newtonIterations = 0;
  evaluations = 0;

  constructor(
    private readonly system: StiffSystem,
    private readonly lu: LuSolver,
  ) {
    const n = system.size;
    const d = system.differential;
    this.rates = Array.from({ length: STAGES }, () => new Float64Array(d));
    this.drifts = Array.from({ length: STAGES }, () => new Float64Array(n - d));
    this.sums = Array.from({ length: STAGES }, () => new Float64Array(system.quadratures));
    this.start = new Float64Array(n);
    this.before = new Float64Array(n);
    this.between = new Float64Array(n);
    this.stages = Array.from({ length: STAGES }, () => new Float64Array(n));
    this.surprises = Array.from({ length: STAGES }, () => new Float64Array(n));
    this.next = new Float64Array(n);
    this.contentsStart = new Float64Array(d);
    this.contentsNow = new Float64Array(d);
    this.fixed = new Float64Array(d);
    this.base = new Float64Array(n - d);
    this.restStart = new Float64Array(n - d);
    this.moved = new Float64Array(n - d);
    this.algebraic = new Float64Array(n - d);
    this.rhs = new Float64Array(n);
    this.weights = new Float64Array(n);
    this.moves = new Float64Array(n);
    this.gained = new Float64Array(system.quadratures);
    this.stored = new Float64Array(d);
  }

  /** Take x (consistent: what has no inertia solved) as the state to step from. */
  begin(t: number, x: Float64Array): void {
    this.start.set(x);
    this.lastStep = 0;
    this.factors = 0;
    this.system.evaluate(t, x, this.rates[0], this.algebraic);
    this.evaluations++;
    this.system.quadrature(this.sums[0]);
    this.system.contents(x, this.contentsStart);
    this.inertia = this.system.inertia?.() ?? null;
    this.restStart.set(x.subarray(this.system.differential));
    this.drift(0);
  }

  /** Rates of the unknowns with inertia, from the balances last evaluated. */
  private drift(stage: number): void {
    const { inertia, drifts, algebraic } = this;
    if (!inertia) return;
    const drift = drifts[stage];
    for (let i = 0; i < drift.length; i++) drift[i] = inertia[i] > 0 ? algebraic[i] / inertia[i] : 0;
  }

  /**
   * Try one step of length h from the state given to `begin`.
   *
   * @param beside a stepper of nearly the same system that has just taken this step: its stages tell where those of
   * this one are, and its matrix serves as well. The size of the error is not told then
   * @param before how far the stages of a step like this one lay from their first guesses
   * @returns size of the local error in units of the tolerance (at most 1 is wanted); Infinity when a stage did not
   * converge
   */
  attempt(
    t: number,
    h: number,
    beside?: StiffStepper,
    before: readonly Float64Array[] | undefined = beside?.surprises,
  ): number {
    const { system, lu, rates, contentsStart, fixed, next } = this;
    const d = system.differential;
    const hg = h * ESDIRK.gamma;
    const alike = !system.repeats && lu.factored === this.factors && Math.abs(h / this.factoredFor - 1) < ALIKE;
    for (let stage = 1; stage < STAGES; stage++) {
      const a = ESDIRK.a[stage];
      const time = t + ESDIRK.c[stage] * h;
      for (let i = 0; i < d; i++) {
        let sum = 0;
        for (let j = 0; j < stage; j++) sum += a[j] * rates[j][i];
        fixed[i] = contentsStart[i] + h * sum;
      }
      if (this.inertia) {
        const { base, drifts, restStart } = this;
        for (let i = 0; i < base.length; i++) {
          let sum = 0;
          for (let j = 0; j < stage; j++) sum += a[j] * drifts[j][i];
          base[i] = restStart[i] + h * sum;
        }
      }
      const problem = this.stageProblem(time, hg, stage);
      let whole = false;
      const solve = (each: NewtonProblem, options: Parameters<typeof newton>[4] & { lu?: LuSolver }): boolean => {
        this.predict(stage, h);
        this.surprises[stage].set(next);
        if (before) for (let i = 0; i < next.length; i++) next[i] += before[stage][i];
        const { converged, iterations, taken } = newton(each, next, this.rhs, options.lu ?? lu, options);
        this.newtonIterations += iterations;
        this.evaluations += iterations;
        whole = taken === 1;
        return converged;
      };
      const near = beside !== undefined && solve(problem, { ...NEAR, lu: beside.lu });
      if (
        !near &&
        !solve(problem, {
          maxIterations: 12,
          reuse: (stage > 1 || alike) && !beside,
          keep: true,
          ahead: system.ahead,
          patient: true,
          bail: system.balance !== undefined,
        })
      ) {
        if (!system.balance || !solve(this.balanced(problem), { maxIterations: 25, patient: true })) return Infinity;
        whole = false;
      }
      const behind = near || (whole && stage < STAGES - 1);
      if (behind) {
        this.ratesBehind(stage, hg, !near && lu.factored === this.factors ? this.factoredFor * ESDIRK.gamma : hg);
      } else {
        this.evaluations++;
        system.close?.(next, fixed, hg);
        system.evaluate(time, next, rates[stage], this.algebraic, system.close && 'closed');
        this.drift(stage);
      }
      system.quadrature(this.sums[stage]);
      if (behind) system.quadratureMoves?.(this.moves, this.rhs, this.sums[stage]);
      this.stages[stage].set(next);
      const surprise = this.surprises[stage];
      for (let i = 0; i < next.length; i++) surprise[i] = next[i] - surprise[i];
    }
    if (lu.factored !== this.factors) [this.factors, this.factoredFor] = [lu.factored, h];
    return this.finish(h, beside?.lu ?? lu);
  }

  /**
   * Rates where a stage has come to: those last evaluated, and what the last step of Newton, M dx = r, tells of their
   * slopes. With M = C - g J and r = fixed + hg rate - H it is J dx = (C dx - r)/g: as good as to evaluate them once
   * more, and costs next to nothing.
   *
   * @param made g, of the matrix that the step was made with; it serves a step somewhat longer or shorter too
   */
  private ratesBehind(stage: number, hg: number, made: number): void {
    const { system, next, fixed, contentsNow, inertia, base, rhs: step, moves, algebraic } = this;
    const d = system.differential;
    const led = d - (system.followers ?? 0);
    const rate = this.rates[stage];
    const drift = this.drifts[stage];
    system.solveFollowers?.(next, fixed, hg);
    system.contents(next, contentsNow);
    for (let i = 0; i < led; i++) {
      moves[i] = (contentsNow[i] - fixed[i] - hg * rate[i]) / made;
      rate[i] += moves[i];
    }
    for (let i = led; i < d; i++) rate[i] = (contentsNow[i] - fixed[i]) / hg;
    for (let i = d; i < next.length; i++) {
      const holds = inertia ? inertia[i - d] : 0;
      const now = holds > 0 ? holds * ((next[i] - step[i] - base[i - d]) / hg + step[i] / made) : 0;
      moves[i] = now - algebraic[i - d];
      drift[i - d] = holds > 0 ? now / holds : 0;
    }
  }

  /** First guess of a stage: along the curve of the last step, then that through the stages already solved. */
  private predict(stage: number, h: number): void {
    const { next, start, before, between, stages } = this;
    const [, c1, c2] = ESDIRK.c;
    if (stage === 1) {
      const on = this.lastStep > 0 ? (c1 * h) / this.lastStep : 0;
      // through where the last step began, one of its stages and its end; far ahead the line through both ends goes
      // less astray
      const near = on < NEAR_AHEAD;
      const w0 = near ? (on * (1 + on - c2)) / c2 : -on;
      const w1 = near ? (-on * (1 + on)) / (c2 * (1 - c2)) : 0;
      for (let i = 0; i < next.length; i++)
        next[i] = start[i] + w0 * (before[i] - start[i]) + w1 * (between[i] - start[i]);
      return;
    }
    if (stage === 2) {
      for (let i = 0; i < next.length; i++) next[i] = start[i] + (c2 / c1) * (stages[1][i] - start[i]);
      return;
    }
    const w0 = ((1 - c1) * (1 - c2)) / (c1 * c2);
    const w1 = (1 - c2) / (c1 * (c1 - c2));
    const w2 = (1 - c1) / (c2 * (c2 - c1));
    for (let i = 0; i < next.length; i++) next[i] = w0 * start[i] + w1 * stages[1][i] + w2 * stages[2][i];
  }

  private stageProblem(time: number, hg: number, stage: number): NewtonProblem {
    const { system, rates, fixed, contentsNow, inertia, base } = this;
    const d = system.differential;
    const led = d - (system.followers ?? 0);
    const rate = rates[stage];
    const rest = this.algebraic;
    return {
      residual: (x, rhs) => {
        system.evaluate(time, x, rate, rest, 'inner');
        system.contents(x, contentsNow);
        for (let i = 0; i < led; i++) rhs[i] = fixed[i] + hg * rate[i] - contentsNow[i];
        for (let i = led; i < d; i++) rhs[i] = 0;
        for (let i = d; i < system.size; i++) rhs[i] = rest[i - d];
        if (inertia) for (let i = d; i < system.size; i++) rhs[i] -= (inertia[i - d] * (x[i] - base[i - d])) / hg;
      },
      matrix: (x, matrix) => system.jacobian(time, x, matrix, hg),
      limit: (x, step) => system.limit(x, step),
      measure: (x, step) => system.measure(x, step),
    };
  }

  /** The same with what can be solved by itself solved anew at every turn: slower, and goes less astray. */
  private balanced(problem: NewtonProblem): NewtonProblem {
    const residual = (x: Float64Array, rhs: Float64Array) => {
      this.system.balance!(x);
      problem.residual(x, rhs);
    };
    return { ...problem, residual };
  }

  private finish(h: number, lu: LuSolver): number {
    const { system, rates, rhs, weights, next } = this;
    const d = system.differential;
    rhs.fill(0);
    for (let i = 0; i < d; i++) {
      let sum = 0;
      for (let j = 0; j < STAGES; j++) sum += (ESDIRK.b[j] - ESDIRK.embedded[j]) * rates[j][i];
      rhs[i] = h * sum;
    }
    const { inertia } = this;
    if (inertia) {
      for (let i = d; i < system.size; i++) {
        let sum = 0;
        for (let j = 0; j < STAGES; j++) sum += (ESDIRK.b[j] - ESDIRK.embedded[j]) * this.drifts[j][i - d];
        rhs[i] = (inertia[i - d] * sum) / ESDIRK.gamma;
      }
    }
    // the factored matrix turns an error of heat content into one of temperature and takes the stiff part out of it
    lu.solve(rhs);
    system.errorWeights(next, weights);
    let worst = 0;
    for (let i = 0; i < d; i++) worst = Math.max(worst, Math.abs(rhs[i]) * weights[i]);
    if (inertia) {
      for (let i = d; i < system.size; i++) {
        if (inertia[i - d] > 0) worst = Math.max(worst, Math.abs(rhs[i]) * weights[i]);
      }
    }
    for (let q = 0; q < system.quadratures; q++) {
      let sum = 0;
      for (let j = 0; j < STAGES; j++) sum += ESDIRK.b[j] * this.sums[j][q];
      this.gained[q] = h * sum;
    }
    for (let i = 0; i < d; i++) {
      let sum = 0;
      for (let j = 0; j < STAGES; j++) sum += ESDIRK.b[j] * rates[j][i];
      this.stored[i] = h * sum;
    }
    if (inertia) {
      for (let i = 0; i < this.moved.length; i++) {
        let sum = 0;
        for (let j = 0; j < STAGES; j++) sum += ESDIRK.b[j] * this.drifts[j][i];
        this.moved[i] = h * sum;
      }
    }
    return worst;
  }

  /** Make the attempted step the new state: its last stage's rates serve as the first of the next step. */
  accept(h: number): void {
    const { rates, sums, system } = this;
    this.before.set(this.start);
    this.between.set(this.stages[2]);
    this.lastStep = h;
    this.start.set(this.next);
    rates[0].set(rates[STAGES - 1]);
    this.drifts[0].set(this.drifts[STAGES - 1]);
    sums[0].set(sums[STAGES - 1]);
    // what is carried on is H itself, so that what Newton left over in x is made good by the next step and never adds
    // up
    for (let i = 0; i < system.differential; i++) this.contentsStart[i] += this.stored[i];
    if (this.inertia) for (let i = 0; i < this.moved.length; i++) this.restStart[i] += this.moved[i];
  }

  /** Shares of the last attempted step at which its inner stages lie, in rising order, and the unknowns there. */
  readonly stageShares = [ESDIRK.c[2], ESDIRK.c[1]];
  get stageStates(): Float64Array[] {
    return [this.stages[2], this.stages[1]];
  }

  /** dH/dt at the current state. */
  startRates(): Float64Array {
    return this.rates[0];
  }
}
