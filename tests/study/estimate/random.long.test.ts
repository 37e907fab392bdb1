import { describe } from 'vitest';
import { ALL, EVERYDAY, solveRandomDesigns } from '../../support/randomRuns.js';
import { inBatches, shareOf } from '../../support/share.js';

describe('many random designs', () => inBatches(EVERYDAY, shareOf(ALL), 20, solveRandomDesigns));
