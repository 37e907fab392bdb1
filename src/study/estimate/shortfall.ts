/** What a design falls short of: the target it never reaches, or the soaking that never comes. */
import { gaugeReading } from './gauge.js';
import { format, formatTime, type UnitSystem } from '../../units/index.js';
import type { EstimateResult } from './result.js';

/**
 * - no-fire: nothing burns, or its draft never settles
 * - not-held: no fire holds the target
 * - not-reached: the fire it is given is too small for it
 * - not-followed: the warm-up broke off before it
 * - not-soaked: the thermometer reads the target, and the steel is not soaked within the time computed
 */
export type ShortfallCode = 'no-fire' | 'not-held' | 'not-reached' | 'not-followed' | 'not-soaked';

/** What keeps a pit from its target. */
export interface Shortfall {
  code: ShortfallCode;
  /** the most that the thermometer gets to [K]; null where that is above the target, or not known */
  reaches_K: number | null;
}

/** Null: the design does all that is asked of it, as far as it was computed. */
export function shortfallOf({ design, assumed, steady, warmUp, warnings }: EstimateResult): Shortfall | null {
  const { target } = design.fire;
  if (!assumed || warnings.some(({ code }) => code === 'no-air-path')) return { code: 'no-fire', reaches_K: null };
  const settles = gaugeReading(assumed, design.gauge);
  const below = settles !== null && settles <= target ? settles : null;
  if (!steady) {
    // the most that any fire brings it to, where that was looked for
    const most = warnings.find(({ code }) => code === 'target-not-reached')?.value ?? below;
    return { code: 'not-held', reaches_K: most !== null && most < target ? most : null };
  }
  if (!warmUp) return below === null ? null : { code: 'not-reached', reaches_K: below };
  if (warmUp.gauge_s === null) {
    return below === null ? { code: 'not-followed', reaches_K: null } : { code: 'not-reached', reaches_K: below };
  }
  return warmUp.soaked_s === null ? { code: 'not-soaked', reaches_K: null } : null;
}

/**
 * One clause that goes behind the name of a design: `never reads 250 °F: its full fire of ... brings it to 231 °F`.
 *
 * @param warned do warnings stand beside it, to which it may point? (default: they do)
 */
export function shortfallWords(
  { code, reaches_K }: Shortfall,
  result: EstimateResult,
  system: UnitSystem,
  warned = true,
): string {
  const why = warned ? '; the warnings say why' : '';
  const { design, assumed, steady, warmUp } = result;
  const target = format('temperature', design.fire.target, system);
  const reads = reaches_K === null ? '' : format('temperature', reaches_K, system);
  const most = reads === target ? 'just short of it' : reads;
  const full = `its full fire of ${format('power', assumed?.fire_W ?? design.fire.heat, system)}`;
  switch (code) {
    case 'no-fire':
      return `never reads ${target}: it can't burn its fire${why}`;
    case 'not-held':
      return most === ''
        ? `has no fire that holds ${target}${why}`
        : `never reads ${target}: no fire that its air allows is enough; ${most} is the most it gets to`;
    case 'not-reached':
      return (
        `never reads ${target}: ${full} brings it to ${most}` +
        (steady
          ? `; it would take ${format('power', steady.fire_W, system)} to hold, and what is said of holding is said of that fire`
          : '')
      );
    case 'not-followed':
      return `may never read ${target}: its warm-up could not be followed that far${why}`;
    case 'not-soaked':
      return `reads ${target} after ${formatTime(warmUp!.gauge_s!)} and is never soaked within the time computed`;
  }
}
