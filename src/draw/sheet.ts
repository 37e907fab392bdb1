import type { Fill, Mark, Pen } from './drawing.js';

/** Where a view stands on its drawing, and how large. */
export interface ViewPlace {
  /** pixels of the view's origin: metres (0, ground) */
  left: number;
  ground: number;
  /** pixels a metre */
  scale: number;
  /** size of lettering [px] */
  lettering: number;
}

/** Half the length of the slash that ends a dimension line [px]. */
const SLASH = 3.5;

/** Draws in metres, heights upwards from the ground, onto a drawing in pixels. */
export class Sheet {
  readonly marks: Mark[] = [];

  constructor(readonly place: ViewPlace) {}

  x(metres: number): number {
    return this.place.left + metres * this.place.scale;
  }

  y(height: number): number {
    return this.place.ground - height * this.place.scale;
  }

  rect(at: { left: number; right: number; low: number; high: number }, look: { pen?: Pen; fill?: Fill }): void {
    const [l, r, t, b] = [this.x(at.left), this.x(at.right), this.y(at.high), this.y(at.low)];
    const points = [
      [l, t],
      [r, t],
      [r, b],
      [l, b],
    ] as const;
    this.marks.push({ shape: 'line', points, closed: true, ...look });
  }

  circle(centre: { x: number; height: number }, radius: number, look: { pen?: Pen; fill?: Fill }): void {
    const { scale } = this.place;
    this.marks.push({
      shape: 'circle',
      x: this.x(centre.x),
      y: this.y(centre.height),
      radius: radius * scale,
      ...look,
    });
  }

  line(points: readonly (readonly [number, number])[], look: { pen?: Pen; fill?: Fill; closed?: boolean }): void {
    this.marks.push({ shape: 'line', points: points.map(([x, z]) => [this.x(x), this.y(z)] as const), ...look });
  }

  /** Text at a place in pixels. */
  text(x: number, y: number, text: string, how: Partial<Extract<Mark, { shape: 'text' }>> = {}): void {
    this.marks.push({ shape: 'text', x, y, text, size: this.place.lettering, align: 'middle', ...how });
  }

  /** How wide a text comes out, about [px]. */
  widthOf(text: string): number {
    return text.length * this.place.lettering * 0.52;
  }

  /**
   * A dimension from one x to another, its line `below` pixels under the ground line, with extension lines from there
   * up. A figure wider than its line stands under it, clear of its neighbours' figures, or right of `free` where
   * nothing else stands.
   */
  dimensionAlong(from: number, to: number, below: number, text: string, free?: number): void {
    const y = this.place.ground + below;
    const [a, b] = [this.x(from), this.x(to)];
    for (const x of [a, b]) this.stroke(x, this.place.ground + 6, x, y + SLASH);
    this.stroke(a, y, b, y);
    for (const x of [a, b]) this.stroke(x - SLASH, y + SLASH, x + SLASH, y - SLASH);
    const fits = this.widthOf(text) + 2 * SLASH < Math.abs(b - a);
    if (!fits && free !== undefined) this.text(this.x(free) + 2 * SLASH, y, text, { align: 'start' });
    else this.text((a + b) / 2, fits ? y : y + this.place.lettering, text, { rim: true });
  }

  /** A dimension from one height to another, its line at `x` pixels, with extension lines from `reach` pixels. */
  dimensionUp(from: number, to: number, x: number, reach: number, text: string): void {
    const [a, b] = [this.y(from), this.y(to)];
    const gap = Math.sign(x - reach) * 4;
    for (const y of [a, b]) this.stroke(reach + gap, y, x + Math.sign(gap) * SLASH, y);
    this.stroke(x, a, x, b);
    for (const y of [a, b]) this.stroke(x - SLASH, y + SLASH, x + SLASH, y - SLASH);
    // a figure longer than its line stands beside it
    const fits = this.widthOf(text) + 2 * SLASH < Math.abs(b - a);
    this.text(fits ? x : x + Math.sign(gap) * this.place.lettering, (a + b) / 2, text, { rim: true, upright: true });
  }

  /** An arrow between two places in pixels, its head at the second. */
  arrow(from: readonly [number, number], to: readonly [number, number]): void {
    const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
    const barb = (turn: number) =>
      [to[0] - 7 * Math.cos(angle + turn), to[1] - 7 * Math.sin(angle + turn)] as [number, number];
    this.marks.push({ shape: 'line', points: [from, to], pen: 'thin' });
    this.marks.push({ shape: 'line', points: [to, barb(0.4), barb(-0.4)], closed: true, fill: 'ink' });
  }

  private stroke(x1: number, y1: number, x2: number, y2: number): void {
    this.marks.push({
      shape: 'line',
      points: [
        [x1, y1],
        [x2, y2],
      ],
      pen: 'dimension',
    });
  }
}
