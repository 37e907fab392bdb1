import { describe } from 'vitest';
import { inBatches, shareOf } from '../support/share.js';
import { ALL, EVERYDAY, FIRST, replayAll } from './replayed.js';

describe('many warm-ups stepped once more by another way', () => {
  inBatches(FIRST + EVERYDAY, FIRST + shareOf(ALL), 8, replayAll);
});
