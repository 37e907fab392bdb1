import PDFDocument from 'pdfkit';
import type { PathStep, Scene, ScenePath, SceneText } from './scene.js';
import { escapeMarkup } from './sceneSvg.js';
import { fontHas, textWidth, type FontWeight } from './textWidth.js';
import { INK } from './theme.js';

/** The document of the PDF library that is drawn into. */
export type Pdf = PDFKit.PDFDocument;
/** A node of what a screen reader walks: paragraph, table, row, figure ... */
export type PdfElement = PDFKit.PDFStructureElement;

/** Points a pixel: a PDF is measured in points, 72 to the inch. */
export const POINT = 0.75;

/** Letters one by one, as wide as `textWidth` says: a layout needs no PDF to be measured. */
const PLAIN_LETTERS = { liga: false, kern: false } as unknown as PDFKit.Mixins.OpenTypeFeatures[];

interface PdfAbout {
  title: string;
  author: string;
  creator: string;
}

/**
 * An empty PDF that takes tags, for a screen reader, and the charts' font. It carries no date, so that the same pages
 * are the same bytes.
 */
export function openPdf(about: PdfAbout, fonts: { weight: number; file: Uint8Array }[]): Pdf {
  const { title, author, creator } = about;
  const pdf = new PDFDocument({
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en',
    displayTitle: true,
    autoFirstPage: false,
    // none of the fonts that every reader is said to have
    font: null as unknown as string,
    info: { Title: title, Author: author, Creator: creator, Producer: 'pdfkit', CreationDate: new Date(0) },
  });
  // the document's number is made of the date, the rest needs none
  delete pdf.info.CreationDate;
  // the library would put the date there, and the title without escaping it
  Object.assign(pdf, { _addInfo: () => pdf.appendXML(titleXml(title), false) });
  for (const { weight, file } of fonts) pdf.registerFont(fontName(weight), file as Buffer);
  return pdf;
}

/** Ends a PDF. @returns its bytes */
export function closePdf(pdf: Pdf): Uint8Array {
  pdf.end();
  return pdf.read() as Uint8Array;
}

function titleXml(title: string): string {
  return (
    '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title><rdf:Alt>' +
    `<rdf:li xml:lang="x-default">${escapeMarkup(title)}</rdf:li></rdf:Alt></dc:title></rdf:Description>`
  );
}

function fontName(weight: number): string {
  return `Barlow ${weight}`;
}

/** Letters of a text on paper: size [px], weight and colour. */
export interface PdfFont {
  size: number;
  weight: FontWeight;
  colour?: string;
}

/**
 * One line of text on its base line. Letters that the font lacks show as boxes; they are still read out, found and
 * copied.
 */
export function drawText(
  pdf: Pdf,
  text: string,
  { x, y, anchor = 'start', turn = 0 }: { x: number; y: number; anchor?: SceneText['anchor']; turn?: number },
  { size, weight, colour = INK }: PdfFont,
): void {
  const back = { start: 0, middle: 0.5, end: 1 }[anchor] * textWidth(text, { size, weight });
  if (turn !== 0) pdf.save().rotate(turn, { origin: [x, y] });
  pdf.font(fontName(weight), size).fillColor(colour);
  const isForeign = !fontHas(text);
  if (isForeign) pdf.markContent('Span', { actual: text });
  pdf.text(text, hundredth(x - back), hundredth(y), {
    lineBreak: false,
    baseline: 'alphabetic',
    features: PLAIN_LETTERS,
  });
  if (isForeign) pdf.endMarkedContent();
  if (turn !== 0) pdf.restore();
}

/**
 * What belongs to the page and not to the text: lines, and what is said again on every page. A screen reader passes
 * over it.
 */
export function artifact(pdf: Pdf, type: 'Layout' | 'Pagination', draw: () => void): void {
  pdf.markContent('Artifact', { type });
  draw();
  pdf.endMarkedContent();
}

/** Draws a scene with its top left corner at x, y, scaled by `scale`: vectors, and texts that stay texts. */
export function drawScene(pdf: Pdf, scene: Scene, { x, y, scale }: { x: number; y: number; scale: number }): void {
  pdf.save().translate(hundredth(x), hundredth(y)).scale(scale, scale);
  for (const shape of scene.shapes) {
    if (shape.kind === 'path') drawPath(pdf, shape);
    else drawText(pdf, shape.text, shape, shape);
  }
  pdf.restore();
}

function drawPath(pdf: Pdf, { steps, fill, stroke, width = 1, dash = [], opacity = 1, round }: ScenePath): void {
  if (!fill && !stroke) return;
  pdf.save();
  for (const step of steps) pathStep(pdf, step);
  if (fill) {
    const { rgb, alpha } = colourOf(fill);
    pdf.fillColor(rgb, alpha * opacity);
  }
  if (stroke) {
    const { rgb, alpha } = colourOf(stroke);
    pdf.strokeColor(rgb, alpha * opacity).lineWidth(hundredth(width));
    if (dash.length > 0) pdf.dash([...dash] as unknown as number, {});
    if (round) pdf.lineCap('round').lineJoin('round');
  }
  if (fill && stroke) pdf.fillAndStroke();
  else if (fill) pdf.fill();
  else pdf.stroke();
  pdf.restore();
}

function pathStep(pdf: Pdf, [command, ...values]: PathStep): void {
  const [a, b, c, d, e, f] = values.map(hundredth);
  if (command === 'M') pdf.moveTo(a, b);
  else if (command === 'L') pdf.lineTo(a, b);
  else if (command === 'C') pdf.bezierCurveTo(a, b, c, d, e, f);
  else pdf.closePath();
}

/** A colour of a style sheet, as our charts write it. The library takes one that it can't read for the one before. */
function colourOf(text: string): { rgb: [number, number, number]; alpha: number } {
  const hex = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})?$/i.exec(text);
  if (hex) {
    const [r, g, b, a = 255] = hex.slice(1).flatMap((part) => (part === undefined ? [] : [parseInt(part, 16)]));
    return { rgb: [r, g, b], alpha: a / 255 };
  }
  const numbers = /^rgba?\(([\d., ]+)\)$/.exec(text)?.[1].split(',').map(Number);
  if (!numbers || numbers.length < 3) throw new Error(`a chart has a colour that a PDF can't show: ${text}`);
  const [r, g, b, alpha = 1] = numbers;
  return { rgb: [r, g, b], alpha };
}

/** Of a pixel: as fine as any printer, and a file half the size. */
function hundredth(value: number): number {
  return Math.round(value * 100) / 100;
}
