/**
 * Puts the page together: one HTML file with style, fonts and scripts inside, and a policy that lets nothing in or out.
 */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { build, transformSync } from 'esbuild';
import * as zod from 'zod';

/**
 * @param {string} outfile where the page goes
 * @param {import('esbuild').Plugin[]} plugins that the command's bundle uses too
 * @returns {Promise<import('esbuild').Metafile[]>} what went in, for the licence texts
 */
export async function bundlePage(outfile, plugins) {
  const shared = {
    bundle: true,
    platform: 'browser',
    target: ['chrome111', 'firefox113', 'safari16.4'],
    minify: true,
    write: false,
    metafile: true,
    legalComments: 'none',
    // the one that needs no Buffer
    alias: { 'csv-stringify/sync': 'csv-stringify/browser/esm/sync' },
    plugins: [...plugins, noOtherUnits, noJsonSchema],
    logLevel: 'warning',
  };
  const worker = { format: 'iife', plugins: [...shared.plugins, noSchemas] };
  const [page, solver, pictures, shell] = await Promise.all([
    build({ ...shared, format: 'iife', entryPoints: ['src/page/main.ts'] }),
    build({ ...shared, ...worker, entryPoints: ['src/page/solveWorker.ts'] }),
    build({ ...shared, ...worker, entryPoints: ['src/page/pictureWorker.ts'] }),
    build({ ...shared, format: 'esm', entryPoints: ['src/page/shell.ts'] }),
  ]);
  const { shellHtml, heatProperties } = await import(
    `data:text/javascript;base64,${base64(shell.outputFiles[0].contents)}`
  );
  const style = styleSheet(heatProperties());
  const boot = transformSync(readFileSync('src/page/boot.js', 'utf8'), { minify: true, target: 'es5' }).code.trim();
  const html = shellHtml({
    style,
    boot,
    page: packed(page.outputFiles[0].contents),
    solver: packed(solver.outputFiles[0].contents),
    pictures: packed(pictures.outputFiles[0].contents),
    hashes: { style: hashOf(style), boot: hashOf(boot) },
  });
  writeFileSync(outfile, html);
  return [page, solver, pictures].map(({ metafile }) => metafile);
}

/** mathjs knows furlongs, and weighs more than all the rest: the page does with the trade's units. */
const noOtherUnits = {
  name: 'no-other-units',
  /** @param {import('esbuild').PluginBuild} bundler */
  setup(bundler) {
    bundler.onLoad({ filter: /units[\\/]mathUnits\.ts$/ }, () => ({
      contents: 'export const mathUnits = () => undefined;',
    }));
  },
};

/** zod brings what writes a JSON Schema with every type; the page writes none. */
const noJsonSchema = {
  name: 'no-json-schema',
  /** @param {import('esbuild').PluginBuild} bundler */
  setup(bundler) {
    bundler.onLoad({ filter: /zod[\\/]v4[\\/]core[\\/](json-schema-processors|to-json-schema)\.js$/ }, ({ path }) => {
      const names = readFileSync(path, 'utf8').matchAll(/^export (?:const|function) (\w+)/gm);
      return { contents: [...names].map(([, name]) => `export const ${name} = () => undefined;`).join('\n') };
    });
  },
};

/**
 * What may stand in a design file is told with every row of a field, and building it takes half of a worker's start.
 * Workers get designs that have been read: there whatever is built of zod is one and the same thing, which reads
 * nothing.
 */
const noSchemas = {
  name: 'no-schemas',
  /** @param {import('esbuild').PluginBuild} bundler */
  setup(bundler) {
    bundler.onLoad({ filter: /zod[\\/]index\.js$/ }, () => ({
      contents: `
        const none = new Proxy(function () {}, {
          get: (_, name) => {
            if (/parse/i.test(String(name))) throw new Error('a worker reads no design file');
            return none;
          },
          apply: () => none,
        });
        export { ${Object.keys(zod)
          .map((name) => `none as ${name}`)
          .join(', ')} };`,
    }));
  },
};

/** Files of the style sheet in their order: what comes later has the last word. */
const STYLES = ['colours', 'ground', 'fields', 'told', 'pictures', 'tables', 'answer', 'asides', 'widths', 'paper'];

/** @param {string} heat properties of the temperature scale */
function styleSheet(heat) {
  const fonts = [400, 600].reduce(
    (css, weight) =>
      css.replace(
        `FONT_${weight}`,
        `data:font/woff2;base64,${base64(readFileSync(`node_modules/@fontsource/barlow/files/barlow-latin-${weight}-normal.woff2`))}`,
      ),
    STYLES.map((name) => readFileSync(`src/page/style/${name}.css`, 'utf8')).join('\n'),
  );
  return transformSync(fonts + heat, { loader: 'css', minify: true }).code.trim();
}

/** @param {Uint8Array} bytes */
function packed(bytes) {
  return base64(gzipSync(bytes, { level: 9 }));
}

/** @param {Uint8Array} bytes */
function base64(bytes) {
  return Buffer.from(bytes).toString('base64');
}

/** @param {string} text */
function hashOf(text) {
  return `sha256-${createHash('sha256').update(text).digest('base64')}`;
}
