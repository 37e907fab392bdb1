import { join } from 'node:path';
import type { NamedChart } from '../charts/estimateCharts.js';
import { visibleName } from '../words/plainText.js';
import { exit, Stop } from './exit.js';
import { embeddedFonts, fontFiles } from './fonts.js';
import { signalsHeard } from './apart.js';
import { openSink } from './output.js';
import { progress, tell } from './stderr.js';

/** What `--format` takes for charts. */
export type PictureFormat = 'png' | 'svg';

/**
 * Draws charts into a folder that exists, a file each.
 *
 * @returns the files' names
 * @throws Stop when the canvas has no build for this machine, or a file can't be written
 */
export async function drawCharts(
  charts: NamedChart[],
  folder: string,
  format: PictureFormat = 'png',
): Promise<string[]> {
  progress('drawing charts');
  const draw = format === 'svg' ? await svgDrawer() : await pngDrawer();
  const names = charts.map(({ file }) => `${file}.${format}`);
  // each is opened before the first is written: either all may stand where they are to go, or none is drawn
  const sinks = names.map((name) => openSink(join(folder, name)));
  for (const [i, chart] of charts.entries()) {
    await signalsHeard();
    await sinks[i].write(draw(chart));
  }
  return names;
}

/** The same, and says on standard error what lies where. */
export async function drawInto(folder: string, charts: NamedChart[], format?: PictureFormat): Promise<void> {
  const names = await drawCharts(charts, folder, format);
  tell(`charts in ${visibleName(folder)}: ${names.join(', ')}`);
}

async function svgDrawer(): Promise<(chart: NamedChart) => string> {
  const { chartScene } = await import('../charts/chartScene.js');
  const { sceneSvg } = await import('../draw/sceneSvg.js');
  const { chartWords } = await import('../charts/chartWords.js');
  const fonts = embeddedFonts();
  return ({ file, config }) =>
    `${sceneSvg(chartScene(config, chartWords(config)), { id: file, standalone: { fonts } })}\n`;
}

async function pngDrawer(): Promise<(chart: NamedChart) => Uint8Array> {
  const { registerFont, pngRenderer } = await canvasPart(
    () => import('../draw/png.js'),
    'Everything else works without --charts, and pictures with --format svg.',
  );
  registerFont(fontFiles().map(({ file }) => file));
  const render = pngRenderer();
  return ({ config }) => render(config);
}

/**
 * Loads what draws on the prebuilt canvas.
 *
 * @param remedy what to do on a machine that it has no build for
 * @throws Stop there
 */
async function canvasPart<T>(load: () => Promise<T>, remedy: string): Promise<T> {
  return load().catch((error: Error) => {
    const machine = `${process.platform} ${process.arch}`;
    throw new Stop(
      exit.ourFault,
      `this can't be drawn on this machine (${machine}): ${error.message.split('\n')[0]}. ${remedy}`,
    );
  });
}
