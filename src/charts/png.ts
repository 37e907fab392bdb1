import type { ChartConfiguration } from 'chart.js';
import { ChartJSNodeCanvas } from 'chartjs-node-canvas';
import { FONT_FAMILY, PAPER, SIZE } from './theme.js';

export { registerFont } from './canvasPages.js';

/** Pixels a unit of the logical size: 1600 pixels across. */
const SCALE = 1.6;

/** Draws charts as PNG, 1600 by 1000 pixels on white. The same chart gives the same bytes. */
export function pngRenderer(): (config: ChartConfiguration) => Uint8Array {
  const renderer = new ChartJSNodeCanvas({
    ...SIZE,
    backgroundColour: PAPER,
    chartCallback: (chart) => {
      chart.defaults.font.family = FONT_FAMILY;
    },
  });
  // of the ways out of a canvas, the prebuilt one knows only this
  return (config) =>
    renderer.renderToBufferSync({ ...config, options: { ...config.options, devicePixelRatio: SCALE } });
}
