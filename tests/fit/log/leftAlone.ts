import { expect } from 'vitest';
import { logOf } from './logTexts.js';
import { PROBES, honestLog } from './honestLogs.js';

/** Nothing is found wrong with an honest log. */
export function expectLeftAlone(seed: number): void {
  const log = logOf(honestLog(seed));
  expect(log.notes).toEqual([]);
  expect(log.channels).toHaveLength(PROBES.length);
}
