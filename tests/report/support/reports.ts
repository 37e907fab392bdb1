import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { PaperName } from '../../../src/draw/theme.js';
import { fontFiles } from '../../../src/cli/fonts.js';
import { geometryOf } from '../../../src/design/geometryOf.js';
import type { Design } from '../../../src/design/design.js';
import type { ReportDocument } from '../../../src/report/sheets/blocks.js';
import { reportHtml } from '../../../src/report/sheets/html.js';
import { reportPdf } from '../../../src/report/sheets/pdf.js';
import type { ShopInput } from '../../../src/report/sheets/shopSheets.js';
import { reportDocument } from '../../../src/report/sheets/reportDocument.js';
import { assemble, type Comparison, type Option } from '../../../src/study/compare/compare.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import type { EstimateResult } from '../../../src/study/estimate/result.js';
import { USUAL_SETTINGS } from '../../../src/study/compare/studyOption.js';
import { exampleDesign } from '../../support/examples.js';

export const WEIGHTS = [400, 500, 600] as const;
export const fontFile = (weight: number, ending = 'woff') =>
  readFileSync(`node_modules/@fontsource/barlow/files/barlow-latin-${weight}-normal.${ending}`);

export const sha256 = (text: string) => createHash('sha256').update(text).digest('base64');

export const designOf = (name: string, change?: (text: string) => string): Design =>
  exampleDesign(`${name}.yaml`, change);

/** Options of the plain example, one a plate. */
export function plates(plain: readonly string[], change: (text: string) => string = (text) => text): Option[] {
  return plain.map((plate) => ({
    label: plate,
    changes: [{ path: 'all.plate', value: plate }],
    design: designOf('plain-24', (text) => change(text.replace(/plate: .*/g, `plate: ${plate}`))),
  }));
}

export const asDrawn = (design: Design): Option[] => [{ label: 'as drawn', changes: [], design }];

const known = new Map<string, EstimateResult>();

/** A design estimated once for all tests of a worker: they look at results and change none. */
function estimated(design: Design): EstimateResult {
  const key = JSON.stringify(design, (_, value: unknown) => (typeof value === 'number' ? String(value) : value));
  const result = known.get(key) ?? estimate(design);
  known.set(key, result);
  return result;
}

/** Estimates alone, without events: quick. */
export function compared(options: Option[]): Comparison {
  const studies = options.map(({ design }) => ({ result: estimated(design), studies: null }));
  return assemble(options, studies, USUAL_SETTINGS);
}

export function documentOf(
  options: Option[],
  paper: PaperName = 'letter',
  sizing?: ShopInput['sizing'],
): ReportDocument {
  return documentFrom(compared(options), paper, sizing);
}

/** The document of what is computed already. */
export function documentFrom(
  comparison: Comparison,
  paper: PaperName = 'letter',
  sizing?: ShopInput['sizing'],
): ReportDocument {
  const geometry = geometryOf(comparison.options[0].result.design);
  const defaults = ['site.humidity'];
  return reportDocument({ comparison, defaults, geometry, paper, ...(sizing ? { sizing } : {}) });
}

/** The same comparison with a text of the outside in every place that takes one. */
export function renamed(comparison: Comparison, name: string): Comparison {
  const options = comparison.options.map(({ result, label, ...rest }, i) => ({
    ...rest,
    label: `${name} ${i + 1}`,
    changes: [{ path: name, value: label }],
    result: {
      ...result,
      design: { ...result.design, name, shop: name, job: name, wood: { ...result.design.wood, kind: name } },
      warnings: [{ code: 'x', where: name, message: name, value: null, limits: null }],
    },
  }));
  return { ...comparison, options, baseline: options[0].label };
}

export function htmlOf(document: ReportDocument, paper: PaperName = 'letter'): string {
  const fonts = WEIGHTS.map((weight) => ({ weight, base64: fontFile(weight, 'woff2').toString('base64') }));
  return reportHtml(document, { paper, fonts, hash: sha256 });
}

export function pdfOf(document: ReportDocument, paper: PaperName = 'letter'): Buffer {
  return Buffer.from(reportPdf(document, paper, fontFiles()));
}

/** Everything that a document says, block by block. */
export function wordsOf(document: ReportDocument): string {
  return JSON.stringify(document.sheets);
}
