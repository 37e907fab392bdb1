/**
 * Designs that are known to be answered wrongly, each with the cause as far as it was found. A miss stays a
 * miss: it is listed here, in the open, and the run fails as well when a listed one no longer misses, so that it is taken off.
 */
export const MISSES: Readonly<Record<number, { kinds: readonly string[]; why: string }>> = {
  875: {
    kinds: ['the pit never comes to the full fire told'],
    why: 'back-drafting and starved, two stacks and an upright, meat and a pan in it: lit cold it comes to 6.69 kW; the march gets within 0.03 W of that state and Newton does not converge there, so that none counts as found. The full fire told, 7.73 kW, is that of the state that the solver has; the warning gives the reading and the fire after a day, and says that the state given may never come about',
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
