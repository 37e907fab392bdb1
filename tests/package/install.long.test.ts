import { execFileSync, spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { expectCharted, installed } from './installed.js';

let folder: string;
beforeAll(() => {
  folder = installed('prepack');
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the installed package', () => {
  it('estimates with charts', () =>
    expectCharted(folder, ['estimate', example('plain-24.yaml')], /first reads 250 °F/, 6));

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
});
