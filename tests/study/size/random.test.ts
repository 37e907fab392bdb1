import { describe, expect, it } from 'vitest';
import { askedDesign, expectSound } from './randomAsked.js';

/** The first seed of a design of which something can be asked. */
const SEEDS = [1];

describe('sizes of random pits under random demands', () => {
  it.each(SEEDS)('of seed %i are sound, and clean when they are estimated', { timeout: 300_000 }, async (seed) => {
    const text = askedDesign(seed);
    expect(text).not.toBeNull();
    await expectSound(text!);
  });
});
