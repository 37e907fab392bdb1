import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { eachScratch, example, expectRefusal, pitwright } from './support/run.js';

const plain = example('plain-24.yaml');
const plainText = readFileSync(plain, 'utf8');
const QUICK = ['--spread', '20', '--workers', '1'];
const folder = eachScratch();

describe('report', () => {
  it('writes a PDF by the ending of its name or by --format, the same bytes each time', async () => {
    for (const [name, args] of [
      ['one.pdf', []],
      ['two', ['--format', 'pdf']],
    ] as const) {
      expect((await pitwright(['report', plain, ...QUICK, ...args, '-o', folder.at(name)])).code).toBe(0);
    }
    const pdf = readFileSync(folder.at('one.pdf'));
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(readFileSync(folder.at('two')).equals(pdf)).toBe(true);
  });

  it('gives the same HTML from standard input, however many threads share the cases', async () => {
    const first = await pitwright(['report', '-', ...QUICK], { stdin: plainText });
    const second = await pitwright(['report', plain, '--spread', '20', '--workers', '2']);
    expect(first.code).toBe(0);
    expect(second.stdout).toBe(first.stdout);
  });

  it('adds a sheet of sizes from stock where that is asked for', async () => {
    const run = await pitwright(['report', plain, ...QUICK, '--sizes', '-o', folder.at('sheet.html')]);
    expect(run.code).toBe(0);
    const html = readFileSync(folder.at('sheet.html'), 'utf8');
    expect(html).toContain('Sizes that would do');
    const told =
      /For a full fire of 70,000&nbsp;BTU\/h, held at 250&nbsp;°F the best from stock: [^.]*?(\d&nbsp;in tube, 11&nbsp;ga)/;
    const [, best] = told.exec(html)!;
    expect(html.split(best).length - 1).toBeGreaterThan(2);
  });

  it.each([
    ['a value that is none', ['--vary', 'chamber.plate=1/4 in | thick'], 3, /thick/],
    ['no values', ['--vary', 'chamber.plate'], 2, /--vary/],
    ['an unknown format', ['--format', 'doc'], 2, /html, pdf/],
    ['an unknown paper', ['--paper', 'legal'], 2, /letter, a4/],
    ['no folder', ['-o', 'none/sheet.html'], 2, /does not exist/],
  ])('%s: one clear message, nothing written', async (_, args, code, message) => {
    await expectRefusal(['report', plain, ...args], code, message, { cwd: folder.path });
    expect(readdirSync(folder.path)).toEqual([]);
  });

  it('refuses to overwrite the design', async () => {
    const { code, stderr } = await pitwright(['report', plain, '-o', plain]);
    expect(code).toBe(2);
    expect(stderr).toContain('overwrite the design');
    expect(readFileSync(plain, 'utf8')).toBe(plainText);
  });

  it('still writes the sheet of a pit that cannot hold its target, and ends with 4', async () => {
    const starved = plainText.replace('target: 250 °F', 'target: 700 °F').replace(/diameter: 4 in/, 'diameter: 1 in');
    const file = folder.at('sheet.html');
    const { code } = await pitwright(['report', '-', ...QUICK, '-o', file], { stdin: starved });
    expect(code).toBe(4);
    expect(readFileSync(file, 'utf8')).toContain('never reads 700 °F');
  });

  it('writes a PDF by the ending of its name', async () => {
    expect((await pitwright(['report', plain, ...QUICK, '-o', folder.at('one.pdf')])).code).toBe(0);
    expect(readFileSync(folder.at('one.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

describe('charts as SVG', () => {
  it('stand beside PNG as another format of the same pictures', async () => {
    const charts = folder.at('charts');
    const run = await pitwright(['estimate', plain, '--charts', charts, '--format', 'svg', '-o', folder.at('x.txt')]);
    expect(run.code).toBe(0);
    const names = readdirSync(charts).sort();
    expect(names).toEqual([
      'draft.svg',
      'heat-loss.svg',
      'vent-curve.svg',
      'warm-up-gas.svg',
      'warm-up-steel.svg',
      'warm-up-thermometer.svg',
    ]);
    for (const name of names) {
      const svg = readFileSync(`${charts}/${name}`, 'utf8');
      expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
      expect(svg).toContain('Backyard 24');
      expect(svg).not.toMatch(/<script|href=/);
    }
    expect(existsSync(`${charts}/draft.png`)).toBe(false);
  });
});
