import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectBrokenOff, inThreads, plain } from './endedThreads.js';
import { pitwright, scratch } from './support/run.js';

const outOfMemory = 'for(let a=[];;)a.push(new(Array)(1e5).fill(0.5))';

describe('a thread that ends early', () => {
  it.each([
    ['leaves with 0', 'process.exit(0)', /our fault, not yours: a thread ended before its work was done \(exit 0\)\./],
    ['runs out of memory', outOfMemory, /our fault, not yours: .*memory limit/],
  ])('in a batch, that %s: exit 1, whole lines, a word on how many', (_, what, message) =>
    expectBrokenOff(what, message),
  );

  it.each([
    ['leaves', 'process.exit(0)', /a thread ended before its work was done/],
    ['throws', "throw(new(Error)('boom'))", /our fault, not yours: boom\./],
  ])('in a spread, that %s: exit 1, nothing written', async (_, what, message) => {
    const folder = scratch();
    try {
      const args = ['estimate', plain, '--spread', '40', '--workers', '2', '-o', folder.at('x.txt')];
      const run = await pitwright(args, { env: inThreads(what) });
      expect(run).toMatchObject({ code: 1, stdout: '' });
      expect(run.stderr).toMatch(message);
      expect(readdirSync(folder.path)).toEqual([]);
    } finally {
      folder.remove();
    }
  });

  it('in size: exit 1', async () => {
    const run = await pitwright(['size', plain, '--workers', '2'], { env: inThreads('process.exit(0)') });
    expect(run).toMatchObject({ code: 1, stdout: '' });
  });
});
