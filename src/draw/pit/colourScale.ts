/**
 * The colours of a side view, one scale for every design and every picture so that they can be compared, and what they
 * mean.
 */
import { convert } from '../../units/index.js';
import type { Paint } from '../drawing.js';
import { PAPER_PAINT } from '../drawingScene.js';
import { line, rectangle, type SceneShape } from '../scene.js';

/** Height that it takes with its numbers [px]. */
export const SCALE_HEIGHT = 46;
const BAR = 11;
const STRIPS = 60;

/** From its lowest to its highest [°F]; the last colour is also that of all that is hotter. */
const TICKS = [0, 100, 200, 300, 400, 500, 600];
const [LOW, HIGH] = [TICKS[0], TICKS[TICKS.length - 1]];

/** Where a temperature [K] lies on the scale; beyond its ends outside 0..1. */
export function heatShare(kelvin: number): number {
  return (convert('temperature', kelvin, 'shop') - LOW) / (HIGH - LOW);
}

/** The strip of colours with temperatures under it. */
export function colourScale(
  { left, right, top }: { left: number; right: number; top: number },
  paint: Pick<Paint, 'ink' | 'faint' | 'heat'> = PAPER_PAINT,
): SceneShape[] {
  const strip = (right - left) / STRIPS;
  const at = (value: number) => left + ((value - LOW) / (HIGH - LOW)) * (right - left);
  const text = (words: string, x: number, y: number, colour: string): SceneShape => ({
    kind: 'text',
    text: words,
    x,
    y,
    size: 10.5,
    weight: 400,
    anchor: 'middle',
    colour, // prettier-ignore
  });
  const celsius = (fahrenheit: number) => Math.round((fahrenheit - 32) / 1.8);
  return [
    // strips overlap by a hair, so that no paper shines between them
    ...Array.from({ length: STRIPS }, (_, i) =>
      rectangle(left + i * strip, top, strip + (i < STRIPS - 1 ? 0.6 : 0), BAR, {
        fill: paint.heat((i + 0.5) / STRIPS),
      }),
    ),
    rectangle(left, top, right - left, BAR, { stroke: paint.ink, width: 0.8 }),
    ...TICKS.flatMap((tick) => [
      line(at(tick), top + BAR, at(tick), top + BAR + 3, { stroke: paint.ink, width: 0.8 }),
      text(tick === HIGH ? `${tick}+` : `${tick}`, at(tick), top + BAR + 14, paint.ink),
      text(`${celsius(tick)}`, at(tick), top + BAR + 26, paint.faint),
    ]),
    { ...text('°F gas', right + 24, top + BAR + 14, paint.ink), anchor: 'start' } as SceneShape,
    { ...text('°C', right + 24, top + BAR + 26, paint.faint), anchor: 'start' } as SceneShape,
  ];
}
