/** Where a warning holds, as a machine reads it. */
import type { Warning } from '../study/estimate/result.js';

/**
 * Place and fire in one.
 *
 * @example writtenWhere({ where: 'throat', fire: 'hold fire' }) gives 'throat, hold fire'
 */
export function writtenWhere({ where, fire }: Pick<Warning, 'where' | 'fire'>): string {
  return [where, fire].filter(Boolean).join(', ');
}

/** What counts as one place under whichever fire; of the pit as a whole each fire is told by itself. */
export function placeAlone({ where, fire }: Pick<Warning, 'where' | 'fire'>): string {
  return where === '' ? (fire ?? '') : where;
}
