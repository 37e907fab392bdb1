import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const WEIGHTS = [400, 500, 600] as const;

const { resolve } = createRequire(import.meta.url);
const file = (weight: number, ending: string) =>
  readFileSync(resolve(`@fontsource/barlow/files/barlow-latin-${weight}-normal.${ending}`));

/** The charts' font for a canvas, one file a weight. */
export function canvasFonts(): Buffer[] {
  return WEIGHTS.map((weight) => file(weight, 'woff'));
}

/** The charts' font for a document that carries it within. */
export function embeddedFonts(): { weight: number; base64: string }[] {
  return WEIGHTS.map((weight) => ({ weight, base64: file(weight, 'woff2').toString('base64') }));
}
