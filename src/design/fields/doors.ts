/** Doors of a part: one, or several with a gap each. */
import { range } from '../ranges.js';
import type { Fields } from '../reading.js';
import type { PartName } from '../stations.js';
import { block, list, optional } from './blocks.js';
import { quantity, text } from './field.js';
import { ownInsulation } from './cover.js';
import { HEIGHT, plate, SHARE } from './shared.js';

/** What a door's gaps may come to. */
export const LEAK = range('area', '0 in^2', '50 in^2');
const DOOR_SIDE = range('length', '2 in', '10 ft');

const DOOR = {
  width: quantity(DOOR_SIDE, 'Width of the hole cut into the shell.'),
  height: quantity(DOOR_SIDE, 'Height of that hole, along the shell.'),
  plate: plate('Plate of the door leaf.', {
    default: (_, around) => around.plate as number,
    says: 'the part’s plate',
  }),
  lap: quantity(range('length', '0 in', '4 in'), 'By how much the leaf laps over on each side.', {
    default: '1/2 in',
  }),
  insulation: ownInsulation('the leaf'),
};

export const door = block('Door; without one the shell counts as whole.', DOOR);

/** Doors of a part that has more than one. */
export const several = (name: PartName) =>
  list(
    block('One of several doors.', {
      name: text('What the cook calls it: left, ash, upper.'),
      ...DOOR,
      ...(name === 'chamber'
        ? {
            along: optional(
              quantity(SHARE, 'Middle along the chamber, from the fire end. Default: side by side.', {
                examples: ['25 %'],
              }),
            ),
          }
        : {}),
      centre: optional(
        quantity(
          HEIGHT,
          `Height of its middle above the ground. Default: ${name === 'chamber' ? 'the chamber’s' : 'over each other'}.`,
          { examples: ['40 in'] },
        ),
      ),
      gap: quantity(LEAK, 'Leak area round it (estimate). Default: its share of doorGap by its rim.', {
        default: () => NaN,
      }),
    }),
    0,
    6,
    'Doors, in place of door, where there are several, each with a gap of its own.',
  );

/**
 * Leaks of several doors: a door without one takes its share of the part's by its rim, and the part's becomes what all
 * come to.
 */
export function withDoors<
  T extends { doorGap: number; doors?: { name: string; width: number; height: number; gap: number }[]; door?: unknown },
>(fields: Fields, part: T): T {
  const { doors = [], doorGap } = part;
  if (doors.length === 0) return part;
  if (part.door !== undefined) {
    fields.fault('door', {
      message: 'is one door beside a list of doors',
      allowed: 'one of the two',
      example: SEVERAL_DOORS,
      atKey: true,
    });
  }
  doors.forEach(({ name }, i) => {
    const twin = doors.findIndex((each) => each.name === name);
    if (name.trim() !== '' && twin === i) return;
    fields.reading.fault([...fields.path, 'doors', i, 'name'], {
      message: name.trim() === '' ? 'is empty' : `is already the name of door ${twin + 1}`,
      allowed: 'a name of its own',
      example: 'left',
      value: name.trim() === '' ? null : undefined,
    });
  });
  const given = fields.list('doors').map((each) => each.has('gap'));
  if (given.every(Boolean)) {
    if (fields.has('doorGap')) {
      fields.fault('doorGap', {
        message: 'is given beside a gap of every door',
        allowed: 'the gaps of the doors, or doorGap for all of them',
      });
    }
    fields.reading.undefaulted([...fields.path, 'doorGap']);
  }
  const rim = ({ width, height }: { width: number; height: number }) => width + height;
  const whole = doors.reduce((sum, each) => sum + rim(each), 0);
  const gaps = doors.map((each, i) => (given[i] ? each.gap : (doorGap * rim(each)) / whole));
  return {
    ...part,
    doors: doors.map((each, i) => ({ ...each, gap: gaps[i] })),
    doorGap: gaps.reduce((sum, gap) => sum + gap, 0),
  };
}

const SEVERAL_DOORS =
  'doors: [{ name: left, width: 24 in, height: 14 in }, { name: right, width: 24 in, height: 14 in }]';
