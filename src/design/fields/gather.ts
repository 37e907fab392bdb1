/** A box that gathers gas before a stack. */
import { range } from '../ranges.js';
import { block, optional } from './blocks.js';
import { quantity } from './field.js';
import { HEIGHT, plate } from './shared.js';

const SIDE = range('length', '2 in', '6 ft');

export const gather = optional(
  block('A box between part and tube that gathers gas: on the side or end of its part, or on its roof. Bare steel.', {
    width: quantity(SIDE, 'Outside width along the wall that it stands on.'),
    depth: quantity(SIDE, 'How far it stands out from that wall; on a roof its other side.'),
    height: quantity(SIDE, 'Outside height. Its roof is where the stack begins.'),
    plate: plate('Plate of the box.', {
      default: (_, around) => around.wall as number,
      says: 'the stack’s wall',
    }),
    mouth: quantity(range('area', '2 in^2', '10 ft^2'), 'Free area of its mouth into the part.', {
      examples: ['60 in^2'],
    }),
    centre: optional(
      quantity(HEIGHT, 'Height of the mouth’s middle above the ground. Default: the box’s own middle.', {
        examples: ['40 in'],
      }),
    ),
    loss: optional(
      quantity(
        range('number', '0.02', '50'),
        'Loss coefficient of the mouth. Default: a sharp entrance and a jet that spreads over the box.',
      ),
    ),
  }),
);
