/** Firebox, chamber and upright, and what hangs on them: doors, insulation, finishes, contents. */
import { TANKS, type TankName } from '../catalog/index.js';
import { format, formatPlate } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { HEADS } from '../heads.js';
import { range } from '../ranges.js';
import { pathText } from '../path.js';
import type { Fields } from '../reading.js';
import type { PartName } from '../stations.js';
import {
  block,
  choice,
  list,
  maybe,
  optional,
  quantities,
  quantity,
  readRows,
  text,
  usual,
  where,
  type Slider,
  type Soft,
} from './field.js';
import { ashDoor, fireGrate } from './fireGrate.js';
import { facesOf, insulation, lining, ownInsulation, shield, surface } from './cover.js';
import { discharge, intake } from './intake.js';
import { area, AREA, HEIGHT, height, mass, plate, SHARE, station, steel } from './shared.js';
import { mainSize, wallOf } from './walls.js';

const SECTION = range('length', '6 in', '6 ft');
const SECTION_EXAMPLES = ['24 in', '20 in pipe, standard wall', '610 mm'];
const LENGTH = range('length', '6 in', '20 ft');
const OPENING = range('area', '1 in^2', '25 ft^2');
const LEAK = range('area', '0 in^2', '50 in^2');
const DOOR_SIDE = range('length', '2 in', '10 ft');

const across = (label: string): Slider => ({ label, steps: [12, 48, 0.5] });

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

const door = block('Door; without one the shell counts as whole.', DOOR);

const several = (name: PartName) =>
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
 * Leaks of several doors: a door without one takes its share of the part's by its rim, and the part's becomes what all come to.
 */
function withDoors<
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

const content = block('A body inside the part: grates, racks, baffle, water pan, food.', {
  name: text('What it is: racks, water pan, food.'),
  material: choice(['steel', 'stainless', 'water', 'food'], 'What it is made of.', { default: 'steel' }),
  mass: mass(),
  area: area('Surface that sees gas and walls, both sides.'),
  station: station('Where it stands. Default: spread over the part.'),
});

/** Surface of #9 expanded metal by its weight [m2/kg]: 4 over density and strand, about 0.14 in (common practice, no source). */
const EXPANDED_METAL = 0.14;

const grate = block('A grate: where food lies in the chamber.', {
  name: text('What the cook calls it, as gauge and logs do: main, top.'),
  height: quantity(HEIGHT, 'Height above the ground.', { examples: ['40 in'] }),
  from: quantity(SHARE, 'Where it begins along the chamber, from the fire end.', { default: '0 %' }),
  to: quantity(SHARE, 'Where it ends along the chamber.', { default: '100 %' }),
  mass: quantity(range('mass', '0 lb', '500 lb'), 'Its weight, if its steel is to count.', {
    default: '0 lb',
    says: 'not counted',
  }),
  steel: choice(['carbon', 'stainless'], 'Steel of the grate.', { default: 'carbon' }),
  area: quantity(range('area', '0 in^2', AREA.high), 'Surface that sees gas, all round.', {
    default: ({ mass }) => EXPANDED_METAL * (mass as number),
    says: 'that of #9 expanded metal of its weight',
    guess: true,
  }),
});

/**
 * A 1/4 in stem shorter than this reads, over its inner half, more than 7 % of the way from the gas to its plate [m]: 3 in. A fin
 * with an insulated tip (Incropera et al., 6th ed., Table 3.4), 25 W/(m² K), stainless, 40 % of its section solid (estimates).
 */
const SHORT_STEM = 0.0762;

const THERMOMETER = {
  name: text('What the cook calls it, as gauge and logs do; by the name of a station it is that station’s dial.'),
  along: quantity(SHARE, 'Where it sits along the part, from the fire end.', { default: '50 %' }),
  height: quantity(HEIGHT, 'Height of its stem above the ground.', { examples: ['48 in'] }),
  stem: optional(
    quantity(
      range('length', '1 in', '24 in'),
      'How far its stem reaches in; what it conducts from the plate is left out.',
      {
        examples: ['2-1/2 in'],
      },
    ),
  ),
};

