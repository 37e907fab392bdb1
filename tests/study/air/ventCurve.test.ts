import { describe, expect, it } from 'vitest';
import { ventCurve } from '../../../src/study/air/ventCurve.js';
import { burnsItsAir } from '../../../src/study/air/burnsItsAir.js';
import { cleanVents, withOpening } from '../../../src/study/air/cleanHold.js';
import { turnedVents } from '../../../src/study/events/ventTurn.js';
import { exampleDesign } from '../../support/examples.js';

const plain = exampleDesign('plain-24.yaml');
const target = plain.fire.target;
const { open } = cleanVents(plain)!;

describe('the vents in use', () => {
  const { open: openings, thermometer_K, fire_W, leanest_K, richest_K } = ventCurve(plain, 2.5);

  it('gets hotter the wider they are open, until the bed burns all it can; from there on air only cools', () => {
    const full = fire_W.findIndex((fire) => fire! > 0.999 * plain.fire.heat);
    expect(full).toBeGreaterThan(3);
    for (let i = 1; i < openings.length; i++) {
      const more = thermometer_K[i]! - thermometer_K[i - 1]!;
      expect(i <= full ? more : -more).toBeGreaterThan(0);
    }
  });

  it('passes through the target at the opening that another search finds for it', () => {
    const i = openings.findIndex((each) => each > open);
    const share = (open - openings[i - 1]) / (openings[i] - openings[i - 1]);
    const read = thermometer_K[i - 1]! + share * (thermometer_K[i]! - thermometer_K[i - 1]!);
    // two ways to the same state: the fire that holds, and the fire that the air allows
    expect(Math.abs(read - target)).toBeLessThan(2);
  });

  it('passes through it also where little hangs on the opening, for vents are tiny', () => {
    const tiny = exampleDesign('plain-24.yaml', (text) =>
      text.replace('count: 2, diameter: 4 in', 'count: 1, diameter: 2 in'),
    );
    const found = cleanVents(tiny)!.open;
    expect(found).toBeGreaterThan(0.4);
    const { state } = burnsItsAir(withOpening(tiny, found), 2.5, null)!;
    expect(Math.abs(state.reading_K - target)).toBeLessThan(0.3);
  });

  it('lies between a fire that takes more air for its wood and one that takes less', () => {
    openings.forEach((_, i) => {
      expect(leanest_K[i]!).toBeLessThanOrEqual(thermometer_K[i]! + 0.1);
      expect(richest_K[i]!).toBeGreaterThanOrEqual(thermometer_K[i]! - 0.1);
    });
  });

  it('answers a turn by getting hotter, the more slowly the heavier the plate', () => {
    const heavy = exampleDesign('plain-24.yaml', (text) => text.replaceAll('plate: 1/4 in', 'plate: 1/2 in'));
    const [light, slow] = [plain, heavy].map((design) => turnedVents(design, open)!);
    expect(light.to).toBeCloseTo(1.25 * open, 12);
    expect(light.settles_K).toBeGreaterThan(target + 5);
    expect(Math.abs(light.settles_K - slow.settles_K)).toBeLessThan(3);
    expect(slow.answers_s).toBeGreaterThan(1.3 * light.answers_s);
  });
});
