import type { Scene } from './scene.js';
import { FONT_FAMILY } from './theme.js';

/** What a canvas has of the standard interface and we draw with. */
export interface DrawingContext {
  font: string;
  fillStyle: unknown;
  strokeStyle: unknown;
  lineWidth: number;
  globalAlpha: number;
  textAlign: string;
  lineCap: string;
  lineJoin: string;
  save(): void;
  restore(): void;
  translate(x: number, y: number): void;
  rotate(angle: number): void;
  scale(x: number, y: number): void;
  beginPath(): void;
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void;
  closePath(): void;
  fill(): void;
  stroke(): void;
  setLineDash(dash: number[]): void;
  fillText(text: string, x: number, y: number): void;
}

const ALIGN = { start: 'left', middle: 'center', end: 'right' } as const;

/** Draws a scene with its top left corner at x, y, scaled by `scale`. */
export function drawScene(ctx: DrawingContext, scene: Scene, { x, y, scale }: { x: number; y: number; scale: number }) {
  ctx.save();
  ctx.translate(x, y);
  ctx.scale(scale, scale);
  for (const shape of scene.shapes) {
    if (shape.kind === 'text') {
      ctx.save();
      ctx.translate(shape.x, shape.y);
      if (shape.turn !== undefined) ctx.rotate((shape.turn * Math.PI) / 180);
      ctx.font = `${shape.weight} ${shape.size}px ${FONT_FAMILY}`;
      ctx.textAlign = ALIGN[shape.anchor];
      ctx.fillStyle = shape.colour;
      ctx.fillText(shape.text, 0, 0);
      ctx.restore();
      continue;
    }
    ctx.beginPath();
    for (const step of shape.steps) {
      if (step[0] === 'M') ctx.moveTo(step[1], step[2]);
      else if (step[0] === 'L') ctx.lineTo(step[1], step[2]);
      else if (step[0] === 'C') ctx.bezierCurveTo(step[1], step[2], step[3], step[4], step[5], step[6]);
      else ctx.closePath();
    }
    ctx.globalAlpha = shape.opacity ?? 1;
    if (shape.fill) {
      ctx.fillStyle = shape.fill;
      ctx.fill();
    }
    if (shape.stroke) {
      ctx.strokeStyle = shape.stroke;
      ctx.lineWidth = shape.width ?? 1;
      ctx.setLineDash([...(shape.dash ?? [])]);
      ctx.lineCap = shape.round ? 'round' : 'butt';
      ctx.lineJoin = shape.round ? 'round' : 'miter';
      ctx.stroke();
    }
    ctx.globalAlpha = 1;
  }
  ctx.restore();
}
