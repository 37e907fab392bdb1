import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { eachScratch, example, expectRefusal, pitwright } from './support/run.js';

const plain = example('plain-24.yaml');
const QUICK = ['--spread', '20', '--workers', '1'];
const folder = eachScratch();

describe('report', () => {
  it('writes one HTML file with the options as columns, and nothing else', async () => {
    const file = folder.at('sheet.html');
    const run = await pitwright(['report', plain, '--vary', 'all.plate=1/4 in | 1/8 in', ...QUICK, '-o', file]);
    expect(run).toMatchObject({ code: 0, stdout: '' });
    expect(readdirSync(folder.path)).toEqual(['sheet.html']);
    const html = readFileSync(file, 'utf8').replaceAll('&nbsp;', ' ');
    expect(html.startsWith('<!doctype html>')).toBe(true);
    expect(html).toContain('<bdi>1/8 in</bdi></th>');
    expect(html).toContain('each line is the likeliest, the band holds 8 of 10 cases');
    expect(html).toContain('Slag Creek Fabrication');
    expect(html).toMatch(/1\/4 in: A 2 lb split every 30 min: reads \d+ to \d+ °F\. From the match it takes \d+ min/);
    expect(html).toMatch(/It draws: [\d.]+ in H2O, [\d.]+ times the air it needs\./);
  });

  it.each([
    ['a field that is none', ['--vary', 'chamber.plat=1/4 in | 1/8 in'], 3, /chamber\.plat/],
    [
      'a file of another kind',
      ['-o', 'sheet.docx'],
      2,
      /sheet\.docx: a report is an \.html or a \.pdf file, such as sheet\.pdf/,
    ],
  ])('%s: one clear message, nothing written', async (_, args, code, message) => {
    await expectRefusal(['report', plain, ...args], code, message, { cwd: folder.path });
    expect(readdirSync(folder.path)).toEqual([]);
  });
});
