import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { example, pitwright, scratch } from './support/run.js';

const plain = example('plain-24.yaml');

let folder: ReturnType<typeof scratch>;
beforeAll(() => {
  folder = scratch();
});
afterAll(() => folder.remove());

describe('size', () => {
  it('prints a table of choices with margins, the file’s lines, other weather and rules of thumb, in 100 columns', async () => {
    const { code, stdout } = await pitwright(['size', plain]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^CHOSEN: /m);
    expect(stdout).toMatch(/^ {4}firebox:\n {6}intakes: \[/m);
    expect(stdout).toMatch(/OTHER WEATHER/);
    expect(stdout).toMatch(/RULES OF THUMB .*common practice, no source/);
    const lines = stdout.slice(0, stdout.indexOf('  In the design file')) + stdout.slice(stdout.indexOf('MARGINS'));
    for (const line of lines.split('\n')) expect([...line].length).toBeLessThanOrEqual(100);
    const block = /In the design file.*\n((?: {4}.*\n)+)/.exec(stdout)![1].replace(/^ {4}/gm, '');
    expect(Object.keys(parse(block))).toEqual(['firebox', 'throat', 'stacks']);
  }, 120_000);

  it('ends with 4 where nothing from stock fits, and says what stands in the way', async () => {
    const { code, stdout, stderr } = await pitwright(['size', example('insulated-upright.yaml'), '--json']);
    expect(code).toBe(4);
    expect(JSON.parse(stdout).chosen).toBeNull();
    expect(stderr).toMatch(/no size from stock keeps within every limit\n {2}- \d+ of \d+ stacks/);
    expect(stderr).toMatch(/close the firebox door/);
  }, 120_000);

  it.each([['many'], ['1e3']])('--clean-air %s: exit 2', async (value) => {
    const { code, stderr } = await pitwright(['size', plain, '--clean-air', value]);
    expect(code).toBe(2);
    expect(stderr).toMatch(/1\.2 to 20/);
  });
});
