import { SPECIMENS } from '../../design/specimens.js';
import { starterDesign } from '../../design/starter.js';
import { nearestName } from '../../units/index.js';
import { exit, Stop } from '../exit.js';
import { openSink } from '../output.js';

/** A commented design that estimates as it is, to be changed line by line. */
export async function run(options: { output?: string; with?: string }): Promise<void> {
  const known = Object.keys(SPECIMENS);
  const things = options.with?.split(',').map((each) => each.trim()) ?? [];
  const unknown = things.find((each) => !known.includes(each));
  if (unknown !== undefined) {
    const nearest = nearestName(unknown, known);
    const meant = nearest === undefined ? '' : `; did you mean '${nearest}'?`;
    throw new Stop(exit.wrongUsage, `--with '${unknown}' has no example; allowed: ${known.join(', ')}${meant}`);
  }
  const out = openSink(options.output ?? '-');
  await out.write(starterDesign(things));
}
