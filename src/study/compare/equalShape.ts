import type { Design, HorizontalPart } from '../../design/design.js';
import { geometryOf } from '../../design/geometryOf.js';
import { bracketedRoot } from '../../solve/root.js';

/** What stays as it is when a part changes its shape; its plate, its middle and the length do in any case. */
export type Equal = 'volume' | 'length' | 'weight';

/** How far the size across may go from what it was. */
const [SMALLEST, LARGEST] = [0.4, 2.5];

/**
 * Size across of a part in its other shape [m]: the diameter when it becomes round, width and height when it becomes
 * square.
 *
 * length: the same size across (that of its width); volume: the same gas volume; weight: the same steel, openings and
 * what it shares with its neighbour counted.
 *
 * @param design as drawn, with the part in its first shape
 * @returns null: no size gives that weight or volume
 */
export function sizeInShape(
  design: Design,
  name: 'firebox' | 'chamber',
  shape: HorizontalPart['shape'],
  equal: Equal,
): number | null {
  const drawn = design[name]!;
  if (equal === 'length') return drawn.width;
  const amount = (of: Design): number => {
    const part = geometryOf(of).parts.find((each) => each.name === name)!;
    return equal === 'volume' ? part.gasVolume : part.steelMass;
  };
  const wanted = amount(design);
  const off = (size: number): number =>
    amount({ ...design, [name]: { ...drawn, shape, width: size, height: size } }) - wanted;
  const across = Math.sqrt(drawn.width * drawn.height);
  const [low, high] = [Math.max(SMALLEST * across, 2.2 * drawn.plate), LARGEST * across];
  const [fLow, fHigh] = [off(low), off(high)];
  if (!(fLow < 0 && fHigh > 0)) return null;
  return bracketedRoot(off, { low, high, fLow, fHigh, tolerance: 1e-10 * across }).root;
}
