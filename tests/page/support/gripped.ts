import { expect } from 'vitest';
import { formatFault } from '../../../src/design/faults.js';
import { readDesign } from '../../../src/design/read.js';
import { controlsFor } from '../../../src/page/controls.js';
import { gripsOf, partBoxes } from '../../../src/page/grips.js';
import { Workbench } from '../../../src/page/workbench.js';
import { textOf } from './bench.js';

/** What a handle of an example's drawing is dragged by is what its field grows by on the drawing. */
export function expectGrown(name: string): void {
  const { design, text } = new Workbench(textOf(name)).current;
  const side = { left: 40, ground: 500, scale: 100, lettering: 12 };
  const grips = gripsOf(design, side);
  const numbers = controlsFor(design, text).flatMap(({ controls }) => controls);
  expect(grips.length).toBeGreaterThan(1);
  for (const part of [design.firebox, design.chamber]) {
    const field = `${part === design.chamber ? 'chamber' : 'firebox'}.${part?.shape === 'round' ? 'diameter' : 'height'}`;
    expect(grips.some((grip) => grip.field === field)).toBe(part !== undefined);
  }
  for (const grip of grips) {
    const control = numbers.find(({ id }) => id === grip.field);
    if (control?.type !== 'quantity') continue;
    // the same pit with the field two centimetres larger has the handle that far on
    const larger = text.copy();
    larger.set(control.path, `${(control.value + 0.02) * 1000} mm`);
    const read = readDesign(larger.text(), { fileName: 'x', alone: true });
    if (read.faults) throw new Error(`${grip.field}: ${formatFault(read.faults[0])}`);
    const moved = gripsOf(read.design, side).find(({ field }) => field === grip.field)!;
    if (grip.perDown !== 0) expect(moved.y - grip.y, grip.field).toBeCloseTo(0.02 / grip.perDown, 6);
    // the firebox stays where it is and pushes all else away
    else if (grip.perRight > 0) expect(moved.x - grip.x, grip.field).toBeCloseTo(0.02 / grip.perRight, 6);
    else expect(grip.perRight).toBeCloseTo(-0.01, 9);
  }
  const boxes = partBoxes(design, side).map(({ block }) => block);
  expect(boxes).toEqual(expect.arrayContaining(['firebox', 'stacks', ...(design.chamber ? ['chamber'] : [])]));
}
