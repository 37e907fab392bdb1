/** Where food lies and temperatures are read: grates and thermometers. */
import { format } from '../../units/index.js';
import { pathText } from '../path.js';
import { range } from '../ranges.js';
import { block, list, optional, readRows, usual } from './blocks.js';
import { choice, quantity, text } from './field.js';
import { AREA, HEIGHT, SHARE } from './shared.js';

/**
 * Surface of #9 expanded metal by its weight [m2/kg]: 4 over density and strand, about 0.14 in (common practice, no
 * source).
 */
const EXPANDED_METAL = 0.14;

export const grate = block('A grate: where food lies in the chamber.', {
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
 * A 1/4 in stem shorter than this reads, over its inner half, more than 7 % of the way from the gas to its plate [m]: 3
 * in. A fin with an insulated tip (Incropera et al., 6th ed., Table 3.4), 25 W/(m² K), stainless, 40 % of its section
 * solid (estimates).
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
export const cookingRows = {
  thermometers: usual(list(thermometer, 0, 12, 'Thermometers; each station has a dial anyway.')),
};
