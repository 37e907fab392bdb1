import { describe, it } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { shopDesign } from '../design/shopDesign.js';
import { failuresOf, LONG } from './checks.js';
import { Findings, LONG_RUN } from './telling.js';

const DESIGNS = LONG_RUN ? 2000 : 200;
const BATCH = 25;

describe('what an estimate says of random designs means what it says', () => {
  for (let from = 0; from < DESIGNS; from += BATCH) {
    it(`designs ${from} to ${from + BATCH - 1}`, { timeout: 240_000 }, () => {
      const findings = new Findings();
      for (let seed = from; seed < from + BATCH; seed++) {
        const tree = shopDesign(seed);
        const { design } = readDesign(JSON.stringify(tree), { fileName: `seed ${seed}` });
        findings.add(seed, tree, failuresOf(estimate(design!, { until: LONG })));
      }
      findings.tell();
    });
  }
});
