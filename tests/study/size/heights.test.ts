import { describe, expect, it } from 'vitest';
import { heightLines } from '../../../src/report/text/sizeHeights.js';
import { heightOptions } from '../../../src/study/size/heights.js';
import { designOf, PLAIN } from '../../design/designFiles.js';
import { treeOf } from './asked.js';

describe('other heights of stack foot and throat', () => {
  const text = `${PLAIN}size: { heights: { base: [36 in, 51 in, 10 ft], throat: [32 in, 38 in] } }\n`;

  it('are held against the size as it is, the top of the stack where it was', async () => {
    const [here, low, high, none, under, over] = await heightOptions(treeOf(text), designOf(text));
    expect([here.of, low.of, under.of]).toEqual([null, 'base', 'throat']);
    // a foot that is off the chamber can't be built
    expect(none.state).toBeNull();
    // gas taken off low leaves the grate hotter under the same dial, and gas let in high passes over it
    expect(low.state!.grate_K!).toBeGreaterThan(high.state!.grate_K! + 2);
    expect(under.state!.grate_K!).toBeGreaterThan(over.state!.grate_K! + 2);
    expect(low.state!.floor_K!).toBeGreaterThan(high.state!.floor_K!);

    const lines = heightLines([here, low, high, none, under, over], 'shop');
    expect(lines).toHaveLength(5);
    for (const line of lines) expect(line).not.toMatch(/NaN|undefined|null|Infinity/);
  });

  it('are none where none is asked about', async () => {
    expect(await heightOptions(treeOf(PLAIN), designOf(PLAIN))).toEqual([]);
    expect(heightLines([], 'shop')).toEqual([]);
  });
});
