import { createCanvas, GlobalFonts } from '@napi-rs/canvas';
import { BarController, BarElement, CategoryScale, Chart, LinearScale, LineController, LineElement } from 'chart.js';
import { Legend, PointElement, SubTitle, Title } from 'chart.js';
import type { ChartConfiguration } from 'chart.js';
import { FONT_FAMILY, PAPER, SIZE } from './theme.js';

/** Pixels a unit of the logical size: 1600 pixels across. */
const SCALE = 1.6;

Chart.register(BarController, BarElement, CategoryScale, LinearScale, LineController, LineElement);
Chart.register(Legend, PointElement, SubTitle, Title);

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
  Chart.defaults.font.family = FONT_FAMILY;
}

/** Draws a chart as PNG, 1600 by 1000 pixels on white. The same chart gives the same bytes. */
export function renderPng(config: ChartConfiguration): Uint8Array {
  const canvas = createCanvas(SIZE.width, SIZE.height);
  const whitePaper = {
    id: 'whitePaper',
    beforeDraw({ ctx }: Chart) {
      ctx.save();
      ctx.globalCompositeOperation = 'destination-over';
      ctx.fillStyle = PAPER;
      ctx.fillRect(0, 0, SIZE.width, SIZE.height);
      ctx.restore();
    },
  };
  const chart = new Chart(canvas as unknown as ConstructorParameters<typeof Chart>[0], {
    ...config,
    options: { ...config.options, devicePixelRatio: SCALE },
    plugins: [...(config.plugins ?? []), whitePaper],
  });
  const png = canvas.toBuffer('image/png');
  chart.destroy();
  return png;
}
