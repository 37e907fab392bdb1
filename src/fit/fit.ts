import type { Design } from '../design/design.js';
import { valuesInUse } from '../design/fitted.js';
import type { CookLog } from './log/log.js';
import { leastSquares, type LeastSquaresSolution } from '../solve/leastSquares.js';
import { version } from '../version.js';
import { describeCooks } from './describeCook.js';
import { FitProblem } from './fitProblem.js';
import type { FitPart } from './fitRuns.js';
import type { FitResult } from './fitResult.js';
import { fittedFrom, fittedUntil } from './fitSpan.js';
import { fitParameters, Prior, tellingPaths, type FitParameter, type Told } from './parameters.js';
import { posteriorOf } from './posterior.js';
import { fittedOf } from './toFitted.js';
import { fitWarnings } from './fitWarnings.js';

/** A log and what tells it from another. */
export interface FitInput {
  log: CookLog;
  /** first 16 hex digits of the SHA-256 of the file */
  hash: string;
}

/** Which estimates are fitted, on how much of each log. */
export interface FitOptions {
  /** estimates to fit, by their paths in the table of estimates (default: all that move what the probes read) */
  paths?: string[];
  /** share of each log, from its end, that is not fitted but predicted */
  heldBack: number;
  /** how far a probe may read off all the time, standard deviation [K] */
  accuracy: number;
  /** told after each run of a log */
  onRun?: (runs: number) => void;
}

/**
 * Times that deviations and estimates are found in turn, at most; before the first and before the second the times of
 * the steps are laid down.
 */
const MOST_TURNS = 6;
const TURNS_OF_GRID = 2;
/** Deviations that change by less than this share have settled. */
const SETTLED = 0.1;
/**
 * What the first turn, whose deviations are those of the start, and the next may leave to gain, in the sum of squares.
 */
const ROUGH = { first: 3, next: 1 };

/**
 * Fit estimates of a design to measured cooks: bounded least squares with a robust loss and the estimates' spreads as
 * priors, so that what the logs can't tell stays where it was. Weights of the probes follow from what the fit leaves
 * over, in turn.
 *
 * The part held back is never looked at by the fit; it is only predicted.
 *
 * @param design as read; where it rests on earlier fits these are the priors, and what they fitted is fitted along
 * @returns null: the pit can't be followed through a log, for its draft keeps tipping over
 * @throws RangeError for a path that the design has no estimate for
 */
export function fit(design: Design, inputs: readonly FitInput[], options: FitOptions): FitResult | null {
  const earlier = design.fitted ? valuesInUse(design.fitted).values.map(({ path }) => path) : [];
  const paths = [...new Set([...(options.paths ?? tellingPaths(design, toldBy(inputs))), ...earlier])];
  const parameters = fitParameters(design, paths);
  const held = tellingPaths(design, toldBy(inputs)).filter((path) => !paths.includes(path));
  const parts = inputs.map(({ log }) => partOf(design, thinned(log), options.heldBack));
  let runs = 0;
  const onRun = () => {
    runs++;
    options.onRun?.(runs);
  };
  const problemOf = (those: readonly FitParameter[], of: FitPart[]) =>
    new FitProblem(design, those, new Prior(design, those), of, options.accuracy, onRun);
  // what is not fitted may be otherwise too, and no probe is to blame for it
  const screening = problemOf(fitParameters(design, [...paths, ...held]), parts);
  if (!screening.layGrid(screening.start)) return null;
  const suspicion = screening.suspicion();
  const believed = parts.map((part) => without(part, suspicion.liar));
  const problem = problemOf(parameters, believed);
  problem.goOnFrom(screening);
  const solution = solve(problem);
  if (!solution) return null;
  const others = fitParameters(design, held);
  const posterior = posteriorOf(parameters, problem.prior, solution, problem, problem.sway(solution.p, others));
  const cooks = describeCooks(design, inputs, {
    parameters,
    posterior,
    weights: problem.weights,
    heldBack: options.heldBack,
    accuracy: options.accuracy,
    liar: suspicion.liar,
    onRun,
  });
  if (!cooks) return null;
  const { quality, described } = cooks;
  return {
    schema: 1,
    tool: { name: 'pitwright', version },
    design,
    parameters: posterior.parameters,
    held,
    correlation: posterior.correlation,
    cooks: described,
    quality,
    warnings: fitWarnings(posterior, described, {
      design,
      held,
      inputs,
      quality,
      converged: solution.converged,
      accuracy: options.accuracy,
      suspicion,
    }),
    fitted: fittedOf(design, parameters, posterior, described),
    runs,
    balance: {
      energyError: Math.max(screening.runs.energyError, problem.runs.energyError, cooks.energyError),
      massError_kg_per_s: Math.max(screening.runs.massError, problem.runs.massError, cooks.massError),
    },
  };
}

