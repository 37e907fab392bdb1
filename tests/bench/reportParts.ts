/**
 * What a report costs beyond its study, for the bench: laying out its sheets, then HTML or PDF. Prints one line of
 * JSON: medians in ms. Arguments: design file, runs.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { median } from 'simple-statistics';
import { embeddedFonts, fontFiles } from '../../src/cli/fonts.js';
import { compare, geometryOf, readDesign, USUAL_SETTINGS } from '../../src/index.js';
import { reportHtml } from '../../src/report/sheets/html.js';
import { reportPdf } from '../../src/report/sheets/pdf.js';
import { reportDocument } from '../../src/report/sheets/reportDocument.js';

const [file, runs] = process.argv.slice(2);
const fonts = embeddedFonts();
const files = fontFiles();
const hash = (text: string) => createHash('sha256').update(text).digest('base64');

const read = readDesign(readFileSync(file, 'utf8'), { fileName: file });
if (!read.design) throw new Error(`${file} has faults`);
const { design, defaults } = read;
const comparison = compare([{ label: 'as drawn', changes: [], design }], USUAL_SETTINGS);
const drawn = () => reportDocument({ comparison, defaults, geometry: geometryOf(design), paper: 'letter' });

function time(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}
const html = () => reportHtml(drawn(), { paper: 'letter', fonts, hash });
const pdf = () => reportPdf(drawn(), 'letter', files);
const firstMs = time(html);
const all = (work: () => unknown) => median(Array.from({ length: Number(runs) }, () => time(work)));
console.log(JSON.stringify({ firstMs, htmlMs: all(html), pdfMs: all(pdf) }));
