/**
 * The shape of a design file: which fields exist, which are required, which names may stand in them. The JSON Schema
 * that editors use is made from it.
 */
import { IN_FILE } from './fields.js';
import { objectOf, optional } from './fields/blocks.js';
import { fitted } from './fields/fitted.js';
import { options } from './fields/options.js';

export const designSchema = objectOf({ ...IN_FILE, options: optional(options), fitted }).meta({
  title: 'pitwright design',
  description: 'A wood-fired pit, as a builder describes it.',
});
