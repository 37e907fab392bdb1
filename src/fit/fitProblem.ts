import { Matrix } from 'ml-matrix';
import type { Design } from '../design/design.js';
import type { LeastSquaresProblem } from '../solve/leastSquares.js';
import { lagged, LONGEST_LAG, USUAL_LAG } from './lag.js';
import { FitRuns, type FitPart } from './fitRuns.js';
import type { LogRun } from './logRun.js';
import { loss, lossSlope } from './robustLoss.js';
import { screened } from './screen.js';
import type { Prior } from './parameters.js';
import { designAt, valueAt, type FitParameter } from './parameters.js';
import type { Others } from './posterior.js';
import { suspicionOf, type Suspicion } from './suspects.js';
import { weightsOf, type ChannelWeight } from './weights.js';

/** Step of the coordinates for the slopes of estimates that are not fitted, whose spreads are wide. */
const SWAY = 0.5;
/**
 * Measured against computed readings of all logs as residuals for least squares. Parameters are the estimates'
 * coordinates, then how far each probe reads off all the time, in units of `accuracy`, then how far each logger lags,
 * in units of the usual lag. After the readings come the priors: estimates stay within their spreads, probes near the
 * truth, as far as the logs don't tell.
 *
 * All runs of a problem step on the same times, so that residuals are smooth in the parameters; the loss is that of
 * least squares near zero and grows straight beyond some standard deviations.
 */
export class FitProblem implements LeastSquaresProblem {
  readonly start: number[];
  readonly low: number[];
  readonly high: number[];
  /** readings that are fitted, all together */
  readonly readings: number;
  /** index of the first logger's lag among the parameters */
  readonly lags: number;
  readonly runs: FitRuns;
  /** how much the readings of each log's channels count */
  weights: ChannelWeight[][] = [];

  constructor(
    private readonly design: Design,
    private readonly parameters: readonly FitParameter[],
    readonly prior: Prior,
    private readonly parts: readonly FitPart[],
    private readonly accuracy: number,
    onRun: () => void,
  ) {
    const probes = parts.flatMap(({ log }) => log.channels);
    this.readings = parts.reduce((sum, { from, to }) => sum + from.reduce((s, f, c) => s + to[c] - f, 0), 0);
    this.lags = parameters.length + probes.length;
    const loggers = parts.map(() => LONGEST_LAG / USUAL_LAG);
    this.start = [...parameters.map(() => 0), ...probes.map(() => 0), ...loggers.map(() => 0)];
    this.low = [...parameters.map(({ low }) => low), ...probes.map(() => -PROBE_BOUND), ...loggers.map(() => 0)];
    this.high = [...parameters.map(({ high }) => high), ...probes.map(() => PROBE_BOUND), ...loggers];
    this.runs = new FitRuns(design, parameters, parts, onRun);
  }

  /** Lay down the times of the steps as they come out at p. @returns false: the pit can't be followed there */
  layGrid(p: readonly number[]): boolean {
    return this.runs.layGrid(this.ofEstimates(p));
  }

  /**
   * Take the times of the steps, and the runs at the start, from a problem of the same logs with these estimates among
   * its own.
   */
  goOnFrom(other: FitProblem): void {
    this.runs.goOnFrom(other.runs, this.ofEstimates(this.start), other.ofEstimates(other.start));
  }

  /**
   * Weigh the channels by their residuals at p, where runs have been.
   *
   * @returns largest change of a deviation, as a share of it
   */
  weigh(p: readonly number[], how: 'independent' | 'together'): number {
    const runs = this.runs.at(this.ofEstimates(p))!;
    const before = this.weights;
    let probe = this.parameters.length;
    this.weights = this.parts.map((part, l) => {
      const left = part.log.channels.map((_, c) => this.residualsOf(part, runs[l], c, p[probe++], this.lagAt(p, l)));
      const found = weightsOf(part.log.channels, part.from, left);
      return how === 'together' ? found : found.map((each) => ({ ...each, together: 1 }));
    });
    const changes = before.flatMap((log, l) =>
      log.map(({ deviation }, c) => Math.abs(this.weights[l][c].deviation / deviation - 1)),
    );
    return changes.length > 0 ? Math.max(...changes) : Infinity;
  }

  residuals(p: readonly number[]): Float64Array | null {
    const runs = this.runs.at(this.ofEstimates(p));
    if (!runs) return null;
    const out: number[] = [];
    let probe = this.parameters.length;
    this.parts.forEach((part, l) => {
      part.log.channels.forEach((_, c) => {
        const { deviation, together } = this.weights[l][c];
        const scale = 1 / Math.sqrt(together);
        for (const each of this.residualsOf(part, runs[l], c, p[probe], this.lagAt(p, l)))
          out.push(scale * loss(each / deviation));
        probe++;
      });
    });
    out.push(...this.prior.residuals(this.ofEstimates(p)), ...p.slice(this.parameters.length));
    return Float64Array.from(out);
  }

  slopes(p: readonly number[]): Float64Array[] {
    const q = this.ofEstimates(p);
    const pulls = this.pullsAt(p);
    const prior = this.prior.slopes(this.prior.sidesAt(q));
    const beside = this.runs.beside(q);
    return p.map((_, k) => {
      const row = new Float64Array(this.readings + p.length);
      if (k < q.length) {
        const { runs, step } = beside[k];
        this.fillSlopes(row, p, runs, step, pulls);
        row.set(prior[k], this.readings);
      } else {
        if (k < this.lags) this.fillOffset(row, k, pulls);
        else this.fillLag(row, p, k - this.lags, pulls);
        row[this.readings + k] = 1;
      }
      return row;
    });
  }

