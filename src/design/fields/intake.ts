/** Air intakes of the firebox: dials, slides and plain openings, by their sizes or their area. */
import { range } from '../ranges.js';
import type { Fields } from '../reading.js';
import { block, optional, readRows } from './blocks.js';
import { choice, count, factor, quantity } from './field.js';
import { height, SHARE } from './shared.js';

const VENT_SIDE = range('length', '1/4 in', '4 ft');

const INTAKE = {
  kind: choice(['disc', 'slide', 'pipe'], 'Kind of vent; a dial is a disc.', {
    default: 'disc',
    also: { dial: 'disc' },
  }),
  count: count('vents', range('number', '1', '24'), 'How many of them.', {
    default: '1',
    print: { bare: true },
    slider: { label: ['Vents, how many', 'Vents #, how many'], steps: [1, 8, 1] },
  }),
  diameter: optional(
    quantity(VENT_SIDE, 'Diameter of one vent’s opening.', {
      slider: { label: ['Vent diameter', 'Vent # diameter'], steps: [1, 12, 0.25] },
    }),
  ),
  width: optional(
    quantity(VENT_SIDE, 'Width of one vent’s opening.', {
      slider: { label: ['Vent width', 'Vent # width'], steps: [1, 12, 0.25] },
    }),
  ),
  height: optional(
    quantity(VENT_SIDE, 'Height of one vent’s opening.', {
      slider: { label: ['Vent height', 'Vent # height'], steps: [1, 12, 0.25] },
    }),
  ),
  area: optional(
    quantity(range('area', '0.05 in^2', '10 ft^2'), 'Full open area of one vent.', {
      slider: { label: ['Vent area', 'Vent # area'], steps: [1, 120, 1] },
    }),
  ),
  open: quantity(SHARE, 'Open share.', {
    default: '100 %',
    slider: { label: ['Vents open', 'Vents # open'], steps: [0, 100, 1] },
  }),
  centre: height('Height of its middle above the ground.', ['Middle of the vents', 'Middle of vents #']),
  discharge: discharge('of the intakes'),
};

/** Discharge coefficient, an unknown. */
export function discharge(of: string) {
  const unknown = { kind: 'discharge', label: `discharge ${of}` } as const;
  return factor(
    range('number', '0.2', '1'),
    'Discharge coefficient.',
    { default: '0.62', guess: '0.55-0.70' },
    unknown,
  );
}

export const intake = block(
  'Air intake: give diameter, or width and height, or area of one vent.',
  INTAKE,
  (fields, around) => {
    const sizes = { diameter: undefined, width: undefined, height: undefined };
    const many = INTAKE.count.read(fields, 'count', {}, around);
    return readRows(INTAKE, fields, around, { ...sizes, count: many, area: ventArea(fields) });
  },
);

/** Full open area of one vent, from the one set of sizes that is given. */
function ventArea(intake: Fields): number {
  const given = [
    intake.has('diameter') && 'diameter',
    (intake.has('width') || intake.has('height')) && 'width and height',
    intake.has('area') && 'area',
  ].filter((each): each is string => typeof each === 'string');
  if (given.length !== 1) {
    intake.reading.fault(intake.path, {
      code: given.length === 0 ? 'missing' : 'cannot-be-built',
      message: given.length === 0 ? 'has no size' : `has two sizes: ${given.join(', ')}`,
      allowed: 'diameter, or width and height, or area',
      lacks: ['diameter', 'width', 'height', 'area'].map((key) => [...intake.path, key]),
      value: null,
    });
    return NaN;
  }
  if (given[0] === 'area') return intake.required('area', INTAKE.area.row!.range);
  if (given[0] === 'diameter') {
    const read = intake.read('diameter', VENT_SIDE, { pipe: true });
    if (read?.pipe && read.pipe.wall === undefined) {
      intake.fault('diameter', {
        message: 'names a pipe without its wall, so that its bore is not known',
        allowed: `${read.pipe.nominal} in pipe, standard wall`,
      });
    }
    const bore = (read?.si ?? NaN) - 2 * (read?.pipe?.wall ?? 0);
    return (Math.PI / 4) * bore ** 2;
  }
  for (const key of ['width', 'height']) {
    if (!intake.has(key)) {
      intake.fault(key, {
        code: 'missing',
        message: 'is missing: a slide needs width and height',
        allowed: 'a length (3 in)',
        value: null,
      });
    }
  }
  return intake.required('width', VENT_SIDE) * intake.required('height', VENT_SIDE);
}
