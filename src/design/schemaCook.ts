/** Shape of what happens over time in a design file: splits on the fire, and a cook's day. */
import * as z from 'zod';
import { plain, quantity } from './schemaFields.js';
import { STATIONS } from './stations.js';

export const splits = z
  .strictObject({
    every: quantity('splitEvery', 'One split every so often; 0 min: a steady fire. Default: 45 min.').optional(),
    flame: quantity(
      'splitTime',
      'Mean time at which the flaming share of a split burns (estimate, default 15 min, spread 8-25 min).',
    ).optional(),
    charcoal: plain(
      'charcoal',
      'Share of a split’s heat that its charcoal gives (estimate, default 0.30, spread 0.20-0.40).',
    ).optional(),
    glow: quantity(
      'splitTime',
      'Mean time at which that charcoal burns (estimate, default 45 min, spread 25-70 min).',
    ).optional(),
  })
  .meta({ description: 'How the fire is fed by single splits, for the swing they make.' });

const food = z
  .strictObject({
    name: z.string().max(200).meta({ description: 'What it is.' }),
    mass: quantity('contentMass', 'Weight.'),
    area: quantity('contentArea', 'Surface that sees gas and walls.'),
    start: quantity('foodStart', 'Temperature at which it goes in. Default: 40 °F.').optional(),
    station: z.enum(STATIONS).meta({ description: 'Where it lies. Default: spread over the gauge’s part.' }).optional(),
  })
  .meta({ description: 'Food laid in cold; its surface stays wet.' });

const event = z
  .strictObject({
    at: quantity('cookTime', 'When it begins, after loading.'),
    lasts: quantity('weatherTime', 'How long it lasts.'),
    door: z
      .boolean()
      .meta({ description: 'true: the door of the gauge’s part stands open. Default: false.' })
      .optional(),
    wind: quantity('wind', 'Wind speed meanwhile. Default: the site’s.').optional(),
    rain: plain('rain', 'Wet share of the upward-facing outside meanwhile. Default: the site’s.').optional(),
  })
  .meta({ description: 'A door opened, a gust, a shower.' });

export const cook = z
  .strictObject({
    soak: quantity('cookTime', 'From first reading the target to loading. Default: 0 min.').optional(),
    load: z.array(food).max(20).meta({ description: 'The food. Default: none.' }).optional(),
    loading: quantity('doorTime', 'How long the door stands open to load. Default: 60 s, 0 s without food.').optional(),
    tend: quantity('cookTime', 'How long the fire is tended after loading.'),
    events: z.array(event).max(50).meta({ description: 'What happens meanwhile. Default: nothing.' }).optional(),
    dieDown: quantity('cookTime', 'How long the pit is followed after the last wood. Default: 1 h.').optional(),
    band: quantity(
      'band',
      'The thermometer counts as in the band when it is this near the target. Default: 15 °F.',
    ).optional(),
  })
  .meta({ description: 'A cook’s day: light, reach the target, load, tend, let the fire die.' });
