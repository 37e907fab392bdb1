import { artifact, drawScene, drawText, type Pdf, type PdfElement, type PdfFont } from '../../draw/pdfSurface.js';
import { breakText, fitText, textWidth } from '../../draw/textWidth.js';
import { FAINT_INK, GRID, INK, SHEET } from '../../draw/theme.js';
import type { TableData } from '../text/table.js';
import type { Block, ReportDocument } from './blocks.js';

/**
 * What a piece draws with: the PDF, the element that the piece belongs to, and how its pixels lie on the page in
 * points.
 */
export interface Pen {
  pdf: Pdf;
  into: PdfElement;
  onPage: (x: number, y: number) => [number, number];
  /** a heading that the list of bookmarks takes, with its upper edge */
  bookmark: (title: string, y: number) => void;
}

/** Part of a block that stays on one page: its height, and how it is drawn with its top left corner at x, y. */
export interface Piece {
  height: number;
  draw: (pen: Pen, x: number, y: number) => void;
  /** must not be the last on a page: a heading, a table's head */
  leads?: boolean;
  /** drawn again at the top of the next page when the block goes on there */
  repeat?: { height: number; draw: (pdf: Pdf, x: number, y: number) => void };
}

/** Pieces one under the other, and the element that holds them all where they need one. */
export interface Stack {
  holder?: 'Table' | 'L';
  pieces: Piece[];
}

const LINE = 1.36;
const CELL_GAP = 12;
/** Least width of a column of numbers, and of words [px]. */
const LEAST = 30;
const BULLET = 14;

const FONTS = {
  text: { size: SHEET.text, weight: 400 },
  small: { size: SHEET.small, weight: 400 },
  strong: { size: SHEET.text, weight: 600 },
  lead: { size: SHEET.lead, weight: 500 },
  faint: { size: SHEET.small, weight: 400, colour: FAINT_INK },
  shop: { size: SHEET.shop, weight: 600 },
  name: { size: SHEET.title, weight: 500, colour: FAINT_INK },
  aside: { size: SHEET.text, weight: 400, colour: FAINT_INK },
  sheet: { size: SHEET.shop - 2, weight: 600 },
} as const satisfies Record<string, PdfFont>;

/** Height of the report's own head [px]. */
const HEAD = 52;

/** A block cut into pieces that fit a width. */
export function stackOf(block: Block, width: number, level: 'H2' | 'H3'): Stack {
  switch (block.kind) {
    case 'heading':
      return { pieces: [{ ...marked(paragraph(block.text, width, FONTS.strong, level), block.text), leads: true }] };
    case 'lead':
      return { pieces: [paragraph(block.text, width, FONTS.lead)] };
    case 'text':
      return { pieces: [paragraph(block.text, width, block.small ? FONTS.small : FONTS.text)] };
    case 'list':
      return {
        holder: 'L',
        pieces: block.items.map((item) => listItem(item, width, block.small ? FONTS.small : FONTS.text)),
      };
    case 'table':
      return { holder: 'Table', pieces: tablePieces(block.table, width) };
    case 'figure':
      return { pieces: [figure(block, { width })] };
    case 'columns':
      return { pieces: [columns(block, { width, level })] };
  }
}

/** Height of pieces one under the other. */
export function heightOf(pieces: Piece[]): number {
  return pieces.reduce((sum, { height }) => sum + height, 0);
}

/** Draws pieces one under the other into an element of their own, if they need one. */
function drawStack({ holder, pieces }: Stack, pen: Pen, x: number, y: number): void {
  const inside = holder ? { ...pen, into: added(pen, holder) } : pen;
  let top = y;
  for (const piece of pieces) {
    piece.draw(inside, x, top);
    top += piece.height;
  }
}

/** An element inside the pen's, with what it shows or with more elements to come. */
export function added(
  { pdf, into }: Pick<Pen, 'pdf' | 'into'>,
  tag: string,
  options: { alt?: string; scope?: 'Row' | 'Column'; bbox?: number[] } = {},
  draw?: () => void,
): PdfElement {
  const element = draw ? pdf.struct(tag, options, draw) : pdf.struct(tag, options);
  into.add(element);
  return element;
}

/** Lines of one text: a space ends each but the last, so that words don't run together where the text is read out. */
function drawLines(pdf: Pdf, lines: string[], x: number, y: number, font: PdfFont): void {
  lines.forEach((line, i) =>
    drawText(pdf, i < lines.length - 1 ? `${line} ` : line, { x, y: y + font.size + i * font.size * LINE }, font),
  );
}

function paragraph(text: string, width: number, font: PdfFont, tag = 'P'): Piece {
  const lines = breakText(text, width, font);
  return {
    height: lines.length * font.size * LINE,
    draw: (pen, x, y) => added(pen, tag, {}, () => drawLines(pen.pdf, lines, x, y, font)),
  };
}

