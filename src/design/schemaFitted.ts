/** Shape of what measured cooks have told: the block in a design, and the file that holds it. */
import * as z from 'zod';
import { FITTABLE } from './estimateFields.js';
import { plain, quantity } from './schemaFields.js';

const log = z
  .strictObject({
    name: z.string().min(1).max(200).meta({ description: 'File name of the log.' }),
    hash: z
      .string()
      .regex(/^[0-9a-f]{16}$/)
      .meta({ description: 'First 16 hex digits of the SHA-256 of its bytes, in quotes: it must not count twice.' }),
    design: z.string().max(200).meta({ description: 'Name of the design that it was measured on.' }),
    fitted: quantity('logTime', 'How much of it was fitted.'),
    readings: z.number().meta({ description: 'Temperature readings in that.' }),
    error: quantity(
      'logError',
      'Root mean square error on the part that was not fitted; left out where nothing was held back.',
    ).optional(),
  })
  .meta({ description: 'A log that the values rest on.' });

/** A value in the unit of its field, whichever that is. */
const value = (description: string) => z.union([z.number(), z.string()]).meta({ description });

const fittedValue = z
  .strictObject({
    field: z.string().meta({ description: 'The field of a design file that it is of.', examples: [...FITTABLE] }),
    is: value('The value itself, for a field that is off by an amount.').optional(),
    times: plain('factor', 'A factor on what a design gives, for a field that is off by a factor.').optional(),
    low: value('Low end of its 90 % interval.'),
    high: value('High end of its 90 % interval.'),
    was: value('What the design had that the log was measured on.'),
  })
  .meta({ description: 'One fitted value.' });

export const fittedBlock = z
  .strictObject({
    logs: z.array(log).min(1).max(100).meta({ description: 'The logs.' }),
    values: z.array(fittedValue).min(1).max(30).meta({ description: 'What they told.' }),
    correlation: z
      .array(z.array(z.number()).max(30))
      .max(30)
      .meta({ description: 'Correlation of the values with each other, a row a value, in their order.' }),
  })
  .meta({ description: 'What measured cooks have told.' });

export const fitted = z.union([z.string(), fittedBlock]).meta({
  description: 'What measured cooks have told: the name of a fitted file, or the block itself.',
});

/** A fitted file. */
export const fittedFileSchema = z.strictObject({ fitted: fittedBlock });
