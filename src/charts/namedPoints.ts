/** Dots on curves with their names. */
import type { Chart, Plugin } from 'chart.js';
import { FONT_FAMILY, FONT_SIZE, INK, PAPER, type LineStyle } from '../draw/theme.js';
import { coveredBy, takeRoom } from './freeRoom.js';

/** Letters of the names beside dots [px]. */
export const NAME_FONT = { size: FONT_SIZE.label, weight: 500 } as const;
const LINE = FONT_SIZE.label + 4;

/** A place on a curve with its name, in the units of the axes. */
export interface NamedPoint {
  x: number;
  y: number;
  text: string;
  style: LineStyle;
  /** drawn as a dot, too */
  dot: boolean;
}

interface Placed extends NamedPoint {
  /** in pixels */
  px: number;
  py: number;
  wide: number;
}

/** Radius of a dot with the paper round it, and length of the piece of line before a name in a key [px]. */
const DOT = 6;
const SWATCH = 26;

/**
 * Dots on the curves, their names below them: the name of the dot farthest right stands highest, so that no line from a
 * dot to its name crosses another name. Where names are too long for that they stand in a key, each behind a piece of
 * its line.
 */
export function namedPoints(points: readonly NamedPoint[]): Plugin {
  return {
    id: 'namedPoints',
    afterDatasetsDraw(chart) {
      const { ctx, scales } = chart;
      ctx.save();
      ctx.font = `${NAME_FONT.weight} ${NAME_FONT.size}px ${FONT_FAMILY}`;
      ctx.textBaseline = 'middle';
      ctx.textAlign = 'left';
      const placed = points
        .map((point): Placed => ({
          ...point,
          px: scales.x.getPixelForValue(point.x),
          py: scales.y.getPixelForValue(point.y),
          wide: ctx.measureText(point.text).width,
        }))
        .sort((a, b) => b.px - a.px);
      for (const { px, py } of placed) takeRoom(chart, { left: px - DOT, right: px + DOT, top: py - DOT, bottom: py + DOT }); // prettier-ignore
      const fits = placed.length === 1 || placed.every(({ px, wide }) => px + wide + 8 <= chart.chartArea.right);
      if (fits) namesAtDots(chart, placed);
      else keyOf(chart, placed);
      for (const { px, py, dot, style } of placed) {
        if (!dot) continue;
        for (const [radius, fill] of [
          [DOT, PAPER],
          [4.5, style.colour],
        ] as const) {
          ctx.fillStyle = fill;
          ctx.beginPath();
          ctx.arc(px, py, radius, 0, 2 * Math.PI);
          ctx.fill();
        }
      }
      ctx.restore();
    },
  };
}

function namesAtDots(chart: Chart, placed: readonly Placed[]): void {
  const { ctx, chartArea } = chart;
  const deepest = Math.max(...placed.map(({ py }) => py));
  placed.forEach(({ px, py, text, style, wide }, i) => {
    const y = Math.min(deepest + LINE * (i + 1.1), chartArea.bottom - LINE * (placed.length - i - 0.4));
    const x = Math.min(px, chartArea.right - wide - 8);
    ctx.strokeStyle = style.colour;
    ctx.lineWidth = 1.25;
    ctx.beginPath();
    ctx.moveTo(px, py);
    ctx.lineTo(px, y);
    ctx.lineTo(x + 4, y);
    ctx.stroke();
    write(chart, text, x + 6, y, wide);
  });
}

/** At the right, at the lowest height at which it covers least. */
function keyOf(chart: Chart, placed: readonly Placed[]): void {
  const { ctx, chartArea } = chart;
  const left = chartArea.right - Math.max(...placed.map(({ wide }) => wide)) - SWATCH - 18;
  const high = placed.length * LINE;
  const boxAt = (top: number) => ({ left, right: chartArea.right, top, bottom: top + high });
  const tops = Array.from({ length: Math.max(1, Math.floor((chartArea.bottom - chartArea.top - high) / 4)) }, (_, i) => chartArea.bottom - high - 4 * (i + 1)); // prettier-ignore
  const covered = tops.map((top) => coveredBy(chart, boxAt(top)));
  const top = tops[covered.indexOf(Math.min(...covered))];
  [...placed].reverse().forEach(({ text, style, wide }, i) => {
    const y = top + LINE * (i + 0.5);
    write(chart, text, left + SWATCH + 8, y, wide);
    ctx.strokeStyle = style.colour;
    ctx.lineWidth = 2.5;
    ctx.setLineDash([...style.dash]);
    ctx.beginPath();
    ctx.moveTo(left, y);
    ctx.lineTo(left + SWATCH, y);
    ctx.stroke();
    ctx.setLineDash([]);
  });
}

function write(chart: Chart, text: string, x: number, y: number, wide: number): void {
  const { ctx } = chart;
  takeRoom(chart, { left: x - 2, right: x + wide + 2, top: y - LINE / 2, bottom: y + LINE / 2 });
  ctx.fillStyle = PAPER;
  ctx.fillRect(x - 2, y - LINE / 2 + 1, wide + 4, LINE - 2);
  ctx.fillStyle = INK;
  ctx.fillText(text, x, y);
}
