import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fittedWith } from '../design/fittedFiles.js';
import { eachFittedPit, flat, plain, RESTS } from './fittedPit.js';
import { pitwright } from './support/run.js';

const folder = eachFittedPit();

describe('a design that names a fitted file', () => {
  it('on standard input: finds it in the working folder', async () => {
    const stdin = readFileSync(folder.at('pit.yaml'));
    const { code, stdout } = await pitwright(['check', '-'], { stdin, cwd: folder.path });
    expect(code).toBe(0);
    expect(stdout).toMatch(/innerConvection +1\.31 +fitted/);
    expect(flat(stdout)).toContain(RESTS);
  });
});

describe('a fitted file that is wrong', () => {
  const check = async (name: string) => {
    writeFileSync(folder.at('wrong.yaml'), `${plain}fitted: ${name}\n`);
    return pitwright(['check', 'wrong.yaml'], { cwd: folder.path });
  };

  it('missing: names the nearest', async () => {
    const { code, stderr } = await check('yrd.fitted.yaml');
    expect(code).toBe(3);
    expect(stderr).toMatch(/fitted: 'yrd\.fitted\.yaml' names no file: .* did you mean 'yard\.fitted\.yaml'\?/);
  });

  it('faulty: every fault with its own file and line', async () => {
    writeFileSync(folder.at('bad.yaml'), fittedWith('low: 1.22', 'low: 1.35'));
    const { code, stderr } = await check('bad.yaml');
    expect(code).toBe(3);
    expect(stderr).toMatch(/^bad\.yaml:5:48: fitted\.values\[0\]\.low: '1\.35' lies above the value/m);
  });

  it.each([
    ['a folder', 'folder', /names a folder/],
    ['too large', 'large.yaml', /names a file of over 250 kB/],
  ])('%s', async (_, name, told) => {
    mkdirSync(folder.at('folder'));
    writeFileSync(folder.at('binary.yaml'), Buffer.from([0xff, 0x80, 0x00]));
    writeFileSync(folder.at('large.yaml'), '#'.repeat(250_001));
    const { code, stderr } = await check(name);
    expect(code).toBe(3);
    expect(stderr).toMatch(told);
    expect(stderr).not.toMatch(/ at .*\.js/);
  });
});
