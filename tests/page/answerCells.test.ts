import { describe, expect, it } from 'vitest';
import { answerOf } from '../../src/page/answerView.js';
import { held } from '../../src/study/quantities.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { format } from '../../src/units/index.js';
import type { Spread } from '../../src/study/spread/uncertainty.js';
import { exampleDesign } from '../support/examples.js';

const answered = (heat: string) => {
  const design = exampleDesign('plain-24.yaml', (text) => text.replace('70,000 BTU/h', heat));
  const result = estimate(design);
  return { result, cells: answerOf(design, result, result) };
};
const grate = held('grate_K');

describe('how sure the answer is', () => {
  const { result } = answered('70,000 BTU/h');
  const { design } = result;
  const cellsWith = (...numbers: Pick<Spread['numbers'][number], 'key' | 'p10' | 'p50' | 'p90'>[]) =>
    answerOf(design, result, result, { numbers } as Spread);

  it('the middle of a spread, what 8 of 10 cases lie in, and what the likeliest estimates give', () => {
    const soaked = cellsWith({ key: 'soaked_s', p10: 1800, p50: 2700, p90: 3600 }).soaked;
    expect(soaked.value).toBe('45 min');
    expect(soaked.under).toEqual(['8 in 10: 30 to 60 min', `likeliest ${format('time', result.warmUp!.soaked_s)}`]);
  });

  it('what the likeliest estimates give where half of the cases never come to it', () => {
    const soaked = cellsWith({ key: 'soaked_s', p10: 1800, p50: null, p90: null }).soaked;
    expect(soaked.value).toBe(format('time', result.warmUp!.soaked_s));
    expect(soaked.under).toEqual(['8 in 10: 30 min to never', 'middle never']);
  });
});

describe('the grate of the answer', () => {
  it('is that of the fire that holds, where the pit has it', () => {
    const { result, cells } = answered('70,000 BTU/h');
    expect(cells.grate.value).toBe(format('temperature', grate.of({ result })!, 'shop'));
    expect(cells.grate.under[0]).toBe('lid 250 °F');
    expect(cells.wood.tone).toBeUndefined();
  });

  it('is that of the full fire, and says so, where this never reads the target', () => {
    const { result, cells } = answered('12,000 BTU/h');
    expect(result.steady).not.toBeNull();
    const full = grate.of({ result: { ...result, steady: result.assumed } })!;
    expect(cells.grate.value).toBe(format('temperature', full, 'shop'));
    expect(cells.grate.under[0]).toMatch(/^lid 1\d\d °F under the full fire$/);
    expect(cells.wood.tone).toBe('badly');
  });
});
