import type { FittedLog } from '../design/fitted.js';

/** Logs named one by one. */
const NAMED = 3;

/** Logs by their names: `yard-cook.csv and fall.csv`; of a long list the first few and how many more there are. */
export function logNames(logs: readonly Pick<FittedLog, 'name'>[]): string {
  const names = logs.map(({ name }) => name);
  const shown = names.length > NAMED + 1 ? [...names.slice(0, NAMED), `${names.length - NAMED} more`] : names;
  return shown.length > 1 ? `${shown.slice(0, -1).join(', ')} and ${shown[shown.length - 1]}` : (shown[0] ?? '');
}
