import { it } from 'vitest';
import { estimateDamaged } from './damagedFiles.js';

it('many damaged design files give a result, or a clear message; never a stack', () => estimateDamaged(4, 40));
