import { plainText } from './plainText.js';
import { unknownLabel } from './unknownLabels.js';
import type { Design } from '../design/design.js';
import type { FittedLog } from '../design/fitted.js';
import { listed } from '../units/listed.js';
import { format, type UnitSystem } from '../units/index.js';

/** Fields named one by one, and logs. */
const FIELDS = 5;
const LOGS = 3;

/**
 * What measured cooks a design's numbers rest on, in a sentence; null where it names none.
 *
 * @param brief logs alone, without what was fitted to them
 */
export function restsOn({ fitted }: Design, system: UnitSystem, brief = false): string | null {
  if (!fitted) return null;
  const used = fitted.values.filter(({ own }) => own !== null).map(({ path }) => unknownLabel(path));
  const logs = logsText(fitted.logs, system);
  const cooks = fitted.logs.length === 1 ? 'a measured cook' : `${fitted.logs.length} measured cooks`;
  if (used.length === 0) return `Names ${cooks}, ${logs}, but has nothing that was fitted there.`;
  return brief ? `Rests on ${cooks}: ${logs}.` : `Rests on ${cooks}: ${listed(used, FIELDS)} fitted to ${logs}.`;
}

/** The same for designs side by side: once where all rest on the same, else with the labels of those that do. */
export function restsOnEach(
  options: readonly { label: string; result: { design: Design } }[],
  system: UnitSystem,
): string[] {
  const labels = new Map<string | null, string[]>();
  for (const { label, result } of options) {
    const text = restsOn(result.design, system);
    labels.set(text, [...(labels.get(text) ?? []), plainText(label, 40)]);
  }
  if (labels.size <= 1) return [...labels.keys()].filter((text) => text !== null);
  return [...labels].map(
    ([text, own]) => `${own.join('; ')}: ${text ?? 'Rests on no measured cook, but on our estimates alone.'}`,
  );
}

function logsText(logs: readonly FittedLog[], system: UnitSystem): string {
  return listed(
    logs.map((log) => `${plainText(log.name, 60)} (${logWords(log, system)})`),
    LOGS,
  );
}

function logWords({ fitted_s, design, error_K }: FittedLog, system: UnitSystem): string {
  const error =
    error_K === null
      ? 'its error outside the fitted part is not known'
      : `${format('temperatureDifference', error_K, system, { digits: 2 })} off where it was not fitted`;
  return `${format('time', fitted_s, system)} on '${plainText(design, 60)}'; ${error}`;
}
