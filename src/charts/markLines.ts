import type { Plugin } from 'chart.js';
import { FONT_FAMILY, FONT_SIZE, INK, PAPER } from '../draw/theme.js';

/** A straight line across the plot at one value of an axis, with a text on it. */
export interface MarkLine {
  axis: 'x' | 'y';
  value: number;
  text: string;
  dash: number[];
  /** lines of text that a text stands above the bottom (x), or above the line (y; 0: just below it) */
  row: number;
  /** how far along a y line its text starts, as a share of the plot's width (default 0) */
  along?: number;
  /** the text of an x line stands before it, not behind it */
  before?: boolean;
}

const LINE = FONT_SIZE.label + 8;

/** Draws the marks over the grid and under the data, and their texts over everything, each on a patch of paper. */
export function markLines(marks: MarkLine[]): Plugin {
  return {
    id: 'markLines',
    beforeDatasetsDraw({ ctx, chartArea, scales }) {
      ctx.save();
      ctx.strokeStyle = INK;
      ctx.lineWidth = 1.25;
      for (const { axis, value, dash } of marks) {
        const at = scales[axis].getPixelForValue(value);
        ctx.setLineDash(dash);
        ctx.beginPath();
        ctx.moveTo(axis === 'x' ? at : chartArea.left, axis === 'x' ? chartArea.top : at);
        ctx.lineTo(axis === 'x' ? at : chartArea.right, axis === 'x' ? chartArea.bottom : at);
        ctx.stroke();
      }
      ctx.restore();
    },
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      ctx.save();
      ctx.font = `600 ${FONT_SIZE.label}px ${FONT_FAMILY}`;
      ctx.textBaseline = 'middle';
      for (const { axis, value, text, row, along = 0, before = false } of marks) {
        const at = scales[axis].getPixelForValue(value);
        const width = ctx.measureText(text).width;
        const beside = before ? at - 6 - width : at + 6;
        const left = axis === 'x' ? beside : chartArea.left + 8 + along * (chartArea.right - chartArea.left);
        const x = Math.max(chartArea.left + 4, Math.min(left, chartArea.right - width - 4));
        const y = axis === 'x' ? chartArea.bottom - LINE * (row + 0.7) : at - LINE * (row - 0.5);
        ctx.fillStyle = PAPER;
        ctx.globalAlpha = 0.85;
        ctx.fillRect(x - 3, y - LINE / 2 + 2, width + 6, LINE - 4);
        ctx.globalAlpha = 1;
        ctx.fillStyle = INK;
        ctx.fillText(text, x, y);
      }
      ctx.restore();
    },
  };
}
