import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync, readFileSync, writeFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { designs, expectGoesOn, expectWholeLines, stdin, useKeptBatch, linesIn } from './keptBatch.js';
import { endOf, example, pitwright, start, until } from './support/run.js';

const batch = useKeptBatch();

describe('a batch that broke off', () => {
  // ends of lines, a byte before and after, and places inside the first, a middle and the last line
  const places = (text: string) => {
    const ends = [...text.matchAll(/\n/g)].map(({ index }) => index + 1);
    const middle = ends[4];
    return [0, 20, ends[0], middle - 1, middle + 1, middle + 3000, text.length - 1, text.length];
  };

  it.runIf(existsSync('/proc/self/fdinfo'))('goes on by the README, wherever its file was cut', () => {
    for (const place of places(batch.whole())) {
      writeFileSync(batch.folder.at('results.ndjson'), batch.whole().slice(0, place));
      const { code, stderr } = batch.goOn();
      expect({ code, place, same: batch.results() === batch.whole() }).toEqual({ code: 0, place, same: true });
      const cut = place > 0 && batch.whole()[place - 1] !== '\n';
      expect(/took away its last line/.test(stderr), `cut at ${place}: ${stderr}`).toBe(cut);
    }
  });

  it('is not gone on with behind a last line that is no result, nor where it would not go to the end', () => {
    writeFileSync(
      batch.folder.at('results.ndjson'),
      `${batch.whole().slice(0, batch.whole().indexOf('\n') + 1)}my notes`,
    );
    const before = batch.results();
    const notes = batch.goOn();
    expect(notes).toMatchObject({ code: 2, stdout: '' });
    expect(notes.stderr).toMatch(/the last line that is there already has no end, and is no line of results/);
    expect(batch.results()).toBe(before);
    writeFileSync(batch.folder.at('half.ndjson'), batch.whole().slice(0, 5000));
    const behind = batch.shell('{ cat half.ndjson; pitwright batch < designs.ndjson; } > results.ndjson');
    expect(behind.code).toBe(2);
    expect(batch.results()).toBe(batch.whole().slice(0, 5000));
  });

  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)('by %s: the named file keeps whole lines alone', (signal) =>
    expectWholeLines(batch, signal),
  );

  it('by kill -9 at any moment, into a stream or a named file: whole lines, and the README goes on', async () => {
    for (const [i, name] of ['stream', 'named', 'stream', 'named'].entries()) {
      const given = openSync(batch.folder.at('designs.ndjson'), 'r');
      const out = name === 'stream' ? openSync(batch.folder.at('results.ndjson'), 'w') : ('ignore' as const);
      const args = ['batch', '--steady', ...(name === 'named' ? ['-o', 'results.ndjson'] : [])];
      const child = start(args, [given, out, 'ignore'], batch.folder.path);
      const ended = endOf(child);
      const size = () =>
        existsSync(batch.folder.at('results.ndjson')) ? statSync(batch.folder.at('results.ndjson')).size : 0;
      // the second pair is stopped before anything is there
      await until(child, () => i > 1 || size() > 0);
      child.kill('SIGKILL');
      expect(await ended).toBe('SIGKILL');
      closeSync(given);
      if (typeof out === 'number') closeSync(out);
      const kept = existsSync(batch.folder.at('results.ndjson')) ? batch.results() : '';
      expect(batch.whole().startsWith(kept)).toBe(true);
      if (i < 2) expect(linesIn(kept)).toBeGreaterThan(0);
      writeFileSync(batch.folder.at('results.ndjson'), kept);
      expect(batch.goOn().code).toBe(0);
      expect(batch.results()).toBe(batch.whole());
    }
  });
});

describe('a batch on a full disk', () => {
  // what the shell allows a file, in kB: not one line, a few, all but the end; a line takes 13
  it.each([
    [1, '> results.ndjson'],
    [30, '> results.ndjson'],
    [30, '-o results.ndjson'],
    [150, '>> results.ndjson'],
    [150, '-o results.ndjson'],
  ])('of %s kB, with %s: whole lines, exit 2, and the README goes on', (kB, output) => expectGoesOn(batch, kB, output));

  const mounts = spawnSync('unshare', ['-rm', 'mount', '-t', 'tmpfs', 'tmpfs', '/mnt']).status === 0;
  it.runIf(mounts)('that is one: whole lines, and the reason by name', () => {
    const inside =
      'mount -t tmpfs -o size=64k tmpfs small && pitwright batch > small/a < designs.ndjson; echo $?; cat small/a; ' +
      'rm small/a; pitwright batch -o small/b < designs.ndjson; echo $?; cat small/b';
    const { stdout, stderr } = batch.shell(`mkdir small; unshare -rm bash -c '${inside}'`);
    const [, first, second] = /^2\n([^]+\n)2\n([^]+\n)$/.exec(stdout)!;
    expect(first.length).toBeGreaterThan(20_000);
    expect(batch.whole().startsWith(first)).toBe(true);
    expect(second).toBe(first);
    expect(stderr).toMatch(/standard output: the disk is full\.\n[^]*small\/b: the disk is full\.\n$/);
  });

  it.runIf(existsSync('/dev/full'))('ends with 2 on a device that takes nothing', async () => {
    for (const output of ['> /dev/full', '-o /dev/full']) {
      const { code, stderr } = batch.shell(`pitwright batch ${output} < designs.ndjson`);
      expect({ output, code }).toEqual({ output, code: 2 });
      expect(stderr).toMatch(/: the disk is full\.\n$/);
    }
  });
});

