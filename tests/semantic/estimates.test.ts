import { describe } from 'vitest';
import { inBatches } from '../support/share.js';
import { askEstimates, EVERYDAY } from './estimates.js';

describe('what an estimate says of random designs means what it says', () => {
  inBatches(0, EVERYDAY, 10, askEstimates);
});
