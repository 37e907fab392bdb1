import { describe, expect, it } from 'vitest';
import type { CookLog } from '../../src/fit/log/log.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { fireOfLog } from '../../src/fit/logFire.js';
import { interpolate } from '../../src/solve/interpolate.js';
import { runLog } from '../../src/fit/logRun.js';
import { holdPit } from '../../src/study/events/heldPit.js';
import { exampleDesign } from '../support/examples.js';
import { readLog } from '../../src/fit/log/readLog.js';
import { blankLog } from './syntheticLog.js';

const plain = () => exampleDesign('plain-24.yaml');
/** Weather as the design has it, no events. */
const still = (log: CookLog): CookLog => ({ ...log, air: null, wind: null, door: [], wood: null });
const last = (values: Float64Array) => values[values.length - 1];

describe('a pit under the fire of a log', () => {
  it('stays at outdoor temperature without a fire, and goes with it', () => {
    const log = { ...still(blankLog({ hours: 2 })), wood: [] };
    for (const row of runLog(plain(), log)!.computed) {
      expect(Math.max(...row)).toBeCloseTo(plain().site.air, 4);
      expect(Math.min(...row)).toBeCloseTo(plain().site.air, 4);
    }
    const air = { time_s: [0, 7200], value: [280, 280] };
    for (const row of runLog(plain(), { ...log, air })!.computed) expect(last(row)).toBeCloseTo(280, 4);
  });

  it('reads what the warm-up of an estimate reads, up to the target, under the same fire', () => {
    const design = plain();
    const log = still(blankLog({ hours: 1 }));
    const run = runLog(design, log, { tolerance: 0.1 })!;
    const { warmUp } = estimate(design, { tolerance: 0.1 });
    const { time_s, stations } = warmUp!.series;
    for (const [c, name] of (['fireEnd', 'middle', 'stackEnd'] as const).entries()) {
      const series = stations.find((each) => each.name === name)!;
      const curve = { time_s, value: series.thermometer_K };
      for (let t = 60; t < warmUp!.gauge_s!; t += 60) {
        expect(Math.abs(run.computed[c][t / 10] - interpolate(curve.time_s, curve.value, t))).toBeLessThan(1);
      }
    }
  });

  it('comes to the steady reading under a heat that holds it', () => {
    const held = holdPit(plain())!;
    const fire = { time_s: [0, 1], value: [held.fire, held.fire] };
    const run = runLog(plain(), { ...still(blankLog({ hours: 12, every_s: 60, stations: ['middle'] })), fire })!;
    expect(last(run.computed[0])).toBeCloseTo(plain().fire.target, 1);
  });

  it('reads a grate, a probe and the gauge by the names that the design gives them', () => {
    const design = plain();
    design.chamber!.grates = [{ name: 'main', height: 1, from: 0, to: 1, mass: 0, steel: 'carbon', area: 0 }];
    design.chamber!.thermometers = [{ name: 'lid left', along: 0.25, height: 1.2 }];
    design.gauge = 'main';
    const rows = Array.from({ length: 40 }, (_, i) => [5 * i, 70 + i, 70 + 2 * i, 71 + i, 70 + 3 * i].join());
    const text = `time [min],main [°F],Lid Left [°F],gauge [°F],middle [°F]\n${rows.join('\n')}\n`;
    const { log, faults } = readLog(text, { fileName: 'cook.csv', design });
    expect(faults ?? []).toEqual([]);
    expect(log!.channels.map(({ station, spot }) => [station, spot])).toEqual([
      ['middle', 'main'],
      ['fireEnd', 'lid left'],
      ['middle', 'main'],
      ['middle', undefined],
    ]);
    const held = holdPit(design)!;
    const fire = { time_s: [0, 1], value: [held.fire, held.fire] };
    const blank = blankLog({ hours: 12, every_s: 60, stations: ['middle', 'middle'] });
    const channels = blank.channels.map((channel, i) => (i === 0 ? { ...channel, spot: 'main' } : channel));
    const run = runLog(design, { ...still(blank), channels, fire })!;
    expect(last(run.computed[0])).toBeCloseTo(design.fire.target, 1);
    // the lid's dial is held at nothing
    expect(last(run.computed[1])).toBeGreaterThan(design.fire.target + 10);
  });

  it('gives all the heat that the wood holds, in the end', () => {
    const design = plain();
    const log = blankLog({
      hours: 48,
      every_s: 600,
      wood: [
        { time_s: 0, mass_kg: 2 },
        { time_s: 900, mass_kg: 1 },
      ],
    });
    const heat = fireOfLog(design, log);
    let sum = 0;
    for (let t = 0; t < 48 * 3600; t += 10) sum += 10 * heat(t);
    // derived: the law of a split integrates to 1
    expect(sum / (3 * design.wood.heat)).toBeCloseTo(1, 4);
  });

  it('weather that the log tells as the design has it changes nothing', () => {
    const log = still(blankLog({ hours: 2, every_s: 60 }));
    const { air, wind } = plain().site;
    const told = {
      ...log,
      air: { time_s: [0, 7200], value: [air, air] },
      wind: { time_s: [0, 7200], value: [wind, wind] },
    };
    const [a, b] = [runLog(plain(), log)!, runLog(plain(), told)!];
    a.computed.forEach((row, c) => row.forEach((value, i) => expect(b.computed[c][i]).toBeCloseTo(value, 9)));
  });

  it('begins settled where the log begins hot', () => {
    const log = still(blankLog({ hours: 2, every_s: 60, stations: ['middle'] }));
    const hot = { ...log, wood: [], channels: log.channels.map((c) => ({ ...c, value_K: c.value_K.map(() => 400) })) };
    const { computed } = runLog(plain(), hot)!;
    expect(computed[0][0]).toBeCloseTo(400, 1);
    expect(last(computed[0])).toBeLessThan(380);
    expect(last(computed[0])).toBeGreaterThan(plain().site.air + 5);
  });

  it('takes no longer steps than it may', () => {
    const { grid } = runLog(plain(), blankLog({ hours: 2, every_s: 60 }), { longest: 45 })!;
    expect(Math.max(...grid.map((t, i) => t - (grid[i - 1] ?? 0)))).toBeCloseTo(45, 6);
  });

  it('stops where it is told to', () => {
    const run = runLog(plain(), blankLog({ hours: 2, every_s: 60 }), { until: 3600 })!;
    expect(run.computed[0]).toHaveLength(61);
    expect(run.grid[run.grid.length - 1]).toBeCloseTo(3600, 6);
  });
});
