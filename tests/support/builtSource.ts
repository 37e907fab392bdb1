import { readdirSync, rmSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { build } from 'esbuild';
import type { Plugin } from 'vitest/config';

/** The sources as JavaScript, for this run alone. */
const FOLDER = resolve('out', `source-${process.pid}`);
const SOURCE = resolve('src');

/** What must be left to be run as it is: such modules alone. */
export const BUILT = /[\\/]out[\\/]source-\d+[\\/]/;

/** Before all tests: every source file becomes a module that Node runs as it is. */
export default async function setup() {
  const files = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
  await build({
    entryPoints: files.map((file) => join(SOURCE, file)),
    outdir: FOLDER,
    outbase: SOURCE,
    format: 'esm',
    target: 'node20',
    sourcemap: 'inline',
    logLevel: 'warning',
  });
  return () => rmSync(FOLDER, { recursive: true, force: true });
}

/**
 * Tests get these modules for the sources: what the runner makes of a module looks every imported name up at each call,
 * by which numbers took half as long again. While somebody watches or counts lines, the sources themselves are run.
 */
export const builtSource = (): Plugin => {
  let used = false;
  return {
    name: 'built-source',
    enforce: 'pre',
    configureVitest({ vitest: { config } }) {
      used = !config.watch && !config.coverage.enabled;
    },
    resolveId(asked, importer) {
      if (!used || !importer || !asked.startsWith('.') || !asked.endsWith('.js')) return null;
      const path = resolve(dirname(importer), asked);
      return path.startsWith(SOURCE + sep) ? join(FOLDER, relative(SOURCE, path)) : null;
    },
  };
};
