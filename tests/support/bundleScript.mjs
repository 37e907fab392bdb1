import { build } from 'esbuild';

/**
 * Bundles a script written in TypeScript, so that Node runs it; packages stay outside.
 *
 * @param {string} script
 * @param {string} [outfile] none: nothing is written
 */
export const bundleScript = (script, outfile) =>
  build({
    entryPoints: [script],
    ...(outfile === undefined ? {} : { outfile }),
    write: outfile !== undefined,
    bundle: true,
    packages: 'external',
    format: 'esm',
    platform: 'node',
    tsconfigRaw: { compilerOptions: { verbatimModuleSyntax: true } },
    logLevel: 'silent',
  });
