/** What happens over time: splits on the fire, who minds it, and a cook's day. */
import { charringRate, cylinderThickness, FIREBOX_CHARRING, meanFlame } from '../../physics/splits.js';
import { WOODS } from '../catalog/index.js';
import { block, list, optional, readRows, usual } from './blocks.js';
import { choice, flag, quantities, quantity, text } from './field.js';
import { type Field, type Read } from './fieldType.js';
import { range } from '../ranges.js';
import { area, mass, SHARE, station, WIND } from './shared.js';

const BURNS = range('time', '1 min', '6 h');
const TIME = range('time', '0 min', '72 h');

/** Air-dry hardwood whose density no table has [kg/m3]. */
const USUAL_DENSITY = 700;
/** A split of a hand's width: 3 in, common practice, no source [m]. */
const USUAL_THICKNESS = 0.0762;

const densityOf = (species: unknown): number => WOODS[species as string]?.density ?? USUAL_DENSITY;

const SPLITS = {
  mass: optional(
    quantity(
      range('mass', '0.05 lb', '60 lb'),
      'What is laid on at once. Default: so much that it is done every half hour.',
    ),
  ),
  length: quantity(range('length', '2 in', '6 ft'), 'Length of a split.', { default: '14 in' }),
  species: choice(Object.keys(WOODS), 'Wood of the splits, for how fast they char.', {
    default: (_, around) => (around.wood as { kind: string }).kind,
    says: 'that of the fire',
  }),
  thickness: quantity(range('length', '1/4 in', '16 in'), 'Thickness of a split, as of a round one.', {
    default: ({ mass, length, species }) =>
      mass === undefined ? USUAL_THICKNESS : cylinderThickness(mass as number, densityOf(species), length as number),
    says: '3 in, or what its weight makes of one piece',
  }),
  every: optional(
    quantity(
      range('time', '0 min', '6 h'),
      'One split every so often by the clock, whatever the thermometer reads; 0 min: a steady fire. Default: when it has fallen to the line of fire.cook.',
    ),
  ),
  door: quantity(
    range('time', '0 s', '10 min'),
    'How long the firebox door stands open to lay one on; common practice, no source.',
    { default: '20 s', guess: '10-60 s' },
  ),
  flame: quantity(BURNS, 'Mean time at which the flaming heat of a split leaves it.', {
    default: ({ thickness, species }) =>
      meanFlame(thickness as number, FIREBOX_CHARRING * charringRate(densityOf(species))),
    says: 'by its thickness and wood, 20 min for 3 in of hardwood; estimate, 11-36 min',
    unknown: { kind: 'flame', label: 'how soon a split flames off' },
  }),
  charcoal: quantity(range('share', '0 %', '90 %'), 'Share of a split’s heat that its charcoal gives.', {
    default: '0.33',
    guess: '0.25-0.40',
    unknown: { kind: 'charcoal', label: 'heat that comes of charcoal' },
  }),
  glow: quantity(BURNS, 'Time in which charcoal glows away to 37 % in a usual draft.', {
    default: '40 min',
    guess: '20-80 min',
    unknown: { kind: 'glow', label: 'how long charcoal glows' },
  }),
};

const splitsBlock = block('The splits that the fire is fed with, and how one burns.', SPLITS);

/** The same, told of the whole design what wood it burns. */
export const splits: Field<Read<typeof SPLITS>> = {
  ...splitsBlock,
  read: (fields, key, _, around) => splitsBlock.open(fields.child(key), around),
};

const DIFFERENCE = range('temperatureDifference', '-100 °F', '0 °F');

/** How the fire is minded. */
export const minding = block('How the fire is minded.', {
  line: quantity(DIFFERENCE, 'The next split is laid on when the thermometer has fallen to this, against the target.', {
    default: '-15 °F',
  }),
  late: quantity(range('time', '0 min', '3 h'), 'How long after that it is laid on.', {
    default: '5 min',
    guess: '0-10 min',
  }),
  look: quantity(
    range('time', '1 min', '1 h'),
    'From one look at the thermometer to the next while the fire is built.',
    {
      default: '5 min',
      guess: '2-15 min',
    },
  ),
  intakes: quantities(
    SHARE,
    'Least and most that the intakes are open, turned once a split by how the last one read. Default: they stay as they stand.',
    2,
  ),
});

const food = block('Food laid in cold; its surface stays wet.', {
  name: text('What it is.'),
  mass: mass(),
  area: area('Surface that sees gas and walls.'),
  start: quantity(range('temperature', '28 °F', '180 °F'), 'Temperature at which it goes in.', { default: '40 °F' }),
  station: station('Where it lies. Default: spread over the gauge’s part.'),
});

const event = block('A door opened, a gust, a shower.', {
  at: quantity(TIME, 'When it begins, after loading.'),
  lasts: quantity(range('time', '1 s', '24 h'), 'How long it lasts.'),
  door: flag('true: the door of the gauge’s part stands open.'),
  fireboxDoor: flag('true: the door of the firebox stands open.'),
  wind: optional(quantity(WIND, 'Wind speed meanwhile. Default: the site’s.')),
  rain: optional(quantity(SHARE, 'Wet share of the upward-facing outside meanwhile. Default: the site’s.')),
});

/** How long a door may stand open. */
const DOOR_TIME = range('time', '0 s', '1 h');

const COOK = {
  soak: quantity(TIME, 'From first reading the target to loading.', { default: '0 min' }),
  load: usual(list(food, 0, 20, 'The food. Default: none.')),
  loading: quantity(DOOR_TIME, 'How long the door stands open to load.', {
    default: ({ load }) => ((load as unknown[]).length > 0 ? 60 : 0),
    says: '60 s, 0 s without food',
  }),
  tend: quantity(TIME, 'How long the fire is tended after loading.'),
  events: usual(list(event, 0, 50, 'What happens meanwhile. Default: nothing.')),
  dieDown: quantity(TIME, 'How long the pit is followed after the last wood.', { default: '1 h' }),
  band: quantity(
    range('temperatureDifference', '1 °F', '100 °F'),
    'The thermometer counts as in the band when it is this near the target.',
    { default: '15 °F' },
  ),
};

export const cook = block(
  'A cook’s day: light, reach the target, load, tend, let the fire die.',
  COOK,
  (fields, around) => readRows(COOK, fields, around, {}, ['load']),
);
