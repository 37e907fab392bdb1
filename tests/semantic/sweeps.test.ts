import { describe, it } from 'vitest';
import { soaking, sweepDesign } from './sweeps.js';

describe('one field in steps, all else as it is', () => {
  it('moves the results the way that it must', { timeout: 240_000 }, () => {
    sweepDesign(soaking().next().value as number);
  });
});
