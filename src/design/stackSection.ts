/** A stack cut across, and where its damper sits. */
import type { Stack } from './design.js';

/** Height of a stack's damper above the ground [m]. */
export function damperHeight({ damperAt, base, height }: Stack): number {
  if (typeof damperAt === 'number') return damperAt;
  return damperAt === 'base' ? base : base + height;
}

/** A cut across a stack [m], [m2]; along is along the pit. */
interface StackSection {
  round: boolean;
  across: number;
  along: number;
  girth: number;
  area: number;
}

/**
 * Outside of a stack.
 *
 * @param by how far outside of it, negative inside [m]
 */
export function stackSection({ diameter, width = NaN, depth = width }: Stack, by = 0): StackSection {
  if (diameter !== undefined) {
    const d = diameter + 2 * by;
    return { round: true, across: d, along: d, girth: Math.PI * d, area: (Math.PI / 4) * d ** 2 };
  }
  const [across, along] = [width + 2 * by, depth + 2 * by];
  return { round: false, across, along, girth: 2 * (across + along), area: across * along };
}
