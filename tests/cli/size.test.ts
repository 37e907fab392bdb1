import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { example, pitwright, scratch, type Run } from './support/run.js';

const plain = example('plain-24.yaml');
/** Few stacks to try. */
const FEW = 'size: { stack: { most: 13 in }, onHand: ["6 in tube 11 ga, 24 in long"] }\n';

let folder: ReturnType<typeof scratch>;
beforeAll(() => {
  folder = scratch();
});
afterAll(() => folder.remove());

describe('size', () => {
  let run: Run;
  beforeAll(async () => {
    const stdin = `${readFileSync(plain, 'utf8')}${FEW}`;
    run = await pitwright(['size', '-', '--json', '--charts', folder.at('charts'), '--workers', '1'], { stdin });
  }, 120_000);

  it('gives wanted, choices and the chosen one, and says its progress on stderr', () => {
    expect(run.code).toBe(0);
    const tree = JSON.parse(run.stdout);
    expect(Object.keys(tree)).toEqual(expect.arrayContaining(['wanted', 'choices', 'chosen', 'asDrawn', 'curves']));
    expect(tree.chosen).toBe(0);
    for (const key of ['intakes', 'throat', 'stack', 'margins', 'checks']) expect(tree.choices[0]).toHaveProperty(key);
    for (const { margin } of tree.choices[0].margins) expect(margin).toBeGreaterThanOrEqual(0);
    expect(run.progress).toMatch(/stacks tried/);
  });

  it('draws draft, air and the vent curve', () => {
    expect(readdirSync(folder.at('charts')).sort()).toEqual(['stack-air.png', 'stack-draft.png', 'vent-curve.png']);
  });

  it.each([['1']])('--clean-air %s: exit 2', async (value) => {
    const { code, stderr } = await pitwright(['size', plain, '--clean-air', value]);
    expect(code).toBe(2);
    expect(stderr).toMatch(/1\.2 to 20/);
  });
});
