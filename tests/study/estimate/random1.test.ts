import { describe } from 'vitest';
import { solveRandomDesigns } from '../../support/randomRuns.js';

// two files, so that two workers share the two thousand
describe('random designs, part 1', () => solveRandomDesigns(0, 1000));
