import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';
import { eachScratch, endOf, example, onPath, pitwright, shell, start, until } from './support/run.js';

export const plain = example('plain-24.yaml');
export const design = readFileSync(plain, 'utf8');

export type PitFolder = ReturnType<typeof eachPitFolder>;

/** For every test a folder with a design in it, and how the command is run there. */
export function eachPitFolder() {
  const folder = eachScratch((fresh) => copyFileSync(plain, fresh.at('pit.yaml')));
  return {
    get path() {
      return folder.path;
    },
    at: folder.at,
    run: (args: string[], stdin?: string) => pitwright(args, { cwd: folder.path, stdin }),
    shell: (line: string) => shell(line, { cwd: folder.path, env: onPath(folder.path) }),
    listed: (path = folder.path) => readdirSync(path).sort(),
  };
}

/** Charts into the folder of a design put there under a name would overwrite it, and don't. */
export async function expectKept(folder: PitFolder, put: (at: string) => void, named: string): Promise<void> {
  mkdirSync(folder.at('charts'));
  put(folder.at(named.startsWith('charts') ? named : 'charts/draft.png'));
  const before = folder.listed(folder.at('charts'));
  const { code, stdout, stderr } = await folder.run(['estimate', named, '--charts', './charts']);
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toMatch(
    /^pitwright: charts\/.*: this would overwrite the design itself\. Give another name or folder\.\n$/,
  );
  expect(readFileSync(folder.at(named), 'utf8')).toBe(design);
  expect(folder.listed(folder.at('charts'))).toEqual(before);
}

/** Charts' folder is there before text and table are written into it. */
export async function expectFolderFirst(
  folder: PitFolder,
  command: string,
  more: string[],
  stdin: string,
): Promise<void> {
  const args = [command, '-', ...more, '-o', 'new/a/x.txt', '--csv', 'new/a/x.csv', '--charts', 'new/a'];
  const run = await folder.run(args, stdin);
  expect(run).toMatchObject({ code: 0, stdout: '' });
  expect(folder.listed(folder.at('new/a'))).toEqual(expect.arrayContaining(['x.csv', 'x.txt']));
  expect(folder.listed(folder.at('new/a')).filter((name) => name.endsWith('.png')).length).toBeGreaterThan(0);
}

/** No output goes over the design, by whatever name that is called. */
export function expectBothStay(folder: PitFolder, name: string): void {
  for (const line of [
    `pitwright check pit.yaml -o ${name}`,
    `pitwright check - -o ${name} < pit.yaml`,
    `pitwright estimate pit.yaml --csv ${name}`,
    `pitwright check pit.yaml >> ${name}`,
  ]) {
    const { code, stdout, stderr } = folder.shell(line);
    expect({ line, code, stdout }).toEqual({ line, code: 2, stdout: '' });
    expect(stderr).toMatch(/the design itself/);
  }
  expect(readFileSync(folder.at('pit.yaml'), 'utf8')).toBe(design);
  expect(folder.listed().filter((each) => each.endsWith('.tmp'))).toEqual([]);
}

/** An output that no file can be is refused before the work. */
export async function expectNoName(folder: PitFolder, name: string, message: RegExp): Promise<void> {
  for (const args of [
    ['check', 'pit.yaml', '-o', name],
    ['batch', '-o', name],
  ]) {
    const run = await folder.run(args);
    expect(run).toMatchObject({ code: 2, stdout: '' });
    expect(run.stderr).toMatch(message);
  }
  expect(folder.listed()).toEqual(['pit.yaml']);
}

/** What no longer fits a disk leaves nothing of itself behind. */
export function expectNothingStays(folder: PitFolder, output: string, command = 'estimate pit.yaml --json'): void {
  const before = output.startsWith('>>') ? 'kept\n' : '';
  if (before) writeFileSync(folder.at('x.json'), before);
  const { code, stderr } = folder.shell(`ulimit -f 20; exec pitwright ${command} ${output}`);
  expect(code).toBe(2);
  expect(stderr).toMatch(/: no file may grow that large here\.\n$/);
  const left = existsSync(folder.at('x.json')) ? readFileSync(folder.at('x.json'), 'utf8') : '';
  expect(left).toBe(before);
  expect(folder.listed().filter((name) => name.endsWith('.tmp'))).toEqual([]);
}

/** A run that is stopped takes away what it began. */
export async function expectTakenAway(folder: PitFolder, signal: NodeJS.Signals, code: number): Promise<void> {
  const args = ['estimate', 'pit.yaml', '--spread', '1000', '-o', 'x.txt', '--csv', 'x.csv', '--charts', 'a/b'];
  const child = start(args, ['ignore', 'pipe', 'pipe'], folder.path);
  const ended = endOf(child);
  let told = '';
  child.stderr!.on('data', (chunk: Buffer) => (told += chunk.toString()));
  await until(child, () => /cases/.test(told));
  expect(folder.listed().filter((name) => name.endsWith('.tmp'))).toHaveLength(2);
  child.kill(signal);
  expect(await ended).toBe(code);
  expect(folder.listed()).toEqual(['pit.yaml']);
}
