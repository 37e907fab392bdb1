import { describe } from 'vitest';
import { inBatches } from '../support/share.js';
import { EVERYDAY, FIRST, replayAll } from './replayed.js';

describe('a warm-up stepped once more by another way', () => {
  inBatches(FIRST, FIRST + EVERYDAY, EVERYDAY, replayAll);
});
