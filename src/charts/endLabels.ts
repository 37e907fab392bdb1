import type { Chart, Plugin } from 'chart.js';
import { coveredBy, takeRoom } from './freeRoom.js';
import { FONT_FAMILY, FONT_SIZE, INK, PAPER } from '../draw/theme.js';

/** What one data set says at its end. */
interface EndLabel {
  dataset: number;
  text: string;
  colour: string;
}

const GAP = 14;
const LINE = FONT_SIZE.label + 4;

/**
 * Writes each line's name beside its last point, so that no legend has to be matched by colour. Names that would lie
 * over each other are moved apart, in the order of the lines' ends; that of a line that ends before others goes up or
 * down until it covers none of them. The x axis must leave room beyond the last point.
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
      const last = Math.max(...placed.map(({ x }) => x));
      const outer = placed.filter(({ x }) => x > last - 1);
      const inner = placed.filter(({ x }) => x <= last - 1);
      spread(outer, chartArea.top + LINE / 2, chartArea.bottom - LINE / 2);
      ctx.save();
      ctx.font = `500 ${FONT_SIZE.label}px ${FONT_FAMILY}`;
      ctx.textBaseline = 'middle';
      ctx.textAlign = 'left';
      for (const { text, colour, x, y: own, wanted } of [...outer, ...inner]) {
        const width = ctx.measureText(text).width;
        const boxAt = (y: number) => ({ left: x + 1, right: x + GAP + width, top: y - LINE / 2, bottom: y + LINE / 2 });
        const y = x > last - 1 ? own : clearHeight(own, (height) => coveredBy(chart, boxAt(height)), chartArea);
        ctx.strokeStyle = colour;
        ctx.lineWidth = 1.5;
        ctx.beginPath();
        ctx.moveTo(x + 2, wanted);
        ctx.lineTo(x + GAP - 3, y);
        ctx.stroke();
        takeRoom(chart, boxAt(y));
        ctx.fillStyle = PAPER;
        ctx.fillRect(x + GAP - 2, y - LINE / 2, width + 4, LINE);
        ctx.fillStyle = INK;
        ctx.fillText(text, x + GAP, y);
      }
      ctx.restore();
    },
  };
}

/** The height nearest to one at which a name covers least. */
function clearHeight(wanted: number, covered: (y: number) => number, { top, bottom }: Chart['chartArea']): number {
  const steps = Math.ceil((bottom - top) / LINE);
  const heights = Array.from({ length: 2 * steps + 1 }, (_, i) => wanted + (i % 2 === 0 ? 0.25 : -0.25) * LINE * i);
  const inside = heights.filter((y) => y > top + LINE / 2 && y < bottom - LINE / 2);
  return (
    [...inside].sort((a, b) => covered(a) - covered(b) || Math.abs(a - wanted) - Math.abs(b - wanted))[0] ?? wanted
  );
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
