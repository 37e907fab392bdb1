import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { parse } from 'yaml';
import { example, pitwright } from './support/run.js';

export const plain = example('plain-24.yaml');
const design = JSON.stringify(parse(readFileSync(plain, 'utf8')));
const stdin = `${design}\n`.repeat(40);

/** Something that happens to each thread in the middle of its work, after so many exponentials. */
export const inThreads = (what: string) => ({
  NODE_OPTIONS:
    '--import data:text/javascript,' +
    encodeURIComponent(
      "import{isMainThread}from'node:worker_threads';const e=Math.exp;let n=0;" +
        `if(!isMainThread)Math.exp=(x)=>{if(++n>800){${what}}return(e(x))}`,
    ),
});

/** A batch in whose threads that happens ends with 1, with whole lines and a word on how many. */
export async function expectBrokenOff(what: string, message: RegExp): Promise<void> {
  const run = await pitwright(['batch', '--steady', '--workers', '2'], { stdin, env: inThreads(what) });
  expect(run.code).toBe(1);
  expect(run.stderr).toMatch(message);
  const lines = run.stdout.split('\n');
  expect(lines.pop()).toBe('');
  for (const line of lines) expect(JSON.parse(line).assumed.converged).toBe(true);
  expect(lines.length).toBeLessThan(40);
  if (lines.length > 1) expect(run.stderr).toContain(`broke off after ${lines.length} whole lines`);
  expect(run.stderr.match(/our fault/g)).toHaveLength(1);
}
