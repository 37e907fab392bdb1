import { describe, expect, it } from 'vitest';
import { sayWhatCannotBe } from '../../src/cli/commands/estimate.js';
import { exit, Stop } from '../../src/cli/exit.js';
import type { EstimateResult, Warning } from '../../src/study/estimate/result.js';
import { sampleResult } from '../support/sampleResult.js';

const warning = (code: string): Warning => ({ code, message: `about ${code}`, where: 'x', value: null, limits: null });
const stopOf = (change: Partial<EstimateResult>) => {
  try {
    sayWhatCannotBe({ ...sampleResult, ...change });
  } catch (error) {
    return error as Stop;
  }
  return undefined;
};

describe('how a run with an incomplete result ends', () => {
  it.each([
    [
      'no draft',
      { assumed: null, steady: null, warnings: [warning('no-steady-draft')] },
      /can't burn its fire\n.*about/,
    ],
    ['no fire that holds', { steady: null, warnings: [warning('target-not-reached')] }, /no fire holds the target/],
    ['a warm-up that tips over', { warnings: [warning('biot-above-limit'), warning('draft-tips-over')] }, /warm-up/],
  ])('%s: exit 4 and the reason', (_, change, message) => {
    const stop = stopOf(change);
    expect(stop).toBeInstanceOf(Stop);
    expect(stop!.code).toBe(exit.notPhysical);
    expect(stop!.message).toMatch(message);
  });

  it('tells of a warm-up that tips over only what belongs to it', () => {
    const stop = stopOf({ warnings: [warning('biot-above-limit'), warning('draft-tips-over')] });
    expect(stop!.message).not.toContain('biot');
  });

  it('a complete result with warnings: no stop', () => {
    expect(stopOf({ warnings: [warning('door-gap-smoke')] })).toBeUndefined();
  });
});
