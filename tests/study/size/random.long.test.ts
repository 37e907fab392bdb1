import { describe, it } from 'vitest';
import { shareOf } from '../../support/share.js';
import { askedDesign, expectSound } from './randomAsked.js';

/** The seed before is for every day. */
const [FROM, ALL] = [2, 400];

describe('sizes of random pits under random demands', () => {
  for (let seed = FROM; seed < FROM + shareOf(ALL); seed++) {
    it(`of seed ${seed} are sound, and clean when they are estimated`, { timeout: 600_000 }, async () => {
      const text = askedDesign(seed);
      if (text !== null) await expectSound(text);
    });
  }
});
