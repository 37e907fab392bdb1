/** How a pit's own logs are read. */
import type { LogSettings } from './design.js';
import type { Fields } from './reading.js';

/**
 * How far a probe may read off all the time, standard deviation [K]: 2 °F. An estimate; thermocouples of the usual kind and
 * kitchen probes are sold to about twice that (common practice, no source).
 */
export const PROBE_ACCURACY = (2 * 5) / 9;

export function resolveLog(log: Fields): LogSettings {
  return { columns: log.child('columns').texts(), accuracy: log.optional('accuracy', 'accuracy', '2 °F') };
}
