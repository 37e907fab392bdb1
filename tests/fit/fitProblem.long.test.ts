import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FitProblem } from '../../src/fit/fitProblem.js';
import { readLog } from '../../src/fit/log/readLog.js';
import { fitParameters, Prior } from '../../src/fit/parameters.js';
import { ACCURACY, plain } from './fitLogs.js';

describe('slopes of readings', () => {
  it('go on from one place to the next where air limits the fire for a time', () => {
    const design = plain();
    const text = readFileSync(new URL('../../examples/yard-cook.csv', import.meta.url), 'utf8');
    const { log } = readLog(text, { fileName: 'yard-cook.csv', design });
    const parameters = fitParameters(design, ['firebox.intakes.discharge']);
    const until_s = 2.5 * 3600;
    const to = log!.channels.map(({ time_s }) => time_s.filter((t) => t <= until_s).length);
    const part = { log: log!, until_s, from: to.map(() => 0), to };
    const problem = new FitProblem(
      design,
      parameters,
      new Prior(design, parameters),
      [part],
      ACCURACY,
      () => undefined,
    );
    expect(problem.layGrid(problem.start)).toBe(true);
    problem.weigh(problem.start, 'independent');
    const rows = [0.28, 0.32, 0.36, 0.4, 0.44].map((q) =>
      problem.slopes([q, ...problem.start.slice(1)])[0].subarray(0, problem.readings),
    );
    const size = (row: Float64Array) => Math.sqrt(row.reduce((sum, each) => sum + each * each, 0));
    const jumps = rows.slice(1).map((row, k) => size(row.map((each, i) => each - rows[k][i])) / size(row));
    // steps of 15 s, far finer than any change in the log, leave 0.013 of it, which is the slopes' own; long ones 0.048
    expect(jumps.reduce((sum, each) => sum + each, 0) / jumps.length).toBeLessThan(0.03);
  });
});
