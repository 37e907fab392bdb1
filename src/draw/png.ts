import { GlobalFonts } from 'canvas';
import type { ChartConfiguration } from 'chart.js';
import { ChartJSNodeCanvas } from 'chartjs-node-canvas';
import { FONT_FAMILY, PAPER, SIZE } from './theme.js';

/** Pixels a unit of the logical size: 1600 pixels across. */
const SCALE = 1.6;

/**
 * Makes the charts' font known to the canvas. Called once before the first picture: a bare machine has no font at all.
 *
 * @param files font files (woff, ttf), one a weight
 * @throws Error when the canvas can't read one
 */
export function registerFont(files: Parameters<typeof GlobalFonts.register>[0][]): void {
  for (const file of files) {
    if (!GlobalFonts.register(file, FONT_FAMILY)) throw new Error('a font file of the package is damaged');
  }
}

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
