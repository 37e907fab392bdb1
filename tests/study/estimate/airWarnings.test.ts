import { describe, expect, it } from 'vitest';
import { changeTree } from '../../../src/design/vary.js';
import { readDesign } from '../../../src/design/read.js';
import { airWarnings, chokesAtFirst } from '../../../src/study/estimate/airWarnings.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import type { SteadyState, WarmUp } from '../../../src/study/estimate/result.js';
import { shopDesign } from '../../design/shopDesign.js';
import { exampleDesign } from '../../support/examples.js';

/** A random shop design with its fire made so large. */
function underFire(seed: number, heat: string) {
  const changed = changeTree(shopDesign(seed), { path: 'fire.heat', value: heat });
  if ('problem' in changed) throw new Error(changed.problem);
  const { design, faults } = readDesign(JSON.stringify(changed.tree), { fileName: `seed ${seed}` });
  if (faults) throw new Error(faults[0].message);
  return design;
}

describe('a fire that chokes before the draft comes', () => {
  const design = { ...exampleDesign('plain-24.yaml') };
  design.fire = { ...design.fire, heat: 30e3, rise: 1 };
  const burns = (fires: number[], gauge_s: number) => {
    const series = { time_s: fires.map((_, i) => 120 * i), fire_W: fires };
    return chokesAtFirst({ gauge_s, series } as WarmUp, design, { fire_W: 20e3 } as SteadyState);
  };

  it('is told with how long it does, and how far', () => {
    const [warning, ...others] = burns([0, 6e3, 5e3, 9e3, 9.9e3, 19e3, 20e3], 700);
    expect(others).toEqual([]);
    expect(warning).toMatchObject({ code: 'chokes-at-first', value: 480 });
    expect(warning.message).toContain('25 %');
  });

  it('is not told of where it is over in minutes, nor of a fire made smaller after the first reading', () => {
    expect(burns([0, 6e3, 9e3, 19e3, 20e3, 20e3, 20e3], 700)).toEqual([]);
    expect(burns([0, 19e3, 19e3, 19e3, 19e3, 20e3, 0], 600)).toEqual([]);
  });

  it('is found in a pit whose gas has to go down to its throat first', () => {
    const { warmUp, warnings } = estimate(underFire(7, '159 kBTU/h'));
    const told = warnings.find(({ code }) => code === 'chokes-at-first')!;
    const { time_s, fire_W } = warmUp!.series;
    const at = time_s.indexOf(told.value!);
    expect(Math.max(...fire_W.slice(at + 1, time_s.indexOf(warmUp!.gauge_s!)))).toBeGreaterThan(2 * fire_W[at]);
  });
});

it('air just below its limit is printed as below it', () => {
  const told = (excessAirRatio: number) =>
    airWarnings({ limitedByAir: false, excessAirRatio } as SteadyState, 'hold fire');
  for (const [ratio, printed] of [
    [1.4996, '1.49 times'],
    [1.47, '1.47 times'],
    [1.2, '1.2 times'],
  ] as const) {
    expect(told(ratio)[0].message).toContain(printed);
  }
  expect(told(1.5)).toEqual([]);
});
