import { describe, expect, it } from 'vitest';
import { heatShare } from '../../src/draw/pit/colourScale.js';
import { pitDrawing } from '../../src/draw/pit/pitDrawing.js';
import { pitLayout } from '../../src/draw/pit/pitLayout.js';
import { temperatureNotes } from '../../src/draw/pit/temperatureNotes.js';
import { textWidth } from '../../src/draw/textWidth.js';
import { gripBoxes } from '../../src/page/grips.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { everydayExamples, exampleDesign } from '../support/examples.js';
import { expectClear, expectDialWritten } from './clearDrawings.js';

describe.each(everydayExamples)('drawings of %s', (name) => {
  it('have no text that strikes the outline of a part', () => expectClear(name));

  it('always write what is read by the dial that is steered by', () => expectDialWritten(name));
});

describe('readings in a small upright, as a desk shows it', () => {
  const design = exampleDesign('offset-with-upright.yaml');
  const { steady } = estimate(design, { steadyOnly: true });
  const notes = temperatureNotes(design, steady!, heatShare);
  const over = (side: Parameters<typeof gripBoxes>[1]) => gripBoxes(design, side);
  const { marks, side } = pitDrawing(design, {
    width: 528,
    arrange: 'row',
    lettering: 12,
    maxHeight: 600,
    notes,
    over,
  });
  const upright = pitLayout(design).upright!;
  const [left, right] = [upright.left, upright.right].map((x) => side.left + x * side.scale);
  const inside = marks.flatMap((mark) =>
    mark.shape === 'text' && mark.bold && mark.x > left && mark.x < right ? [mark] : [],
  );

  it('are those of all its racks: a dial that nothing else shows gives way', () => {
    const racks = notes.places!.filter(({ part, mark }) => part === 'upright' && mark === 'none');
    expect(racks).toHaveLength(4);
    expect(inside.map(({ text }) => text).sort()).toEqual(racks.map(({ text }) => text).sort());
  });

  it('keep off its walls', () => {
    for (const { x, text, size } of inside) {
      const half = textWidth(text, { size, weight: 600 }) / 2;
      expect(x - half - left, text).toBeGreaterThan(4);
      expect(right - x - half, text).toBeGreaterThan(4);
    }
  });
});
