import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { expectCharted, installed } from './installed.js';

let folder: string;
beforeAll(() => {
  folder = installed('bundle');
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the installed package', () => {
  it('follows a cook, with its chart', () =>
    expectCharted(folder, ['cook', example('reverse-flow.yaml')], /The day takes \d+ splits/, 1));

  it('brings nothing but the canvas, the font and the PDF library with what it needs', () => {
    const packages = readdirSync(join(folder, 'node_modules')).filter((name) => !name.startsWith('.'));
    const ours = ['@fontsource', '@napi-rs', 'pdfkit', 'pitwright'];
    const ofThePdf =
      '@noble @swc base64-js brotli clone dfa fast-deep-equal fflate fontkit linebreak pako png-js restructure ' +
      'tiny-inflate unicode-properties unicode-trie';
    expect(packages.sort()).toEqual([...ours, ...ofThePdf.split(' ')].sort());
  });

  it('can be imported', () => {
    const script =
      "import { estimate, readDesign } from 'pitwright';" +
      "import { readFileSync } from 'node:fs';" +
      'const read = readDesign(readFileSync(process.argv[1], "utf8"), { fileName: "pit.yaml" });' +
      'console.log(estimate(read.design).steady.fire_W > 0);';
    const out = execFileSync(process.execPath, ['--input-type=module', '-e', script, example('plain-24.yaml')], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect(out.trim()).toBe('true');
  });

  it('carries the licences of what is bundled', () => {
    const text = readFileSync(join(folder, 'node_modules/pitwright/dist/THIRD-PARTY.txt'), 'utf8');
    for (const name of ['chart.js', 'commander', 'yaml', 'zod']) expect(text).toMatch(new RegExp(`^${name} \\d`, 'm'));
  });
});
