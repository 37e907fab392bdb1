/** Every field of a design file; what it may be, how it is read, printed and moved stands in its row. */
import * as z from 'zod';
import { handle, load, trailer } from './fields/carry.js';
import { cook } from './fields/cook.js';
import { list, numbersIn, optional, usual, block } from './fields/blocks.js';
import { factor, placeName, text } from './fields/field.js';
import { type Field, type Row, type Rows } from './fields/fieldType.js';
import { log } from './fields/log.js';
import { chamber, firebox, throat, upright } from './fields/parts.js';
import { prices } from './fields/prices.js';
import { size } from './fields/size.js';
import { fire, site, wood } from './fields/site.js';
import { use } from './fields/use.js';
import { stack } from './fields/stack.js';
import { range, type Range } from './ranges.js';
import { GAUGES } from './stations.js';

const format: Field<1> = {
  zod: z.literal(1).meta({ description: 'Number of this file format.' }),
  read: () => 1,
};

/** Fields in the order in which a design is told, part by part. */
export const DESIGN = {
  schema: format,
  name: text('Name of the design.'),
  shop: usual(text('Shop’s name for a buyer’s sheet.')),
  job: usual(text('Job or customer number for a buyer’s sheet.')),
  site: usual(site),
  wood: usual(wood),
  fire,
  firebox,
  chamber,
  upright,
  throat,
  stacks: list(stack, 1, 8, 'The stacks.'),
  innerConvection: factor(
    range('number', '0.2', '5'),
    'Factor on all inner convection.',
    { default: '1', guess: '0.8-1.5' },
    { kind: 'innerConvection', label: 'how well gas heats the walls' },
  ),
  gauge: placeName('What the cook steers by: a station’s dial, a thermometer, a grate or a rack.', {
    default: ({ chamber, upright }) => (chamber || !upright ? 'middle' : 'uprightUpper'),
    says: 'middle; uprightUpper without a chamber',
    examples: [...GAUGES, 'main', 'rack 2'],
  }),
  estimates: usual(
    block('What no correlation settles.', {
      oxygenUse: factor(
        range('share', '0.1', '1'),
        'Share of the oxygen a wood fire can use.',
        { default: '0.90', guess: true },
        { kind: 'oxygenUse', label: 'oxygen a wood fire can use' },
      ),
      stemFill: factor(
        range('share', '0.05', '1'),
        'Solid share of the thermometer stem.',
        { default: '0.4', guess: '0.2-1' },
        { kind: 'stemFill', label: 'lag of the thermometer stem' },
      ),
      insideEmissivity: factor(
        range('share', '0.05', '1'),
        'Emissivity of the sooted inside.',
        { default: '0.95', guess: true },
        { kind: 'inside', label: 'emissivity inside, sooted' },
      ),
      entrainment: factor(
        range('number', '0.05', '10'),
        'Factor on what hot gas takes in as it rises behind throat, turn and upright opening.',
        { default: '1', guess: '0.3-3' },
        { kind: 'entrainment', label: 'gas that rising gas takes in' },
      ),
      downflow: factor(
        range('number', '0', '3'),
        'Factor on the gas that sinks along cold walls.',
        { default: '0.7', guess: '0.3-1.3' },
        { kind: 'downflow', label: 'gas that sinks along walls' },
      ),
      outsideConvection: factor(
        range('number', '0.2', '5'),
        'Factor on what outdoor air takes from shells, sides and stacks.',
        { default: '1', guess: '0.85-1.2' },
        { kind: 'outsideConvection', label: 'how well air cools the shell' },
      ),
      levelConvection: factor(
        range('number', '0.2', '5'),
        'Factor on what outdoor air takes from level plates.',
        { default: '1', guess: '0.6-1' },
        { kind: 'levelConvection', label: 'how air cools level plates' },
      ),
    }),
  ),
  cook: optional(cook),
  use: usual(use),
  handles: optional(list(handle, 1, 20, 'Handles and knobs.')),
  trailer: optional(trailer),
  loads: optional(list(load, 1, 50, 'What else is carried.')),
  log: optional(log),
  prices: optional(prices),
  size: optional(size),
};

/** The same in the order of the file format, where the throat stands before the upright. */
export const IN_FILE: Rows = Object.fromEntries(
  Object.entries<Field>(DESIGN).flatMap(([key, field]) => {
    if (key === 'throat') return [];
    return key === 'upright'
      ? [
          ['throat', throat],
          [key, field],
        ]
      : [[key, field]];
  }),
);

const NUMBERS: ReadonlyMap<string, Row> = new Map(numbersIn(IN_FILE));

/** Paths of all numbers, without the places of a list, in the order of the file format. */
export const NUMBER_PATHS: readonly string[] = [...NUMBERS.keys()];

/** The row of a number by its path, `firebox.intakes[0].centre`; undefined for a path that is no number's. */
export function rowAt(path: string): Row | undefined {
  return NUMBERS.get(path.replace(/\[\d+\]/g, ''));
}

/** What a number may be, by its path. */
export function rangeOf(path: string): Range {
  const row = rowAt(path);
  if (!row) throw new RangeError(`'${path}' is no number of a design`);
  return row.range;
}
