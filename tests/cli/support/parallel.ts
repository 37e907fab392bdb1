import { spawnSync } from 'node:child_process';
import { inject } from 'vitest';
import { parted } from './run.js';

/** Whether this machine has GNU parallel; said loudly where it hasn't, and an error under CI. */
export function canRunParallel(): boolean {
  const { stdout } = spawnSync('parallel', ['--version'], { encoding: 'utf8' });
  if (stdout?.startsWith('GNU parallel')) return true;
  const told = 'NO GNU parallel (Debian package parallel), so spreading a batch was NOT tested';
  if (process.env.CI) throw new Error(told);
  process.stderr.write(`\n${'!'.repeat(70)}\n${told}\n${'!'.repeat(70)}\n\n`);
  return false;
}

/** What GNU parallel makes of standard input with the bundled command, which gets its lines in parts. */
export function inParallel(options: string[], args: string[], stdin: string) {
  const command = ['-q', process.execPath, inject('command'), ...args];
  const { status, stdout, stderr } = spawnSync('parallel', [...options, ...command], {
    input: stdin,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  return { code: status, stdout, ...parted(stderr) };
}
