import type { DrawingContext } from '../../charts/sceneCanvas.js';
import { fitText } from '../../charts/textWidth.js';
import { FAINT_INK, INK, SHEET, SHEETS, type PaperName } from '../../charts/theme.js';
import type { Block, ReportDocument, Sheet } from './blocks.js';
import { drawText, figure, piecesOf, rule, type Piece } from './pdfFlow.js';

/** What makes pages: the canvas's PDF document. */
export interface PageMaker {
  beginPage(width: number, height: number): DrawingContext;
  endPage(): void;
  close(): Uint8Array;
}

/** Points a pixel: a page is measured in points, 72 to the inch. */
const POINT = 0.75;
const HEAD = 52;
const FOOT = 16;
/** Below this height the one chart of a page says nothing [px]. */
const LEAST_FIGURE = 110;

type Page = { sheet: Sheet; pieces: { piece: Piece; y: number }[]; scale: number };

/**
 * A report as PDF: vector drawings and charts, text that can be selected and searched, the font embedded. The same report gives
 * the same bytes.
 */
export function reportPdf(document: ReportDocument, paper: PaperName, maker: PageMaker): Uint8Array {
  const size = SHEETS[paper];
  const pages = document.sheets.flatMap((sheet) =>
    sheet.fit === 'one' ? [onePage(sheet, paper)] : flow(sheet, paper),
  );
  pages.forEach((page, i) => {
    const ctx = maker.beginPage(size.width * POINT, size.height * POINT);
    ctx.scale(POINT, POINT);
    plainLetters(ctx);
    head(ctx, document, page, { paper, number: i + 1, count: pages.length });
    ctx.save();
    ctx.translate(SHEET.margin, SHEET.margin + HEAD);
    ctx.scale(page.scale, page.scale);
    for (const { piece, y } of page.pieces) piece.draw(ctx, 0, y);
    ctx.restore();
    maker.endPage();
  });
  return maker.close();
}

/** Letters one by one: a ligature would be drawn well and found by no search. */
function plainLetters(ctx: DrawingContext): void {
  Object.assign(ctx, { fontVariantLigatures: 'none', fontKerning: 'none' });
}

function room(paper: PaperName): { width: number; height: number } {
  const { width, height } = SHEETS[paper];
  return { width: width - 2 * SHEET.margin, height: height - 2 * SHEET.margin - HEAD - FOOT };
}

/** All blocks on one page: its flexible figure takes the height that is left; were even that too little, all is set smaller. */
function onePage(sheet: Sheet, paper: PaperName): Page {
  const { width, height } = room(paper);
  const laid = sheet.blocks.map((block) => ({ block, pieces: isFlexible(block) ? [] : piecesOf(block, width) }));
  const fixed = laid.reduce((sum, { pieces }) => sum + heightOf(pieces), 0) + SHEET.gap * (laid.length - 1);
  const figures = laid.filter(({ block }) => isFlexible(block));
  const each = Math.max(LEAST_FIGURE, (height - fixed) / Math.max(1, figures.length));
  for (const item of figures) {
    if (item.block.kind === 'figure') item.pieces = [figure(item.block, width, each)];
  }
  const placed: Page['pieces'] = [];
  let y = 0;
  for (const { pieces } of laid) {
    for (const piece of pieces) {
      placed.push({ piece, y });
      y += piece.height;
    }
    y += SHEET.gap;
  }
  return { sheet, pieces: placed, scale: Math.min(1, height / (y - SHEET.gap)) };
}

function isFlexible(block: Block): boolean {
  return block.kind === 'figure' && block.flexible === true;
}

function heightOf(pieces: Piece[]): number {
  return pieces.reduce((sum, { height }) => sum + height, 0);
}

/** Blocks over as many pages as they take: a table is kept whole where a page can hold it, and a heading with what follows. */
function flow(sheet: Sheet, paper: PaperName): Page[] {
  const { width, height } = room(paper);
  const pages: Page[] = [{ sheet, pieces: [], scale: 1 }];
  let y = 0;
  const turn = () => {
    pages.push({ sheet, pieces: [], scale: 1 });
    y = 0;
  };
  for (const block of sheet.blocks) {
    const pieces = piecesOf(block, width);
    const whole = heightOf(pieces);
    if (y > 0 && y + whole > height && whole <= height) turn();
    pieces.forEach((piece, i) => {
      const needed = piece.leads ? piece.height + (pieces[i + 1]?.height ?? 60) : piece.height;
      if (y > 0 && y + needed > height) {
        turn();
        if (piece.repeat) {
          pages[pages.length - 1].pieces.push({ piece: piece.repeat, y });
          y += piece.repeat.height;
        }
      }
      pages[pages.length - 1].pieces.push({ piece, y });
      y += piece.height;
    });
    y += SHEET.gap * 1.4;
  }
  return pages;
}

function head(
  ctx: DrawingContext,
  { name, shop, job, maker, sheets }: ReportDocument,
  { sheet }: Page,
  { paper, number, count }: { paper: PaperName; number: number; count: number },
): void {
  const { width, height } = SHEETS[paper];
  const { margin } = SHEET;
  const [left, right] = [margin, width - margin];
  const first = sheet === sheets[0];
  const wide = (right - left) * 0.56;
  const narrow = (right - left) * 0.4;
  const big = { size: SHEET.shop, weight: 600 } as const;
  const middling = { size: SHEET.title, weight: 500, colour: FAINT_INK } as const;
  const small = { size: SHEET.text, weight: 400, colour: FAINT_INK } as const;
  drawText(ctx, fitText(first ? shop || 'Pit sheet' : sheet.title, wide, big), { x: left, y: margin + 16 }, big);
  if (first) drawText(ctx, fitText(name, wide, middling), { x: left, y: margin + 36 }, middling);
  const aside = (text: string, y: number) =>
    drawText(ctx, fitText(text, narrow, small), { x: right, y, align: 'right' }, small);
  aside(first ? job : name, margin + 22);
  aside(first ? maker : `${shop}`, margin + 37);
  rule(ctx, left, margin + 43, right - left, INK, SHEET.rule);
  const tiny = { size: SHEET.small - 1, weight: 400, colour: FAINT_INK } as const;
  drawText(ctx, 'An estimate, not a guarantee', { x: left, y: height - margin + 6 }, tiny);
  drawText(ctx, `page ${number} of ${count}`, { x: right, y: height - margin + 6, align: 'right' }, tiny);
}
