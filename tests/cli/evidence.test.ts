import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { row, useCaseFiles } from './caseFiles.js';
import { expectRefusal, pitwright } from './support/run.js';

const { cases } = useCaseFiles();

describe('evidence', () => {
  it('lists the checks with inputs and units', async () => {
    const { code, stdout } = await pitwright(['evidence', '--list']);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^ {2}enclosureGas -> K: .*\n {6}length \[m\]/m);
    expect(stdout).toMatch(/^ {2}airDensity -> kg\/m³/m);
  });

  it("runs somebody's own cases, from a file and from standard input", async () => {
    const good = cases('good.csv', row('mine', 1.176));
    const { code, stdout, stderr } = await pitwright(['evidence', '--cases', good]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^mine +airDensity +1\.176 +1\.17\d+ .*within$/m);
    const piped = await pitwright(['evidence', '--cases', '-', '--json'], { stdin: readFileSync(good) });
    expect(JSON.parse(piped.stdout).verification).toEqual([expect.objectContaining({ case: 'mine', within: true })]);
  });

  it.each([
    [
      'a check that is not there',
      () => cases('odd.csv', row('a', 1, 'airDensty')),
      3,
      /odd\.csv:2: a check 'airDensty' is not registered; did you mean 'airDensity'/,
    ],
  ])('%s ends the run with a plain message', async (_, file, exit, message) => {
    await expectRefusal(['evidence', '--cases', file()], exit, message);
  });
});
