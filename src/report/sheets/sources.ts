import type { Design } from '../../design/design.js';
import { methodsOf } from '../../words/methods.js';

/** What the measured fires are, of which none was used to choose a number. */
const MEASURED =
  'Measured fires it is held against: Steckler, Quintiere & Rinkinen, NBSIR 82-2520 (1982), vent flows; the thin steel room of SP Sweden (Sjostrom & Wickstrom).';

/** What a design's numbers rest on, a line a topic, for whoever wants to check them. */
export function sourcesOf(design: Design): string[] {
  const topics = new Map<string, string[]>();
  for (const { topic, of, source } of methodsOf(design)) {
    topics.set(topic, [...(topics.get(topic) ?? []), `${of}, ${source}`]);
  }
  return [...[...topics].map(([topic, lines]) => `${topic}: ${lines.join('; ')}.`), MEASURED];
}
