import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { example } from './support/run.js';

export const plain = example('plain-24.yaml');
const design = JSON.stringify(parse(readFileSync(plain, 'utf8')));
export const stdin = `${design}\n`.repeat(40);

/** Something that happens to each thread in the middle of its work, after so many exponentials. */
export const inThreads = (what: string) => ({
  NODE_OPTIONS:
    '--import data:text/javascript,' +
    encodeURIComponent(
      "import{isMainThread}from'node:worker_threads';const e=Math.exp;let n=0;" +
        `if(!isMainThread)Math.exp=(x)=>{if(++n>800){${what}}return(e(x))}`,
    ),
});
