/** Shape of how a pit's own logs are read. */
import * as z from 'zod';
import { quantity } from './schemaFields.js';

export const log = z
  .strictObject({
    columns: z
      .record(z.string(), z.string())
      .meta({
        description:
          'A logger’s own headers, each with what the column holds: middle [°F], firebox steel [°C], wood [lb], or ignore.',
      })
      .optional(),
    accuracy: quantity(
      'accuracy',
      'How far a probe may read off all the time, standard deviation (estimate, default 2 °F).',
    ).optional(),
  })
  .meta({ description: 'How logs of cooks on this pit are read.' });