describe('the named file of a batch', () => {
  const args = ['batch', '--steady', '-o', 'results.ndjson'];

  it('keeps what it held until there is a first line, and then holds the new lines alone', async () => {
    writeFileSync(batch.folder.at('results.ndjson'), 'x'.repeat(1_000_000));
    const changes = [...args, '--changes', example('plain-24.yaml')];
    expect((await pitwright(changes, { cwd: batch.folder.path, stdin: 'no.field\n1\n' })).code).toBe(3);
    expect(batch.results()).toBe('x'.repeat(1_000_000));
    expect((await pitwright(args, { cwd: batch.folder.path, stdin })).code).toBe(0);
    expect(batch.results()).toBe(batch.whole());
    expect((await pitwright(args, { cwd: batch.folder.path, stdin: '' })).code).toBe(0);
    expect(batch.results()).toBe('');
  });

  it('is never the file of designs, by whatever name', () => {
    batch.shell('ln -s designs.ndjson link.ndjson; ln designs.ndjson hard.ndjson; mkdir sub; ln -s .. sub/up');
    for (const name of [
      'designs.ndjson',
      'link.ndjson',
      'hard.ndjson',
      './sub/../designs.ndjson',
      'sub/up/designs.ndjson',
    ]) {
      const { code, stderr } = batch.shell(`pitwright batch -o ${name} < designs.ndjson`);
      expect({ name, code }).toEqual({ name, code: 2 });
      expect(stderr).toMatch(/would overwrite the file of designs itself/);
    }
    expect(batch.shell('pitwright batch < designs.ndjson >> designs.ndjson')).toMatchObject({ code: 2 });
    expect(readFileSync(batch.folder.at('designs.ndjson'), 'utf8')).toBe(stdin);
  });

  it.runIf(existsSync('/dev/stdout'))('may be /dev/stdout, behind what is there', () => {
    writeFileSync(batch.folder.at('results.ndjson'), batch.whole().slice(0, batch.whole().indexOf('\n') + 1));
    const { code } = batch.shell('pitwright batch --from 2 -o /dev/stdout < designs.ndjson >> results.ndjson');
    expect({ code, same: batch.results() === batch.whole() }).toEqual({ code: 0, same: true });
  });

  it('holds the lines of one run: the other ends and says so', async () => {
    writeFileSync(batch.folder.at('many.ndjson'), designs(400));
    const given = openSync(batch.folder.at('many.ndjson'), 'r');
    const first = start(args, [given, 'ignore', 'pipe'], batch.folder.path);
    let told = '';
    first.stderr!.on('data', (chunk: Buffer) => (told += chunk.toString()));
    const ended = endOf(first);
    await until(first, () => existsSync(batch.folder.at('results.ndjson')) && batch.results().length > 0);
    expect((await pitwright(args, { cwd: batch.folder.path, stdin })).code).toBe(0);
    expect(await ended).toBe(2);
    closeSync(given);
    expect(told).toMatch(/results\.ndjson: something else writes to it as well, so this run ends\./);
    expect(batch.results()).toBe(batch.whole());
  });

  it('that is taken away ends the run', async () => {
    writeFileSync(batch.folder.at('many.ndjson'), designs(400));
    const given = openSync(batch.folder.at('many.ndjson'), 'r');
    const child = start(args, [given, 'ignore', 'pipe'], batch.folder.path);
    const ended = endOf(child);
    await until(child, () => existsSync(batch.folder.at('results.ndjson')) && batch.results().length > 0);
    batch.shell('rm results.ndjson');
    expect(await ended).toBe(2);
    closeSync(given);
  });

  it('may be a pipe whose reader has seen enough', () => {
    const { code, stdout } = batch.shell(
      'mkfifo pipe; head -c1 pipe & pitwright batch -o pipe < designs.ndjson; r=$?; wait; exit $r',
    );
    expect({ code, stdout }).toEqual({ code: 0, stdout: '{' });
  });
});
