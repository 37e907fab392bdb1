import { it } from 'vitest';
import { estimateDamaged } from './damagedFiles.js';

it('damaged design files give a result, or a clear message; never a stack', () => estimateDamaged(1, 3));
