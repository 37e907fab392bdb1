import { designJsonSchema } from '../../design/jsonSchema.js';
import { openSink } from '../output.js';

/** The JSON Schema of design files as they are written, for editors that complete and check. */
export async function run(options: { output?: string }): Promise<void> {
  const out = openSink(options.output ?? '-');
  await out.write(`${JSON.stringify(designJsonSchema(), null, 2)}\n`);
}
