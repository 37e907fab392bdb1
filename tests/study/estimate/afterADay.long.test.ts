import { describe, expect, it } from 'vitest';
import { gaugeReading } from '../../../src/study/estimate/gauge.js';
import { headline } from '../../../src/words/headline.js';
import { underFullFire } from '../../semantic/replay.js';
import { DAY, lit } from './litDesigns.js';
import { inWords } from '../../../src/units/index.js';

describe('a pit that has not read its target a day after it was lit', () => {
  it('creeps up to it later: says how far it got, and when it reads it', () => {
    const { design, result, told } = lit(47);
    const { warmUp, assumed } = result;
    expect(warmUp).toMatchObject({ gauge_s: null, soaked_s: null, woodToGauge_kg: null });
    expect(warmUp!.series.time_s.at(-1)).toBeCloseTo(DAY, 6);
    const [hours, minutes] = /reads that after (\d+) h (\d+) min/.exec(inWords(told!.message))!.slice(1).map(Number);
    const then = 3600 * hours + 60 * minutes;
    expect(then).toBeGreaterThan(DAY);
    const settled = gaugeReading(assumed!, design.gauge)!;
    // by another way of stepping
    const again = underFullFire(design, [DAY, 0.97 * then, 1.03 * then, 30 * DAY])!.map(({ reading }) => reading);
    expect(Math.abs(told!.value! - again[0])).toBeLessThan(2);
    expect(again[1]).toBeLessThan(design.fire.target);
    expect(again[2]).toBeGreaterThan(design.fire.target);
    expect(again[3]).toBeCloseTo(settled, 0);
    expect(headline(result, 'shop')[0]).toMatch(/has not read 296 °F within 24 hours of being lit/);
  });
});
