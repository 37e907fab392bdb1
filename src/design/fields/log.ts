/** How a pit's own logs are read. */
import * as z from 'zod';
import { range } from '../ranges.js';
import { block } from './blocks.js';
import { quantity } from './field.js';
import { type Field } from './fieldType.js';

/**
 * How far a probe may read off all the time, standard deviation [K]: 2 °F. An estimate; thermocouples of the usual kind
 * and kitchen probes are sold to about twice that (common practice, no source).
 */
export const PROBE_ACCURACY = (2 * 5) / 9;

const columns: Field<Record<string, string>> = {
  zod: z
    .record(z.string(), z.string())
    .meta({
      description:
        'A logger’s own headers, each with what the column holds: middle [°F], firebox steel [°C], wood [lb], or ignore.',
    })
    .optional(),
  read: (fields, key) => fields.child(key).texts(),
};

export const log = block('How logs of cooks on this pit are read.', {
  columns,
  accuracy: quantity(
    range('temperatureDifference', '0 °F', '20 °F'),
    'How far a probe may read off all the time, standard deviation.',
    { default: '2 °F', guess: true },
  ),
});
