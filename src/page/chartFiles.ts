/** A chart of the page as a file: as lines, and as a picture. */
import { csvOf } from '../report/csv.js';
import { inertCell } from '../report/curveCells.js';
import type { Scene } from '../draw/scene.js';
import { sceneElement } from './sceneView.js';

/** How much finer a picture is than the screen. */
const FINER = 2;

/** In the colours of paper. */
export function chartSvg(scene: Scene): string {
  return new XMLSerializer().serializeToString(sceneElement(scene));
}

/** Rows as a spreadsheet reads them: what would be a formula is text, a negative number stays one. */
export function chartCsv(rows: readonly (readonly string[])[]): string {
  const inert = (text: string) => (/^-[\d.]/.test(text) ? text : inertCell(text));
  return csvOf(rows.map((row) => row.map(inert)));
}

/** The same on white. */
export async function chartPng(scene: Scene): Promise<Blob> {
  const picture = new Image();
  picture.src = `data:image/svg+xml,${encodeURIComponent(chartSvg(scene))}`;
  await picture.decode();
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(FINER * scene.width);
  canvas.height = Math.round(FINER * scene.height);
  const pen = canvas.getContext('2d')!;
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((done, failed) => canvas.toBlob((blob) => (blob ? done(blob) : failed(new Error('no picture')))));
}