function marked(piece: Piece, title: string): Piece {
  return {
    ...piece,
    draw: (pen, x, y) => {
      pen.bookmark(title, y);
      piece.draw(pen, x, y);
    },
  };
}

function listItem(text: string, width: number, font: PdfFont): Piece {
  const lines = breakText(text, width - BULLET, font);
  return {
    height: lines.length * font.size * LINE + 3,
    draw: (pen, x, y) => {
      const item = { ...pen, into: added(pen, 'LI') };
      added(item, 'Lbl', {}, () => drawText(pen.pdf, '•', { x: x + 3, y: y + font.size }, font));
      added(item, 'LBody', {}, () => drawLines(pen.pdf, lines, x + BULLET, y, font));
    },
  };
}

/** A picture as wide as its column, or as high as there is room for; with its caption under it. */
export function figure(
  { scene, caption }: Extract<Block, { kind: 'figure' }>,
  { width, room = Infinity, share = 1 }: { width: number; room?: number; share?: number },
): Piece {
  const under = paragraph(caption, width, FONTS.faint);
  const scale = Math.min((share * width) / scene.width, Math.max(0.1, (room - under.height - 2) / scene.height));
  const height = scene.height * scale;
  return {
    height: height + 2 + under.height,
    draw: (pen, x, y) => {
      const left = x + (width - scene.width * scale) / 2;
      const bbox = [...pen.onPage(left, y), ...pen.onPage(left + scene.width * scale, y + height)];
      const alt = [scene.title, scene.description].map((text) => text.replace(/\.$/, '')).join('. ');
      added(pen, 'Figure', { alt: `${alt}.`, bbox }, () => drawScene(pen.pdf, scene, { x: left, y, scale }));
      under.draw(pen, x, y + height + 2);
    },
  };
}

/** @param room height that figures of the columns may take [px] */
export function columns(
  { columns: all, shares = all.map(() => 1) }: Extract<Block, { kind: 'columns' }>,
  { width, level, room = Infinity }: { width: number; level: 'H2' | 'H3'; room?: number },
): Piece {
  const share = (width - SHEET.gutter * (all.length - 1)) / shares.reduce((sum, each) => sum + each, 0);
  const widths = shares.map((each) => each * share);
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, each) => sum + each + SHEET.gutter, 0));
  const stacks = all.map((blocks, i) =>
    blocks.map((block): Stack =>
      block.kind === 'figure'
        ? { pieces: [figure(block, { width: widths[i], room })] }
        : stackOf(block, widths[i], level),
    ),
  );
  const heights = stacks.map((column) => column.reduce((sum, { pieces }) => sum + heightOf(pieces), 0));
  return {
    height: Math.max(...heights) + 5,
    draw: (pen, x, y) =>
      stacks.forEach((column, i) => {
        const left = x + lefts[i];
        // a table has lines of its own
        if (all[i][0]?.kind === 'heading') rule(pen.pdf, { x: left, y, width: widths[i], thickness: 1 });
        let top = y + 5;
        for (const stack of column) {
          drawStack(stack, pen, left, top);
          top += heightOf(stack.pieces);
        }
      }),
  };
}

interface Columns {
  widths: number[];
  isLeft: (column: number) => boolean;
  /** whether a cell names its row */
  isName: (column: number) => boolean;
}

function tablePieces({ caption, head, rows, align = [] }: TableData, width: number): Piece[] {
  // a column without a head, at the left, says what its row is
  const named = head.findIndex((title) => title !== '');
  const layout = {
    widths: columnWidths(head, rows, width),
    isLeft: (i: number) => (align[i] ?? (i === 0 ? 'left' : 'right')) === 'left',
    isName: (i: number) => i < Math.max(1, named),
  };
  const pieces: Piece[] = [];
  if (caption) {
    pieces.push({ ...marked(paragraph(caption, width, FONTS.strong, 'Caption'), caption), leads: true });
  }
  const top = named < 0 ? undefined : tableRow(head, layout, true);
  if (top) pieces.push({ ...top, leads: true });
  return [
    ...pieces,
    ...rows.map((cells) => ({ ...tableRow(cells, layout, false), ...(top && { repeat: top.again }) })),
  ];
}

/** As wide as each column wants; what is over is shared out, what lacks is taken from the widest. */
function columnWidths(head: string[], rows: string[][], width: number): number[] {
  const wanted = head.map((title, i) => {
    const cells = rows.map((cells) => {
      const [first, second] = (cells[i] ?? '').split('\n');
      return textWidth(first, FONTS.text) + (second === undefined ? 0 : 4 + textWidth(second, FONTS.faint));
    });
    return Math.max(LEAST, textWidth(title, FONTS.strong), ...cells) + 1;
  });
  const room = width - CELL_GAP * (head.length - 1);
  let total = wanted.reduce((a, b) => a + b, 0);
  while (total > room + 1e-6) {
    const widest = Math.max(...wanted);
    const next = Math.max(...wanted.filter((each) => each < widest - 1e-6), LEAST);
    const at = wanted.flatMap((each, i) => (each >= widest - 1e-6 ? [i] : []));
    const cut = Math.min((total - room) / at.length, Math.max(1, widest - next));
    for (const i of at) wanted[i] -= cut;
    total -= cut * at.length;
  }
  const share = (room - total) / wanted.length;
  return wanted.map((each) => each + share);
}

