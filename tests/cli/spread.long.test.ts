import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectHowSure } from '../report/howSure.js';
import { example, pitwright } from './support/run.js';

const plain = example('plain-24.yaml');

describe('estimate --spread', () => {
  it('gives the same bytes however many threads share the work, and tells its progress on stderr', async () => {
    const run = (workers: string) => pitwright(['estimate', plain, '--json', '--spread', '60', '--workers', workers]);
    const [one, three] = [await run('1'), await run('3')];
    expect(one.code).toBe(0);
    expect(three.stdout).toBe(one.stdout);
    expect(one.progress).toMatch(/spread, \d+ of 60 cases/);
    const { spread } = JSON.parse(one.stdout);
    expect(spread).toMatchObject({ cases: 60, seed: 1 });
    const gauge = spread.numbers.find(({ key }: { key: string }) => key === 'gauge_s');
    expect(gauge.p10).toBeLessThan(gauge.p90);
    expect(gauge.causes[0].share).toBeGreaterThan(0.2);
  });

  it('says in the text how sure each number is', async () => {
    const { stdout } = await pitwright(['estimate', plain, '--spread', '20']);
    expectHowSure(stdout, 20);
  });

  it('says in the text what matters', async () => {
    const { stdout } = await pitwright(['estimate', plain, '--spread', '60']);
    expect(stdout).toMatch(/^HOW SURE: 60 cases/m);
    expect(stdout).toMatch(/^ +\d+ % {2}how fast the fire comes up/m);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  it('says of splits what the README says', async () => {
    const { stdout } = await pitwright(['estimate', plain, '--spread', '200']);
    const told = /one is laid on (every [^,]*), (.*?) of them, the lowest reading is (.*?) and the highest (.*?)\./;
    const [, every, wood, lowest, highest] = told.exec(stdout.replace(/\s+/g, ' '))!;
    const readme = readFileSync('README.md', 'utf8').replace(/\s+/g, ' ');
    expect(readme).toContain(`By \`--spread\` ${every} (common`);
    expect(readme).toContain(`on ${wood}, from ${lowest} up to ${highest} (unmeasured`);
  }, 300_000);

  it('another seed gives other cases; without --spread there is no such key', async () => {
    const args = ['estimate', plain, '--json', '--spread', '20', '--seed'];
    const [one, two] = [await pitwright([...args, '1']), await pitwright([...args, '2'])];
    expect(JSON.parse(one.stdout).spread.numbers).not.toEqual(JSON.parse(two.stdout).spread.numbers);
    expect(JSON.parse((await pitwright(['estimate', plain, '--json'])).stdout)).not.toHaveProperty('spread');
  });

  it.each([
    ['--spread', '19'],
    ['--spread', '1e9'],
    ['--workers', '0'],
  ])('%s %s: exit 2 and what is allowed', async (option, value) => {
    const { code, stdout, stderr } = await pitwright(['estimate', plain, option, value]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/whole number from \d+ to \d+/);
  });
});

describe('compare --spread', () => {
  const args = ['compare', plain, '--vary', 'all.plate=1/4 in | 1/2 in', '--spread', '20'];

  it('says which differences are sure, in the same bytes whoever shares the work', async () => {
    const run = (workers: string) => pitwright([...args, '--json', '--workers', workers]);
    const [one, two] = [await run('1'), await run('2')];
    expect(one.code).toBe(0);
    expect(two.stdout).toBe(one.stdout);
    const { spread } = JSON.parse(one.stdout);
    expect(spread).toMatchObject({ cases: 20, seed: 1 });
    const soaked = spread.options[1].measures.find(({ key }: { key: string }) => key === 'soaked_s');
    expect(soaked).toMatchObject({ more: 20, less: 0, same: 0 });
  }, 120_000);

  it('tells it in words and a table', async () => {
    const { code, stdout } = await pitwright(args);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^HOW SURE: 20 cases, all options with the same fire/m);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(/longer or hotter in every case: all steel,.* soaked/);
    const section = stdout.slice(stdout.indexOf('HOW SURE'), stdout.indexOf('WHAT WAS DONE'));
    expect(section).toMatch(/^ {2}soaked +\+\d+ min to \+\d+ min +20 +- +- +-$/m);
    expect(section).not.toMatch(/NaN|undefined|null/);
  }, 120_000);
});
