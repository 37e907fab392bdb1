import { mkdtempSync, rmSync, mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type {} from 'vitest';
import type { TestProject } from 'vitest/node';
import { bundle } from '../../../esbuild.config.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** the bundled command under test */
    command: string;
  }
}

/** Bundles the command for this run alone, so that runs side by side never read each other's half-written files. */
export default async function setup(project: TestProject) {
  mkdirSync('out', { recursive: true });
  const folder = mkdtempSync(resolve('out', 'test-'));
  await bundle(folder);
  project.provide('command', join(folder, 'cli.js'));
  return () => rmSync(folder, { recursive: true, force: true });
}
