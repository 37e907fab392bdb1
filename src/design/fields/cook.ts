/** What happens over time: splits on the fire, and a cook's day. */
import { range } from '../ranges.js';
import { block, flag, list, optional, quantity, readRows, text, usual } from './field.js';
import { area, mass, SHARE, station, WIND } from './shared.js';

const BURNS = range('time', '1 min', '6 h');
const TIME = range('time', '0 min', '72 h');

export const splits = block('How the fire is fed by single splits, for the swing they make.', {
  every: quantity(range('time', '0 min', '6 h'), 'One split every so often; 0 min: a steady fire.', {
    default: '45 min',
  }),
  flame: quantity(BURNS, 'Mean time at which the flaming share of a split burns.', {
    default: '15 min',
    guess: '8-25 min',
    unknown: { kind: 'flame', label: 'how soon a split flames off' },
  }),
  charcoal: quantity(range('share', '0 %', '90 %'), 'Share of a split’s heat that its charcoal gives.', {
    default: '0.30',
    guess: '0.20-0.40',
    unknown: { kind: 'charcoal', label: 'heat that comes of charcoal' },
  }),
  glow: quantity(BURNS, 'Mean time at which that charcoal burns.', {
    default: '45 min',
    guess: '25-70 min',
    unknown: { kind: 'glow', label: 'how long charcoal glows' },
  }),
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
  wind: optional(quantity(WIND, 'Wind speed meanwhile. Default: the site’s.')),
  rain: optional(quantity(SHARE, 'Wet share of the upward-facing outside meanwhile. Default: the site’s.')),
});

/** How long a door may stand open. */
export const DOOR_TIME = range('time', '0 s', '1 h');

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
