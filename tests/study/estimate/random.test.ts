import { describe } from 'vitest';
import { EVERYDAY, solveRandomDesigns } from '../../support/randomRuns.js';
import { inBatches } from '../../support/share.js';

describe('random designs', () => inBatches(0, EVERYDAY, 10, solveRandomDesigns));
