import { starterDesign } from '../../design/starter.js';
import { openSink } from '../output.js';

/** A commented design that estimates as it is, to be changed line by line. */
export async function run(options: { output?: string }): Promise<void> {
  const out = openSink(options.output ?? '-');
  await out.write(starterDesign());
}
