/**
 * Designs that are known to be answered wrongly, each with the cause as far as it was found. A miss stays a
 * miss: it is listed here, in the open, and the run fails as well when a listed one no longer misses, so that it is taken off.
 */
export const MISSES: Readonly<Record<number, { kinds: readonly string[]; why: string }>> = {
  254: {
    kinds: ['the pit never comes to the full fire told'],
    why: 'its throat lies under its intake and its second stack lets air down: lit cold it chokes, and swings between 1.6 and 9 kW for good; the warning says that the draft has not settled after a day, and that the state given may never come about',
  },
  550: {
    kinds: [
      "'only just large enough' of a fire far larger than the hold fire",
      'the warm-up ends on another fire than the one that holds',
    ],
    why: 'back-drafts, and after the first reading its fire keeps changing between 11.8 and 13 kW: it has not soaked within a day, which is told; the cause was not found',
  },
  671: {
    kinds: [
      'the warm-up ends on another fire than the full one',
      'the warm-up ends on another reading than the full one',
    ],
    why: 'air limits its fire: after a day 11.0 kW burn in place of the 12.2 kW told of its full fire, which does not reach the target either way; the cause was not found',
  },
  1819: {
    kinds: ['hold fire above full without its warning'],
    why: 'back-drafts through two stacks: the state told of the full fire burns 12.8 kW of the 16.4 kW asked for, the one that holds 13.7 kW on another way of flowing; both are told, with the fires of the other ways, but not that the one burns more than the other',
  },
  3003: {
    kinds: [
      'all.plate shortens gauge time',
      'all.plate shortens soaking',
      'chamber.plate shortens gauge time',
      'firebox.plate shortens gauge time',
    ],
    why: 'back-drafts under its full fire, which air limits, and has other states, which is told; 13,101 s to the target with 3/16 in and 10,284 s with 1/4 in; the cause was not found',
  },
  3039: {
    kinds: ['more fire reads later'],
    why: 'its throat lies under its intakes: the fire chokes for two hours until the draft comes, and 1 % of fire moves that by 0.3 %; chokes-at-first is told',
  },
  3063: {
    kinds: ['all.plate shortens soaking', 'firebox.plate shortens soaking', 'firebox.insulation raises the hold fire'],
    why: 'back-drafts, air limits its fire and its draft swings after the first reading: soaking follows the swings and not the plate, and the bare box holds on another state than the wrapped one, 16.3 and 19.7 kW',
  },
};
