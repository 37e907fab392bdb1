/** Options of one order: other ways to build the pit of a design, each a name and the fields that it changes. */
import * as z from 'zod';
import { block, list } from './blocks.js';
import { text } from './field.js';
import { type Field } from './fieldType.js';

/** Beside the design as drawn; more make no table that anybody reads. */
const MOST_OPTIONS = 23;

const changes: Field<Record<string, unknown>> = {
  zod: z.record(z.string(), z.unknown()).meta({
    description:
      'Fields by their paths, each with what stands there instead: chamber.plate: 3/16 in. all.plate is that of every part; none takes a field away.',
  }),
  read: (fields, key) => (fields.raw(key) ?? {}) as Record<string, unknown>,
};

const option = block('A way to build it.', { name: text('What it is called in tables, charts and sheets.'), changes });

export const options = list(option, 1, MOST_OPTIONS, 'Other ways to build it, held against the design as drawn.');
