import { copyFileSync, existsSync, linkSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import { FITTED } from '../design/fittedFiles.js';
import {
  design,
  eachPitFolder,
  expectBothStay,
  expectFolderFirst,
  expectKept,
  expectNoName,
  expectNothingStays,
  expectTakenAway,
  plain,
} from './outputFolder.js';

const folder = eachPitFolder();

describe('charts', () => {
  it.each([
    ['in the folder under a chart’s name', (at: string) => copyFileSync(plain, at), 'charts/draft.png'],
    ['in the folder under a name in other case', (at: string) => copyFileSync(plain, at), 'charts/pit.PNG'],
    ['by a symbolic link there', (at: string) => symlinkSync('../pit.yaml', at), 'pit.yaml'],
  ])('never overwrite the design: %s', (_, put, named) => expectKept(folder, put, named));

  it('never overwrite what the design rests on', async () => {
    mkdirSync(folder.at('charts'));
    writeFileSync(folder.at('charts/draft.svg'), FITTED);
    const stdin = `${design}\nfitted: charts/draft.svg\n`;
    const { code, stderr } = await folder.run(['estimate', '-', '--charts', 'charts', '--format', 'svg'], stdin);
    expect(code).toBe(2);
    expect(stderr).toMatch(/would overwrite the fitted values that the design rests on itself/);
    expect(readFileSync(folder.at('charts/draft.svg'), 'utf8')).toBe(FITTED);
  });

  it('never overwrite another output, and then none is drawn', async () => {
    const { code, stderr } = await folder.run(['estimate', 'pit.yaml', '--csv', 'c/draft.png', '--charts', 'c']);
    expect(code).toBe(2);
    expect(stderr).toMatch(/c\/draft\.png: this would overwrite another output of this run/);
    expect(folder.listed(folder.at('c'))).toEqual(['draft.png']);
    expect(readFileSync(folder.at('c/draft.png'), 'utf8')).toMatch(/^time \[min\],/);
    expect(folder.shell('mkdir d; pitwright estimate pit.yaml --charts d > d/heat-loss.png').code).toBe(2);
    expect(folder.listed(folder.at('d'))).toEqual(['heat-loss.png']);
  });

  const cook = `${design}\ncook:\n  load: [{ name: brisket, mass: 14 lb, area: 2.5 ft^2, start: 40 °F }]\n  tend: 2 h\n`;
  it.each([
    ['estimate', [], design],
    ['compare', ['--vary', 'all.plate=1/8 in | 1/4 in'], design],
    ['cook', [], cook],
  ])('of %s: their folder is there before another output asks for it', (command, more, stdin) =>
    expectFolderFirst(folder, command, more, stdin),
  );
});

describe('an output that is the input', () => {
  beforeEach(() => {
    symlinkSync('pit.yaml', folder.at('link.yaml'));
    linkSync(folder.at('pit.yaml'), folder.at('hard.yaml'));
    symlinkSync('.', folder.at('here'));
  });

  it.each(['pit.yaml', './pit.yaml', 'link.yaml', 'here/pit.yaml'])('%s: exit 2, both stay', (name) =>
    expectBothStay(folder, name),
  );
});

describe('an output that no file can be', () => {
  it.each([
    ['no name', '', /'' is no name of a file/],
    ['a folder that is still to be made', 'new/', /'new\/' is no name of a file/],
    ['a folder', '.', /this is a folder/],
    ['a name that is too long', 'x'.repeat(300), /the name is too long/],
  ])('%s: exit 2 before the work', (_, name, message) => expectNoName(folder, name, message));

  it('a name as long as names may be is none of them', async () => {
    const name = 'x'.repeat(255);
    expect(await folder.run(['new', '-o', name])).toMatchObject({ code: 0 });
    expect(folder.listed()).toEqual(['pit.yaml', name]);
  });
});

describe('an output on a full disk', () => {
  it.each(['> x.json', '>> x.json', '-o x.json'])('%s: exit 2, nothing of it stays', (output) =>
    expectNothingStays(folder, output),
  );

  it.runIf(existsSync('/dev/full'))('whatever is asked for', () => {
    for (const args of [
      '--help',
      '--version',
      'help estimate',
      'check pit.yaml',
      'page',
      'check pit.yaml -o /dev/stdout',
    ]) {
      const { code, stderr } = folder.shell(`pitwright ${args} > /dev/full`);
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
    expect(folder.shell('pitwright check pit.yaml -o /dev/stdout >> x.txt').code).toBe(0);
    expect(readFileSync(folder.at('x.txt'), 'utf8')).toMatch(/^kept\n.*: the design can be read and built\n/);
    expect(folder.shell('pitwright check pit.yaml --json -o /dev/stdout | head -c1')).toMatchObject({
      code: 0,
      stdout: '{',
    });
    expect(folder.shell('pitwright estimate pit.yaml --json --csv /dev/stdout | cat; exit ${PIPESTATUS[0]}').code).toBe(
      2,
    );
  });
});

describe('a run that is stopped', () => {
  it.each([
    ['SIGINT', 130],
    ['SIGHUP', 129],
    ['SIGQUIT', 131],
    ['SIGTERM', 143],
    ['SIGXCPU', 152],
  ] as const)('by %s takes away what it began and ends with %i', (signal, code) =>
    expectTakenAway(folder, signal, code),
  );
});
