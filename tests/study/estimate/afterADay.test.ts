import { describe, expect, it } from 'vitest';
import { gaugeReading } from '../../../src/study/estimate/gauge.js';
import { headline } from '../../../src/words/headline.js';
import { underFullFire } from '../../semantic/replay.js';
import { DAY, lit } from './litDesigns.js';
import { inWords } from '../../../src/units/index.js';

describe('a pit that has not read its target a day after it was lit', () => {
  it('is held by no fire where a larger one tips the draft over: says both readings', () => {
    const { design, result, told } = lit(63);
    expect(result.steady).toBeNull();
    const own = gaugeReading(result.assumed!, design.gauge)!;
    expect(told!.value).toBeCloseTo(own, 6);
    expect(own).toBeLessThan(design.fire.target);
    expect(inWords(told!.message)).toMatch(/and no fire holds 244 °F .* tips the draft over to another way of flowing/);
  });

  it('never gets there, though another state would: gives the state it comes to, and tells the other', () => {
    const { design, result, told } = lit(1297);
    const { assumed, warnings } = result;
    const settled = gaugeReading(assumed!, design.gauge)!;
    expect(settled).toBeLessThan(design.fire.target);
    const [again] = underFullFire(design, [30 * DAY])!;
    expect(again.reading).toBeCloseTo(settled, 0);
    expect(again.fire / assumed!.fire_W).toBeCloseTo(1, 2);
    const other = warnings.find(({ code, fire }) => code === 'another-state' && fire === 'assumed fire');
    expect(other!.value).toBeGreaterThan(assumed!.fire_W);
    expect(told).toBeDefined();
    const reads = (1.8 * settled - 459.67).toFixed(0);
    expect(headline(result, 'shop')[0]).toContain(`never reads 309 °F: it settles at ${reads} °F`);
  });
});

describe('the full fire of a pit whose gas has several ways', () => {
  it('is that of the way it is on when it reads its target, kept burning', () => {
    const { design, result } = lit(1179);
    const { assumed, warmUp } = result;
    expect(warmUp!.gauge_s).not.toBeNull();
    const [again] = underFullFire(design, [5 * DAY])!;
    expect(again.fire / assumed!.fire_W).toBeCloseTo(1, 2);
    expect(again.reading).toBeCloseTo(gaugeReading(assumed!, design.gauge)!, 0);
    expect(again.reading).toBeGreaterThan(design.fire.target);
  });
});
