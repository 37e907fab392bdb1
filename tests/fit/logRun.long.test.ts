import { describe, expect, it } from 'vitest';
import { runLog } from '../../src/fit/logRun.js';
import { exampleDesign, exampleNames } from '../support/examples.js';
import { blankLog } from './syntheticLog.js';
import type { CookLog } from '../../src/fit/log/log.js';

const last = (values: Float64Array) => values[values.length - 1];

/** Weather as the design has it, no events. */
const still = (log: CookLog): CookLog => ({ ...log, air: null, wind: null, door: [], wood: null });

const plain = () => exampleDesign('plain-24.yaml');

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

  it('repeats itself on the times of an earlier run, and finer steps hardly move it', () => {
    const log = blankLog({});
    const [usual, fine] = [0.1, 0.01].map((tolerance) => runLog(plain(), log, { tolerance })!);
    const again = runLog(plain(), log, { tolerance: 0.1, grid: usual.grid })!;
    usual.computed.forEach((row, c) => {
      let sum = 0;
      row.forEach((value, i) => (sum += (value - fine.computed[c][i]) ** 2));
      expect(Math.max(...row.map((value, i) => Math.abs(again.computed[c][i] - value)))).toBeLessThan(1e-8);
      // the least noise that a logger in whole degrees has is 1 °F / sqrt(12) = 0.16 K
      expect(Math.sqrt(sum / row.length)).toBeLessThan(0.1);
    });
  });

  it('reads lower with its door open, its vents shut down or the wind up, and higher in warm air', () => {
    const read = (change: Partial<CookLog>) => {
      const log = { ...still(blankLog({ hours: 3, every_s: 60, stations: ['middle'] })), ...change };
      return last(runLog(plain(), log)!.computed[0]);
    };
    const usual = read({});
    const held = (value: number) => ({ time_s: [0, 10_000], value: [value, value] });
    expect(read({ door: [{ from_s: 10_500, to_s: 10_800 }] })).toBeLessThan(usual - 5);
    expect(read({ wind: held(12) })).toBeLessThan(usual - 5);
    expect(read({ air: held(plain().site.air + 15) })).toBeGreaterThan(usual + 5);
    expect(read({ intakes: { time_s: [0, 3600], value: [1, 0.03] } })).toBeLessThan(usual - 5);
    expect(read({ damper: { time_s: [0, 3600], value: [1, 0.1] } })).not.toBeCloseTo(usual, 0);
  });
});
