import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { eachScratch, example, expectRefusal, pitwright } from './support/run.js';

const folder = eachScratch();

const plain = example('plain-24.yaml');

describe('check', () => {
  it('shows inputs as read with defaults marked, and what the parts come to', async () => {
    const { code, stdout, stderr } = await pitwright(['check', plain]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/chamber\.plate +1\/4 in \(6\.35 mm\)/);
    expect(stdout).toMatch(/firebox\.finish +black paint +default/);
    expect(stdout).toMatch(/firebox +\S+ ft² \(\S+ m²\) +\d+ lb/);
  });

  it('gives the same as JSON in SI', async () => {
    const { stdout } = await pitwright(['check', plain, '--json']);
    const tree = JSON.parse(stdout);
    expect(Object.keys(tree)).toEqual(['schema', 'tool', 'design', 'defaults', 'warnings', 'geometry']);
    expect(tree.design.chamber.plate).toBeCloseTo(0.00635, 12);
  });

  it('lists every fault with line and field, on stderr alone, and ends with 3', async () => {
    const text = readFileSync(plain, 'utf8').replace('  plate: 1/4 in', '  plate: 0.25').replace('wind:', 'wynd:');
    writeFileSync(folder.at('pit.yaml'), text);
    const stderr = await expectRefusal(['check', 'pit.yaml'], 3, /^pitwright: pit\.yaml: \d+ faults in the design$/m, {
      cwd: folder.path,
    });
    expect(stderr).toMatch(/^pit\.yaml:\d+:\d+: site\.wynd: .*wind/m);
    expect(stderr).toMatch(/^pit\.yaml:\d+:\d+: \S+\.plate: '0\.25'/m);
  });
});

describe('an input that is no design file', () => {
  it.each([['missing', 'plian-24.yaml', /no such file\. Did you mean .*plain-24\.yaml\?/]])(
    '%s: exit 3 and the way out',
    async (_, path, message) => {
      writeFileSync(folder.at('plain-24.yaml'), readFileSync(plain));
      const stderr = await expectRefusal(['check', path], 3, message, { cwd: folder.path });
      expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    },
  );

  it.each([['UTF-16', Buffer.from('\ufeffschema: 1\n', 'utf16le'), /UTF-16/]])(
    '%s: exit 3 with the reason',
    async (_, content, message) => {
      for (const run of [
        await pitwright(['check', '-'], { stdin: content }),
        (writeFileSync(folder.at('pit.yaml'), content), await pitwright(['check', folder.at('pit.yaml')])),
      ]) {
        expect(run).toMatchObject({ code: 3, stdout: '' });
        expect(run.stderr).toMatch(message);
      }
    },
  );
});

describe('output to a file', () => {
  it('is the same text as on standard output, which stays empty', async () => {
    const shown = await pitwright(['check', plain]);
    const run = await pitwright(['check', plain, '-o', folder.at('check.txt')]);
    expect(run).toMatchObject({ code: 0, stdout: '', stderr: '' });
    expect(readFileSync(folder.at('check.txt'), 'utf8')).toBe(shown.stdout);
    expect(readdirSync(folder.path)).toEqual(['check.txt']);
  });

  it.each([['in a folder that does not exist', 'none/check.txt', /folder .*none does not exist/]])(
    '%s: exit 2 before any work, nothing left behind',
    async (_, name, message) => {
      mkdirSync(folder.at('sub'));
      writeFileSync(folder.at('file'), 'kept');
      await expectRefusal(['check', plain, '-o', folder.at(name)], 2, message);
      expect(readdirSync(folder.path).sort()).toEqual(['file', 'sub']);
      expect(readFileSync(folder.at('file'), 'utf8')).toBe('kept');
    },
  );

  it('leaves an old file alone when the input is wrong', async () => {
    writeFileSync(folder.at('old.txt'), 'old');
    const { code } = await pitwright(['check', '-', '-o', folder.at('old.txt')], { stdin: 'schema: 1\n' });
    expect(code).toBe(3);
    expect(readFileSync(folder.at('old.txt'), 'utf8')).toBe('old');
    expect(readdirSync(folder.path)).toEqual(['old.txt']);
  });
});
