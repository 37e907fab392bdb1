import { cooked } from '../../../src/study/events/cooked.js';
import { readDesign } from '../../../src/design/read.js';
import { readSource } from '../../../src/design/source.js';
import type { Tree } from '../../../src/design/vary.js';
import { withFullFire } from '../../../src/study/air/burnsItsAir.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import type { EstimateResult } from '../../../src/study/estimate/result.js';
import { treeWith } from '../../../src/study/size/candidate.js';
import { findSizes } from '../../../src/study/size/find.js';
import type { SizeResult } from '../../../src/study/size/size.js';

export function treeOf(text: string): Tree {
  const source = readSource(text, 'pit.yaml');
  if (!('tree' in source)) throw new Error('the file has no tree');
  return source.tree as Tree;
}

/** A file's tree with its full fire in it, and what sizes are found for it. */
export async function sizesFor(text: string): Promise<{ tree: Tree; result: SizeResult }> {
  const read = readDesign(text, { fileName: 'pit.yaml' });
  if (read.faults) throw new Error(JSON.stringify(read.faults));
  const design = withFullFire(read.design);
  const file = treeOf(text);
  const tree = { ...file, fire: { ...(file.fire as Tree), heat: `${design.fire.heat} W` } };
  return { tree, result: await findSizes({ design, warnings: [], tree, settings: { cleanAir: 2.5 } }) };
}

/** The chosen size written into its file, and that read and estimated as a builder would. */
export function fedBack(tree: Tree, { choices, chosen }: SizeResult): { text: string; estimated: EstimateResult } {
  const text = JSON.stringify(treeWith(tree, choices[chosen!].fields));
  const read = readDesign(text, { fileName: 'pit.yaml' });
  if (read.faults) throw new Error(JSON.stringify(read.faults));
  return { text, estimated: estimate(read.design, { further: cooked }) };
}
