import { describe, it } from 'vitest';
import { shareOf } from '../support/share.js';
import { soaking, sweepDesign } from './sweeps.js';

const DESIGNS = 60;

describe('one field in steps, all else as it is', () => {
  const seeds = soaking();
  // the everyday run has the first
  seeds.next();
  for (let i = 1; i < shareOf(DESIGNS); i++) {
    it(`design ${i + 1}`, { timeout: 600_000 }, () => sweepDesign(seeds.next().value as number));
  }
});
