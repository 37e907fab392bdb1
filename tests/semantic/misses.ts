/**
 * Designs that are known to be answered wrongly, each with the cause as far as it was found. A miss stays a
 * miss: it is listed here, in the open, and the run fails as well when a listed one no longer misses, so that it is taken off.
 */
export const MISSES: Readonly<Record<number, { kinds: readonly string[]; why: string }>> = {
  47: {
    kinds: ['the warm-up ends on another reading than the full one'],
    why: 'reverse flow into an upright, lined: lit cold its gas stays on a choked way for a day, 388 K on the thermometer; no steady state is found near it, so that the full fire is told by the hot state that the solver has, 635 K, with nothing said of the other',
  },
};