/**
 * A row of a table, and how it is drawn again as furniture of another page. A second line of a cell is what differs: it
 * stands smaller beside the number.
 */
function tableRow(
  cells: string[],
  { widths, isLeft, isName }: Columns,
  isHead: boolean,
): Piece & { again: NonNullable<Piece['repeat']> } {
  const font = isHead ? FONTS.strong : FONTS.text;
  const step = font.size * 1.24;
  let left = 0;
  const placed = cells.map((text, i) => {
    const [first, second] = text.split('\n');
    const cell = {
      text,
      second,
      lines: first === '' ? [] : breakText(first, widths[i], font),
      left,
      right: left + widths[i],
    };
    left = cell.right + CELL_GAP;
    return cell;
  });
  const width = left - CELL_GAP;
  const height = Math.max(1, ...placed.map(({ lines }) => lines.length)) * step + 5;
  const draw = (pdf: Pdf, i: number, x: number, y: number) => {
    const { lines, second, left, right } = placed[i];
    const base = y + 2 + font.size * 0.98;
    const apart = second === undefined ? 0 : textWidth(second, FONTS.faint) + 4;
    lines.forEach((line, k) => {
      const at = isLeft(i) ? x + left : x + right - apart - textWidth(line, font);
      const goesOn = k < lines.length - 1 || second !== undefined;
      drawText(pdf, goesOn ? `${line} ` : line, { x: at, y: base + k * step }, font);
    });
    if (second !== undefined) drawText(pdf, second, { x: x + right, y: base, anchor: 'end' }, FONTS.faint);
  };
  const under = isHead ? { colour: INK, thickness: 1 } : { colour: GRID, thickness: 0.75 };
  const line = (pdf: Pdf, x: number, y: number) => rule(pdf, { x, y: y + height - 0.5, width, ...under });
  return {
    height,
    draw: (pen, x, y) => {
      const row = { ...pen, into: added(pen, 'TR') };
      placed.forEach(({ text }, i) => {
        const named = isHead ? 'Column' : isName(i) ? 'Row' : undefined;
        const scope = text === '' ? undefined : named;
        added(row, scope ? 'TH' : 'TD', { scope }, text === '' ? undefined : () => draw(pen.pdf, i, x, y));
      });
      line(pen.pdf, x, y);
    },
    again: {
      height,
      draw: (pdf, x, y) => {
        artifact(pdf, 'Pagination', () => placed.forEach((_, i) => draw(pdf, i, x, y)));
        line(pdf, x, y);
      },
    },
  };
}

function rule(
  pdf: Pdf,
  { x, y, width, colour = INK, thickness }: { x: number; y: number; width: number; colour?: string; thickness: number },
): void {
  artifact(pdf, 'Layout', () => {
    pdf.lineWidth(thickness).strokeColor(colour);
    pdf.moveTo(x, y).lineTo(x + width, y).stroke(); // prettier-ignore
  });
}

/** The report's own head: shop and design at the left, job and maker at the right. */
export function reportHead({ name, shop, job, maker }: ReportDocument, width: number): Piece {
  const [wide, narrow] = [width * 0.56, width * 0.4];
  return {
    height: HEAD,
    draw: (pen, x, y) => {
      const put = (tag: string, text: string, font: PdfFont, down: number, atRight = false) => {
        if (text === '') return;
        const fitted = fitText(text, atRight ? narrow : wide, font);
        const at = atRight ? { x: x + width, y: y + down, anchor: 'end' as const } : { x, y: y + down };
        added(pen, tag, {}, () => drawText(pen.pdf, fitted, at, font));
      };
      put('P', shop || 'Pit sheet', FONTS.shop, 16);
      put('H1', name, FONTS.name, 36);
      put('P', job, FONTS.aside, 22, true);
      put('P', maker, FONTS.aside, 37, true);
      rule(pen.pdf, { x, y: y + 43, width, thickness: SHEET.rule });
    },
  };
}

/** What stands over a sheet. */
export function sheetHead(title: string, width: number): Piece {
  const head = marked(paragraph(title, width, FONTS.sheet, 'H2'), title);
  return {
    height: head.height + 3,
    leads: true,
    draw: (pen, x, y) => {
      head.draw(pen, x, y);
      rule(pen.pdf, { x, y: y + head.height, width, thickness: SHEET.rule });
    },
  };
}
