import { describe, expect, it } from 'vitest';
import { drawsOf } from '../../src/words/draws.js';
import type { Warning, WhichFire } from '../../src/study/estimate/result.js';
import { sampleResult } from '../support/sampleResult.js';

const warning = (
  code: string,
  where: string,
  fire: WhichFire,
  value: number | null = null,
  high?: number,
): Warning => ({
  code,
  message: 'x',
  where,
  fire,
  value,
  limits: high === undefined ? null : { high, unit: 'kg/s' },
});
const withWarnings = (...warnings: Warning[]) => drawsOf({ ...sampleResult, warnings }, 'shop');

describe('does it draw', () => {
  it('yes, with how hard and how much air', () => {
    const { draft, excessAirRatio } = sampleResult.steady!;
    expect(draft.stackBase_Pa).toBeGreaterThan(0);
    expect(excessAirRatio).toBeGreaterThan(1.5);
    expect(withWarnings()).toEqual({
      answer: 'yes',
      why: expect.stringMatching(/^0\.0\d+ in H2O, [\d.]+ times the air it needs$/),
    });
  });

  it.each([
    ['no', warning('back-draft', 'throat', 'hold fire'), 'gas runs backwards through the throat'],
    ['no', warning('no-air-path', '', 'assumed fire'), 'next to no air gets to the fire'],
    ['barely', warning('fire-limited-by-air', '', 'assumed fire'), 'too little air for its full fire'],
    ['barely', warning('little-air', '', 'hold fire'), 'so little air that wood burns dirty'],
    // a tenth of what the stack carries
    ['barely', warning('door-gap-smoke', 'chamber door', 'hold fire', 0.1, 0.001), 'smoke leaves by the chamber door'],
  ])('%s, and why', (answer, own, why) => expect(withWarnings(own)).toEqual({ answer, why }));

  it('the gravest speaks, and a trickle of smoke is no fault of the draft', () => {
    const little = warning('little-air', '', 'hold fire');
    expect(withWarnings(little, warning('back-draft', 'intake', 'hold fire')).answer).toBe('no');
    expect(withWarnings(warning('door-gap-smoke', 'chamber door', 'hold fire', 0.002, 0.001)).answer).toBe('yes');
  });

  it('barely where gas pushes outwards under the stack and a gap leaks it; no where nothing burns', () => {
    const steady = sampleResult.steady!;
    const at = (stackBase_Pa: number, ...warnings: Warning[]) =>
      drawsOf({ ...sampleResult, steady: { ...steady, draft: { ...steady.draft, stackBase_Pa } }, warnings }, 'shop');
    const trickle = warning('door-gap-smoke', 'upright door', 'hold fire', 0.002, 0.001);
    expect(at(-0.2, trickle)).toEqual({ answer: 'barely', why: 'gas pushes outwards under the stack' });
    const tight = at(-0.2);
    expect(tight).toEqual({ answer: 'yes', why: expect.stringMatching(/outwards .* none leaks$/) });
    // two lines of a phone
    expect(tight.why.length).toBeLessThan(54);
    expect(at(0.01)).toEqual({
      answer: 'yes',
      why: expect.stringMatching(/^next to no draft under the stack, [\d.]+ times/),
    });
    expect(drawsOf({ ...sampleResult, steady: null, assumed: null, warnings: [] }, 'shop').answer).toBe('no');
  });
});
