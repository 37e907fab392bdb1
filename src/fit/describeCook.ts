import type { Design } from '../design/design.js';
import type { CookLog } from './log/log.js';
import type { FitInput } from './fit.js';
import { fittedFrom, fittedUntil } from './fitSpan.js';
import type { FitErrors, FittedChannel, FittedCook, FitResult } from './fitResult.js';
import { TOLERANCE } from './fitRuns.js';
import { lagged, USUAL_LAG } from './lag.js';
import { runLogs, type LogRun } from './logRun.js';
import { designAt, type FitParameter } from './parameters.js';
import { NINE_OF_TEN, type Posterior } from './posterior.js';
import { median } from 'simple-statistics';
import { ownNoise, robustSpread, rootMeanSquare } from './residuals.js';
import type { ChannelWeight } from './weights.js';

interface Found {
  parameters: readonly FitParameter[];
  posterior: Posterior;
  weights: ChannelWeight[][];
  heldBack: number;
  accuracy: number;
  /** header of the probe that was not believed */
  liar: string | null;
  onRun: () => void;
}

interface DescribedCooks {
  described: FittedCook[];
  quality: FitResult['quality'];
  energyError: number;
  massError: number;
}

/** Step of an estimate's coordinate for what its spread does to a curve. */
const BAND_STEP = 0.05;

/**
 * All cooks, their held-back parts among them, as the design had its estimates and as they are fitted: errors, bands,
 * noise.
 *
 * @returns null: a run broke off
 */
export function describeCooks(design: Design, inputs: readonly FitInput[], found: Found): DescribedCooks | null {
  const { parameters, posterior } = found;
  const q = posterior.p.slice(0, parameters.length);
  const described: FittedCook[] = [];
  let probe = parameters.length;
  const lags = probe + inputs.reduce((sum, { log }) => sum + log.channels.length, 0);
  const worst = { energyError: 0, massError: 0 };
  for (const [l, { log, hash }] of inputs.entries()) {
    const run = (...at: (readonly number[])[]) => {
      const designs = at.map((each) => designAt(design, parameters, each));
      const runs = runLogs(designs, log, { tolerance: TOLERANCE });
      for (let k = 0; k < runs.length; k++) found.onRun();
      worst.energyError = Math.max(worst.energyError, runs[0]?.energyError ?? 0);
      worst.massError = Math.max(worst.massError, runs[0]?.massError ?? 0);
      return runs;
    };
    const [before] = run(q.map(() => 0));
    const [after, ...beside] = run(q, ...q.map((v, k) => withAt(q, k, inwards(v, parameters[k]))));
    if (!before || !after) return null;
    const slopes = q.map((v, k) => slopesOf(after, beside[k], v, parameters[k]));
    const lag = posterior.p[lags + l] * USUAL_LAG;
    const span = { from_s: fittedFrom(design, log), fittedTo_s: fittedUntil(log, found.heldBack) };
    described.push({
      name: log.name,
      hash,
      length_s: log.length_s,
      ...span,
      channels: log.channels.map((_, c) =>
        channelOf(log, c, { before, after, slopes, span, lag, probe: probe++, weight: found.weights[l][c] }, found),
      ),
      lag_s: lag,
      lagDeviation_s: USUAL_LAG * Math.sqrt(posterior.covariance[lags + l][lags + l]),
      fire: { time_s: after.grid, fire_W: after.fire_W },
      notes: log.notes,
    });
  }
  return { described, quality: qualityOf(described), ...worst };
}

/** A step of a coordinate that stays within its bounds. */
function inwards(q: number, { high }: FitParameter): number {
  return q + (q + BAND_STEP <= high ? BAND_STEP : -BAND_STEP);
}

function withAt(q: readonly number[], k: number, value: number): number[] {
  return q.map((v, j) => (j === k ? value : v));
}

/** Change of every computed reading with one coordinate. */
function slopesOf(at: LogRun, beside: LogRun | null, q: number, parameter: FitParameter): Float64Array[] {
  const step = inwards(q, parameter) - q;
  return at.computed.map((row, c) => row.map((value, i) => (beside ? (beside.computed[c][i] - value) / step : 0)));
}

