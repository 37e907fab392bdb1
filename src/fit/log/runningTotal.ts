import { median } from 'simple-statistics';

/** The first load may be so many later pieces at most, and what is added later comes to so many of the first. */
const FIRST = 8;
const LATER = 1.2;
/** After a reset it starts again with about a piece: up to so many of the usual. */
const RESTART = 2.5;
const LEAST_RISES = 3;
const MOST_RESETS = 1 / 3;

/**
 * Whether weights, one after the other, look like a scale that adds up rather than like pieces: they rise by about a
 * piece each time, or stay, and fall only where somebody set it back. Pieces of one size hardly rise at all; pieces
 * that happen to grow don't double.
 *
 * @param masses those that are not nothing, in the order of time
 */
export function looksLikeRunningTotal(masses: readonly number[]): boolean {
  const rises: number[] = [];
  const restarts: number[] = [];
  for (let i = 1; i < masses.length; i++) {
    const step = masses[i] - masses[i - 1];
    if (step > 0) rises.push(step);
    else if (step < 0) restarts.push(masses[i]);
  }
  if (rises.length < LEAST_RISES || restarts.length > MOST_RESETS * rises.length) return false;
  const usual = median(rises);
  const top = masses.reduce((most, mass) => Math.max(most, mass), 0);
  return (
    masses[0] <= FIRST * usual &&
    top - masses[0] >= LATER * masses[0] &&
    restarts.every((mass) => mass <= RESTART * usual)
  );
}
