import type { Plugin } from 'chart.js';
import { FONT_FAMILY, FONT_SIZE, INK } from '../draw/theme.js';

/**
 * Writes a text behind the right end of each horizontal bar: of one that runs to the left that is where it begins.
 *
 * @param texts one list a data set, one text a bar
 */
export function barLabels(texts: string[][]): Plugin {
  return {
    id: 'barLabels',
    afterDatasetsDraw(chart) {
      const { ctx } = chart;
      ctx.save();
      ctx.font = `500 ${FONT_SIZE.label}px ${FONT_FAMILY}`;
      ctx.fillStyle = INK;
      ctx.textBaseline = 'middle';
      ctx.textAlign = 'left';
      texts.forEach((row, dataset) => {
        chart.getDatasetMeta(dataset).data.forEach((bar, index) => {
          const { x, y, base } = bar.getProps(['x', 'y', 'base'], true) as { x: number; y: number; base: number };
          ctx.fillText(row[index] ?? '', Math.max(x, base) + 8, y);
        });
      });
      ctx.restore();
    },
  };
}
