import type { PathStep, SceneShape } from './scene.js';
import { textWidth, type FontWeight } from './textWidth.js';

/** Parts of the font's size from the base line to where a canvas would hold a text, by its baseline setting. */
const BASELINE_SHIFT: Record<string, number> = { top: 0.85, hanging: 0.8, middle: 0.34, alphabetic: 0, bottom: -0.2 };
const ANCHORS: Record<string, 'start' | 'middle' | 'end'> = {
  left: 'start',
  start: 'start',
  center: 'middle',
  right: 'end',
  end: 'end',
};

interface State {
  matrix: [number, number, number, number, number, number];
  fillStyle: string;
  strokeStyle: string;
  lineWidth: number;
  globalAlpha: number;
  font: string;
  textAlign: string;
  textBaseline: string;
  dash: number[];
}

/**
 * A drawing context, as charts draw on it, that writes down shapes instead of setting pixels: texts stay texts, lines
 * lines.
 *
 * It knows what our charts use of the canvas's interface. Clipping is left out: our axes hold all that is drawn.
 */
export class SceneContext {
  readonly shapes: SceneShape[] = [];
  readonly canvas: { width: number; height: number; style: object; getContext: () => SceneContext };
  private state: State;
  private readonly stack: State[] = [];
  private steps: PathStep[] = [];

  constructor(width: number, height: number) {
    this.canvas = { width, height, style: {}, getContext: () => this };
    this.state = {
      matrix: [1, 0, 0, 1, 0, 0],
      fillStyle: '#000',
      strokeStyle: '#000',
      lineWidth: 1,
      globalAlpha: 1,
      font: '400 10px sans-serif',
      textAlign: 'start',
      textBaseline: 'alphabetic',
      dash: [],
    };
  }

  get fillStyle() { return this.state.fillStyle; } // prettier-ignore
  set fillStyle(value: string) { this.state.fillStyle = String(value); } // prettier-ignore
  get strokeStyle() { return this.state.strokeStyle; } // prettier-ignore
  set strokeStyle(value: string) { this.state.strokeStyle = String(value); } // prettier-ignore
  get lineWidth() { return this.state.lineWidth; } // prettier-ignore
  set lineWidth(value: number) { this.state.lineWidth = Number(value); } // prettier-ignore
  get globalAlpha() { return this.state.globalAlpha; } // prettier-ignore
  set globalAlpha(value: number) { this.state.globalAlpha = Number(value); } // prettier-ignore
  get font() { return this.state.font; } // prettier-ignore
  set font(value: string) { this.state.font = value; } // prettier-ignore
  get textAlign() { return this.state.textAlign; } // prettier-ignore
  set textAlign(value: string) { this.state.textAlign = value; } // prettier-ignore
  get textBaseline() { return this.state.textBaseline; } // prettier-ignore
  set textBaseline(value: string) { this.state.textBaseline = value; } // prettier-ignore

  save(): void {
    this.stack.push({ ...this.state, matrix: [...this.state.matrix] });
  }

  restore(): void {
    this.state = this.stack.pop() ?? this.state;
  }

  setTransform(a: number, b: number, c: number, d: number, e: number, f: number): void {
    this.state.matrix = [a, b, c, d, e, f];
  }

  resetTransform(): void {
    this.setTransform(1, 0, 0, 1, 0, 0);
  }

  translate(x: number, y: number): void {
    const { matrix } = this.state;
    [matrix[4], matrix[5]] = this.at(x, y);
  }

  scale(x: number, y: number): void {
    const [a, b, c, d, e, f] = this.state.matrix;
    this.state.matrix = [a * x, b * x, c * y, d * y, e, f];
  }

  rotate(angle: number): void {
    const [a, b, c, d, e, f] = this.state.matrix;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    this.state.matrix = [a * cos + c * sin, b * cos + d * sin, c * cos - a * sin, d * cos - b * sin, e, f];
  }

  beginPath(): void {
    this.steps = [];
  }

  moveTo(x: number, y: number): void {
    this.steps.push(['M', ...this.at(x, y)]);
  }

  lineTo(x: number, y: number): void {
    this.steps.push([this.steps.length === 0 ? 'M' : 'L', ...this.at(x, y)]);
  }

  bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.steps.push(['C', ...this.at(x1, y1), ...this.at(x2, y2), ...this.at(x, y)]);
  }

  closePath(): void {
    if (this.steps.length > 0) this.steps.push(['Z']);
  }

  rect(x: number, y: number, width: number, height: number): void {
    this.moveTo(x, y);
    this.lineTo(x + width, y);
    this.lineTo(x + width, y + height);
    this.lineTo(x, y + height);
    this.closePath();
  }

  /** Cubic curves of at most a quarter turn each. */
  arc(x: number, y: number, r: number, start: number, end: number, anticlockwise = false): void {
    const turn = 2 * Math.PI;
    let sweep = end - start;
    if (Math.abs(sweep) >= turn) sweep = anticlockwise ? -turn : turn;
    else if (anticlockwise && sweep > 0) sweep -= turn;
    else if (!anticlockwise && sweep < 0) sweep += turn;
    const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2)));
    const each = sweep / pieces;
    const k = (4 / 3) * Math.tan(each / 4) * r;
    const on = (angle: number) => [x + r * Math.cos(angle), y + r * Math.sin(angle)] as const;
    this.lineTo(...on(start));
    for (let i = 0; i < pieces; i++) {
      const [from, to] = [start + i * each, start + (i + 1) * each];
      const [[x1, y1], [x2, y2]] = [on(from), on(to)];
      this.bezierCurveTo(
        x1 - k * Math.sin(from),
        y1 + k * Math.cos(from),
        x2 + k * Math.sin(to),
        y2 - k * Math.cos(to),
        x2,
        y2,
      );
    }
  }

  fill(): void {
    const { fillStyle: fill, globalAlpha } = this.state;
    if (this.steps.length > 0)
      this.shapes.push({ kind: 'path', steps: [...this.steps], fill, ...this.alpha(globalAlpha) });
  }

  stroke(): void {
    const { strokeStyle: stroke, lineWidth: width, dash, globalAlpha } = this.state;
    if (this.steps.length === 0 || width <= 0) return;
    const dashed = dash.length > 0 ? { dash: [...dash] } : {};
    this.shapes.push({ kind: 'path', steps: [...this.steps], stroke, width, ...dashed, ...this.alpha(globalAlpha) });
  }

  fillRect(x: number, y: number, width: number, height: number): void {
    const before = this.steps;
    this.steps = [];
    this.rect(x, y, width, height);
    this.fill();
    this.steps = before;
  }

  strokeRect(x: number, y: number, width: number, height: number): void {
    const before = this.steps;
    this.steps = [];
    this.rect(x, y, width, height);
    this.stroke();
    this.steps = before;
  }

  fillText(text: string, x: number, y: number): void {
    if (text === '') return;
    const { size, weight } = this.fontNow();
    const [a, b] = this.state.matrix;
    const angle = Math.atan2(b, a);
    const shift = (BASELINE_SHIFT[this.state.textBaseline] ?? 0) * size;
    const [px, py] = this.at(x, y + shift);
    const turn = Math.round((angle * 180) / Math.PI);
    this.shapes.push({
      kind: 'text',
      x: px,
      y: py,
      text,
      size,
      weight,
      anchor: ANCHORS[this.state.textAlign] ?? 'start',
      colour: this.state.fillStyle,
      ...(turn === 0 ? {} : { turn }),
    });
  }

  measureText(text: string): { width: number; actualBoundingBoxAscent: number; actualBoundingBoxDescent: number } {
    const font = this.fontNow();
    return {
      width: textWidth(text, font),
      actualBoundingBoxAscent: 0.7 * font.size,
      actualBoundingBoxDescent: 0.2 * font.size,
    };
  }

  setLineDash(dash: number[]): void {
    this.state.dash = [...dash];
  }

  getLineDash(): number[] {
    return [...this.state.dash];
  }

  clearRect(): void {
    // paper is blank to begin with, and a chart is drawn once
  }

  clip(): void {
    // see above: nothing of ours reaches beyond the axes
  }

  private at(x: number, y: number): [number, number] {
    const [a, b, c, d, e, f] = this.state.matrix;
    return [a * x + c * y + e, b * x + d * y + f];
  }

  private alpha(value: number): { opacity?: number } {
    return value < 1 ? { opacity: value } : {};
  }

  private fontNow(): { size: number; weight: FontWeight } {
    const size = Number(/(\d+(?:\.\d+)?)px/.exec(this.state.font)?.[1] ?? 10);
    const named = Number(/\b([1-9]00)\b/.exec(this.state.font)?.[1] ?? (this.state.font.includes('bold') ? 600 : 400));
    return { size, weight: named >= 600 ? 600 : named >= 500 ? 500 : 400 };
  }
}