const thermometer = block('A thermometer: a dial in the lid, or a probe.', THERMOMETER, (fields, around) => {
  const own = readRows(THERMOMETER, fields, around);
  if (own.stem !== undefined && own.stem < SHORT_STEM) {
    fields.reading.warnings.push({
      code: 'short-stem-reads-low',
      message: `a stem of ${format('length', own.stem)} reads nearer to the plate that it is in than computed: what it conducts is left out; 3 in or more read the gas`,
      where: pathText([...fields.path, 'stem']),
      value: own.stem,
      limits: { low: SHORT_STEM, unit: 'm' },
    });
  }
  return own;
});

/** Fields that both parts food lies in have. */
const cookingRows = {
  thermometers: usual(list(thermometer, 0, 12, 'Thermometers; each station has a dial anyway.')),
};

/** Fields that every part has. */
const partRows = <P extends PartName>(name: P, gap: string) => ({
  plate: optional(
    plate('Plate thickness; may be left out when the diameter names a pipe with its wall.', {
      slider: { label: 'Plate' },
    }),
  ),
  steel: steel('Steel of plate, door and reverse-flow plate; it says which gauge table is meant.'),
  centre: quantity(range('length', '4 in', '15 ft'), 'Height of its middle above the ground.', {
    slider: { label: `Middle of the ${name}`, steps: [4, 120, 0.5], height: true },
  }),
  doorGap: quantity(LEAK, 'Total leak area round its doors (estimate).', {
    default: gap,
    says: '',
    unknown: { kind: 'doorGap', label: `gap of the ${name} door` },
  }),
  door: optional(door),
  doors: optional(several(name)),
  insulation,
  ...surface(name),
  ...facesOf[name],
  lining: lining(name),
  shield: shield(name),
  contents: usual(list(content, 0, 50)),
});

const round = ({ shape }: Soft) => shape === 'round';
const square = ({ shape }: Soft) => shape === 'square';

