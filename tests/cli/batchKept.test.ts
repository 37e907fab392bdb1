import { closeSync, existsSync, openSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { endOf, onPath, pitwright, scratch, shell, start, until } from './support/run.js';
import { FEW, stdin, linesIn } from './keptBatch.js';

/** The README's line for going on, word for word; only the warm-up is left out, for time. */
const goOnLine = /^pitwright batch --from .*>> results\.ndjson$/m.exec(readFileSync('README.md', 'utf8'))![0];

let whole: string;
beforeAll(async () => {
  whole = (await pitwright(['batch', '--steady'], { stdin })).stdout;
  expect(linesIn(whole)).toBe(FEW);
});

let folder: ReturnType<typeof scratch>;
let env: Record<string, string>;
beforeEach(() => {
  folder = scratch();
  env = onPath(folder.path, '--steady');
  writeFileSync(folder.at('designs.ndjson'), stdin);
});
afterEach(() => folder.remove());

const results = () => readFileSync(folder.at('results.ndjson'), 'utf8');
const inShell = (line: string) => shell(line, { cwd: folder.path, env });
const goOn = () => inShell(goOnLine);

describe('a batch that broke off', () => {
  it('is not gone on with behind a last line that is no result, nor where it would not go to the end', () => {
    writeFileSync(folder.at('results.ndjson'), `${whole.slice(0, whole.indexOf('\n') + 1)}my notes`);
    const before = results();
    const notes = goOn();
    expect(notes).toMatchObject({ code: 2, stdout: '' });
    expect(notes.stderr).toMatch(/the last line that is there already has no end, and is no line of results/);
    expect(results()).toBe(before);
    writeFileSync(folder.at('half.ndjson'), whole.slice(0, 5000));
    const behind = inShell('{ cat half.ndjson; pitwright batch < designs.ndjson; } > results.ndjson');
    expect(behind.code).toBe(2);
    expect(results()).toBe(whole.slice(0, 5000));
  });

  it('by kill -9 at any moment, into a stream or a named file: whole lines, and the README goes on', async () => {
    for (const [i, name] of ['stream', 'named', 'stream', 'named'].entries()) {
      const given = openSync(folder.at('designs.ndjson'), 'r');
      const out = name === 'stream' ? openSync(folder.at('results.ndjson'), 'w') : ('ignore' as const);
      const args = ['batch', '--steady', ...(name === 'named' ? ['-o', 'results.ndjson'] : [])];
      const child = start(args, [given, out, 'ignore'], folder.path);
      const ended = endOf(child);
      const size = () => (existsSync(folder.at('results.ndjson')) ? statSync(folder.at('results.ndjson')).size : 0);
      // the second pair is stopped before anything is there
      await until(child, () => i > 1 || size() > 0);
      child.kill('SIGKILL');
      expect(await ended).toBe('SIGKILL');
      closeSync(given);
      if (typeof out === 'number') closeSync(out);
      const kept = existsSync(folder.at('results.ndjson')) ? results() : '';
      expect(whole.startsWith(kept)).toBe(true);
      if (i < 2) expect(linesIn(kept)).toBeGreaterThan(0);
      writeFileSync(folder.at('results.ndjson'), kept);
      expect(goOn().code).toBe(0);
      expect(results()).toBe(whole);
    }
  });

  it.each(['SIGINT'] as const)('by %s: the named file keeps whole lines alone', async (signal) => {
    const given = openSync(folder.at('designs.ndjson'), 'r');
    const child = start(['batch', '--steady', '-o', 'results.ndjson'], [given, 'ignore', 'ignore'], folder.path);
    const ended = endOf(child);
    await until(child, () => existsSync(folder.at('results.ndjson')) && results().length > 0);
    child.kill(signal);
    expect(await ended).toBe({ SIGINT: 130, SIGTERM: 143, SIGHUP: 129 }[signal]);
    closeSync(given);
    expect(results().endsWith('\n') && whole.startsWith(results())).toBe(true);
    expect(readdirSync(folder.path).sort()).toEqual(['designs.ndjson', 'pitwright', 'results.ndjson']);
  });
});

describe('a batch on a full disk', () => {
  // what the shell allows a file, in kB: not one line, a few, all but the end; a line takes 13
  it.each([[30, '> results.ndjson']])(
    'of %s kB, with %s: whole lines, exit 2, and the README goes on',
    (kB, output) => {
      const { code, stderr } = inShell(`ulimit -f ${kB}; exec pitwright batch ${output} < designs.ndjson`);
      expect(code).toBe(2);
      expect(stderr).toMatch(/: no file may grow that large here\.\n$/);
      const kept = results();
      expect(kept === '' || kept.endsWith('\n')).toBe(true);
      expect(whole.startsWith(kept)).toBe(true);
      expect(whole.length - kept.length).toBeLessThan(whole.length - 1024 * kB + 20_000);
      const count = linesIn(kept);
      if (count > 0) {
        expect(stderr).toContain(
          `broke off after ${count === 1 ? 'one whole line' : `${count} whole lines`}, which stay`,
        );
        expect(stderr).toContain(`--from ${count + 1} goes on`);
      }
      expect(goOn().code).toBe(0);
      expect(results()).toBe(whole);
    },
  );
});
