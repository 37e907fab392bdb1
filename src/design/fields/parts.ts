/** Firebox, chamber and upright, and what hangs on them: doors, insulation, finishes, contents. */
import { format } from '../../units/index.js';
import { range } from '../ranges.js';
import { pathText } from '../path.js';
import type { Fields } from '../reading.js';
import type { PartName } from '../stations.js';
import {
  block,
  choice,
  list,
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
import { facesOf, insulation, lining, ownInsulation, shield, surface } from './cover.js';
import { discharge, intake } from './intake.js';
import { area, AREA, HEIGHT, height, mass, plate, SHARE, station, steel } from './shared.js';
import { mainSize, wallOf } from './walls.js';

const SECTION = range('length', '6 in', '6 ft');
const SECTION_EXAMPLES = ['24 in', '20 in pipe, standard wall', '610 mm'];
const OPENING = range('area', '1 in^2', '25 ft^2');
const DOOR_SIDE = range('length', '2 in', '10 ft');

const across = (label: string): Slider => ({ label, steps: [12, 48, 0.5] });

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
  insulation: ownInsulation('the leaf'),
});

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
  doorGap: quantity(range('area', '0 in^2', '50 in^2'), 'Total leak area round its doors (estimate).', {
    default: gap,
    says: '',
    unknown: { kind: 'doorGap', label: `gap of the ${name} door` },
  }),
  door: optional(door),
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
    return readRows(UPRIGHT, part, around, { steel, width, plate });
  }),
);
