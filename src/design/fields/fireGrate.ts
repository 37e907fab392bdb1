/** What the wood burns on, and the way in to the ash under it. */
import { range } from '../ranges.js';
import { block, optional } from './blocks.js';
import { choice, quantity } from './field.js';
import { HEIGHT, plate, SHARE } from './shared.js';

export const fireGrate = optional(
  block('Grate that the wood burns on. Ash space and air below it are as cold as the air that comes in there.', {
    height: quantity(range('length', '1 in', '4 ft'), 'Height of the grate above the firebox’s inside floor.', {
      examples: ['6 in'],
    }),
    bars: quantity(range('length', '1/8 in', '2 in'), 'Thickness of its square bars.', { default: '1/2 in' }),
    apart: quantity(range('length', '1/8 in', '4 in'), 'Clear space between them.', { default: '1/2 in' }),
    mass: optional(
      quantity(range('mass', '0.1 lb', '1000 lb'), 'Its weight. Default: that of such bars over the whole firebox.'),
    ),
    steel: choice(['carbon', 'stainless'], 'Steel of the grate.', { default: 'carbon' }),
  }),
);

const SIDE = range('length', '1 in', '4 ft');

export const ashDoor = optional(
  block('Door of the ash space under the grate. Open it is a vent: its air goes up through the grate.', {
    width: quantity(SIDE, 'Width of its hole.'),
    height: quantity(SIDE, 'Height of that hole.'),
    centre: optional(
      quantity(HEIGHT, 'Height of its middle above the ground. Default: midway from the floor to the grate.', {
        examples: ['20 in'],
      }),
    ),
    open: quantity(SHARE, 'Share of it that stands open.', { default: '0 %' }),
    gap: quantity(range('area', '0 in^2', '20 in^2'), 'Leak area round it when shut.', {
      default: '0.3 in^2',
      guess: true,
    }),
    plate: plate('Plate of its leaf.', {
      default: (_, around) => around.plate as number,
      says: 'the firebox’s plate',
    }),
    lap: quantity(range('length', '0 in', '4 in'), 'By how much the leaf laps over on each side.', {
      default: '1/2 in',
    }),
  }),
);
