/** The wall of a part or a stack, from its plate or its pipe, and the size that its shape takes. */
import { format } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { PLATE, type Range } from '../ranges.js';
import type { Fields, QuantityRead } from '../reading.js';
import { pathText } from '../path.js';

/** Walls of two ways to write them that differ by no more than this share are the same: 9/16 in and 0.562 in. */
const SAME_WALL = 0.01;

/**
 * Thickness from the part's own field, or from the wall of the pipe that its diameter names. NaN where neither says.
 */
export function wallOf(part: Fields, key: 'plate' | 'wall', diameter: QuantityRead | undefined): number {
  const pipeWall = diameter?.pipe?.wall;
  if (part.has(key)) {
    const own = part.required(key, PLATE);
    if (pipeWall !== undefined && Math.abs(own - pipeWall) > SAME_WALL * pipeWall) {
      const path = [...part.path, key];
      part.reading.warnings.push({
        code: 'wall-not-of-pipe',
        message: `${format('plate', own)} is taken, and not the ${format('plate', pipeWall)} wall of the pipe that the diameter names: leave one of them out`,
        where: pathText(path),
        value: own,
        limits: { low: pipeWall, high: pipeWall, unit: 'm' },
      });
    }
    return own;
  }
  if (pipeWall !== undefined) return pipeWall;
  if (diameter) {
    const [what, pipe] = key === 'plate' ? ['plate thickness', '24 in'] : ['wall', '6 in'];
    part.fault(key, {
      code: 'missing',
      message: 'is missing',
      allowed: `a ${what} (1/4 in, 11 ga, 6 mm), or a diameter that names a pipe with its wall (${pipe} pipe, standard wall)`,
      value: null,
    });
  }
  return NaN;
}

interface Shaped {
  shape: 'round' | 'square';
  /** false where the file names another shape, which is a fault by itself */
  known: boolean;
  what: 'part' | 'stack';
  /** what a square one has beside its width */
  second: 'height' | 'depth';
}

/** Diameter or width, whichever the shape takes; the other is a fault. */
export function mainSize(
  fields: Fields,
  range: Range,
  { shape, known, what, second }: Shaped,
): QuantityRead | undefined {
  const sizes = { round: ['diameter'], square: ['width', second] };
  const wanted = sizes[shape];
  for (const key of sizes[shape === 'round' ? 'square' : 'round']) {
    if (known && fields.has(key)) {
      fields.fault(key, {
        code: 'unknown-key',
        message: `does not belong to a ${shape} ${what}`,
        allowed: listed(wanted),
        atKey: true,
      });
    }
  }
  if (known && !fields.has(wanted[0])) {
    fields.fault(wanted[0], {
      code: 'missing',
      message: `is missing: a ${shape} ${what} needs it`,
      allowed: `a length (${what === 'part' ? '24 in' : '6 in'})`,
      value: null,
    });
  }
  return fields.read(wanted[0], range, { pipe: shape === 'round' });
}
