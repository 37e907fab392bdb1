import { describe } from 'vitest';
import { inBatches, shareOf } from '../support/share.js';
import { ALL, askEstimates, EVERYDAY } from './estimates.js';

describe('what an estimate says of many random designs means what it says', () => {
  inBatches(EVERYDAY, EVERYDAY + shareOf(ALL - EVERYDAY), 20, askEstimates);
});
