import { SHEET, SHEETS, type PaperName } from '../../draw/theme.js';
import type { Block, ReportDocument, Sheet } from './blocks.js';
import {
  columns,
  figure,
  heightOf,
  reportHead,
  sheetHead,
  stackOf,
  type Pen,
  type Piece,
  type Stack,
} from './pdfPieces.js';

/** What stands together on a sheet: its head, or a block. */
export interface Part {
  sheet: Sheet;
  stack: Stack;
  /** above it, but for the top of a page [px] */
  gap: number;
  block?: Block;
}

/** What is drawn at a height of a page, at the left margin. */
interface Spot {
  part: Part;
  y: number;
  scale: number;
  draw: Piece['draw'];
}

/** All that is drawn on one page. */
export type Page = Spot[];

/** Where the pages after the first begin, below what is said again on each, and what is left free for the foot [px]. */
const RUNNING = 22;
const FOOT = 16;
const SHEET_GAP = 26;
/** Heights that the pictures of a page keep with their captions, and need at most [px]. */
const LEAST_FIGURE = 200;
const MOST_FIGURE = 360;
/**
 * Share of a page below which it is nearly empty, and share of its size that a figure may give up so that pages fill
 * well.
 */
const NEARLY_EMPTY = 1 / 3;
const HALF_FULL = 0.55;
const SMALLEST = 0.8;
const SHARES = [1, 0.95, 0.9, 0.85, SMALLEST];
const ROUNDING = 1e-6;

/** A report laid out in pages: a sheet that wants one has one of its own, the others run on. */
export function pagesOf(document: ReportDocument, paper: PaperName): Page[] {
  const pages: Page[] = [];
  let run: Sheet[] = [];
  const endRun = () => {
    if (run.length > 0) pages.push(...wellFilled(run, document, paper));
    run = [];
  };
  for (const sheet of document.sheets) {
    if (sheet.fit === 'flow') run.push(sheet);
    else {
      endRun();
      pages.push(onePage(sheet, document, paper));
    }
  }
  endRun();
  return pages;
}

function area(paper: PaperName): { width: number; top: number; bottom: number } {
  const { width, height } = SHEETS[paper];
  return { width: width - 2 * SHEET.margin, top: SHEET.margin, bottom: height - SHEET.margin - FOOT };
}

function partsOf(sheet: Sheet, document: ReportDocument, width: number, gap: number): Part[] {
  const isFirst = sheet === document.sheets[0];
  const head = isFirst ? reportHead(document, width) : sheetHead(sheet.title, width);
  return [
    { sheet, stack: { pieces: [head] }, gap: SHEET_GAP },
    ...sheet.blocks.map((block, i) => ({
      sheet,
      block,
      gap: sheet.blocks[i - 1]?.kind === 'heading' ? SHEET.gap * 0.4 : gap,
      stack: stackOf(block, width, isFirst ? 'H2' : 'H3'),
    })),
  ];
}

/**
 * All blocks on one page: its flexible figure takes the height that is left; were even that too little, all is set
 * smaller.
 */
function onePage(sheet: Sheet, document: ReportDocument, paper: PaperName): Page {
  const { width, top, bottom } = area(paper);
  const parts = partsOf(sheet, document, width, SHEET.gap);
  const flexible = parts.filter(({ block }) => block && 'flexible' in block && block.flexible);
  const fixed = parts.filter((part) => !flexible.includes(part));
  // the report's head has its gap within
  const gaps = parts.slice(2).reduce((sum, { gap }) => sum + gap, 0);
  const taken = heightOf(fixed.flatMap(({ stack }) => stack.pieces)) + gaps;
  const left = (bottom - top - taken) / Math.max(1, flexible.length);
  const room = Math.min(MOST_FIGURE, Math.max(LEAST_FIGURE, left));
  for (const part of flexible) {
    const { block } = part;
    if (block?.kind === 'figure') part.stack = { pieces: [figure(block, { width, room })] };
    if (block?.kind === 'columns') part.stack = { pieces: [columns(block, { width, level: 'H2', room })] };
  }
  const scale = Math.min(1, (bottom - top) / (taken + room * flexible.length));
  let y = top;
  return parts.flatMap((part, i) => {
    if (i > 1) y += part.gap * scale;
    return part.stack.pieces.map((piece) => {
      const spot = { part, y, scale, draw: piece.draw };
      y += piece.height * scale;
      return spot;
    });
  });
}

/**
 * Sheets over as few pages as they take: figures are drawn a little smaller where that saves one, and no smaller. Where
 * the last would be nearly empty, the one before gives of its own.
 */
