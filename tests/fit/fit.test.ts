import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { fit } from '../../src/fit/fit.js';
import { tellingPaths } from '../../src/fit/parameters.js';
import { fitUnknownsOf } from '../../src/study/spread/unknowns.js';
import { exampleDesign, exampleNames } from '../support/examples.js';
import { input, logOf, plain, without } from './fitLogs.js';

describe('a fit', () => {
  it('refuses an estimate that the design does not have', () => {
    expect(() => fit(plain(), [input(logOf({}))], without(['upright.doorGap']))).toThrow(RangeError);
  });
});

describe('what is fitted when nothing is asked for', () => {
  const paths = (design: Design, wood: boolean, fire = false, wind = true) =>
    tellingPaths(design, { wood, fire, wind });

  it('is all that moves what the probes read, most telling first', () => {
    expect(paths(plain(), true).slice(0, 5)).toEqual([
      'innerConvection',
      'fire.radiant',
      'chamber.doorGap',
      'wood.heat',
      'estimates.stemFill',
    ]);
    for (const path of ['fire.soot', 'fire.splits.flame', 'throat.discharge', 'firebox.emissivity']) {
      expect(paths(plain(), true)).toContain(path);
    }
  });

  it('leaves out what the log itself tells, and what comes to the same as another', () => {
    for (const path of ['site.wind', 'fire.heat', 'fire.rise', 'wood.moisture']) {
      expect(paths(plain(), true)).not.toContain(path);
    }
    expect(paths(plain(), true, false, false)).toContain('site.wind');
    for (const path of ['wood.heat', 'fire.splits.glow', 'fire.heat']) {
      expect(paths(plain(), false, true)).not.toContain(path);
    }
    expect(paths(plain(), false)).toContain('fire.heat');
  });

  it('is there in every example, and leaves out a group whose members differ', () => {
    for (const name of exampleNames) {
      const design = exampleDesign(name);
      const all = fitUnknownsOf(design).map(({ path }) => path);
      expect(paths(design, true).length).toBeGreaterThan(8);
      for (const path of paths(design, true)) expect(all).toContain(path);
    }
    const unlike = plain();
    unlike.firebox.intakes.push({ ...unlike.firebox.intakes[0], discharge: 0.7 });
    expect(paths(unlike, true)).not.toContain('firebox.intakes.discharge');
  });
});
