/** Firebox, chamber and upright, and what hangs on them: doors, insulation, finishes, vents, contents. */
import { format } from '../../units/index.js';
import { DEFAULT_FINISH, FINISHES, INSULATION_ALIASES, INSULATIONS } from '../catalog/index.js';
import { PLATE, range, type Range } from '../ranges.js';
import type { Fields, QuantityRead } from '../reading.js';
import { pathText } from '../source.js';
import type { PartName } from '../stations.js';
import {
  block,
  choice,
  count,
  list,
  maybe,
  optional,
  quantity,
  readRows,
  text,
  usual,
  where,
  type Slider,
  type Soft,
} from './field.js';
import { area, EMISSIVITY, height, mass, plate, SHARE, station, steel } from './shared.js';

const SECTION = range('length', '6 in', '6 ft');
const SECTION_EXAMPLES = ['24 in', '20 in pipe, standard wall', '610 mm'];
const OPENING = range('area', '1 in^2', '25 ft^2');
const DOOR_SIDE = range('length', '2 in', '10 ft');
const VENT_SIDE = range('length', '1/4 in', '4 ft');

const across = (label: string): Slider => ({ label, steps: [12, 48, 0.5] });

const INSULATION = {
  material: choice(Object.keys(INSULATIONS), 'Insulation material.', {
    also: INSULATION_ALIASES,
    offer: { label: 'Insulation of', names: Object.keys(INSULATIONS) },
  }),
  thickness: quantity(range('length', '0 in', '12 in'), 'Thickness; 0 in equals no insulation.', {
    slider: { label: 'Insulation', steps: [0, 6, 0.5] },
  }),
  skin: quantity(range('plate', '0 mm', '1/4 in'), 'Outer steel skin.', { default: '0 mm', says: 'none' }),
  skinSteel: maybe(
    ['carbon', 'stainless'],
    'Steel of the skin; it says which gauge table is meant. Default: the steel of what it wraps.',
  ),
};

export const insulation = optional(
  block('Insulation on the outside, with an outer steel skin if any.', INSULATION, (fields, around) => {
    const own = readRows(INSULATION, fields, around);
    const { material } = own;
    const row = INSULATIONS[material];
    if (row.knownTo < 400) {
      fields.reading.warnings.push({
        code: 'insulation-hot-values-estimated',
        message: `The heat flow through hot ${material} is an estimate: no hot values were found in print. Ceramic fibre has them.`,
        where: fields.path.join('.'),
        value: null,
        limits: { high: row.knownTo, unit: 'K', source: row.source },
      });
    }
    return own;
  }),
);

/** Finish and emissivity of an outside, by what it is of. */
export const surface = (of: string) => ({
  finish: choice(Object.keys(FINISHES), 'Outside finish; it sets the emissivity and, for paint, a limit.', {
    default: DEFAULT_FINISH,
  }),
  emissivity: quantity(EMISSIVITY, 'Outside emissivity, instead of the finish’s.', {
    default: ({ finish }) => FINISHES[finish as string].emissivity,
    print: { bare: true },
    unknown: { kind: 'outside', label: `emissivity outside, ${of}` },
  }),
});

const door = block('Door; without one the shell counts as whole.', {
  width: quantity(DOOR_SIDE, 'Width of the hole cut into the shell.'),
  height: quantity(DOOR_SIDE, 'Height of that hole, along the shell.'),
  plate: plate('Plate of the door leaf.', {
    default: (_, around) => around.plate as number,
    says: 'the part’s plate',
  }),
  lap: quantity(range('length', '0 in', '4 in'), 'By how much the leaf laps over on each side.', {
    default: '1/2 in',
  }),
});

const content = block('A body inside the part: grates, racks, baffle, water pan, food.', {
  name: text('What it is: racks, water pan, food.'),
  material: choice(['steel', 'stainless', 'water', 'food'], 'What it is made of.', { default: 'steel' }),
  mass: mass(),
  area: area('Surface that sees gas and walls, both sides.'),
  station: station('Where it stands. Default: spread over the part.'),
});

/** Fields that every part has. */
const partRows = (name: PartName, gap: string) => ({
  plate: optional(
    plate('Plate thickness; may be left out when the diameter names a pipe with its wall.', {
      slider: { label: 'Plate' },
    }),
  ),
  steel: steel('Steel of plate, door and reverse-flow plate; it says which gauge table is meant.'),
  centre: quantity(range('length', '4 in', '15 ft'), 'Height of its middle above the ground.', {
    slider: { label: `Middle of the ${name}`, steps: [4, 120, 0.5], height: true },
  }),
  doorGap: quantity(range('area', '0 in^2', '50 in^2'), 'Total leak area round its doors (estimate).', {
    default: gap,
    says: '',
    unknown: { kind: 'doorGap', label: `gap of the ${name} door` },
  }),
  door: optional(door),
  insulation,
  ...surface(name),
  contents: usual(list(content, 0, 50)),
});

const round = ({ shape }: Soft) => shape === 'round';
const square = ({ shape }: Soft) => shape === 'square';

