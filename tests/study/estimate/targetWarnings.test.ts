import { expect, it } from 'vitest';
import { readDesign } from '../../../src/design/read.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { formatBoth, inWords } from '../../../src/units/index.js';
import { shopDesign } from '../../design/shopDesign.js';

it('a full fire that comes to burn less than what holds the target is told with both', () => {
  // back-drafts through two stacks: lit cold it reads its target, and kept on gas goes over to another way
  const { design } = readDesign(JSON.stringify(shopDesign(1819)), { fileName: 'two stacks' });
  const { assumed, steady, warmUp, warnings } = estimate(design!);
  expect(warmUp!.gauge_s).not.toBeNull();
  expect(steady!.fire_W).toBeGreaterThan(assumed!.fire_W);
  const told = warnings.filter(({ code }) => code === 'full-fire-falls-off');
  expect(told).toHaveLength(1);
  for (const { fire_W } of [assumed!, steady!]) expect(inWords(told[0].message)).toContain(formatBoth('power', fire_W));
});
