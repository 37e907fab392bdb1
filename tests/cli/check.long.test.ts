import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { eachScratch, example, expectRefusal, pitwright } from './support/run.js';

const folder = eachScratch();

const plain = example('plain-24.yaml');

describe('check', () => {
  it('reads standard input for -', async () => {
    const fromFile = await pitwright(['check', plain]);
    const fromInput = await pitwright(['check', '-'], { stdin: readFileSync(plain) });
    expect(fromInput).toEqual(fromFile);
  });
});

describe('an input that is no design file', () => {
  it.each([
    ['missing, nothing near', 'zzzzzz.toml', /no such file\.$/m],
    ['a folder', '.', /this is a folder\. Give a design file, such as .*plain-24\.yaml/],
    ['a file used as a folder', 'plain-24.yaml/x', /no such file/],
  ])('%s: exit 3 and the way out', async (_, path, message) => {
    writeFileSync(folder.at('plain-24.yaml'), readFileSync(plain));
    const stderr = await expectRefusal(['check', path], 3, message, { cwd: folder.path });
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  });

  it.each([
    ['binary', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]), /not a text file/],
    ['not UTF-8', Buffer.from([0x6e, 0x61, 0x6d, 0x65, 0x3a, 0x20, 0xe9, 0x0a]), /not UTF-8/],
    ['over 1 MB', Buffer.alloc(1_000_001, 'a'), /over 1 MB/],
    ['empty', Buffer.alloc(0), /empty/i],
  ])('%s: exit 3 with the reason', async (_, content, message) => {
    for (const run of [
      await pitwright(['check', '-'], { stdin: content }),
      (writeFileSync(folder.at('pit.yaml'), content), await pitwright(['check', folder.at('pit.yaml')])),
    ]) {
      expect(run).toMatchObject({ code: 3, stdout: '' });
      expect(run.stderr).toMatch(message);
    }
  });

  it('reads a file that starts with a byte order mark', async () => {
    const { code } = await pitwright(['check', '-'], { stdin: `\ufeff${readFileSync(plain, 'utf8')}` });
    expect(code).toBe(0);
  });
});

describe('output to a file', () => {
  it.each([
    ['named as a folder', 'sub', /this is a folder/],
    ['under a file', 'file/check.txt', /a file stands where a folder is needed/],
  ])('%s: exit 2 before any work, nothing left behind', async (_, name, message) => {
    mkdirSync(folder.at('sub'));
    writeFileSync(folder.at('file'), 'kept');
    await expectRefusal(['check', plain, '-o', folder.at(name)], 2, message);
    expect(readdirSync(folder.path).sort()).toEqual(['file', 'sub']);
    expect(readFileSync(folder.at('file'), 'utf8')).toBe('kept');
  });

  it('never overwrites the design', async () => {
    writeFileSync(folder.at('pit.yaml'), readFileSync(plain));
    const { code, stderr } = await pitwright(['check', folder.at('pit.yaml'), '-o', folder.at('pit.yaml')]);
    expect(code).toBe(2);
    expect(stderr).toContain('would overwrite the design');
    expect(readFileSync(folder.at('pit.yaml'))).toEqual(readFileSync(plain));
  });

  it('goes straight to a device', async () => {
    expect(await pitwright(['check', plain, '-o', '/dev/null'])).toMatchObject({ code: 0, stdout: '', stderr: '' });
  });
});