const horizontalRows = (name: 'firebox' | 'chamber', gap: string, longest: number) => ({
  shape: choice(['round', 'square'], 'round takes diameter; square takes width, and height if it differs.', {
    offer: { label: 'Shape', names: ['round', 'square'] },
  }),
  diameter: where(
    round,
    optional(
      quantity(SECTION, 'Outside diameter, or a pipe by its nominal size.', {
        examples: SECTION_EXAMPLES,
        pipe: true,
        slider: across('Diameter'),
      }),
    ),
  ),
  width: where(
    square,
    optional(
      quantity(SECTION, 'Outside width of a square part.', { examples: SECTION_EXAMPLES, slider: across('Width') }),
    ),
  ),
  height: where(
    square,
    quantity(SECTION, 'Outside height of a square part.', {
      default: ({ width }) => width as number,
      says: 'its width',
      examples: SECTION_EXAMPLES,
      slider: across('Height'),
    }),
  ),
  length: quantity(range('length', '6 in', '20 ft'), 'Outside length.', {
    slider: { label: 'Length', steps: [12, longest, 1] },
  }),
  ...partRows(name, gap),
});

/** Walls of two ways to write them that differ by no more than this share are the same: 9/16 in and 0.562 in. */
const SAME_WALL = 0.01;

/** Thickness from the part's own field, or from the wall of the pipe that its diameter names. NaN where neither says. */
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
        allowed: wanted.join(' and '),
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

/** Width, height and plate of a lying part, from what its shape takes. */
function sectionOf(part: Fields, rows: ReturnType<typeof horizontalRows>) {
  const shape: 'round' | 'square' = part.raw('shape') === 'square' ? 'square' : 'round';
  const known = part.raw('shape') === shape;
  const steel = rows.steel.read(part, 'steel', {}, {});
  const main = mainSize(part, SECTION, { shape, known, what: 'part', second: 'height' });
  const width = main?.si ?? NaN;
  const height = rows.height.read(part, 'height', { shape, width }, {}) ?? width;
  return { shape, diameter: undefined, width, height, plate: wallOf(part, 'plate', main), steel };
}

const INTAKE = {
  kind: choice(['disc', 'slide', 'pipe'], 'Kind of vent.', { default: 'disc', also: { dial: 'disc' } }),
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

function discharge(of: string) {
  return quantity(range('number', '0.2', '1'), 'Discharge coefficient.', {
    default: '0.62',
    guess: '0.55-0.70',
    print: { bare: true },
    unknown: { kind: 'discharge', label: `discharge ${of}` },
  });
}

const intake = block(
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

/** An opening between two parts. */
const opening = (of: string, label: string, middle: string) => ({
  area: quantity(OPENING, 'Free area.', { examples: ['90 in^2'], slider: { label, steps: [20, 300, 1] } }),
  centre: height('Height of its middle above the ground.', middle),
  discharge: discharge(of),
});

const FIREBOX = {
  ...horizontalRows('firebox', '1 in^2', 60),
  intakes: list(intake, 1, 20),
};

export const firebox = block('The firebox. All sizes of parts are outside sizes.', FIREBOX, (fields, around) =>
  readRows(FIREBOX, fields, around, sectionOf(fields, FIREBOX)),
);

const CHAMBER = {
  ...horizontalRows('chamber', '2 in^2', 144),
  reverse: optional(
    block('Reverse flow: gas runs under a plate to the far end, turns, and comes back to a stack by the fire.', {
      height: quantity(range('length', '1/2 in', '5 ft'), 'Height of the plate above the chamber’s inside floor line.'),
      plate: plate('Plate thickness.', {
        default: (_, around) => around.plate as number,
        says: 'the chamber’s plate',
      }),
      turn: quantity(OPENING, 'Free area where the gas turns at the far end.'),
    }),
  ),
};

export const chamber = optional(
  block(
    'The cooking chamber; left out when an upright stands alone over or beside its firebox.',
    CHAMBER,
    (fields, around) => readRows(CHAMBER, fields, around, sectionOf(fields, CHAMBER)),
  ),
);

export const throat = block('Opening from the firebox to the chamber, or to the upright when there is no chamber.', {
  ...opening('of the throat', 'Throat to the {next}', 'Middle of the throat'),
  through: choice(['end', 'top'], 'end: through an upright face; top: through the firebox roof.', { default: 'end' }),
});

const SIDE = range('length', '6 in', '6 ft');

const UPRIGHT = {
  width: quantity(SIDE, 'Outside width, across the chamber.', { slider: across('Width') }),
  depth: quantity(SIDE, 'Outside depth, along the chamber.', {
    default: ({ width }) => width as number,
    says: 'its width',
    slider: across('Depth'),
  }),
  height: quantity(range('length', '6 in', '10 ft'), 'Outside height.', {
    slider: { label: 'Height', steps: [12, 96, 1] },
  }),
  ...partRows('upright', '1.5 in^2'),
  opening: where(
    (_, { chamber }) => chamber !== undefined,
    optional(
      block(
        'Opening from chamber to upright.',
        opening('into the upright', 'Opening from the chamber', 'Middle of its opening'),
      ),
    ),
  ),
};

export const upright = optional(
  block('Upright box.', UPRIGHT, (part, around) => {
    const [hasChamber, opening] = [around.chamber !== undefined, part.has('opening')];
    const steel = UPRIGHT.steel.read(part, 'steel', {}, around);
    if (hasChamber && !opening) {
      part.fault('opening', {
        code: 'missing',
        message: 'is missing: gas must get from the chamber into the upright',
        allowed: '{ area: 90 in^2, centre: 40 in }',
        value: null,
      });
    } else if (!hasChamber && opening) {
      part.fault('opening', {
        message: 'has no chamber to lead from; the throat joins the firebox to the upright',
        allowed: 'leave it out, or give a chamber',
        atKey: true,
      });
    }
    const width = UPRIGHT.width.read(part, 'width', {}, around);
    const plate = wallOf(part, 'plate', { si: width });
    return readRows(UPRIGHT, part, around, { steel, width, plate });
  }),
);
