import { readFileSync } from 'node:fs';
import { parseVariation, type Variation } from '../../../src/design/vary.js';
import { type Comparison } from '../../../src/study/compare/compare.js';
import type { Equal } from '../../../src/study/compare/equalShape.js';
import { optionsOf, type OptionRead } from '../../../src/study/compare/options.js';
import { distinctLabels } from '../../../src/study/compare/distinctLabels.js';

export const PLAIN = readFileSync('examples/plain-24.yaml', 'utf8');

export async function options(vary: string[], equal?: Equal, text = PLAIN): Promise<OptionRead[]> {
  const made = await optionsOf(
    text,
    'pit.yaml',
    vary.map((each) => parseVariation(each) as Variation),
    equal,
  );
  if ('faults' in made) throw new Error(made.faults.join('\n'));
  return distinctLabels(made);
}
export const of = (comparison: Comparison, option: number, key: string) =>
  comparison.options[option].differences.find((each) => each.key === key)!;
