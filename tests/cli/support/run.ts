import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, inject } from 'vitest';

export interface Run {
  code: number | null;
  stdout: string;
  /** without the words on how it gets on, which come by the clock: on a busy machine they come sooner */
  stderr: string;
  progress: string;
}

/** Standard error, parted into what is said for good and words on how long work gets on. */
export function parted(stderr: string): Pick<Run, 'stderr' | 'progress'> {
  const passing = /^pitwright: .* \.\.\.\n/gm;
  return { stderr: stderr.replace(passing, ''), progress: stderr.match(passing)?.join('') ?? '' };
}

export interface RunOptions {
  stdin?: string | Buffer;
  cwd?: string;
  env?: Record<string, string>;
  /** close standard output as soon as it has given a byte, as `| head -c1` does */
  hangUp?: boolean;
  /** press Ctrl-C as soon as it has given a byte */
  interrupt?: boolean;
}

/**
 * What makes the bundled command go by its name in a shell's PATH; options may be added to whatever it's called with.
 */
export function onPath(folder: string, more = ''): Record<string, string> {
  const script = `#!/bin/sh\nexec '${process.execPath}' '${inject('command')}' "$@" ${more}\n`;
  writeFileSync(join(folder, 'pitwright'), script, { mode: 0o755 });
  return { PATH: `${folder}:${process.env.PATH}` };
}

/** Runs a line of shell and waits for its end. */
export function shell(line: string, { cwd, env }: Pick<RunOptions, 'cwd' | 'env'>): Run {
  const options = { cwd, env: { ...process.env, ...env }, encoding: 'utf8', maxBuffer: 1e8 } as const;
  const { status, stdout, stderr } = spawnSync('bash', ['-c', line], options);
  return { code: status, stdout, ...parted(stderr) };
}

/** Starts the bundled command with the given standard streams, for a test that ends it. */
export function start(args: string[], stdio: (number | 'ignore' | 'pipe')[], cwd?: string): ChildProcess {
  return spawn(process.execPath, [inject('command'), ...args], { cwd, stdio });
}

/** What a process ends with: its number, or the signal that ended it. */
export const endOf = (child: ChildProcess) =>
  new Promise<number | string | null>((done) => child.once('close', (code, signal) => done(code ?? signal)));

/** Resolves when something has become so, looked for again and again; fails when `child` has ended before. */
export async function until(child: ChildProcess, so: () => boolean): Promise<void> {
  while (!so()) {
    if (child.exitCode !== null) throw new Error('the command ended before that');
    await new Promise((next) => setTimeout(next, 2));
  }
}

/** Runs the bundled command as a shell would and waits for its end. */
export function pitwright(args: string[], { stdin, cwd, env, hangUp, interrupt }: RunOptions = {}): Promise<Run> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [inject('command'), ...args], { cwd, env: { ...process.env, ...env } });
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => {
      out.push(chunk);
      if (hangUp) child.stdout.destroy();
      if (interrupt && out.length === 1) child.kill('SIGINT');
    });
    child.stderr.on('data', (chunk: Buffer) => err.push(chunk));
    child.stdin.on('error', () => {
      // a command that stops before it has read its input closes the pipe
    });
    child.stdin.end(stdin ?? '');
    child.on('error', fail);
    child.on('close', (code) =>
      done({ code, stdout: Buffer.concat(out).toString('utf8'), ...parted(Buffer.concat(err).toString('utf8')) }),
    );
  });
}

/**
 * The command ends with this exit code and says why on standard error alone, without a trace of the code. @returns what
 * it says
 */
export async function expectRefusal(
  args: string[],
  code: number,
  message: RegExp,
  options?: RunOptions,
): Promise<string> {
  const run = await pitwright(args, options);
  expect({ code: run.code, stdout: run.stdout }).toEqual({ code, stdout: '' });
  expect(run.stderr).toMatch(message);
  expect(run.stderr).not.toMatch(/^ +at /m);
  return run.stderr;
}

/** A new folder for one test; `remove` takes it away. */
export function scratch(): { path: string; at: (name: string) => string; remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'pitwright-'));
  return { path, at: (name) => join(path, name), remove: () => rmSync(path, { recursive: true, force: true }) };
}

/** A new folder for every test of the file that asks for it, filled first, and taken away behind it. */
export function eachScratch(fill: (folder: ReturnType<typeof scratch>) => void = () => undefined) {
  let folder: ReturnType<typeof scratch>;
  beforeEach(() => {
    folder = scratch();
    fill(folder);
  });
  afterEach(() => folder.remove());
  return {
    get path() {
      return folder.path;
    },
    at: (name: string) => folder.at(name),
  };
}

export const example = (name: string) => resolve('examples', name);
