/**
 * Designs that are known to be answered wrongly, each with the cause as far as it was found. A miss stays a
 * miss: it is listed here, in the open, and the run fails as well when a listed one no longer misses, so that it is taken off.
 */
export const MISSES: Readonly<Record<number, { kinds: readonly string[]; why: string }>> = {
  254: {
    kinds: ['the pit never comes to the full fire told'],
    why: 'its throat lies under its intake and its second stack lets air down: lit cold it chokes, and swings between 1.6 and 9 kW for good; the warning says that the draft has not settled after a day, and that the state given may never come about',
  },
  1819: {
    kinds: ['hold fire above full without its warning'],
    why: 'back-drafts through two stacks: the state told of the full fire burns 12.8 kW of the 16.4 kW asked for, the one that holds 13.7 kW on another way of flowing; both are told, with the fires of the other ways, but not that the one burns more than the other',
  },
  1855: {
    kinds: ['the warm-up ends on another fire than the one that holds'],
    why: 'back-drafting through its upright and its second intake, with three ways of flowing while it is held: the warm-up tips from one to another after the first reading and stays with 24.5 kW, the solver has one with 25.8 kW and tells of one with 15.3 kW; the warnings say that it back-drafts, that its draft swings and that it has another state',
  },
  3009: {
    kinds: ['more fire reads later'],
    why: 'air limits its fire: 1 % more asked is 0.004 % more burned, and the time steps leave 0.2 % of the time to the first reading open, 1,978.3 and 1,981.9 s',
  },
  3024: {
    kinds: [
      'all.plate shortens gauge time',
      'a taller stack has less draft, steady',
      'a taller stack has less draft, assumed',
    ],
    why: 'back-drafts whatever its plate; with 5/16 in, and with twice its stack, it lies on another of several ways of flowing, which holds on 25.0 kW in place of 13.6, and the warning of another state stands there',
  },
  3027: {
    kinds: [
      'more fire reads later',
      'half a percent of fire moves the gauge time by more than 4.0 %',
      'the gauge time bends between neighbouring fires',
    ],
    why: 'two stacks and an upright with three ways of flowing, of which the first minute after the match chooses one: from 250 to 345 kBTU/h it goes to and fro, by the steps of the run and of its replay alike; each run tells of its other states',
  },
  3039: {
    kinds: ['firebox.plate shortens gauge time', 'firebox.plate shortens soaking', 'more fire reads later'],
    why: 'its throat lies under its intakes: the fire chokes for hours until the draft comes, and falls back once more with 1/4 in but not with 5/16 in, 21,103 and 10,362 s to the target; chokes-at-first is told of both',
  },
  3063: {
    kinds: ['all.plate shortens soaking', 'firebox.plate shortens soaking', 'firebox.insulation raises the hold fire'],
    why: 'back-drafts, air limits its fire and its draft swings after the first reading: soaking follows the swings and not the plate, and the bare box holds on another state than the wrapped one, 16.3 and 19.7 kW',
  },
};
