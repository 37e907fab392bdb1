import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { bundlePage } from './src/page/bundle.mjs';

/**
 * Bundles the command and the library into `outdir`. Everything but the canvas (a prebuilt binary), the font (files) and
 * the PDF library (which reads files beside itself) is bundled: one small file to read at start is many times faster than
 * a tree of packages. Parts that only some commands need are split off and loaded when asked for.
 *
 * @param {string} outdir
 */
export async function bundle(outdir) {
  rmSync(outdir, { recursive: true, force: true });
  const result = await build({
    entryPoints: {
      cli: 'src/cli/main.ts',
      index: 'src/index.ts',
      worker: 'src/cli/worker.ts',
      // the thread pool starts its threads from a file that it expects beside its own code, which ends up in chunks
      'chunks/entry/worker': 'node_modules/tinypool/dist/entry/worker.js',
    },
    outdir,
    chunkNames: 'chunks/[name]-[hash]',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    external: ['@napi-rs/canvas', '@fontsource/barlow', 'pdfkit'],
    // an installed package has no overrides: there the canvas goes by its own name
    alias: { canvas: '@napi-rs/canvas' },
    // commander is CommonJS and asks for node's own modules by require, which an ES module lacks
    banner: {
      js: "import { createRequire as pitwrightRequire } from 'node:module';\nconst require = pitwrightRequire(import.meta.url);",
    },
    minifySyntax: true,
    minifyWhitespace: true,
    legalComments: 'none',
    plugins: [englishAlone, oneCanvas, oneChartLibrary],
    metafile: true,
    logLevel: 'warning',
  });
  const page = await bundlePage(join(outdir, 'page.html'), [englishAlone]);
  writeFileSync(join(outdir, 'THIRD-PARTY.txt'), licencesOf([result.metafile, ...page]));
  return result.metafile;
}

/** Leaves out zod's messages in fifty languages, two fifths of it: faults are told in our own words. */
export const englishAlone = {
  name: 'english-alone',
  /** @param {import('esbuild').PluginBuild} bundler */
  setup(bundler) {
    bundler.onLoad({ filter: /zod\/v4\/locales\/index\.js$/ }, () => ({
      contents: "export { default as en } from './en.js';",
    }));
  },
};

/** chartjs-node-canvas asks for the canvas by a name in a variable, which no bundler can follow. */
const oneCanvas = {
  name: 'one-canvas',
  /** @param {import('esbuild').PluginBuild} bundler */
  setup(bundler) {
    bundler.onLoad({ filter: /chartjs-node-canvas[\\/]dist[\\/]freshRequire\.js$/ }, () => ({
      contents: "exports.freshRequire = () => require('canvas');",
    }));
  },
};

/** chartjs-node-canvas requires the chart library and we import it: both get the one that can be required. */
const oneChartLibrary = {
  name: 'one-chart-library',
  /** @param {import('esbuild').PluginBuild} bundler */
  setup(bundler) {
    bundler.onResolve({ filter: /^chart\.js\/auto$/ }, () => ({
      path: resolve('node_modules/chart.js/auto/auto.cjs'),
    }));
  },
};

/**
 * The licence texts of every package that went into the bundle.
 *
 * @param {import('esbuild').Metafile[]} metafiles
 */
function licencesOf(metafiles) {
  const folders = new Set();
  for (const input of metafiles.flatMap((each) => Object.keys(each.inputs))) {
    const found = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(input);
    if (found) folders.add(found[1]);
  }
  const texts = [...folders].sort().map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const text = ['LICENSE', 'LICENSE.md', 'LICENSE.txt', 'license', 'LICENCE']
      .map((file) => {
        try {
          return readFileSync(join(folder, file), 'utf8').trim();
        } catch {
          return '';
        }
      })
      .find((content) => content !== '');
    return `${name} ${version} (${license})\n\n${text ?? ''}\n`;
  });
  return texts.join(`\n${'-'.repeat(80)}\n\n`);
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.chdir(dirname(process.argv[1]));
  await bundle('dist');
}
