import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';

/** The package as a stranger gets it: packed, and installed into an empty folder by npm alone. */
let folder: string;
const npm = (args: string[], cwd: string) =>
  execFileSync('npm', [...args, '--no-audit', '--no-fund'], {
    cwd,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
  });

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pitwright-package-'));
  npm(['pack', '--pack-destination', folder], process.cwd());
  const tarball = readdirSync(folder).find((name) => name.endsWith('.tgz'))!;
  writeFileSync(join(folder, 'package.json'), '{"private":true,"type":"module"}');
  npm(['install', '--prefer-offline', `./${tarball}`], folder);
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the installed package', () => {
  it('estimates with charts', () => {
    const bin = join(folder, 'node_modules/.bin/pitwright');
    const text = execFileSync(bin, ['estimate', example('plain-24.yaml'), '--charts', 'charts'], {
      cwd: folder,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    expect(text).toContain('at the earliest');
    const charts = readdirSync(join(folder, 'charts'));
    expect(charts).toHaveLength(5);
    expect(readFileSync(join(folder, 'charts', charts[0])).length).toBeGreaterThan(20_000);
  });

  it('brings the evidence it rests on, and runs it without writing into the package', () => {
    const installed = join(folder, 'node_modules/pitwright/reference');
    const before = readdirSync(installed);
    const bin = join(folder, 'node_modules/.bin/pitwright');
    execFileSync(bin, ['evidence', '--json', '-o', 'evidence.json'], {
      cwd: folder,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const { passed, verification } = JSON.parse(readFileSync(join(folder, 'evidence.json'), 'utf8'));
    expect(passed).toBe(true);
    expect(verification.length).toBeGreaterThan(500);
    expect(readdirSync(installed)).toEqual(before);
    expect(before).toContain('misses.csv');
    const renewed = spawnSync(bin, ['evidence', '--renew'], { cwd: folder, encoding: 'utf8' });
    expect(renewed.status).toBe(2);
    expect(renewed.stderr).toMatch(/writes into a clone of the repository/);
  });

  it('writes a report as HTML and as PDF', () => {
    const bin = join(folder, 'node_modules/.bin/pitwright');
    for (const [name, start] of [
      ['sheet.html', '<!doctype html>'],
      ['sheet.pdf', '%PDF-'],
    ]) {
      execFileSync(bin, ['report', example('plain-24.yaml'), '--spread', '20', '-o', name], {
        cwd: folder,
        stdio: 'pipe',
      });
      const file = readFileSync(join(folder, name));
      expect(file.subarray(0, start.length).toString()).toBe(start);
      expect(file.length).toBeGreaterThan(100_000);
    }
  });

  it('brings nothing but the canvas, the font and the PDF library with what it needs', () => {
    const packages = readdirSync(join(folder, 'node_modules')).filter((name) => !name.startsWith('.'));
    const ours = ['@fontsource', '@napi-rs', 'pdfkit', 'pitwright'];
    const ofThePdf =
      '@noble @swc base64-js brotli clone dfa fast-deep-equal fflate fontkit linebreak pako png-js restructure ' +
      'tiny-inflate unicode-properties unicode-trie';
    expect(packages.sort()).toEqual([...ours, ...ofThePdf.split(' ')].sort());
  });

  it('loads the PDF library for a PDF alone', () => {
    const library = join(folder, 'node_modules/pdfkit');
    renameSync(library, `${library}-away`);
    try {
      const bin = join(folder, 'node_modules/.bin/pitwright');
      const report = ['report', example('plain-24.yaml'), '--spread', '20', '-o'];
      const html = spawnSync(bin, [...report, 'without.html'], { cwd: folder, encoding: 'utf8' });
      expect(html.status).toBe(0);
      const pdf = spawnSync(bin, [...report, 'without.pdf'], { cwd: folder, encoding: 'utf8' });
      expect(pdf.status).not.toBe(0);
      expect(pdf.stderr).toContain('pdfkit');
    } finally {
      renameSync(`${library}-away`, library);
    }
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

  it('brings types that stand alone, checked to the last declaration', () => {
    const lines = [
      "import { estimate, readDesign, type EstimateResult } from 'pitwright';",
      "const read = readDesign('', { fileName: 'pit.yaml' });",
      'export const result: EstimateResult | undefined = read.design && estimate(read.design);',
      '// @ts-expect-error a result has no such key',
      'export const wrong = result?.stedy;',
    ];
    writeFileSync(join(folder, 'use.ts'), lines.join('\n'));
    const options = ['--noEmit', '--strict', '--module', 'nodenext', '--target', 'es2022', '--skipLibCheck', 'false'];
    const tsc = resolve('node_modules/typescript/bin/tsc');
    execFileSync(process.execPath, [tsc, ...options, 'use.ts'], { cwd: folder, encoding: 'utf8', stdio: 'pipe' });
  });

  it('carries the licences of what is bundled', () => {
    const text = readFileSync(join(folder, 'node_modules/pitwright/dist/THIRD-PARTY.txt'), 'utf8');
    for (const name of ['chart.js', 'commander', 'yaml', 'zod']) expect(text).toMatch(new RegExp(`^${name} \\d`, 'm'));
  });
});
