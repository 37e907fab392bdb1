import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;
const page = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
const start = page.indexOf('## A walk');
const walk = [...page.slice(start, page.indexOf('\n## ', start + 1)).matchAll(/`(src\/[^`]+\.ts)`/g)].map(
  ([, file]) => file,
);

/** Files that a file imports, types included. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(root, file), 'utf8');
  return [...text.matchAll(/from '(\.[^']+)\.js'/g)].map(([, path]) => `${join(dirname(file), path)}.ts`);
}

describe('the walk of DEVELOPERS.md', () => {
  it('is of at most 25 files that there are, each once', () => {
    expect(walk.length).toBeGreaterThan(15);
    expect(walk.length).toBeLessThanOrEqual(25);
    expect(new Set(walk).size).toBe(walk.length);
    expect(walk.filter((file) => !existsSync(join(root, file)))).toEqual([]);
  });

  it('never turns back: no file imports one that comes after it', () => {
    const back = walk.flatMap((file, i) =>
      importsOf(file)
        .filter((other) => walk.indexOf(other) > i)
        .map((other) => `${file} -> ${other}`),
    );
    expect(back).toEqual([]);
  });

  it('leads from each file to the last by imports', () => {
    // the text has a result and the words beside it, and asks for nothing below them
    const ends = ['src/report/text/estimateText.ts', 'src/study/estimate/estimate.ts', 'src/design/read.ts'];
    const reached = new Set(ends);
    for (let i = walk.length - 1; i >= 0; i--) {
      if (reached.has(walk[i])) for (const other of importsOf(walk[i])) reached.add(other);
    }
    expect(walk.filter((file) => !reached.has(file))).toEqual([]);
  });
});
