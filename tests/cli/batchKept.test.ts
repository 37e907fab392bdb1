import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectGoesOn, useKeptBatch } from './keptBatch.js';

const batch = useKeptBatch(3);

describe('a batch that broke off', () => {
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
});

describe('a batch on a full disk', () => {
  // what the shell allows a file, in kB: not one line, a few, all but the end; a line takes 13
  it.each([[30, '> results.ndjson']])('of %s kB, with %s: whole lines, exit 2, and the README goes on', (kB, output) =>
    expectGoesOn(batch, kB, output),
  );
});
