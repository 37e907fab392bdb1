/** Can what is asked of a size be had at all: something to choose, and a stack between its bounds. */
import { length } from './faults.js';
import type { Design } from './design.js';
import { KEPT } from './fields/size.js';
import type { Reading } from './reading.js';
import type { Path } from './path.js';
import { stackLengths } from './stackBounds.js';

/** Shortest piece of tube that makes a stack [m]: 1 in. */
const SHORTEST = 0.0254;

export function checkSize(design: Design, reading: Reading): void {
  const { size } = design;
  if (!size) return;
  const { keep, stack, onHand } = size;
  const asked = reading.at(['size']);
  if (keep.length === KEPT.length) {
    reading.fault(['size', 'keep'], {
      message: 'keeps all there is to choose',
      allowed: 'one or two of intakes, throat, stack',
      example: 'keep: [intakes]',
    });
  } else if (keep.includes('stack')) {
    for (const key of ['stack', 'onHand'] as const) {
      if (!asked.has(key)) continue;
      reading.fault(['size', key], {
        message: 'chooses among stacks, and size.keep keeps the one that is drawn',
        allowed: 'left out, or without stack in keep',
        value: null,
        atKey: true,
      });
    }
    return;
  }
  checkBounds(design, reading);
  const shapes = stack?.shapes;
  if (shapes && onHand && onHand.length > 0 && !onHand.some((each) => shapes.includes(each.size.shape ?? 'round'))) {
    reading.fault(['size', 'stack', 'shapes'], {
      message: `leaves none of what is on hand`,
      allowed: shapes.includes('round') ? 'square' : 'round',
      value: null,
    });
  }
}

function checkBounds(design: Design, reading: Reading): void {
  const stack = design.size?.stack;
  if (!stack) return;
  const { least, most } = stack;
  const at: Path = ['size', 'stack'];
  if (least !== undefined && most !== undefined && least > most) {
    reading.fault([...at, 'least'], {
      message: `is more than the most, ${length(most)}`,
      allowed: `up to ${length(most)}`,
    });
    return;
  }
  if (design.stacks.some(({ part }) => !design[part])) return;
  const lengths = stackLengths(design);
  if (lengths.most < SHORTEST) {
    reading.fault([...at, 'most'], {
      message: `ends the stack below its foot, at ${length(Math.max(...design.stacks.map(({ base }) => base)))} above the ground`,
      allowed: `at least ${length(most! + SHORTEST - lengths.most)}`,
    });
  }
}
