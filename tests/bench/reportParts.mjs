/**
 * What a report costs beyond its study, for the bench: laying out its sheets, then HTML or PDF. Prints one line of JSON: medians in
 * ms. Arguments: folder to work in, design file, runs.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const [folder, file, runs] = process.argv.slice(2);
const entry = [
  "export { embeddedFonts, fontFiles } from './src/cli/fonts.js';",
  "export { geometryOf } from './src/design/geometryOf.js';",
  "export { readDesign } from './src/design/read.js';",
  "export { reportHtml } from './src/report/sheets/html.js';",
  "export { reportPdf } from './src/report/sheets/pdf.js';",
  "export { reportDocument } from './src/report/sheets/reportDocument.js';",
  "export { compare } from './src/study/compare.js';",
  "export { USUAL_SETTINGS } from './src/study/studyOption.js';",
].join('\n');
const outfile = resolve(folder, 'reportParts.mjs');
await build({
  stdin: { contents: entry, resolveDir: '.' },
  outfile,
  bundle: true,
  packages: 'external',
  format: 'esm',
  platform: 'node',
  logLevel: 'warning',
});
const parts = await import(pathToFileURL(outfile).href);

const fonts = parts.embeddedFonts();
const hash = (text) => createHash('sha256').update(text).digest('base64');
const read = parts.readDesign(readFileSync(file, 'utf8'), { fileName: file });
const option = { label: 'as drawn', changes: [], design: read.design };
const comparison = parts.compare([option], parts.USUAL_SETTINGS);
const input = { comparison, defaults: read.defaults, geometry: parts.geometryOf(read.design), paper: 'letter' };
const files = parts.fontFiles();

const time = (work) => {
  const start = performance.now();
  work();
  return performance.now() - start;
};
const median = (values) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
const html = () => parts.reportHtml(parts.reportDocument(input), { paper: 'letter', fonts, hash });
const pdf = () => parts.reportPdf(parts.reportDocument(input), 'letter', files);
const firstMs = time(html);
const all = (work) => median(Array.from({ length: Number(runs) }, () => time(work)));
console.log(JSON.stringify({ firstMs, htmlMs: all(html), pdfMs: all(pdf) }));
