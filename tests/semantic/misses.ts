/**
 * Designs that are known to be answered wrongly, each with the cause as far as it was found. A miss stays a
 * miss: it is listed here, in the open, and the run fails as well when a listed one no longer misses, so that it is taken off.
 */
export const MISSES: Readonly<Record<number, { kinds: readonly string[]; why: string }>> = {
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
    why: 'two stacks and an upright: 1,430 s with 0.99 of its fire, 7,278 s from 0.995 on, most likely by another way of flowing; not looked into',
  },
  3039: {
    kinds: ['firebox.plate shortens gauge time', 'firebox.plate shortens soaking', 'more fire reads later'],
    why: '10,362 s to the target with 5/16 in and 21,103 s with 1/4 in, and neighbouring fires leave 0.4 % of the time open; the cause was not found',
  },
  3063: {
    kinds: ['all.plate shortens soaking', 'firebox.plate shortens soaking', 'firebox.insulation raises the hold fire'],
    why: 'back-drafts, air limits its fire and its draft swings after the first reading: soaking follows the swings and not the plate, and the bare box holds on another state than the wrapped one, 16.3 and 19.7 kW',
  },
  3067: {
    kinds: ['all.plate shortens soaking', 'upright.insulation raises the hold fire'],
    why: 'soaked 5 % sooner with 1/4 in than with 1/8 in, and 1/2 in of wool on the upright raises the hold fire by 0.8 %; the cause was not found',
  },
  3074: {
    kinds: ['firebox.plate shortens gauge time', 'firebox.plate shortens soaking'],
    why: '1.4 % sooner with 1/2 in than with 1/8 in of firebox, after more than four hours under a fire that hardly reaches the target; the cause was not found',
  },
};
