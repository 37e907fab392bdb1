import { readDesign } from '../../src/design/read.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { shopDesign } from '../design/shopDesign.js';
import { failuresOf, LONG } from './checks.js';
import { Findings } from './telling.js';

/** Random designs that everyday tests ask, those that the long tests ask whatever their share, and all. */
export const EVERYDAY = 10;
export const ALWAYS = 200;
export const ALL = 2000;

/** Holds the estimates of random designs against what they must mean. */
export function askEstimates(seeds: readonly number[]): void {
  const findings = new Findings();
  for (const seed of seeds) {
    const tree = shopDesign(seed);
    const { design } = readDesign(JSON.stringify(tree), { fileName: `seed ${seed}` });
    findings.add(seed, tree, failuresOf(estimate(design!, { until: LONG })));
  }
  findings.tell();
}
