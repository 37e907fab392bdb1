import { describe, expect, it } from 'vitest';
import { logOf } from './logTexts.js';
import { PROBES, honestLog } from './honestLogs.js';

describe('honest probes', () => {
  it.each(Array.from({ length: 60 }, (_, i) => i))('are left as they are, seed %i', (seed) => {
    const log = logOf(honestLog(seed));
    expect(log.notes).toEqual([]);
    expect(log.channels).toHaveLength(PROBES.length);
  });
});
