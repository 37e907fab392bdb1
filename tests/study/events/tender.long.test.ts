import { describe, expect, it } from 'vitest';
import { readDesign } from '../../../src/design/read.js';
import { holdPit } from '../../../src/study/events/heldPit.js';
import { tend } from '../../../src/study/events/tender.js';
import { Timeline } from '../../../src/study/events/timeline.js';
import { shopDesign } from '../../design/shopDesign.js';

describe('a tender', () => {
  // reverse flow: less fire lets the middle read more for minutes
  it('keeps a pit at its target whose reading first goes the wrong way, and ends on the fire that holds it', () => {
    const { design } = readDesign(JSON.stringify(shopDesign(22)), { fileName: 'seed 22' });
    const { pit, x, fire } = holdPit(design!)!;
    const { target, heat: full } = design!.fire;
    const line = new Timeline(pit, x);
    // what holds the reading at every moment runs away from there, up or down
    line.burn(() => ({ mode: 'hold', target }));
    const off = () => Math.abs(line.fire / fire - 1);
    for (let took = 'step'; took === 'step' && off() < 0.1 && line.moment.time < 3600;) {
      line.shorten();
      took = line.step(3600);
    }
    expect(off()).toBeGreaterThan(0.1);

    expect(tend(line, { target, full }, 5 * 3600)).toBe(true);
    const { time_s, fire_W, thermometer_K } = line.curve;
    const later = time_s.findIndex((time) => time > 4 * 3600);
    expect(Math.min(...fire_W)).toBeGreaterThan(-1e-6 * full);
    for (const reading of thermometer_K.slice(later)) expect(Math.abs(reading - target)).toBeLessThan(0.5);
    expect(line.fire / fire).toBeCloseTo(1, 2);
    expect(line.energyError).toBeLessThan(1e-3);
  });
});
