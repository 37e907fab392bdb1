import {
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FITTED } from '../design/fittedFiles.js';
import { endOf, example, onPath, pitwright, scratch, shell, start, until } from './support/run.js';

const plain = example('plain-24.yaml');
const design = readFileSync(plain, 'utf8');

let folder: ReturnType<typeof scratch>;
beforeEach(() => {
  folder = scratch();
  copyFileSync(plain, folder.at('pit.yaml'));
});
afterEach(() => folder.remove());

const inFolder = (args: string[], stdin?: string) => pitwright(args, { cwd: folder.path, stdin });
const inShell = (line: string) => shell(line, { cwd: folder.path, env: onPath(folder.path) });
const listed = (path = folder.path) => readdirSync(path).sort();

describe('charts', () => {
  it.each([
    ['in the folder under a name in other case', (at: string) => copyFileSync(plain, at), 'charts/pit.PNG'],
    ['by a symbolic link there', (at: string) => symlinkSync('../pit.yaml', at), 'pit.yaml'],
  ])('never overwrite the design: %s', async (_, put, named) => {
    mkdirSync(folder.at('charts'));
    put(folder.at(named.startsWith('charts') ? named : 'charts/draft.png'));
    const before = listed(folder.at('charts'));
    const { code, stdout, stderr } = await inFolder(['estimate', named, '--charts', './charts']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(
      /^pitwright: charts\/.*: this would overwrite the design itself\. Give another name or folder\.\n$/,
    );
    expect(readFileSync(folder.at(named), 'utf8')).toBe(design);
    expect(listed(folder.at('charts'))).toEqual(before);
  });

  it('never overwrite what the design rests on', async () => {
    mkdirSync(folder.at('charts'));
    writeFileSync(folder.at('charts/draft.svg'), FITTED);
    const stdin = `${design}\nfitted: charts/draft.svg\n`;
    const { code, stderr } = await inFolder(['estimate', '-', '--charts', 'charts', '--format', 'svg'], stdin);
    expect(code).toBe(2);
    expect(stderr).toMatch(/would overwrite the fitted values that the design rests on itself/);
    expect(readFileSync(folder.at('charts/draft.svg'), 'utf8')).toBe(FITTED);
  });

  it('never overwrite another output, and then none is drawn', async () => {
    const { code, stderr } = await inFolder(['estimate', 'pit.yaml', '--csv', 'c/draft.png', '--charts', 'c']);
    expect(code).toBe(2);
    expect(stderr).toMatch(/c\/draft\.png: this would overwrite another output of this run/);
    expect(listed(folder.at('c'))).toEqual(['draft.png']);
    expect(readFileSync(folder.at('c/draft.png'), 'utf8')).toMatch(/^time \[min\],/);
    expect(inShell('mkdir d; pitwright estimate pit.yaml --charts d > d/heat-loss.png').code).toBe(2);
    expect(listed(folder.at('d'))).toEqual(['heat-loss.png']);
  });

  const cook = `${design}\ncook:\n  load: [{ name: brisket, mass: 14 lb, area: 2.5 ft^2, start: 40 °F }]\n  tend: 2 h\n`;
  it.each([
    ['compare', ['--vary', 'all.plate=1/8 in | 1/4 in'], design],
    ['cook', [], cook],
  ])('of %s: their folder is there before another output asks for it', async (command, more, stdin) => {
    const args = [command, '-', ...more, '-o', 'new/a/x.txt', '--csv', 'new/a/x.csv', '--charts', 'new/a'];
    const run = await inFolder(args, stdin);
    expect(run).toMatchObject({ code: 0, stdout: '' });
    expect(listed(folder.at('new/a'))).toEqual(expect.arrayContaining(['x.csv', 'x.txt']));
    expect(listed(folder.at('new/a')).filter((name) => name.endsWith('.png')).length).toBeGreaterThan(0);
  });
});

describe('an output that is the input', () => {
  beforeEach(() => {
    symlinkSync('pit.yaml', folder.at('link.yaml'));
    linkSync(folder.at('pit.yaml'), folder.at('hard.yaml'));
    symlinkSync('.', folder.at('here'));
  });

  it.each(['pit.yaml', './pit.yaml', 'link.yaml', 'here/pit.yaml'])('%s: exit 2, both stay', (name) => {
    for (const line of [
      `pitwright check pit.yaml -o ${name}`,
      `pitwright check - -o ${name} < pit.yaml`,
      `pitwright estimate pit.yaml --csv ${name}`,
      `pitwright check pit.yaml >> ${name}`,
    ]) {
      const { code, stdout, stderr } = inShell(line);
      expect({ line, code, stdout }).toEqual({ line, code: 2, stdout: '' });
      expect(stderr).toMatch(/the design itself/);
    }
    expect(readFileSync(folder.at('pit.yaml'), 'utf8')).toBe(design);
    expect(listed().filter((each) => each.endsWith('.tmp'))).toEqual([]);
  });
});

describe('an output that no file can be', () => {
  it.each([
    ['a folder that is still to be made', 'new/', /'new\/' is no name of a file/],
    ['a folder', '.', /this is a folder/],
    ['a name that is too long', 'x'.repeat(300), /the name is too long/],
  ])('%s: exit 2 before the work', async (_, name, message) => {
    for (const args of [
      ['check', 'pit.yaml', '-o', name],
      ['batch', '-o', name],
    ]) {
      const run = await inFolder(args);
      expect(run).toMatchObject({ code: 2, stdout: '' });
      expect(run.stderr).toMatch(message);
    }
    expect(listed()).toEqual(['pit.yaml']);
  });

  it('a name as long as names may be is none of them', async () => {
    const name = 'x'.repeat(255);
    expect(await inFolder(['new', '-o', name])).toMatchObject({ code: 0 });
    expect(listed()).toEqual(['pit.yaml', name]);
  });
});

describe('an output on a full disk', () => {
  it.each(['>> x.json', '-o x.json'])('%s: exit 2, nothing of it stays', (output) => {
    const before = output.startsWith('>>') ? 'kept\n' : '';
    if (before) writeFileSync(folder.at('x.json'), before);
    const { code, stderr } = inShell(`ulimit -f 20; exec pitwright estimate pit.yaml --json ${output}`);
    expect(code).toBe(2);
    expect(stderr).toMatch(/: no file may grow that large here\.\n$/);
    const left = existsSync(folder.at('x.json')) ? readFileSync(folder.at('x.json'), 'utf8') : '';
    expect(left).toBe(before);
    expect(listed().filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });

  it.runIf(existsSync('/dev/full'))('whatever is asked for', () => {
    for (const args of [
      '--help',
      '--version',
      'help estimate',
      'check pit.yaml',
      'page',
      'check pit.yaml -o /dev/stdout',
    ]) {
      const { code, stderr } = inShell(`pitwright ${args} > /dev/full`);
      expect({ args, code, stderr }).toEqual({
        ...{ args, code: 2 },
        stderr: 'pitwright: standard output: the disk is full.\n',
      });
    }
  });
});

describe('/dev/stdout', () => {
  it.runIf(existsSync('/dev/stdout'))('is standard output', () => {
    writeFileSync(folder.at('x.txt'), 'kept\n');
    expect(inShell('pitwright check pit.yaml -o /dev/stdout >> x.txt').code).toBe(0);
    expect(readFileSync(folder.at('x.txt'), 'utf8')).toMatch(/^kept\n.*: the design can be read and built\n/);
    expect(inShell('pitwright check pit.yaml --json -o /dev/stdout | head -c1')).toMatchObject({
      code: 0,
      stdout: '{',
    });
    expect(inShell('pitwright estimate pit.yaml --json --csv /dev/stdout | cat; exit ${PIPESTATUS[0]}').code).toBe(2);
  });
});

describe('a run that is stopped', () => {
  it.each([
    ['SIGHUP', 129],
    ['SIGQUIT', 131],
    ['SIGTERM', 143],
    ['SIGXCPU', 152],
  ] as const)('by %s takes away what it began and ends with %i', async (signal, code) => {
    const args = ['estimate', 'pit.yaml', '--spread', '5000', '-o', 'x.txt', '--csv', 'x.csv', '--charts', 'a/b'];
    const child = start(args, ['ignore', 'pipe', 'pipe'], folder.path);
    const ended = endOf(child);
    let told = '';
    child.stderr!.on('data', (chunk: Buffer) => (told += chunk.toString()));
    await until(child, () => /cases/.test(told));
    expect(listed().filter((name) => name.endsWith('.tmp'))).toHaveLength(2);
    child.kill(signal);
    expect(await ended).toBe(code);
    expect(listed()).toEqual(['pit.yaml']);
  });
});
