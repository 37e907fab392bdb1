/**
 * The JSON Schema of design files, for editors that complete and check; examples/pitwright.schema.json is this,
 * printed.
 */
import * as z from 'zod';
import { designSchema } from './schema.js';

export function designJsonSchema(): object {
  return z.toJSONSchema(designSchema, { io: 'input' });
}
