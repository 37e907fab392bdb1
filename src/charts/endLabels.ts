import type { Chart, Plugin } from 'chart.js';
import { FONT_FAMILY, FONT_SIZE, INK, PAPER } from '../draw/theme.js';

/** What one data set says at its end. */
export interface EndLabel {
  dataset: number;
  text: string;
  colour: string;
}

const GAP = 14;
const LINE = FONT_SIZE.label + 4;

/**
 * Writes each line's name beside its last point, so that no legend has to be matched by colour. Names that would lie
 * over each other are moved apart, in the order of the lines' ends. The x axis must leave room
 * beyond the last point.
 */
export function endLabels(labels: EndLabel[]): Plugin {
  return {
    id: 'endLabels',
    afterDatasetsDraw(chart: Chart) {
      const { ctx, chartArea } = chart;
      const placed = labels
        .flatMap((label) => {
          const points = chart.getDatasetMeta(label.dataset).data;
          const end = points[points.length - 1];
          return end && chart.isDatasetVisible(label.dataset) ? [{ ...label, x: end.x, y: end.y, wanted: end.y }] : [];
        })
        .sort((a, b) => a.wanted - b.wanted);
      spread(placed, chartArea.top + LINE / 2, chartArea.bottom - LINE / 2);
      ctx.save();
      ctx.font = `500 ${FONT_SIZE.label}px ${FONT_FAMILY}`;
      ctx.textBaseline = 'middle';
      ctx.textAlign = 'left';
      for (const { text, colour, x, y, wanted } of placed) {
        ctx.strokeStyle = colour;
        ctx.lineWidth = 1.5;
        ctx.beginPath();
        ctx.moveTo(x + 2, wanted);
        ctx.lineTo(x + GAP - 3, y);
        ctx.stroke();
        ctx.fillStyle = PAPER;
        ctx.fillRect(x + GAP - 2, y - LINE / 2, ctx.measureText(text).width + 4, LINE);
        ctx.fillStyle = INK;
        ctx.fillText(text, x + GAP, y);
      }
      ctx.restore();
    },
  };
}

/** Moves sorted heights apart to at least a line each, and the whole back between top and bottom. */
function spread(items: { y: number }[], top: number, bottom: number): void {
  for (let i = 0; i < items.length; i++) {
    items[i].y = Math.max(items[i].y, i === 0 ? top : items[i - 1].y + LINE);
  }
  for (let i = items.length - 1; i >= 0; i--) {
    items[i].y = Math.min(items[i].y, i === items.length - 1 ? bottom : items[i + 1].y - LINE);
  }
}
