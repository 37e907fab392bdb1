import type { Chart, Plugin } from 'chart.js';

/** An area between two curves, in the units of the axes, drawn under the data. */
export interface BandArea {
  /** the line with which it is switched off */
  dataset: number;
  x: number[];
  low: number[];
  high: number[];
  colour: string;
}

/** Fills bands, thin enough for lines and grid to show through. */
export function bandAreas(bands: BandArea[]): Plugin {
  return {
    id: 'bandAreas',
    beforeDatasetsDraw(chart: Chart) {
      const { ctx, scales } = chart;
      ctx.save();
      ctx.globalAlpha = 0.2;
      for (const { dataset, x, low, high, colour } of bands) {
        if (!chart.isDatasetVisible(dataset)) continue;
        ctx.fillStyle = colour;
        ctx.beginPath();
        x.forEach((at, i) => {
          const [px, py] = [scales.x.getPixelForValue(at), scales.y.getPixelForValue(high[i])];
          if (i === 0) ctx.moveTo(px, py);
          else ctx.lineTo(px, py);
        });
        for (let i = x.length - 1; i >= 0; i--) {
          ctx.lineTo(scales.x.getPixelForValue(x[i]), scales.y.getPixelForValue(low[i]));
        }
        ctx.closePath();
        ctx.fill();
      }
      ctx.restore();
    },
  };
}
