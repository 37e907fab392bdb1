/**
 * What a part's walls are made of and covered with: insulation, finish, lining, heat shield, and one face unlike the
 * others.
 */
import * as z from 'zod';
import {
  DEFAULT_FINISH,
  FINISHES,
  INSULATION_ALIASES,
  INSULATIONS,
  LINING_ALIASES,
  LININGS,
} from '../catalog/index.js';
import { range } from '../ranges.js';
import type { Fields } from '../reading.js';
import type { PartName } from '../stations.js';
import { block, optional, readRows, type Block } from './blocks.js';
import { choice, maybe, names, quantity } from './field.js';
import { type Field } from './fieldType.js';
import { EMISSIVITY, plate } from './shared.js';

/** @param offered by the page, as that of a whole part is */
const insulationRows = (offered: boolean) => ({
  material: choice(Object.keys(INSULATIONS), 'Insulation material.', {
    also: INSULATION_ALIASES,
    ...(offered ? { offer: { label: 'Insulation of', names: Object.keys(INSULATIONS) } } : {}),
  }),
  thickness: quantity(range('length', '0 in', '12 in'), 'Thickness; 0 in equals no insulation.', {
    ...(offered ? { slider: { label: 'Insulation', steps: [0, 6, 0.5] } } : {}),
  }),
  skin: quantity(range('plate', '0 mm', '1/4 in'), 'Outer steel skin.', { default: '0 mm', says: 'none' }),
  skinSteel: maybe(
    ['carbon', 'stainless'],
    'Steel of the skin; it says which gauge table is meant. Default: the steel of what it wraps.',
  ),
});

function insulationBlock(offered: boolean) {
  const rows = insulationRows(offered);
  return block('Insulation on the outside, with an outer steel skin if any.', rows, (fields, around) => {
    const own = readRows(rows, fields, around);
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
  });
}

/** Insulation of a part, which a file may leave out. */
export const insulation = optional(insulationBlock(true));

/** A block of a face, or `none` where the face has not what its part has. */
function orNone<T>(field: Block<T>, words: string): Field<T | 'none' | undefined> {
  return {
    ...field,
    zod: z
      .union([z.literal('none'), field.zod])
      .meta({ description: words })
      .optional(),
    read: (fields, key, own, around) => {
      if (!fields.has(key)) return undefined;
      return fields.raw(key) === 'none' ? 'none' : field.read(fields, key, own, around);
    },
  };
}

/** Insulation of a face or a door where it differs from the part's. */
export const ownInsulation = (of: string) =>
  orNone(insulationBlock(false), `Insulation of ${of} where it differs from the part’s, or none.`);

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

const FACE = {
  plate: optional(plate('Plate of this face. Default: the part’s plate.')),
  insulation: ownInsulation('this face'),
  finish: maybe(Object.keys(FINISHES), 'Outside finish of this face. Default: the part’s finish.'),
  emissivity: optional(
    quantity(EMISSIVITY, 'Outside emissivity of this face, instead of the finish’s.', { print: { bare: true } }),
  ),
};

const face = (words: string) => optional(block(words, FACE));

/** Of a round part roof and floor are the upper and the lower quarter of its height, each a third of its girth. */
const ROUND = 'of a round part the third of its girth';

const FACES = {
  roof: face(`The roof where it differs: ${ROUND} at the top.`),
  floor: face(`The floor where it differs: ${ROUND} at the bottom.`),
  sides: face(`The sides where they differ: ${ROUND} between roof and floor.`),
};

const ENDS = {
  firebox: {
    fireEnd: face('The front where it differs: the end with door and intakes.'),
    stackEnd: face('The end towards the chamber where it differs.'),
  },
  chamber: {
    fireEnd: face('The end towards the firebox where it differs.'),
    stackEnd: face('The end away from the fire where it differs.'),
  },
} as const;

/** Of two plates that meet one is left; an end given here is what would be left of it. */
export const facesOf = {
  firebox: { ...FACES, ...ENDS.firebox },
  chamber: { ...FACES, ...ENDS.chamber },
  upright: FACES,
};

const LINING = (part: PartName) => ({
  material: choice(Object.keys(LININGS), 'Brick, board or castable.', { also: LINING_ALIASES }),
  thickness: quantity(range('length', '0 in', '6 in'), 'Thickness; 0 in equals no lining.', {
    examples: ['1-1/4 in', '30 mm'],
  }),
  faces: names(Object.keys(facesOf[part]), 'Faces that it lines. Default: all.'),
  emissivity: optional(
    quantity(
      EMISSIVITY,
      'Emissivity of its hot face, burned clean: firebrick 0.75 at 1000 °C (tables of infrared instruments). Default: that of the sooted inside.',
      { print: { bare: true } },
    ),
  ),
});

/** Brick or board inside the steel, laid tight against it. */
export function lining(part: PartName) {
  const rows = LINING(part);
  return optional(
    block('Brick or board inside the steel, laid tight against it.', rows, (fields: Fields, around) => {
      const own = readRows(rows, fields, around);
      const row = LININGS[own.material];
      if (row.fromMemory) {
        fields.reading.warnings.push({
          code: 'lining-figures-estimated',
          message: `The figures of ${own.material} are an estimate: none were found in print. Firebrick and insulating firebrick have them.`,
          where: fields.path.join('.'),
          value: null,
          limits: { unit: 'K', source: row.source },
        });
      }
      return own;
    }),
  );
}

const SHIELD = (part: PartName) => ({
  plate: plate('Sheet of the shield.', { examples: ['16 ga', '11 ga'] }),
  gap: quantity(range('length', '1/8 in', '6 in'), 'Air gap between it and what it shields.', { examples: ['1 in'] }),
  faces: names(Object.keys(facesOf[part]), 'Faces that it stands before. Default: all.'),
  edges: choice(
    ['open', 'closed'],
    'open: air rises through the gap from below; closed: the gap is shut round its edges.',
    {
      default: 'open',
    },
  ),
});

/** A sheet on spacers outside the wall. */
export const shield = (part: PartName) =>
  optional(block('Heat shield: a sheet with an air gap outside the wall.', SHIELD(part)));
