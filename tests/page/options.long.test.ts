import { describe, expect, it } from 'vitest';
import { numberRows, toldBeside } from '../../src/page/numbers.js';
import { Workbench } from '../../src/page/workbench.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { example, pitwright } from '../cli/support/run.js';
import { textOf } from './support/bench.js';

describe('options of a design', () => {
  it('are told with what they cost and when they are paid back, as the command tells it', async () => {
    const results = new Workbench(textOf('four-ways')).options.map(({ design }) => estimate(design));
    const rows = results.map((result) => numberRows(result, 'shop', results));
    const told = (key: string) => toldBeside(rows.map((each) => each.find(({ quantity }) => quantity.key === key)));
    const { code, stdout } = await pitwright(['compare', example('four-ways.yaml'), '--json']);
    expect(code).toBe(0);
    const { options } = JSON.parse(stdout) as {
      options: { payback: { cooks: number } | null; differences: { key: string; value: number }[] }[];
    };
    for (const key of ['steelCost', 'insulationCost', 'buildCost', 'cookWood_kg', 'cookCost']) {
      const values = rows.map((each) => each.find(({ quantity }) => quantity.key === key)!.si!);
      options.forEach(({ differences }, i) =>
        expect(values[i] / differences.find((each) => each.key === key)!.value || 1, key).toBeCloseTo(1, 9),
      );
    }
    expect(told('buildCost').map((each) => each!.text)).toEqual(
      expect.arrayContaining([expect.stringMatching(/^\$\d/)]),
    );
    expect(told('buildCost')[1]!.difference).toMatch(/^−\$\d+$/);
    expect(told('payback').map((each) => each?.text)).toEqual([
      undefined,
      'at once',
      'never',
      `${options[3].payback!.cooks} cooks`,
    ]);
  });
});
