import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';

/**
 * The package as a stranger gets it: packed, and installed into an empty folder by npm alone.
 *
 * @param build what makes `dist`, by the scripts of package.json: the bundle alone, or what `npm publish` runs, with
 * types
 * @returns the folder, to be removed
 */
export function installed(build: 'bundle' | 'prepack'): string {
  const folder = mkdtempSync(join(tmpdir(), 'pitwright-package-'));
  const npm = (args: string[], cwd = process.cwd()) =>
    execFileSync('npm', args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  npm(['run', '-s', build]);
  npm(['pack', '--ignore-scripts', '--pack-destination', folder]);
  const tarball = readdirSync(folder).find((name) => name.endsWith('.tgz'))!;
  writeFileSync(join(folder, 'package.json'), '{"private":true,"type":"module"}');
  npm(['install', '--no-audit', '--no-fund', '--prefer-offline', `./${tarball}`], folder);
  return folder;
}

/** The command of an installed package says what it should, and draws so many charts. */
export function expectCharted(folder: string, args: string[], said: RegExp, count: number): void {
  const text = execFileSync(join(folder, 'node_modules/.bin/pitwright'), [...args, '--charts', 'charts'], {
    cwd: folder,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  expect(text).toMatch(said);
  const charts = readdirSync(join(folder, 'charts'));
  expect(charts).toHaveLength(count);
  expect(readFileSync(join(folder, 'charts', charts[0])).length).toBeGreaterThan(20_000);
}
