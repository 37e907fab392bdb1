import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { exampleDesign } from '../../support/examples.js';
import { pitOf, type PitName } from '../../support/randomPits.js';
import { expectHonestFire, expectSameWithout, expectSoakedAfter, offAtFirst } from './warmUps.js';

const INCH = 0.0254;

function withPlate(design: Design, plate: number): Design {
  const copy = structuredClone(design);
  for (const part of [copy.firebox, copy.chamber, copy.upright]) {
    if (!part) continue;
    part.plate = plate;
    if (part.door) part.door.plate = plate;
  }
  return copy;
}

describe('the first reading', () => {
  const overs: PitName[] = ['overTwoStacks', 'overWrapped', 'overOneStack'];

  it.each(overs)('%s: comes sooner with every larger fire, and smoothly', (name) => {
    const times = [0.98, 0.99, 0.995, 1, 1.005, 1.01, 1.02].map((factor) => {
      const result = estimate(pitOf(name, ({ fire }) => void (fire.heat *= factor)));
      expect(offAtFirst(result)).toBeLessThan(0.1);
      return result.warmUp!.gauge_s!;
    });
    for (let i = 1; i < times.length; i++) expect(times[i]).toBeLessThan(times[i - 1]);
    expect(times[0] / times[times.length - 1]).toBeLessThan(1.1);
  });
});

describe('soaked', () => {
  it('is never before the first reading, and carries the wood burned to then', () =>
    expectSoakedAfter('reverseTwoStacks'));

  it.each<[string, () => Design]>([
    ['plain-24.yaml', () => exampleDesign('plain-24.yaml')],
    ['offset-with-upright.yaml', () => exampleDesign('offset-with-upright.yaml')],
    ['reverse-flow.yaml', () => exampleDesign('reverse-flow.yaml')],
    ['overOneStack', () => pitOf('overOneStack')],
    ['overWrapped', () => pitOf('overWrapped')],
    ['reverseUprightLoaded', () => pitOf('reverseUprightLoaded')],
  ])('%s: thicker plate never soaks sooner, nor reads its target sooner', (_name, make) => {
    const runs = [1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2].map(
      (inches) => estimate(withPlate(make(), inches * INCH)).warmUp!,
    );
    for (let i = 1; i < runs.length; i++) {
      expect(runs[i].gauge_s!).toBeGreaterThan(runs[i - 1].gauge_s!);
      expect(runs[i].soaked_s!).toBeGreaterThan(runs[i - 1].soaked_s!);
      expect(runs[i].woodToSoaked_kg!).toBeGreaterThan(runs[i - 1].woodToSoaked_kg!);
    }
  });
});

describe('the fire after the first reading', () => {
  // the hold fire went to -1.4 kW
  it('is never less than none nor more than the full fire, and takes no wood back', () =>
    expectHonestFire('reverseUpright'));
});

describe('a pit with two steady states', () => {
  it.each<PitName>(['twoStacks', 'reverseTwoStacks'])(
    '%s: is the same without a warm-up, and where events begin',
    expectSameWithout,
  );
});
