import { drawScene, type DrawingContext } from '../../charts/sceneCanvas.js';
import { breakText, textWidth, type FontWeight } from '../../charts/textWidth.js';
import { FAINT_INK, FONT_FAMILY, GRID, INK, SHEET } from '../../charts/theme.js';
import type { TableData } from '../table.js';
import type { Block } from './blocks.js';

/** Part of a block that stays on one page: its height, and how it is drawn with its top left corner at x, y. */
export interface Piece {
  height: number;
  draw: (ctx: DrawingContext, x: number, y: number) => void;
  /** must not be the last on a page: a heading, a table's head */
  leads?: boolean;
  /** drawn again at the top of the next page when the block goes on there */
  repeat?: Piece;
}

interface Font {
  size: number;
  weight: FontWeight;
  colour?: string;
}

const LINE = 1.36;
const CELL_GAP = 12;
/** Least width of a column of numbers, and of words [px]. */
const LEAST = 30;

const FONTS = {
  text: { size: SHEET.text, weight: 400 },
  small: { size: SHEET.small, weight: 400 },
  strong: { size: SHEET.text, weight: 600 },
  lead: { size: SHEET.lead, weight: 500 },
  faint: { size: SHEET.small, weight: 400, colour: FAINT_INK },
} as const satisfies Record<string, Font>;

export function drawText(
  ctx: DrawingContext,
  text: string,
  at: { x: number; y: number; align?: 'left' | 'right' },
  { size, weight, colour = INK }: Font,
): void {
  ctx.font = `${weight} ${size}px ${FONT_FAMILY}`;
  ctx.fillStyle = colour;
  ctx.textAlign = at.align ?? 'left';
  ctx.fillText(text, at.x, at.y);
}

export function rule(
  ctx: DrawingContext,
  x: number,
  y: number,
  width: number,
  colour: string,
  thickness: number,
): void {
  ctx.strokeStyle = colour;
  ctx.lineWidth = thickness;
  ctx.setLineDash([]);
  ctx.beginPath();
  ctx.moveTo(x, y);
  ctx.lineTo(x + width, y);
  ctx.stroke();
}

/** A block cut into pieces that fit a width. A flexible figure comes out at its full height; `scaled` makes it smaller. */
export function piecesOf(block: Block, width: number): Piece[] {
  switch (block.kind) {
    case 'heading':
      return [{ ...lines(block.text, width, FONTS.strong), leads: true }];
    case 'lead':
      return [lines(block.text, width, FONTS.lead)];
    case 'text':
      return [lines(block.text, width, block.small ? FONTS.small : FONTS.text)];
    case 'list':
      return block.items.map((item) => bullet(item, width, block.small ? FONTS.small : FONTS.text));
    case 'table':
      return tablePieces(block.table, width);
    case 'figure':
      return [figure(block, width)];
    case 'columns':
      return [columns(block.columns, width)];
  }
}

function lines(text: string, width: number, font: Font): Piece {
  const broken = breakText(text, width, font);
  const step = font.size * LINE;
  return {
    height: broken.length * step,
    draw: (ctx, x, y) => broken.forEach((line, i) => drawText(ctx, line, { x, y: y + font.size + i * step }, font)),
  };
}

function bullet(text: string, width: number, font: Font): Piece {
  const inset = 14;
  const body = lines(text, width - inset, font);
  return {
    height: body.height + 3,
    draw: (ctx, x, y) => {
      drawText(ctx, '•', { x: x + 3, y: y + font.size }, font);
      body.draw(ctx, x + inset, y);
    },
  };
}

/** A picture as wide as its column, or as high as there is room for; with its caption under it. */
export function figure(block: Extract<Block, { kind: 'figure' }>, width: number, room = Infinity): Piece {
  const caption = lines(block.caption, width, FONTS.faint);
  const { scene } = block;
  const scale = Math.min(width / scene.width, Math.max(0.1, (room - caption.height - 2) / scene.height));
  const height = scene.height * scale;
  return {
    height: height + 2 + caption.height,
    draw: (ctx, x, y) => {
      drawScene(ctx, scene, { x: x + (width - scene.width * scale) / 2, y, scale });
      caption.draw(ctx, x, y + height + 2);
    },
  };
}

function columns(all: Block[][], width: number): Piece {
  const each = (width - SHEET.gutter * (all.length - 1)) / all.length;
  const stacks = all.map((blocks) => blocks.flatMap((block) => piecesOf(block, each)));
  const heights = stacks.map((pieces) => pieces.reduce((sum, { height }) => sum + height, 0));
  return {
    height: Math.max(...heights) + 5,
    draw: (ctx, x, y) =>
      stacks.forEach((pieces, i) => {
        const left = x + i * (each + SHEET.gutter);
        // a table has lines of its own
        if (all[i][0]?.kind === 'heading') rule(ctx, left, y, each, INK, 1);
        let top = y + 5;
        for (const piece of pieces) {
          piece.draw(ctx, left, top);
          top += piece.height;
        }
      }),
  };
}

function tablePieces({ caption, head, rows, align = [] }: TableData, width: number): Piece[] {
  const isLeft = (i: number) => (align[i] ?? (i === 0 ? 'left' : 'right')) === 'left';
  const widths = columnWidths(head, rows, width);
  const headed = head.some((cell) => cell !== '');
  const top = headed ? row(head, widths, isLeft, { font: FONTS.strong, line: INK }) : undefined;
  const pieces: Piece[] = [];
  if (caption) pieces.push({ ...lines(caption, width, FONTS.strong), leads: true });
  if (top) pieces.push({ ...top, leads: true });
  for (const cells of rows) {
    const piece = row(cells, widths, isLeft, { font: FONTS.text, line: GRID });
    pieces.push(top ? { ...piece, repeat: top } : piece);
  }
  return pieces;
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

function row(
  cells: string[],
  widths: number[],
  isLeft: (i: number) => boolean,
  { font, line }: { font: Font; line: string },
): Piece {
  const step = font.size * 1.24;
  const broken = cells.map((cell, i) => {
    const [first, second] = cell.split('\n');
    return { lines: first === '' ? [] : breakText(first, widths[i], font), second };
  });
  const most = Math.max(1, ...broken.map(({ lines: each }) => each.length));
  const height = most * step + 5;
  return {
    height,
    draw: (ctx, x, y) => {
      let left = x;
      broken.forEach(({ lines: each, second }, i) => {
        const apart = second === undefined ? 0 : textWidth(second, FONTS.faint) + 4;
        each.forEach((text, k) => {
          const base = y + 2 + font.size * 0.98 + k * step;
          if (isLeft(i)) drawText(ctx, text, { x: left, y: base }, font);
          else drawText(ctx, text, { x: left + widths[i] - apart, y: base, align: 'right' }, font);
        });
        if (second !== undefined) {
          drawText(ctx, second, { x: left + widths[i], y: y + 2 + font.size * 0.98, align: 'right' }, FONTS.faint);
        }
        left += widths[i] + CELL_GAP;
      });
      rule(ctx, x, y + height - 0.5, left - CELL_GAP - x, line, line === INK ? 1 : 0.75);
    },
  };
}
