import { describe, it } from 'vitest';
import { shopDesign } from '../design/shopDesign.js';
import { soaks, sweepFailures } from './sweeps.js';
import { Findings, LONG_RUN } from './telling.js';

const DESIGNS = LONG_RUN ? 60 : 2;

/** Seeds whose designs soak, so that their sweeps say something; the layouts take turns. */
function* soaking(): Generator<number> {
  for (let seed = 3000; ; seed++) if (soaks(shopDesign(seed))) yield seed;
}

describe('one field in steps, all else as it is', () => {
  const seeds = soaking();
  for (let i = 0; i < DESIGNS; i++) {
    it(`design ${i + 1}`, { timeout: 240_000 }, () => {
      const seed = seeds.next().value as number;
      const findings = new Findings();
      const tree = shopDesign(seed);
      findings.add(seed, tree, sweepFailures(tree));
      findings.tell();
    });
  }
});
