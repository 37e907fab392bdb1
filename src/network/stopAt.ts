import type { Moment } from './stride.js';

/**
 * Something to stop at: what is left until it happens, above zero before; the step that goes past zero is shortened.
 */
export interface StopAt {
  left: (moment: Moment) => number;
  /** how far past zero the step may end, besides the closeness in time; what jumps is only landed on in time */
  within: number;
  /** a step may also end so long after it happened, where it need not be landed on [s] */
  grace?: number;
}

/** How closely in time the end of a step is laid on an event [s]. */
export const EVENT_TIME = 0.2;

/** No step shorter than this is tried [s]. */
export const SHORTEST = 1e-3;
