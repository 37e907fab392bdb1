import { expect } from 'vitest';
import { controlsFor } from '../../../src/page/controls.js';
import { Workbench } from '../../../src/page/workbench.js';
import { parseQuantity } from '../../../src/units/index.js';
import { textOf } from './bench.js';

/** Every place of every slider of an example writes a text that reads back to that place. */
export function expectPlacesReadBack(name: string): void {
  const { design, text } = new Workbench(textOf(name)).current;
  let sliders = 0;
  for (const { controls } of controlsFor(design, text)) {
    for (const each of controls) {
      if (each.type !== 'quantity') continue;
      sliders++;
      for (let place = 0; place <= each.slider.last; place++) {
        const read = parseQuantity(each.kind, each.slider.write(place));
        if (!read.ok) throw new Error(`${each.id} ${place}: ${each.slider.write(place)} ${read.problem}`);
        expect(each.slider.place(read.si), `${each.id} ${each.slider.write(place)}`).toBe(place);
      }
    }
  }
  expect(sliders).toBeGreaterThan(12);
}

/** Setting each field of an example to its own text changes nothing. */
export function expectShownAsIs(name: string): void {
  const bench = new Workbench(textOf(name));
  const before = bench.current.design;
  for (const { controls } of controlsFor(before, bench.current.text)) {
    for (const each of controls) {
      const written = bench.current.text.get(each.path);
      if (written === undefined) continue;
      expect(bench.edit(each, written), each.id).toBe(false);
      // as good as the same, so that it is taken anew
      if (each.type === 'quantity') expect(bench.edit(each, `${written} `), each.id).toBe(true);
    }
  }
  expect(bench.current.design).toEqual(before);
}
