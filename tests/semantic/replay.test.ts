import { describe, it } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { shopDesign } from '../design/shopDesign.js';
import { LONG } from './checks.js';
import { compared, replay } from './replay.js';
import { Findings, LONG_RUN } from './telling.js';

const DESIGNS = LONG_RUN ? 240 : 8;
const BATCH = 8;
const FIRST = 5000;

describe('a warm-up stepped once more by another way', () => {
  for (let from = FIRST; from < FIRST + DESIGNS; from += BATCH) {
    it(`designs ${from} to ${from + BATCH - 1}`, { timeout: 240_000 }, () => {
      const findings = new Findings();
      for (let seed = from; seed < from + BATCH; seed++) {
        const tree = shopDesign(seed);
        const { design } = readDesign(JSON.stringify(tree), { fileName: `seed ${seed}` });
        const { warmUp } = estimate(design!, { until: LONG });
        if (warmUp?.gauge_s == null || warmUp.soaked_s === null) continue;
        const again = replay(design!, warmUp, LONG - warmUp.gauge_s);
        findings.add(
          seed,
          tree,
          again ? compared(warmUp, design!.fire.target, again) : [{ kind: 'no replay', detail: '' }],
        );
      }
      findings.tell();
    });
  }
});