/** What all logs tell of fire and weather. */
function toldBy(inputs: readonly FitInput[]): Told {
  const all = (has: (log: CookLog) => boolean) => inputs.every(({ log }) => has(log));
  return {
    wood: all(({ wood }) => wood !== null),
    fire: all(({ fire }) => fire !== null),
    wind: all(({ wind }) => wind !== null),
  };
}

/**
 * First as if all errors were independent, with deviations that follow from what is left over, in turn; then once more
 * with each probe counting only for as many readings as know something new. Errors are judged where the logs are
 * matched best: judged where a weak fit leaves them they would only make it weaker.
 */
function solve(problem: FitProblem): LeastSquaresSolution | null {
  let solution: LeastSquaresSolution | null = null;
  let p: readonly number[] = problem.start;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    if (turn > 0 && turn < TURNS_OF_GRID && !problem.layGrid(p)) return null;
    const settled = problem.weigh(p, 'independent') < SETTLED;
    if (settled && turn > 0) break;
    solution = leastSquares({ ...bound(problem), start: p }, turn === 0 ? ROUGH.first : ROUGH.next);
    if (!solution) return null;
    p = solution.p;
  }
  problem.weigh(p, 'together');
  return leastSquares({ ...bound(problem), start: p });
}

/** The methods of a problem, which a copy of it would lose. */
function bound(problem: FitProblem) {
  return {
    low: problem.low,
    high: problem.high,
    residuals: (p: readonly number[]) => problem.residuals(p),
    slopes: (p: readonly number[]) => problem.slopes(p),
  };
}

function partOf(design: Design, log: CookLog, heldBack: number): FitPart {
  const until = fittedUntil(log, heldBack);
  const start = fittedFrom(design, log);
  const count = (times: number[], end: number, closed: boolean) =>
    times.filter((t) => (closed ? t <= end : t < end)).length;
  const from = log.channels.map(({ time_s }) => count(time_s, start, false));
  const to = log.channels.map(({ time_s }, c) => Math.max(from[c], count(time_s, until, true)));
  return { log, until_s: until, from, to };
}

/** The part with none of a probe's readings to be fitted. */
function without(part: FitPart, header: string | null): FitPart {
  return { ...part, to: part.to.map((to, c) => (part.log.channels[c].header === header ? part.from[c] : to)) };
}

/** More readings of one probe than this are averaged in short blocks before they are fitted. */
const MOST_READINGS = 3000;

/** The log with its readings averaged where they are many; events and weather stay as they are. */
function thinned(log: CookLog): CookLog {
  const channels = log.channels.map((channel) => {
    const { time_s, value_K } = channel;
    const block = Math.ceil(time_s.length / MOST_READINGS);
    if (block <= 1) return channel;
    const mean = (values: number[], i: number) => {
      const part = values.slice(i * block, (i + 1) * block);
      return part.reduce((sum, value) => sum + value, 0) / part.length;
    };
    const count = Math.ceil(time_s.length / block);
    const blocks = Array.from({ length: count }, (_, i) => i);
    return {
      ...channel,
      time_s: blocks.map((i) => mean(time_s, i)),
      value_K: blocks.map((i) => mean(value_K, i)),
    };
  });
  return { ...log, channels };
}
