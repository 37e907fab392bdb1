import { describe, expect, it } from 'vitest';
import { answerOf } from '../../src/page/answerView.js';
import { held } from '../../src/study/quantities.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { format } from '../../src/units/index.js';
import { exampleDesign } from '../support/examples.js';

const answered = (heat: string) => {
  const design = exampleDesign('plain-24.yaml', (text) => text.replace('70,000 BTU/h', heat));
  const result = estimate(design);
  return { result, cells: answerOf(design, result, result) };
};
const grate = held('grate_K');

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
