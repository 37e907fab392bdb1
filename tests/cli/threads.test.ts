import { describe, expect, it } from 'vitest';
import { pitwright } from './support/run.js';
import { stdin, inThreads } from './endedThreads.js';

describe('a thread that ends early', () => {
  it.each([
    ['leaves with 7', 'process.exit(7)', /our fault, not yours: a thread ended before its work was done \(exit 7\)\./],
  ])('in a batch, that %s: exit 1, whole lines, a word on how many', async (_, what, message) => {
    const run = await pitwright(['batch', '--steady', '--workers', '2'], { stdin, env: inThreads(what) });
    expect(run.code).toBe(1);
    expect(run.stderr).toMatch(message);
    const lines = run.stdout.split('\n');
    expect(lines.pop()).toBe('');
    for (const line of lines) expect(JSON.parse(line).assumed.converged).toBe(true);
    expect(lines.length).toBeLessThan(40);
    if (lines.length > 1) expect(run.stderr).toContain(`broke off after ${lines.length} whole lines`);
    expect(run.stderr.match(/our fault/g)).toHaveLength(1);
  });
});
