import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

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
