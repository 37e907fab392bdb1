import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { NamedChart } from '../charts/estimateCharts.js';
import { exit, Stop } from './exit.js';
import { openSink } from './output.js';
import { progress } from './stderr.js';

const FONT_WEIGHTS = [400, 500, 600];

/**
 * Draws charts into a folder that exists, one PNG each.
 *
 * @returns the files' names
 * @throws Stop when the canvas has no build for this machine, or a file can't be written
 */
export async function drawCharts(charts: NamedChart[], folder: string): Promise<string[]> {
  progress('drawing charts');
  const { registerFont, pngRenderer } = await import('../charts/png.js').catch((error: Error) => {
    throw new Stop(
      exit.ourFault,
      `charts can't be drawn on this machine (${process.platform} ${process.arch}): ${error.message.split('\n')[0]}. ` +
        'Everything else works without --charts.',
    );
  });
  const { resolve } = createRequire(import.meta.url);
  registerFont(
    FONT_WEIGHTS.map((weight) => readFileSync(resolve(`@fontsource/barlow/files/barlow-latin-${weight}-normal.woff`))),
  );
  const renderPng = pngRenderer();
  const names = charts.map(({ file }) => `${file}.png`);
  for (const [i, { config }] of charts.entries()) {
    await openSink(join(folder, names[i])).write(renderPng(config));
  }
  return names;
}
