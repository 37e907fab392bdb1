import { readDesign } from '../../src/design/read.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { shopDesign } from '../design/shopDesign.js';
import { LONG } from './checks.js';
import { compared, replay } from './replay.js';
import { Findings } from './telling.js';

/** The first seed, how many the everyday tests replay, and how many there are. */
export const FIRST = 5000;
export const EVERYDAY = 1;
export const ALL = 240;

/** Steps the warm-ups of random designs once more by another way and holds both against each other. */
export function replayAll(seeds: readonly number[]): void {
  const findings = new Findings();
  for (const seed of seeds) {
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
}
