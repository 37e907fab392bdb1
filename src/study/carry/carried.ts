import { geometryOf } from '../../design/geometryOf.js';
import type { EstimateResult } from '../estimate/result.js';
import { handsOf } from './touch.js';
import { weightOf, weightWarnings } from './weight.js';

/** What hands find and what a trailer carries, added to a result whose design names handles, a trailer or loads. */
export function withHandsAndWeight(result: EstimateResult): EstimateResult {
  const { design } = result;
  const hands = handsOf(design, result);
  if (hands) result.hands = hands;
  if (design.trailer || design.loads) {
    result.weight = weightOf(design, geometryOf(design));
    result.warnings.push(...weightWarnings(result.weight, design));
  }
  return result;
}
