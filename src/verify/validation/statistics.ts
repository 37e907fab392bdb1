/**
 * Bias and scatter of computed over measured values, as the fire-model community reports them.
 *
 * With M computed and E measured, ln(M/E) has the mean m and the variance s^2 = sigma_M^2 + sigma_E^2, where sigma_E is
 * the relative standard deviation of the experiment and sigma_M that of the model about its own bias
 *
 *   delta = exp(m + sigma_M^2/2 - sigma_E^2/2).
 *
 * No comparison can show a model to be more exact than the experiment, so sigma_M is never given below sigma_E. The
 * expansion behind delta holds for deviations below about 0.5; above that only the mean ratio exp(m) is given.
 *
 * Reference: McGrattan & Toman (2011), Metrologia 48, 173 (volume and page from memory).
 */
export interface Pair {
  measured: number;
  computed: number;
  /** pairs of one group repeat one case: together they weigh as one */
  group: string;
}

/** Bias and scatter of pairs, as McGrattan & Toman (2011) define them. */
export interface Statistics {
  /** pairs, and distinct cases among them */
  n: number;
  cases: number;
  /** delta; below 1 the model gives too little; null where the scatter is too wide for it */
  bias: number | null;
  /** exp(m) */
  meanRatio: number;
  /** sigma_M, sigma_E and s */
  modelDeviation: number;
  experimentDeviation: number;
  scatter: number;
  /** pairs whose ratio is within 20 % */
  withinFifth: number;
}

/** Scatter above which a bias factor has no meaning. */
const WIDEST = 0.5;

/**
 * @param pairs with positive values
 * @param experimentDeviation relative standard deviation of the experiment
 * @returns null when fewer than two cases are left
 * @throws RangeError when a value is not positive
 */
export function statistics(pairs: readonly Pair[], experimentDeviation: number): Statistics | null {
  const members = new Map<string, number>();
  for (const { group } of pairs) members.set(group, (members.get(group) ?? 0) + 1);
  const cases = members.size;
  if (cases < 2) return null;
  const terms = pairs.map(({ measured, computed, group }) => {
    if (!(measured > 0 && computed > 0)) throw new RangeError(`${computed}/${measured} has no logarithm`);
    return { log: Math.log(computed / measured), weight: 1 / members.get(group)! };
  });
  const mean = terms.reduce((sum, { log, weight }) => sum + weight * log, 0) / cases;
  const variance = terms.reduce((sum, { log, weight }) => sum + weight * (log - mean) ** 2, 0) / (cases - 1);
  const own = Math.max(variance - experimentDeviation ** 2, experimentDeviation ** 2);
  return {
    n: pairs.length,
    cases,
    bias: variance > WIDEST ** 2 ? null : Math.exp(mean + (own - experimentDeviation ** 2) / 2),
    meanRatio: Math.exp(mean),
    modelDeviation: Math.sqrt(own),
    experimentDeviation,
    scatter: Math.sqrt(variance),
    withinFifth: pairs.filter(({ measured, computed }) => Math.abs(computed / measured - 1) <= 0.2).length,
  };
}
