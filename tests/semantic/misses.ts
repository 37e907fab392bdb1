/**
 * Designs that are known to be answered wrongly, each with the cause as far as it was found. A miss stays a miss: it is
 * listed here, in the open, and the run fails as well when a listed one no longer misses, so that it is taken off.
 */
export const MISSES: Readonly<Record<number, { kinds: readonly string[]; why: string }>> = {
  254: {
    kinds: ['the pit never comes to the full fire told', 'a day later: the replay reads otherwise'],
    why: 'its throat lies under its intake and its second stack lets air down: lit cold it chokes, and swings between 1.6 and 9 kW for good; the warning says that the draft has not settled after a day, and that the state given may never come about',
  },
  1819: {
    kinds: ['the full fire told is another way of flowing'],
    why: 'back-drafts through two stacks: kept on, its full fire comes to burn 13.1 kW, of 16.4 kW when it first read the target, and 13.8 kW hold it; that it falls off is told, with both, and so is the other way',
  },
  1855: {
    kinds: ['the warm-up ends on another fire than the one that holds'],
    why: 'lit cold its gas runs backwards through stack and throat once it holds its target, for two hours, and then turns: the state told is the one of those hours, 22.7 kW, the other, 13.4 kW, is told beside it, with back-draft and draft-swings',
  },
  3063: {
    kinds: ['all.plate shortens soaking', 'firebox.plate shortens soaking'],
    why: 'back-drafts, air limits its fire and its draft swings after the first reading: soaking follows the swings and not the plate',
  },
};
