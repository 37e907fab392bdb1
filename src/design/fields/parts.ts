/** Firebox, chamber and upright: their rows, and those that all parts have. */
import { range } from '../ranges.js';
import type { PartName } from '../stations.js';
import { block, list, optional, readRows, usual, where } from './blocks.js';
import { choice, quantities, quantity, text } from './field.js';
import { facesOf, insulation, lining, shield, surface } from './cover.js';
import { deflector, plates, reverse } from './decks.js';
import { door, LEAK, several, withDoors } from './doors.js';
import { ashDoor, fireGrate } from './fireGrate.js';
import { discharge, intake } from './intake.js';
import { cookingRows, grate } from './places.js';
import { sectionOf, sectionRows } from './section.js';
import { across, area, HEIGHT, height, mass, OPENING, plate, station, steel } from './shared.js';
import { wallOf } from './walls.js';

const content = block('A body inside the part: grates, racks, baffle, water pan, food.', {
  name: text('What it is: racks, water pan, food.'),
  material: choice(['steel', 'stainless', 'water', 'food'], 'What it is made of.', { default: 'steel' }),
  mass: mass(),
  area: area('Surface that sees gas and walls, both sides.'),
  station: station('Where it stands. Default: spread over the part.'),
});

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

const horizontalRows = (name: 'firebox' | 'chamber', gap: string, longest: number) => ({
  ...sectionRows(longest),
  ...partRows(name, gap),
});

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

const CHAMBER = {
  ...horizontalRows('chamber', '2 in^2', 144),
  grates: usual(list(grate, 0, 6, 'Grates. Default: one a little below the middle.')),
  ...cookingRows,
  reverse,
  plates,
  deflector,
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