interface ChannelRuns {
  before: LogRun;
  after: LogRun;
  slopes: Float64Array[][];
  span: { from_s: number; fittedTo_s: number };
  /** of the logger [s] */
  lag: number;
  /** index of its offset among the fit's coordinates */
  probe: number;
  weight: ChannelWeight;
}

function channelOf(
  log: CookLog,
  c: number,
  { before, after, slopes, span, lag, probe, weight }: ChannelRuns,
  { posterior, accuracy, parameters, liar }: Found,
): FittedChannel {
  const { header, station, spot, measured, time_s, value_K, resolution_K } = log.channels[c];
  const leftOut = header === liar;
  const own = Array.from(before.computed[c]);
  const right = lagged(time_s, after.computed[c], lag);
  const { covariance } = posterior;
  const off = value_K.map((value, i) => value - right[i]);
  const offset = leftOut ? median(off) : posterior.p[probe] * accuracy;
  const offsetDeviation = leftOut
    ? robustSpread(off.map((each) => each - offset))
    : accuracy * Math.sqrt(covariance[probe][probe]);
  const now = Array.from(right, (value) => (leftOut ? value : value + offset));
  const reach = [...parameters.keys(), probe];
  const band = time_s.map((_, i) => {
    const slope = (k: number) => (k === probe ? accuracy : slopes[k][c][i]);
    let variance = weight.deviation ** 2;
    for (const a of reach) for (const b of reach) variance += slope(a) * slope(b) * covariance[a][b];
    return NINE_OF_TEN * Math.sqrt(variance);
  });
  const fitted = time_s.flatMap((t, i) => (t >= span.from_s && t <= span.fittedTo_s ? [i] : []));
  const held = time_s.flatMap((t, i) => (t > span.fittedTo_s ? [i] : []));
  const errors = (part: number[]): FitErrors =>
    part.length === 0
      ? { before: null, after: null }
      : {
          before: rootMeanSquare(part.map((i) => value_K[i] - own[i])),
          after: rootMeanSquare(part.map((i) => value_K[i] - now[i])),
        };
  return {
    header,
    station,
    ...(spot === undefined ? {} : { spot }),
    measured,
    leftOut,
    fittedReadings: leftOut ? 0 : fitted.length,
    heldReadings: leftOut ? 0 : held.length,
    fitted: errors(fitted),
    heldBack: errors(held),
    noise_K: ownNoise(value_K, resolution_K),
    offset_K: offset,
    offsetDeviation_K: offsetDeviation,
    lasts_s: weight.lasts_s,
    spacing_s: weight.spacing_s,
    curves: { time_s, measured_K: value_K, before_K: own, after_K: now, band_K: band },
  };
}

/** Root mean squares over all readings of all probes. */
function qualityOf(cooks: FittedCook[]): FitResult['quality'] {
  const channels = cooks.flatMap(({ channels }) => channels);
  const over = (count: (c: FittedChannel) => number, error: (c: FittedChannel) => number | null): number | null => {
    let sum = 0;
    let readings = 0;
    for (const channel of channels) {
      const each = error(channel);
      if (each === null) continue;
      sum += count(channel) * each ** 2;
      readings += count(channel);
    }
    return readings > 0 ? Math.sqrt(sum / readings) : null;
  };
  const held = ({ heldReadings }: FittedChannel) => heldReadings;
  const fitted = ({ fittedReadings }: FittedChannel) => fittedReadings;
  return {
    heldBack_K: over(held, ({ heldBack }) => heldBack.after),
    heldBackBefore_K: over(held, ({ heldBack }) => heldBack.before),
    fitted_K: over(fitted, (channel) => channel.fitted.after) ?? 0,
    before_K: over(fitted, (channel) => channel.fitted.before) ?? 0,
    noise_K: over(fitted, ({ noise_K }) => noise_K) ?? 0,
  };
}
