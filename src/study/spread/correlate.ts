/** Draws of unknowns that a fit found to go together. */
import { choleskyFactor } from '../../design/correlation.js';
import type { Design } from '../../design/design.js';
import { valuesInUse } from '../../design/fitted.js';
import { ranks } from './rankRegression.js';

/** How it is done, for the method of a study. */
export const TOGETHER = 'fitted unknowns correlated by their ranks (Iman & Conover 1982)';

/** Does any of the designs have unknowns that a fit found to go together? */
export function fittedTogether(designs: readonly Design[]): boolean {
  return designs.some(({ fitted }) => fitted !== undefined && valuesInUse(fitted).values.length > 1);
}

/**
 * Samples in which fitted unknowns go together as their fit found them; all others stay as they were drawn.
 *
 * Where designs rest on different fits each path is correlated as the first design that has it says, and paths of
 * different fits are independent.
 *
 * @param paths names of a sample's numbers
 * @param designs those that share the samples
 */
export function withFittedCorrelation(samples: number[][], paths: readonly string[], designs: Design[]): number[][] {
  const taken = new Set<string>();
  let out = samples;
  for (const { fitted } of designs) {
    if (!fitted) continue;
    const { values, correlation } = valuesInUse(fitted);
    const own = values.flatMap(({ path }, i) => (paths.includes(path) && !taken.has(path) ? [i] : []));
    for (const i of own) taken.add(values[i].path);
    if (own.length < 2) continue;
    const columns = own.map((i) => paths.indexOf(values[i].path));
    out = correlated(out, { columns, correlation: own.map((i) => own.map((j) => correlation[i][j])) });
  }
  return out;
}

/**
 * Samples with some of their columns put into another order, so that these correlate as wanted: no number of a column
 * changes, only which row it stands in, so that each stays as evenly drawn as it was.
 *
 * Normal scores of the ranks are turned so that the correlation they have by chance goes and the wanted one comes, and
 * each column is ranked like its turned scores. The correlation wanted is that of the scores; ranks then correlate
 * slightly less, (6/pi) asin(correlation/2).
 *
 * @param samples one row a sample
 * @param wanted columns and their correlation, positive definite, in the same order
 * @returns a copy
 * Reference: Iman & Conover (1982), Communications in Statistics B 11, 311.
 */
export function correlated(
  samples: readonly (readonly number[])[],
  { columns, correlation }: { columns: readonly number[]; correlation: readonly (readonly number[])[] },
): number[][] {
  const count = samples.length;
  const scores = columns.map((column) =>
    ranks(samples.map((row) => row[column])).map((rank) => normalQuantile((rank + 1) / (count + 1))),
  );
  const wanted = choleskyFactor(correlation);
  if (!wanted) throw new RangeError('the correlation is not positive definite');
  // with fewer samples than columns chance leaves no room to be undone
  const chance = choleskyFactor(correlationOf(scores));
  const out = samples.map((row) => [...row]);
  const turned = scores.map(() => new Array<number>(count).fill(0));
  for (let n = 0; n < count; n++) {
    const free = solveLower(
      chance,
      scores.map((column) => column[n]),
    );
    wanted.forEach((row, i) => (turned[i][n] = row.reduce((sum, each, j) => (j <= i ? sum + each * free[j] : sum), 0)));
  }
  columns.forEach((column, i) => {
    const sorted = samples.map((row) => row[column]).sort((a, b) => a - b);
    const order = turned[i].map((_, n) => n).sort((a, b) => turned[i][a] - turned[i][b] || a - b);
    order.forEach((n, rank) => (out[n][column] = sorted[rank]));
  });
  return out;
}

function correlationOf(columns: readonly (readonly number[])[]): number[][] {
  const product = (a: readonly number[], b: readonly number[]) => a.reduce((sum, each, n) => sum + each * b[n], 0);
  // normal scores of whole columns have no mean
  return columns.map((a) => columns.map((b) => product(a, b) / Math.sqrt(product(a, a) * product(b, b))));
}

/** x of factor x = right, by forward substitution; the right side itself where there is no factor. */
function solveLower(factor: number[][] | null, right: number[]): number[] {
  if (!factor) return right;
  const x: number[] = [];
  factor.forEach((row, i) => {
    x.push((right[i] - x.reduce((sum, each, j) => sum + row[j] * each, 0)) / row[i]);
  });
  return x;
}

/**
 * Quantile of the standard normal distribution, within 4.5e-4.
 *
 * @param probability above 0, below 1
 * Reference: Abramowitz & Stegun (1964), Handbook of Mathematical Functions, 26.2.23 (coefficients from memory, checked
 * against tabulated quantiles by a test).
 */
export function normalQuantile(probability: number): number {
  const tail = Math.min(probability, 1 - probability);
  const t = Math.sqrt(-2 * Math.log(tail));
  const far = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  if (probability === 0.5) return 0;
  return probability < 0.5 ? -far : far;
}
