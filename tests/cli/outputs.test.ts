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
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { claimInput, FITTED_FILE } from '../../src/cli/claims.js';
import { openSink } from '../../src/cli/output.js';
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
    ['in the folder under a chart’s name', (at: string) => copyFileSync(plain, at), 'charts/draft.png'],
    ['by a hard link there', (at: string) => linkSync(join(at, '../../pit.yaml'), at), 'pit.yaml'],
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
  it.each([['estimate', [], design]])(
    'of %s: their folder is there before another output asks for it',
    async (command, more, stdin) => {
      const args = [command, '-', ...more, '-o', 'new/a/x.txt', '--csv', 'new/a/x.csv', '--charts', 'new/a'];
      const run = await inFolder(args, stdin);
      expect(run).toMatchObject({ code: 0, stdout: '' });
      expect(listed(folder.at('new/a'))).toEqual(expect.arrayContaining(['x.csv', 'x.txt']));
      expect(listed(folder.at('new/a')).filter((name) => name.endsWith('.png')).length).toBeGreaterThan(0);
    },
  );

  it('take no folder that another output has for its name', async () => {
    const run = await inFolder(['estimate', 'pit.yaml', '-o', 'new/c', '--charts', 'new/c']);
    expect(run).toMatchObject({ code: 2, stdout: '' });
    expect(listed()).toEqual(['pit.yaml']);
  });
});

describe('an output that is the input', () => {
  beforeEach(() => {
    symlinkSync('pit.yaml', folder.at('link.yaml'));
    linkSync(folder.at('pit.yaml'), folder.at('hard.yaml'));
    symlinkSync('.', folder.at('here'));
  });

  it.each(['hard.yaml'])('%s: exit 2, both stay', (name) => {
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

  it('fitted values: refused, but that a fit may renew them', async () => {
    writeFileSync(folder.at('yard.fitted.yaml'), FITTED);
    writeFileSync(folder.at('fitted.yaml'), `${design}\nfitted: yard.fitted.yaml\n`);
    const { code, stderr } = await inFolder(['check', 'fitted.yaml', '-o', 'yard.fitted.yaml']);
    expect(code).toBe(2);
    expect(stderr).toMatch(/would overwrite the fitted values/);
    expect(readFileSync(folder.at('yard.fitted.yaml'), 'utf8')).toBe(FITTED);
    // as `fit --save` does
    claimInput(folder.at('yard.fitted.yaml'), FITTED_FILE);
    await openSink(folder.at('yard.fitted.yaml'), FITTED_FILE).write('renewed\n');
    expect(readFileSync(folder.at('yard.fitted.yaml'), 'utf8')).toBe('renewed\n');
  });
});

describe('an output that no file can be', () => {
  it.each([
    ['no name', '', /'' is no name of a file/],
    ['a file for a folder', 'pit.yaml/x', /a file stands where a folder is needed/],
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
});

describe('an output on a full disk', () => {
  it.each(['> x.json'])('%s: exit 2, nothing of it stays', (output) => {
    const before = output.startsWith('>>') ? 'kept\n' : '';
    if (before) writeFileSync(folder.at('x.json'), before);
    const { code, stderr } = inShell(`ulimit -f 20; exec pitwright estimate pit.yaml --json ${output}`);
    expect(code).toBe(2);
    expect(stderr).toMatch(/: no file may grow that large here\.\n$/);
    const left = existsSync(folder.at('x.json')) ? readFileSync(folder.at('x.json'), 'utf8') : '';
    expect(left).toBe(before);
    expect(listed().filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });
});

describe('a run that is stopped', () => {
  it.each([['SIGINT', 130]] as const)('by %s takes away what it began and ends with %i', async (signal, code) => {
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