function wellFilled(sheets: Sheet[], document: ReportDocument, paper: PaperName): Page[] {
  const { width, top, bottom } = area(paper);
  const parts = sheets.flatMap((sheet) => partsOf(sheet, document, width, SHEET.gap * 1.4));
  const isFull = ({ pages, end }: Flow) => pages.length === 1 || end - top > NEARLY_EMPTY * (bottom - top);
  const usual = SHARES.map((share) => flow(parts, paper, { share }));
  const count = usual[0].pages.length;
  const others = [0.2, 0.4].map((early) => () => flow(parts, paper, { early, count }));
  const full = usual.filter(isFull).sort((a, b) => a.pages.length - b.pages.length);
  return (full[0] ?? others.map((lay) => lay()).find(isFull) ?? usual[0]).pages;
}

interface Flow {
  pages: Page[];
  /** how far the last page reaches [px] */
  end: number;
}

/** A piece on its way to a page. */
interface Item {
  part: Part;
  piece: Piece;
  isFirst: boolean;
}

/**
 * Blocks one after the other. What belongs together stays together where a page can hold it and the one before is not
 * left nearly empty; else it is taken apart: first into blocks, then into rows and items, a heading always with what
 * follows.
 *
 * @param way.share of their width that figures take
 * @param way.early share of the last page but one that is left free, where the last is number `count`
 */
function flow(
  parts: Part[],
  paper: PaperName,
  { share = 1, early = 0, count = 0 }: { share?: number; early?: number; count?: number },
): Flow {
  const { width, bottom: foot, top: margin } = area(paper);
  const top = margin + RUNNING;
  const height = foot - top;
  const pages: Page[] = [[]];
  let y = top;
  let bottom = foot;

  const turn = () => {
    pages.push([]);
    y = top;
    bottom = pages.length === count - 1 ? foot - early * height : foot;
  };
  const put = ({ part, piece, isFirst }: Item) => {
    const page = pages[pages.length - 1];
    const { repeat } = piece;
    if (isFirst && y > top) y += part.gap;
    if (repeat && !isFirst && y === top) {
      page.push({ part, y, scale: 1, draw: ({ pdf }: Pen, ...at) => repeat.draw(pdf, ...at) });
      y += repeat.height;
    }
    const scale = Math.min(1, (bottom - y) / piece.height);
    page.push({ part, y, scale, draw: piece.draw });
    y += piece.height * scale;
  };
  const place = (items: Item[], depth: 0 | 1 | 2) => {
    fitFigure(items, { width, share, room: bottom - y });
    const whole = heightWithGaps(items);
    if (y + whole > bottom + ROUNDING) {
      // a figure may stand on the page before its table's
      const enough = depth === 0 && items.some(({ part }) => part.block?.kind === 'figure') ? HALF_FULL : NEARLY_EMPTY;
      if (y - top > enough * height && whole <= height) turn();
      else if (depth < 2) {
        for (const chunk of chunksOf(items, depth === 0)) place(chunk, depth === 0 ? 1 : 2);
        return;
      } else if (y > top && bottom - y < SMALLEST * whole) turn();
    }
    items.forEach(put);
  };

  for (const group of groupsOf(parts)) {
    const items = group.flatMap((part) => part.stack.pieces.map((piece, i) => ({ part, piece, isFirst: i === 0 })));
    place(items, 0);
  }
  return { pages, end: y };
}

/**
 * What belongs on one page: a sheet's head with all before its first table, headings with what they stand over, a
 * figure with its table.
 */
function groupsOf(parts: Part[]): Part[][] {
  const groups: Part[][] = [];
  let isOpen = false;
  parts.forEach((part, i) => {
    if (isOpen) groups[groups.length - 1].push(part);
    else groups.push([part]);
    const [first] = groups[groups.length - 1];
    const kind = part.block?.kind;
    const isForeword = first.block === undefined && (kind === 'text' || kind === 'list');
    const hasTable = kind === 'figure' && parts[i + 1]?.block?.kind === 'table';
    isOpen = isForeword || hasTable || part.stack.pieces.every(({ leads }) => leads);
  });
  return groups;
}

/** Items cut where a page may end: between blocks, or anywhere, but never behind what leads to the next. */
function chunksOf(items: Item[], betweenBlocks: boolean): Item[][] {
  const chunks: Item[][] = [];
  items.forEach((item, i) => {
    const isCut = i === 0 || (!items[i - 1].piece.leads && (item.isFirst || !betweenBlocks));
    if (isCut) chunks.push([item]);
    else chunks[chunks.length - 1].push(item);
  });
  return chunks;
}

function heightWithGaps(items: Item[]): number {
  return items.reduce((sum, { part, piece, isFirst }) => sum + piece.height + (isFirst ? part.gap : 0), 0);
}

/** Figures as wide as they may be, or a little smaller where all of their items then still stand on the page. */
function fitFigure(items: Item[], { width, share, room }: { width: number; share: number; room: number }): void {
  for (const item of items) {
    const { block } = item.part;
    if (block?.kind !== 'figure') continue;
    item.piece = figure(block, { width, share });
    const left = item.piece.height - Math.max(0, heightWithGaps(items) - room);
    const least = figure(block, { width, share: SMALLEST }).height;
    if (left >= least) item.piece = figure(block, { width, share, room: left });
  }
}
