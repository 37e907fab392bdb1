/** Where a text finds room on a view: clear of other texts, of what stands there, and of the outlines of parts. */
import { meet, type Box } from '../box.js';
import type { Sheet } from '../sheet.js';

type Piece = readonly [from: readonly [number, number], to: readonly [number, number]];

export class FreePaper {
  private readonly taken: Box[] = [];
  private readonly outlines: Piece[];

  /** @param sheet with its parts drawn */
  constructor(sheet: Sheet) {
    this.outlines = sheet.marks.flatMap((mark): Piece[] => {
      if (mark.shape !== 'line' || mark.pen !== 'outline') return [];
      const { points, closed } = mark;
      const ends = closed ? [...points, points[0]] : points;
      return ends.slice(1).map((to, i) => [ends[i], to]);
    });
  }

  take(box: Box): void {
    this.taken.push(box);
  }

  isFree(box: Box): boolean {
    return this.isUntaken(box) && !this.outlines.some((piece) => enters(piece, box));
  }

  /** Free but for outlines, on which a dot may stand. */
  isUntaken(box: Box): boolean {
    return !this.taken.some((other) => meet(box, other));
  }
}

/** Does a straight line enter a box? It does unless it lies beyond one side, or all corners lie on one side of it. */
function enters([[x0, y0], [x1, y1]]: Piece, { left, right, top, bottom }: Box): boolean {
  if (Math.max(x0, x1) <= left || Math.min(x0, x1) >= right) return false;
  if (Math.max(y0, y1) <= top || Math.min(y0, y1) >= bottom) return false;
  const sides = [left, right].flatMap((x) => [top, bottom].map((y) => (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)));
  return Math.max(...sides) > 0 && Math.min(...sides) < 0;
}
