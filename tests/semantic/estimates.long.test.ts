import { describe } from 'vitest';
import { inBatches, shareOf } from '../support/share.js';
import { ALL, ALWAYS, askEstimates, EVERYDAY } from './estimates.js';

describe('what an estimate says of many random designs means what it says', () => {
  inBatches(EVERYDAY, ALWAYS + shareOf(ALL - ALWAYS), 20, askEstimates);
});
