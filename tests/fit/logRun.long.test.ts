import { describe, expect, it } from 'vitest';
import { runLog } from '../../src/fit/logRun.js';
import { exampleDesign, exampleNames } from '../support/examples.js';
import { blankLog } from './syntheticLog.js';

describe('a pit under the fire of a log', () => {
  it('follows every example through wood, doors and weather, with heat and mass that add up', () => {
    for (const name of exampleNames) {
      const design = exampleDesign(name);
      const stations = design.chamber ? (['middle'] as const) : (['uprightLower'] as const);
      const run = runLog(design, blankLog({ hours: 4, every_s: 60, stations: [...stations] }));
      expect(run, name).not.toBeNull();
      expect(run!.energyError, name).toBeLessThan(1e-6);
      expect(run!.massError, name).toBeLessThan(1e-9);
      for (const value of run!.computed[0]) expect(Number.isFinite(value)).toBe(true);
    }
  });
});
