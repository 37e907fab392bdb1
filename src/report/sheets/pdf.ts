import {
  artifact,
  closePdf,
  drawText,
  openPdf,
  POINT,
  type Pdf,
  type PdfElement,
  type PdfFont,
} from '../../draw/pdfSurface.js';
import { fitText } from '../../draw/textWidth.js';
import { FAINT_INK, SHEET, SHEETS, type PaperName } from '../../draw/theme.js';
import { FOOT_WORDS, type ReportDocument, type Sheet } from './blocks.js';
import { pagesOf, type Page, type Part } from './pdfPages.js';
import { added, type Pen } from './pdfPieces.js';

const FURNITURE = { size: SHEET.small - 1, weight: 400, colour: FAINT_INK } as const satisfies PdfFont;

/**
 * A report as PDF: vector drawings and charts, text that can be selected and searched, the font embedded; tagged, so
 * that a screen reader walks its headings, tables and figures; with bookmarks. The same report gives the same bytes.
 *
 * @param fonts the charts' font (woff, ttf), one file a weight
 */
export function reportPdf(
  document: ReportDocument,
  paper: PaperName,
  fonts: { weight: number; file: Uint8Array }[],
): Uint8Array {
  const { width, height } = SHEETS[paper];
  const pages = pagesOf(document, paper);
  const pdf = openPdf({ title: document.name, author: document.shop, creator: document.maker }, fonts);
  const root = pdf.struct('Document');
  pdf.addStructure(root);
  const sections = new Map<Sheet, PdfElement>();
  const holders = new Map<Part, PdfElement>();
  /** The open bookmark of a sheet, which takes those of its headings. */
  let chapter = pdf.outline;

  pages.forEach((page, i) => {
    pdf.addPage({ size: [width * POINT, height * POINT], margin: 0 });
    pdf.scale(POINT);
    furniture(pdf, document, paper, {
      page,
      number: i + 1,
      count: pages.length,
      goesOn: sections.has(page[0].part.sheet),
    });
    for (const { part, y, scale, draw } of page) {
      const { sheet, stack } = part;
      // what is set smaller stands in the middle
      const left = SHEET.margin + 0.5 * (1 - scale) * (width - 2 * SHEET.margin);
      const onPage: Pen['onPage'] = (px, py) => [(left + px * scale) * POINT, (y + py * scale) * POINT];
      const marked = (under: typeof chapter, title: string, py: number) =>
        // the library counts a place from the right edge
        under.addItem(title, { left: width * POINT, top: onPage(0, py)[1] } as object);
      if (!sections.has(sheet)) {
        sections.set(sheet, added({ pdf, into: root }, 'Sect'));
        chapter = marked(pdf.outline, sheet.title, 0);
      }
      const section = sections.get(sheet)!;
      if (stack.holder && !holders.has(part)) holders.set(part, added({ pdf, into: section }, stack.holder));
      const bookmark: Pen['bookmark'] = (title, py) => {
        if (title !== sheet.title) marked(chapter, title, py);
      };
      pdf.save().translate(left, y).scale(scale);
      draw({ pdf, into: holders.get(part) ?? section, onPage, bookmark }, 0, 0);
      pdf.restore();
    }
  });
  root.end();
  return closePdf(pdf);
}

/** What every page says again, which a screen reader passes over. */
function furniture(
  pdf: Pdf,
  { name, shop }: ReportDocument,
  paper: PaperName,
  { page, number, count, goesOn }: { page: Page; number: number; count: number; goesOn: boolean },
): void {
  const { width, height } = SHEETS[paper];
  const { margin } = SHEET;
  const put = (text: string, y: number, anchor: 'start' | 'end' = 'start') =>
    drawText(
      pdf,
      fitText(text, (width - 2 * margin) * 0.48, FURNITURE),
      { x: anchor === 'start' ? margin : width - margin, y, anchor },
      FURNITURE,
    );
  artifact(pdf, 'Pagination', () => {
    if (number > 1) {
      put(name, margin + 6);
      put(goesOn ? `${page[0].part.sheet.title}, continued` : shop, margin + 6, 'end');
    }
    put(FOOT_WORDS, height - margin + 6);
    put(`page ${number} of ${count}`, height - margin + 6, 'end');
  });
}
