import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { inject } from 'vitest';

export interface Run {
  code: number | null;
  stdout: string;
  stderr: string;
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
      done({ code, stdout: Buffer.concat(out).toString('utf8'), stderr: Buffer.concat(err).toString('utf8') }),
    );
  });
}

/** A new folder for one test; `remove` takes it away. */
export function scratch(): { path: string; at: (name: string) => string; remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'pitwright-'));
  return { path, at: (name) => join(path, name), remove: () => rmSync(path, { recursive: true, force: true }) };
}

export const example = (name: string) => resolve('examples', name);