const horizontalRows = (name: 'firebox' | 'chamber', gap: string, longest: number) => ({
  shell: maybe(
    Object.keys(TANKS) as TankName[],
    'A tank or drum by its name in the trade, common practice, no source: it gives shape, diameter, length, plate and heads. Measure yours; what stands beside it counts instead.',
  ),
  shape: choice(['round', 'square'], 'round takes diameter; square takes width, and height if it differs.', {
    default: 'round',
    says: 'round of a shell',
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
  length: quantity(LENGTH, 'Outside length; with heads that are not flat between their seams.', {
    default: ({ shell }) => (shell === undefined ? NaN : TANKS[shell as TankName].length),
    says: 'a shell’s',
    slider: { label: 'Length', steps: [12, longest, 1] },
  }),
  heads: where(
    round,
    choice(HEADS, 'Ends of a round part. dished: crown of the diameter, knuckle 6 % of it; elliptical: 2:1.', {
      default: ({ shell }) => (shell === undefined ? 'flat' : TANKS[shell as TankName].heads),
      says: 'flat, or a shell’s',
    }),
  ),
  flange: where(
    round,
    quantity(range('length', '0 in', '6 in'), 'Straight flange of each head, beyond the seam.', { default: '0 in' }),
  ),
  ...partRows(name, gap),
});

/** Width, height and plate of a lying part, from what its shape takes, or from the tank that it is made of. */
function sectionOf(part: Fields, rows: ReturnType<typeof horizontalRows>) {
  const shell = rows.shell.read(part, 'shell', {}, {});
  const tank = shell === undefined ? undefined : TANKS[shell];
  const shape: 'round' | 'square' = part.raw('shape') === 'square' ? 'square' : 'round';
  const nameless = part.present && !part.has('shell');
  if (tank) tellTank(part, shell!);
  else if (!part.has('shape') && nameless) missing(part, 'shape', 'round, square');
  if (nameless && !part.has('length')) missing(part, 'length', 'a length (60 in)');
  const known = part.raw('shape') === shape || (tank !== undefined && !part.has('shape'));
  const steel = rows.steel.read(part, 'steel', {}, {});
  const ofTank = tank && shape === 'round' && !part.has('diameter') ? { si: tank.diameter } : undefined;
  const main = ofTank ?? mainSize(part, SECTION, { shape, known, what: 'part', second: 'height' });
  if (ofTank) part.reading.defaulted([...part.path, 'diameter']);
  const width = main?.si ?? NaN;
  const height = rows.height.read(part, 'height', { shape, width }, {}) ?? width;
  const plateOfTank = tank && !part.has('plate') && !('pipe' in (main ?? {})) ? tank.plate : undefined;
  if (plateOfTank !== undefined) part.reading.defaulted([...part.path, 'plate']);
  const plate = plateOfTank ?? wallOf(part, 'plate', main);
  return { shell, shape, diameter: undefined, width, height, plate, steel };
}

function missing(part: Fields, key: string, allowed: string): void {
  part.fault(key, { code: 'missing', message: 'is missing', allowed, value: null });
}

/** A tank's sizes are nobody's promise: which were taken, and which the file gives itself. */
function tellTank(part: Fields, shell: TankName): void {
  const { diameter, length, plate, heads } = TANKS[shell];
  if (part.raw('shape') === 'square') {
    part.fault('shell', { message: 'is round, and the shape is square', allowed: 'with shape: round, or left out' });
    return;
  }
  const sizes: [key: string, words: string][] = [
    ['diameter', `${format('length', diameter)} diameter`],
    ['length', `${format('length', length, 'shop', { unit: 'in' })} long${heads === 'flat' ? '' : ' between seams'}`],
    ['plate', `${formatPlate(plate)} plate`],
    ['heads', `${heads} heads`],
  ];
  const taken = sizes.filter(([key]) => !part.has(key)).map(([, words]) => words);
  const own = sizes.filter(([key]) => part.has(key)).map(([key]) => key);
  const beside = own.length === 0 ? '' : `; ${listed(own)} as the design gives, not as the tank`;
  if (taken.length === 0) return;
  part.reading.warnings.push({
    code: 'tank-by-name',
    message: `a ${shell} counts as ${taken.join(', ')} (common practice, no source)${beside}: makers differ, measure yours`,
    where: pathText([...part.path, 'shell']),
    value: null,
    limits: null,
  });
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
  grate: fireGrate,
  ashDoor,
};

export const firebox = block('The firebox. All sizes of parts are outside sizes.', FIREBOX, (fields, around) =>
  withDoors(fields, readRows(FIREBOX, fields, around, sectionOf(fields, FIREBOX))),
);

const PLATES = {
  height: quantity(range('length', '1/2 in', '5 ft'), 'Height of the plates above the chamber’s inside floor line.'),
  plate: plate('Plate thickness.', {
    default: (_, around) => around.plate as number,
    says: 'the chamber’s plate',
  }),
  gaps: quantities(
    range('length', '1/8 in', '3 ft'),
    'Gaps along from the throat, each behind a plate; the plates are alike.',
    12,
  ),
};

const plates = block(
  'A row of plates under the grate: gas runs under them and rises through the gaps between them.',
  PLATES,
  (fields, around) => {
    fields.reading.warnings.push({
      code: 'plates-stirred',
      message:
        'gas under the plates counts as one body, stirred from end to end by the stream from the throat, and rises through the gaps by their areas (estimate): what a plate turns aside, and what a gap near the throat takes from the far ones, is left out',
      where: pathText(fields.path),
      value: null,
      limits: null,
    });
    return readRows(PLATES, fields, around);
  },
);

const CHAMBER = {
  ...horizontalRows('chamber', '2 in^2', 144),
  grates: usual(list(grate, 0, 6, 'Grates. Default: one a little below the middle.')),
  ...cookingRows,
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
  plates: optional(plates),
};

export const chamber = optional(
  block(
    'The cooking chamber; left out when an upright stands alone over or beside its firebox.',
    CHAMBER,
    (fields, around) => withDoors(fields, readRows(CHAMBER, fields, around, sectionOf(fields, CHAMBER))),
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
  racks: quantities(HEIGHT, 'Heights of its racks above the ground. Default: at a third and two thirds.', 20),
  ...cookingRows,
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
    return withDoors(part, readRows(UPRIGHT, part, around, { steel, width, plate }));
  }),
);
