import { readDesign } from '../../../src/design/read.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { shopDesign } from '../../design/shopDesign.js';

export const DAY = 24 * 3600;

/** A random shop design, its estimate, and what that says where the target is not reached. */
export function lit(seed: number) {
  const { design } = readDesign(JSON.stringify(shopDesign(seed)), { fileName: `seed ${seed}` });
  const result = estimate(design!);
  return { design: design!, result, told: result.warnings.find(({ code }) => code === 'target-not-reached') };
}