  /**
   * What estimates that are not fitted would do to the readings; those with which the pit can't be followed are left
   * out.
   */
  sway(p: readonly number[], others: readonly FitParameter[]): Others {
    const q = this.ofEstimates(p);
    const pulls = this.pullsAt(p);
    const moved = designAt(this.design, this.parameters, q);
    const out: Others = { paths: [], sway: [] };
    const steps = others.map(({ high }) => (high >= SWAY ? SWAY : -SWAY));
    const [, ...beside] = this.runs.follow([moved, ...others.map((other, k) => designAt(moved, [other], [steps[k]]))]);
    others.forEach(({ unknown }, k) => {
      if (!beside[k]) return;
      const row = new Float64Array(this.readings);
      this.fillSlopes(row, p, beside[k], steps[k], pulls);
      out.paths.push(unknown.path);
      out.sway.push(row);
    });
    return out;
  }

  /**
   * Which of the probes is not to be believed, held against each other and the model at the start, where runs have
   * been.
   */
  suspicion(): Suspicion {
    const q = this.ofEstimates(this.start);
    const probes = screened(this.parts, this.runs.at(q)!, this.runs.beside(q), this.design.site.air);
    const own = new Matrix(this.prior.slopes(this.prior.sidesAt(q)));
    const known = own.mmul(own.transpose()).to2DArray();
    const [low, high] = [this.ofEstimates(this.low), this.ofEstimates(this.high)];
    const offset = { deviation: this.accuracy, most: PROBE_BOUND * this.accuracy };
    return suspicionOf(probes, { known, low, high, fire: fireAmong(this.parameters) }, offset);
  }

  private ofEstimates(p: readonly number[]): number[] {
    return p.slice(0, this.parameters.length);
  }

  private lagAt(p: readonly number[], log: number): number {
    return p[this.lags + log] * USUAL_LAG;
  }

  /** Measured less computed [K], as the logger lags and with the probe's own offset taken off. */
  private residualsOf({ log, from, to }: FitPart, run: LogRun, c: number, offset: number, lag: number): Float64Array {
    const { value_K, time_s } = log.channels[c];
    const computed = lagged(time_s, run.computed[c], lag, to[c]);
    const out = new Float64Array(to[c] - from[c]);
    for (let i = 0; i < out.length; i++) {
      out[i] = value_K[from[c] + i] - computed[from[c] + i] - offset * this.accuracy;
    }
    return out;
  }

  /** How much each residual changes with its reading, in the order of the residuals. */
  private pullsAt(p: readonly number[]): Float64Array {
    const runs = this.runs.at(this.ofEstimates(p))!;
    const pulls = new Float64Array(this.readings);
    let probe = this.parameters.length;
    let at = 0;
    this.parts.forEach((part, l) => {
      part.log.channels.forEach((_, c) => {
        const { deviation, together } = this.weights[l][c];
        for (const each of this.residualsOf(part, runs[l], c, p[probe], this.lagAt(p, l))) {
          pulls[at++] = lossSlope(each / deviation) / (deviation * Math.sqrt(together));
        }
        probe++;
      });
    });
    return pulls;
  }

  /** Slopes of the residuals from runs a step beside those at p; none where these broke off. */
  private fillSlopes(
    row: Float64Array,
    p: readonly number[],
    beside: LogRun[] | null,
    step: number,
    pulls: Float64Array,
  ) {
    if (!beside) return;
    const base = this.runs.at(this.ofEstimates(p))!;
    let at = 0;
    this.parts.forEach(({ log, from, to }, l) => {
      const lag = this.lagAt(p, l);
      from.forEach((first, c) => {
        const { time_s } = log.channels[c];
        const now = lagged(time_s, base[l].computed[c], lag, to[c]);
        const then = lagged(time_s, beside[l].computed[c], lag, to[c]);
        for (let i = first; i < to[c]; i++, at++) row[at] = (-(then[i] - now[i]) / step) * pulls[at];
      });
    });
  }

  /** Slopes of the residuals with one logger's lag. */
  private fillLag(row: Float64Array, p: readonly number[], logger: number, pulls: Float64Array): void {
    const base = this.runs.at(this.ofEstimates(p))!;
    let at = 0;
    this.parts.forEach(({ log, from, to }, l) => {
      const lag = this.lagAt(p, l);
      from.forEach((first, c) => {
        if (l === logger) {
          const { time_s } = log.channels[c];
          const now = lagged(time_s, base[l].computed[c], lag, to[c]);
          const then = lagged(time_s, base[l].computed[c], lag + LAG_STEP * USUAL_LAG, to[c]);
          for (let i = first; i < to[c]; i++)
            row[at + i - first] = (-(then[i] - now[i]) / LAG_STEP) * pulls[at + i - first];
        }
        at += to[c] - first;
      });
    });
  }

  /** Slopes of the residuals with one probe's offset. */
  private fillOffset(row: Float64Array, probe: number, pulls: Float64Array): void {
    let k = this.parameters.length;
    let at = 0;
    for (const { from, to } of this.parts) {
      from.forEach((first, c) => {
        for (let i = first; i < to[c]; i++, at++) if (k === probe) row[at] = -this.accuracy * pulls[at];
        k++;
      });
    }
  }
}

/** The heat of the wood among the estimates: with it all fires of a log go up and down. */
function fireAmong(parameters: readonly FitParameter[]): { at: number; factor: number } | null {
  const at = parameters.findIndex(({ unknown }) => unknown.path === 'wood.heat');
  if (at < 0) return null;
  const each = parameters[at];
  return { at, factor: (valueAt(each, each.low) / valueAt(each, 0)) ** (1 / each.low) };
}

/** Step of a lag for slopes, in units of the usual one. */
const LAG_STEP = 0.01;
/** A probe that is off by more than so many times what it may be is broken. */
const PROBE_BOUND = 5;
