import { expect } from 'vitest';
import { drawingScene } from '../../src/draw/drawingScene.js';
import { heatShare } from '../../src/draw/pit/colourScale.js';
import { pitDrawing, type PitDrawingOptions } from '../../src/draw/pit/pitDrawing.js';
import { temperatureNotes } from '../../src/draw/pit/temperatureNotes.js';
import { temperatureView } from '../../src/draw/pit/temperatureView.js';
import type { Design } from '../../src/design/design.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { exampleDesign } from '../support/examples.js';
import { textsOverLines } from './textsOverLines.js';

/** As the page draws on a phone, a tablet and a desk, and the sheets on paper. */
const SIZES: Omit<PitDrawingOptions, 'notes' | 'system'>[] = [
  { width: 343, arrange: 'column', lettering: 12, maxHeight: 520 },
  { width: 780, arrange: 'row', lettering: 13, maxHeight: 380 },
  { width: 760, arrange: 'row', lettering: 13, maxHeight: 560 },
  { width: 1060, arrange: 'row', lettering: 13, maxHeight: 700 },
  { width: 720, arrange: 'row', lettering: 11, maxHeight: 262 },
];

/** No text of an example's drawings strikes the outline of a part. */
export function expectClear(name: string): void {
  const design = exampleDesign(name);
  const result = estimate(design, { steadyOnly: true });
  const faults: string[] = [];
  const look = (what: string, scene: Parameters<typeof textsOverLines>[0]) =>
    faults.push(...textsOverLines(scene).map((fault) => `${what}: ${fault}`));
  const states = [result.steady, result.assumed].flatMap((state) => state ?? []);
  for (const system of ['shop', 'si'] as const) {
    for (const size of SIZES) {
      const drawn = (notes: PitDrawingOptions['notes']) =>
        drawingScene(pitDrawing(design, { ...size, system, notes }), { title: '', description: '' });
      look(`${size.width} px, bare`, drawn({}));
      for (const state of states) {
        look(`${size.width} px, ${system}`, drawn(temperatureNotes(design, state, heatShare, system)));
      }
    }
  }
  for (const state of states) {
    look('sheet', temperatureView(result, state, { width: 720, maxHeight: 430, title: '' }));
  }
  expect(faults).toEqual([]);
}

/** What is read by the dial that is steered by is always written. */
export function expectDialWritten(name: string): void {
  const design: Design = exampleDesign(name);
  const { steady, assumed } = estimate(design, { steadyOnly: true });
  const state = (steady ?? assumed)!;
  for (const size of SIZES) {
    const { marks } = pitDrawing(design, { ...size, notes: temperatureNotes(design, state, heatShare) });
    const read = temperatureNotes(design, state, heatShare).places![0].text;
    expect(
      marks.some((mark) => mark.shape === 'text' && mark.bold && mark.text === read),
      `${name} at ${size.width} px`,
    ).toBe(true);
  }
}
