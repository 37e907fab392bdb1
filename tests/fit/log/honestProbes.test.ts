import { describe, it } from 'vitest';
import { EVERYDAY } from './honestLogs.js';
import { expectLeftAlone } from './leftAlone.js';

describe('honest probes', () => {
  it.each(Array.from({ length: EVERYDAY }, (_, i) => i))('are left as they are, seed %i', expectLeftAlone);
});
