import { GlobalFonts, PDFDocument } from 'canvas';
import type { DrawingContext } from './sceneCanvas.js';
import { FONT_FAMILY } from './theme.js';

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

/** An empty PDF to draw pages into, in points. No date is written, so that the same pages are the same bytes. */
export function pdfPages(about: { title: string; author: string; creator: string }): {
  beginPage(width: number, height: number): DrawingContext;
  endPage(): void;
  close(): Uint8Array;
} {
  const document = new PDFDocument(about);
  return {
    beginPage: (width, height) => document.beginPage(width, height) as unknown as DrawingContext,
    endPage: () => document.endPage(),
    close: () => document.close(),
  };
}
