/** What a builder asks of the sizes that are chosen for a pit: what stays, how high a stack may be, what is on hand. */
import * as z from 'zod';
import { range } from '../ranges.js';
import { readTube, TUBE_FORM, type Tube } from '../tubeText.js';
import { block, optional } from './blocks.js';
import { choice, names, quantities, quantity } from './field.js';
import { type Field, type Soft } from './fieldType.js';
import { HEIGHT } from './shared.js';

const OVER = range('length', '-48 in', '30 ft');
const MOST_TUBES = 24;
const MOST_HEIGHTS = 6;

/** What a size may leave as it is drawn. */
export const KEPT = ['intakes', 'throat', 'stack'] as const;
/** What a choice of sizes may have to leave as it is drawn. */
export type Kept = (typeof KEPT)[number];

/** Tubes and pipes by their sizes; a wrong one is left out and told. */
const onHand: Field<Tube[]> = {
  zod: z
    .array(z.string())
    .min(1)
    .max(MOST_TUBES)
    .meta({
      description:
        'Tubes and pipes to choose from, round or square, each with its wall, and its length if it is a piece. Default: what any supplier has.',
      examples: [[TUBE_FORM, '6 in x 4 in square tube 3/16 in, 50 in long', '6 in pipe, standard wall']],
    }),
  read: (fields, key, _, around) => {
    const raw = fields.raw(key);
    const steel = (around.stacks as Soft[] | undefined)?.[0]?.steel === 'stainless' ? 'stainless' : 'carbon';
    return (Array.isArray(raw) ? raw : []).flatMap((each: unknown, i) => {
      if (typeof each !== 'string') return [];
      const read = readTube(each, steel, fields.reading.otherUnits);
      if (read.ok) return [read.tube];
      const { code, message, allowed, nearest } = read;
      fields.reading.fault([...fields.path, key, i], { code, message, allowed, nearest, example: TUBE_FORM });
      return [];
    });
  },
};

const over = (words: string) => optional(quantity(OVER, words, { examples: ['36 in'] }));

export const size = block('What is asked of intakes, throat and stack when their sizes are chosen.', {
  keep: names(KEPT, 'What stays as it is drawn: intakes, throat, stack. Default: nothing.', 'none'),
  stack: optional(
    block('The stack to choose.', {
      least: over(
        'By how much its top stands over the lid, at least. Default: 24 in, and 6 ft above the ground (common practice, no source).',
      ),
      most: over('By how much its top stands over the lid, at most.'),
      over: choice(
        ['lid', 'head', 'ground'],
        'What least and most count from: lid, the roof of its part; head, 6 ft above the ground; ground.',
        { default: 'lid' },
      ),
      shapes: optional(names(['round', 'square'], 'Tubes to choose from. Default: as on hand, or else as drawn.')),
    }),
  ),
  onHand: optional(onHand),
  heights: optional(
    block('Other heights above the ground to hold against the size that is chosen.', {
      base: quantities(HEIGHT, 'Of the stack’s foot; its top stays.', MOST_HEIGHTS),
      throat: quantities(HEIGHT, 'Of the middle of the throat.', MOST_HEIGHTS),
    }),
  ),
});
