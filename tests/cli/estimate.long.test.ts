import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectToldPlain } from './estimatedText.js';
import { eachScratch, example, expectRefusal, pitwright } from './support/run.js';

const folder = eachScratch();

const plain = example('plain-24.yaml');
const plainText = readFileSync(plain, 'utf8');

describe('what estimate writes to files', () => {
  it('curves in place of the text with --csv -', async () => {
    const { code, stdout } = await pitwright(['estimate', plain, '--csv', '-']);
    expect(code).toBe(0);
    expect(stdout.startsWith('time [min],')).toBe(true);
    expect(stdout).not.toContain('TEMPERATURES');
  });

  it('the same pictures on every run', async () => {
    for (const name of ['one', 'two']) await pitwright(['estimate', plain, '--charts', folder.at(name)]);
    for (const name of readdirSync(folder.at('one'))) {
      expect(readFileSync(folder.at(`two/${name}`)).equals(readFileSync(folder.at(`one/${name}`)))).toBe(true);
    }
  });

  it.each([
    ['JSON and curves both to stdout', ['--json', '--csv', '-'], /both go to standard output/],
    ['charts into a file', ['--charts', 'file'], /file/],
    ['curves into no folder', ['--csv', 'none/x.csv'], /does not exist/],
  ])('%s: exit 2 and nothing written', async (_, args, message) => {
    writeFileSync(folder.at('file'), 'kept');
    await expectRefusal(['estimate', plain, ...args], 2, message, { cwd: folder.path });
    expect(readdirSync(folder.path)).toEqual(['file']);
  });

  it('takes back what it began when an output can only be refused late', async () => {
    mkdirSync(folder.at('charts/heat-loss.png'), { recursive: true });
    const { code, stderr } = await pitwright(['estimate', plain, '--charts', folder.at('charts')]);
    expect(code).toBe(2);
    expect(stderr).toContain('this is a folder');
    expect(readdirSync(folder.at('charts')).filter((name) => name.endsWith('.tmp'))).toEqual([]);
    expect(existsSync(folder.at('charts/heat-loss.png'))).toBe(true);
  });
});

describe('a reader that hangs up', () => {
  it('still gets the files done', async () => {
    const run = await pitwright(['estimate', plain, '--json', '--csv', folder.at('pit.csv')], { hangUp: true });
    expect(run).toMatchObject({ code: 0, stderr: '' });
    expect(readdirSync(folder.path)).toEqual(['pit.csv']);
  });
});

describe('estimate', () => {
  it('prints the text on stdout and nothing on stderr', async () => {
    const { code, stdout, stderr } = await pitwright(['estimate', plain]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expectToldPlain(stdout);
  });

  it('keeps to SI with --units si', async () => {
    const { stdout } = await pitwright(['estimate', plain, '--full', '--units', 'si']);
    expect(stdout).toMatch(/121 °C/);
    expect(stdout.slice(stdout.indexOf('TEMPERATURES'), stdout.indexOf('ESTIMATES'))).not.toMatch(/°F|BTU| lb|in H2O/);
  });

  it('prints every table with --full, as its help says, and without it the answer alone', async () => {
    const [short, full, help] = await Promise.all(
      [[plain], [plain, '--full'], ['--help']].map((args) => pitwright(['estimate', ...args])),
    );
    for (const { code, stderr } of [short, full, help]) expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(help.stdout).toMatch(/^ +--full /m);
    expect(short.stdout.trimEnd().split('\n').length).toBeLessThanOrEqual(60);
    const others = ['WARM-UP', 'BY HEIGHT', 'OPENINGS', 'WEIGHTS', 'ESTIMATES'];
    for (const head of others) {
      expect(short.stdout).not.toMatch(new RegExp(`^${head}`, 'm'));
      expect(full.stdout).toMatch(new RegExp(`^${head}`, 'm'));
    }
  });

  it('gives the same bytes on every run, from a file and from standard input', async () => {
    const { code, stdout, stderr } = await pitwright(['estimate', plain, '--json']);
    const again = await pitwright(['estimate', '-', '--json'], { stdin: plainText });
    expect(again).toMatchObject({ code, stdout, stderr });
  });
});
