/**
 * Designs that are known to be answered wrongly, each with the cause as far as it was found. A miss stays a
 * miss: it is listed here, in the open, and the run fails as well when a listed one no longer misses, so that it is taken off.
 */
export const MISSES: Readonly<Record<number, { kinds: readonly string[]; why: string }>> = {
  1855: {
    kinds: ['the warm-up ends on another fire than the one that holds'],
    why: 'back-drafting through its upright and its second intake, with three ways of flowing while it is held: the warm-up tips from one to another after the first reading and stays with 24.5 kW, the solver has one with 25.8 kW and tells of one with 15.3 kW; the warnings say that it back-drafts, that its draft swings and that it has another state',
  },
  3007: {
    kinds: ['firebox.plate shortens soaking'],
    why: 'less fire reads more in it at first, so that the fire that holds the target falls to nothing after the first reading and comes back at full: soaked after 2,668 s with 3/16 in, 2,731 s with 7/32 in, 2,417 s with 1/4 in, by how that goes to and fro, not by its plate',
  },
  3009: {
    kinds: ['more fire reads later'],
    why: 'air limits its fire: 1 % more asked is 0.004 % more burned, and the time steps leave 0.2 % of the time to the first reading open, 1,978.3 and 1,981.9 s',
  },
};
