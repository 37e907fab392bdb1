import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDesign } from '../../../src/design/read.js';
import { estimate } from '../../../src/study/estimate/estimate.js';

function heldStations(name: string) {
  const read = readDesign(readFileSync(`examples/${name}.yaml`, 'utf8'), { fileName: name });
  return estimate(read.design!, { steadyOnly: true }).steady!.stations;
}

describe('the hottest outside of a station', () => {
  it('is of its own walls, also where stations above and below a plate share a length of shell', () => {
    const stations = heldStations('reverse-flow');
    const outsideOf = (name: string) => stations.find((each) => each.name === name)!.outside_K;
    for (const end of ['FireEnd', 'Middle', 'StackEnd']) {
      const above = end[0].toLowerCase() + end.slice(1);
      expect(outsideOf(`plenum${end}`)).toBeGreaterThan(outsideOf(above) + 5);
    }
    // bare plate: the hottest patch is no cooler than the mean, and no plate of another station makes it much hotter
    for (const { outside_K, steel_K, steelBy } of stations) {
      expect(outside_K).toBeGreaterThanOrEqual(steel_K - 1e-9);
      const own = Object.values(steelBy ?? {}).map((value) => value ?? 0);
      expect(outside_K).toBeLessThan(Math.max(steel_K, ...own) + 5);
    }
  });

  it('is the skin over insulation, far below the steel', () => {
    for (const { outside_K, steel_K } of heldStations('insulated-upright'))
      expect(outside_K).toBeLessThan(steel_K - 50);
  });
});
