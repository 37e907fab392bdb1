import { expect } from 'vitest';
import { coolDown } from '../../../src/study/events/coolDown.js';
import { disturb } from '../../../src/study/events/disturb.js';
import { openDoor } from '../../../src/study/events/door.js';
import { holdPit } from '../../../src/study/events/heldPit.js';
import { splitSwing } from '../../../src/study/events/swing.js';
import { turnWeather } from '../../../src/study/events/weather.js';
import { exampleDesign } from '../../support/examples.js';

/** Heat and air add up through every event of an example. */
export function expectClosure(name: string): void {
  const design = exampleDesign(name);
  const pit = holdPit(design)!;
  const all = [
    disturb(pit, openDoor(design), 60),
    disturb(pit, turnWeather({ wind: 9 }), 600),
    disturb(pit, turnWeather({ rain: 1 }), 1200),
    splitSwing(pit),
    coolDown(pit),
  ];
  for (const each of all) {
    expect(each).not.toBeNull();
    expect(each!.energyError).toBeLessThan(1e-3);
    expect(each!.massError_kg_per_s).toBeLessThan(1e-9);
  }
}
