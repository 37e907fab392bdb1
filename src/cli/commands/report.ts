import { createHash } from 'node:crypto';
import type { PaperName } from '../../draw/theme.js';
import { geometryOf } from '../../design/geometryOf.js';
import type { ReportDocument } from '../../report/sheets/blocks.js';
import type { ShopInput } from '../../report/sheets/shopSheets.js';
import { reportDocument } from '../../report/sheets/reportDocument.js';
import { assemble } from '../../study/compare/compare.js';
import type { Equal } from '../../study/compare/equalShape.js';
import { distinctLabels } from '../../study/compare/distinctLabels.js';
import { USUAL_SETTINGS } from '../../study/compare/studyOption.js';
import type { EstimateResult } from '../../study/estimate/result.js';
import { apart } from '../apart.js';
import { exit, Stop } from '../exit.js';
import { embeddedFonts, fontFiles } from '../fonts.js';
import { visibleName } from '../../words/plainText.js';
import { readText } from '../input.js';
import { readLoaded } from '../loadDesign.js';
import { openSink, refuseClashes } from '../output.js';
import { spreadOf, type SpreadOptions } from '../spread.js';
import { progress } from '../stderr.js';
import type { sizesOf } from './size.js';
import { readVariations, sayWhatCannotBe, studiesOf, waysToBuild, withWarnings } from './compare.js';

/** What goes into the file for a buyer, and on which paper. */
export interface ReportOptions extends SpreadOptions {
  vary: string[];
  equal?: Equal;
  format?: 'html' | 'pdf';
  paper: PaperName;
  /** add a sheet of intakes, throat and stack from stock */
  sizes?: boolean;
  output?: string;
}

/** One file for a buyer, with the shop's sheets behind his page: a design, or a few ways to build it. */
export async function run(path: string, options: ReportOptions): Promise<void> {
  refuseClashes(path, { '--output': options.output });
  const form = formOf(options);
  const variations = readVariations(options);
  const { text, fileName } = await readText(path);
  const drawn = await readLoaded(text, fileName);
  const read = distinctLabels(await waysToBuild(drawn, fileName, variations, options.equal));
  const out = openSink(options.output ?? '-');

  progress(read.length === 1 ? 'computing' : `computing ${read.length} options`);
  const studies = await studiesOf(read, USUAL_SETTINGS, options.workers);
  const [{ result: baseline }] = studies;
  // how sure it is belongs on a buyer's page; the others' bands would only lie over the first's
  if (baseline.warmUp && options.spread !== 0) {
    baseline.spread = await spreadOf(baseline, { ...options, spread: options.spread ?? DEFAULT_CASES });
  }
  // a buyer asks for splits and the match, and a comparison does not follow the second
  const { lit = null, splits = null } = await apart<EstimateResult>({
    kind: 'estimate',
    design: baseline.design,
    vented: false,
  });
  Object.assign(baseline, { lit, splits });
  const comparison = withWarnings(assemble(read, studies, USUAL_SETTINGS), read);
  const sizing = options.sizes ? await sizingFor({ fileName, ...drawn }, options) : {};
  const { paper } = options;
  const { defaults } = drawn;
  const geometry = geometryOf(read[0].design);
  const document = reportDocument({ comparison, defaults, geometry, paper, ...sizing });
  await out.write(form === 'pdf' ? await pdfOf(document, paper) : await htmlOf(document, paper));
  sayWhatCannotBe(comparison);
}

/** What is asked for by its name, or by the ending of the file's. */
function formOf({ format, output = '-' }: ReportOptions): 'html' | 'pdf' {
  if (format !== undefined) return format;
  const [, ending] = /\.(\w+)$/.exec(output) ?? [];
  if (ending === undefined || /^html?$/i.test(ending)) return 'html';
  if (/^pdf$/i.test(ending)) return 'pdf';
  throw new Stop(
    exit.wrongUsage,
    `--output ${visibleName(output)}: a report is an .html or a .pdf file, such as ${visibleName(output.replace(/\w+$/, 'pdf'))}.`,
  );
}

/** Cases behind 'how sure it is' where no number is asked for: enough for a tenth and nine tenths, soon done. */
const DEFAULT_CASES = 60;

async function sizingFor(
  drawn: Parameters<typeof sizesOf>[0],
  { workers }: ReportOptions,
): Promise<Pick<ShopInput, 'sizing'>> {
  const { CLEAN_FIRE } = await import('../../study/air/cleanFire.js');
  const { sizingOf } = await import('../../report/sheets/sizing.js');
  const { sizesOf: sizes } = await import('./size.js');
  return { sizing: sizingOf(await sizes(drawn, { cleanAir: CLEAN_FIRE.ratio, ...(workers ? { workers } : {}) })) };
}

async function htmlOf(document: ReportDocument, paper: PaperName): Promise<string> {
  const { reportHtml } = await import('../../report/sheets/html.js');
  const hash = (text: string) => createHash('sha256').update(text).digest('base64');
  return reportHtml(document, { paper, fonts: embeddedFonts(), hash });
}

async function pdfOf(document: ReportDocument, paper: PaperName): Promise<Uint8Array> {
  const { reportPdf } = await import('../../report/sheets/pdf.js');
  return reportPdf(document, paper, fontFiles());
}
