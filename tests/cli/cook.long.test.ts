import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { eachScratch, example, pitwright } from './support/run.js';

const folder = eachScratch();

const market = example('reverse-flow.yaml');

describe('cook', () => {
  it('tells what the reader chose, and what is left of the wood', async () => {
    const text = readFileSync(market, 'utf8');
    const pipe = text.replace(/(chamber:[^]*?)diameter: [^\n#]*/, '$1diameter: 30 in pipe, extra strong ');
    writeFileSync(folder.at('pit.yaml'), pipe);
    const { code, stdout, stderr } = await pitwright(['cook', folder.at('pit.yaml'), '--json']);
    expect(code).toBe(0);
    expect(stderr).toMatch(/^pitwright: chamber\.plate: /m);
    const { cook, warnings } = JSON.parse(stdout);
    expect(warnings).toMatchObject([{ code: 'wall-not-of-pipe', where: 'chamber.plate' }]);
    expect(cook.left_kg).toBeGreaterThan(0);
    expect(cook.left_kg).toBeLessThan(cook.woodTending_kg);
  });
});

describe('cold-smoke', () => {
  const upright = example('offset-with-upright.yaml');

  it('says whether the pit can, on which day and with what fire', async () => {
    const cool = await pitwright(['cold-smoke', upright, '--air', '45 °F']);
    expect(cool.code).toBe(0);
    expect(cool.stdout).toMatch(/^Yes: the upright stays under 90 °F/m);
    const warm = await pitwright(['cold-smoke', upright, '--air', '86 °F']);
    expect(warm.stdout).toMatch(/^No: on a day of 86 °F .* the smallest steady fire already warms/m);
    const hot = await pitwright(['cold-smoke', upright, '--air', '95 °F', '--json']);
    expect(JSON.parse(hot.stdout).coldSmoke).toMatchObject({ possible: false, why: 'air-too-warm' });
  });

  it.each([
    [['--ceiling', '900 °F'], /out of range; allowed: 40 °F to 200 °F/],
    [['--least', '0 W'], /out of range/],
    [['--air', 'warm'], /does not begin with a number/],
  ])('refuses %s', async (args, message) => {
    const { code, stdout, stderr } = await pitwright(['cold-smoke', upright, ...args]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(message);
  });
});
