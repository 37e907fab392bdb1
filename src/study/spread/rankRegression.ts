/** Which of many inputs moves a result, when each moves it one way all along. */
import { LuSolver } from '../../solve/linear.js';

/** Ranks of values, 0 the smallest; equal values share the mean of theirs. */
export function ranks(values: readonly number[]): number[] {
  const order = values.map((_, i) => i).sort((a, b) => values[a] - values[b] || a - b);
  const out = new Array<number>(values.length);
  for (let i = 0; i < order.length;) {
    let end = i;
    while (end + 1 < order.length && values[order[end + 1]] === values[order[i]]) end++;
    for (let j = i; j <= end; j++) out[order[j]] = 0.5 * (i + end);
    i = end + 1;
  }
  return out;
}

/** Cases needed for each input before a regression says anything. */
const CASES_AN_INPUT = 3;

/**
 * Standardised rank regression coefficients: results and inputs replaced by their ranks, scaled to zero mean and unit
 * variance, and the first regressed linearly on the second. With inputs drawn independently the square of a coefficient
 * is the share of the result's (rank) variance that its input makes; chance correlations between inputs are taken out.
 *
 * @param inputs one list an input, as long as the results
 * @returns one coefficient an input, -1..1 about; empty with fewer than three cases an input; all 0 when the results
 * don't vary
 * Reference: Iman & Conover (1979), Technometrics 21, 499.
 */
export function rankRegression(inputs: readonly (readonly number[])[], results: readonly number[]): number[] {
  const [cases, count] = [results.length, inputs.length];
  if (count === 0 || cases < CASES_AN_INPUT * count) return [];
  const y = standardised(ranks(results));
  const x = inputs.map((values) => standardised(ranks(values)));
  const solver = new LuSolver(count);
  const product = (a: number[], b: number[]) => a.reduce((sum, value, i) => sum + value * b[i], 0) / cases;
  for (let i = 0; i < count; i++) for (let j = 0; j < count; j++) solver.matrix[i * count + j] = product(x[i], x[j]);
  const coefficients = Float64Array.from(x, (each) => product(each, y));
  if (!solver.factor()) return [];
  solver.solve(coefficients);
  return [...coefficients];
}

/** Zero mean, unit variance; all 0 when the values are equal. */
function standardised(values: number[]): number[] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const deviation = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
  return values.map((value) => (deviation > 0 ? (value - mean) / deviation : 0));
}
