import { createCanvas } from 'canvas';
import { beforeAll, describe, expect, it } from 'vitest';
import { registerFont } from '../../src/draw/png.js';
import { chartScene } from '../../src/charts/chartScene.js';
import { chartWords } from '../../src/charts/chartWords.js';
import { drawingScene, heatColour } from '../../src/draw/drawingScene.js';
import { estimateCharts } from '../../src/charts/estimateCharts.js';
import { interpolate } from '../../src/solve/interpolate.js';
import { optionsChart } from '../../src/charts/optionsChart.js';
import { pitDrawing } from '../../src/draw/pit/pitDrawing.js';
import type { PathStep, Scene } from '../../src/draw/scene.js';
import { SceneContext } from '../../src/draw/sceneContext.js';
import { sceneSvg } from '../../src/draw/sceneSvg.js';
import { temperatureView } from '../../src/draw/pit/temperatureView.js';
import { breakText, fitText, fontHas, textWidth } from '../../src/draw/textWidth.js';
import { ventChart } from '../../src/charts/ventChart.js';
import { sampleDesign, sampleResult } from '../support/sampleResult.js';
import { fontFile, WEIGHTS } from '../report/support/reports.js';

const lettersOf = ({ shapes }: Scene) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
const pathsOf = ({ shapes }: Scene) => shapes.flatMap((shape) => (shape.kind === 'path' ? [shape] : []));

describe('widths of text', () => {
  beforeAll(() => registerFont(WEIGHTS.map((weight) => fontFile(weight))));

  it.each(WEIGHTS)("are the font's own, weight %d", (weight) => {
    const ctx = createCanvas(10, 10).getContext('2d');
    Object.assign(ctx, { font: `${weight} 100px Barlow`, fontKerning: 'none', fontVariantLigatures: 'none' });
    for (const text of [
      'Holding 250 °F (121 °C)',
      'Ø 24 in, 1/4 in plate',
      'wood [lb/h] – 31,400',
      'ffi fire',
      'ÄÖÜ ñ ½',
    ]) {
      expect(fontHas(text)).toBe(true);
      expect(textWidth(text, { size: 100, weight })).toBeCloseTo(ctx.measureText(text).width, 0);
    }
  });

  it('tell what the font lacks', () => {
    expect(fontHas('مدخنة')).toBe(false);
    expect(fontHas('🔥')).toBe(false);
  });

  it('cut and break texts to fit', () => {
    const font = { size: 12, weight: 400 } as const;
    expect(fitText('short', 100, font)).toBe('short');
    const cut = fitText('a rather long name of a pit', 80, font);
    expect(cut.endsWith('…')).toBe(true);
    expect(textWidth(cut, font)).toBeLessThanOrEqual(80);
    const words = 'holding 250 °F takes 4.97 lb/h of wood '.repeat(4).trim();
    const lines = breakText(words, 120, font);
    expect(lines.join(' ')).toBe(words);
    for (const line of lines) expect(textWidth(line, font)).toBeLessThanOrEqual(120);
    for (const line of breakText('x'.repeat(200), 50, font)) expect(textWidth(line, font)).toBeLessThanOrEqual(50);
    // a number and its unit stay together
    expect(lines.some((line) => /\d$/.test(line))).toBe(false);
  });
});

describe('the context that writes down', () => {
  it('keeps texts as texts, turned and moved with the paper', () => {
    const context = new SceneContext(100, 100);
    context.save();
    context.translate(20, 50);
    context.rotate(-Math.PI / 2);
    context.font = '600 15px Barlow';
    context.textAlign = 'center';
    context.fillText('Axis', 0, 0);
    context.restore();
    context.fillText('plain', 1, 2);
    expect(context.shapes[0]).toMatchObject({
      text: 'Axis',
      x: 20,
      y: 50,
      turn: -90,
      anchor: 'middle',
      size: 15,
      weight: 600,
    });
    expect(context.shapes[1]).toMatchObject({ text: 'plain', x: 1, y: 2 });
    expect(context.shapes[1]).not.toHaveProperty('turn');
  });

  it('draws an arc on its circle', () => {
    const context = new SceneContext(100, 100);
    context.beginPath();
    context.arc(50, 50, 30, 0, 2 * Math.PI);
    context.fill();
    const [{ steps }] = context.shapes as { steps: PathStep[] }[];
    const ends = steps.flatMap((step): [number, number][] => (step[0] === 'C' ? [[step[5], step[6]]] : []));
    expect(ends).toHaveLength(4);
    for (const [x, y] of ends) expect(Math.hypot(x - 50, y - 50)).toBeCloseTo(30, 9);
  });

  it('forgets nothing that was set before a save', () => {
    const context = new SceneContext(10, 10);
    context.strokeStyle = '#123456';
    context.setLineDash([3, 1]);
    context.save();
    context.strokeStyle = '#ffffff';
    context.setLineDash([]);
    context.restore();
    context.beginPath();
    context.moveTo(0, 0);
    context.lineTo(5, 5);
    context.stroke();
    expect(context.shapes[0]).toMatchObject({ stroke: '#123456', dash: [3, 1] });
  });
});

describe('charts as scenes', () => {
  it.each(estimateCharts(sampleResult))('$file: axes, names and lines, within the picture', ({ config }) => {
    const scene = chartScene(config, chartWords(config));
    expect(scene.title).toContain(sampleDesign.name);
    const axes = lettersOf(scene).filter((text) => /\[[^\]]+\]$/.test(text));
    expect(axes.length).toBeGreaterThanOrEqual(2);
    for (const { label } of config.data.datasets) {
      expect(lettersOf(scene).some((text) => text.includes(String(label).split(' ')[0]))).toBe(true);
    }
    for (const { steps } of pathsOf(scene)) {
      for (const step of steps) {
        for (const value of step.slice(1) as number[]) {
          expect(value).toBeGreaterThan(-20);
          expect(value).toBeLessThan(1020);
        }
      }
    }
  });

  it('put a point where its axis says', () => {
    const config = optionsChart([{ label: 'as drawn', result: sampleResult }], 1000)!;
    const scene = chartScene(config, { title: 't', description: 'd' });
    // the dot at the soaked time lies on the line between the ticks of the axis
    const dots = pathsOf(scene).filter(
      ({ steps, fill }) => fill && steps.filter(([kind]) => kind === 'C').length === 4,
    );
    expect(dots).toHaveLength(2);
    const ticks = scene.shapes.flatMap((shape) =>
      shape.kind === 'text' && /^\d+$/.test(shape.text) && shape.anchor === 'middle' ? [shape] : [],
    );
    const [zero, other] = [ticks.find(({ text }) => text === '0')!, ticks.find(({ text }) => text === '20')!];
    const minutes = ((dots[0].steps[0][1] as number) - 6 - zero.x) / ((other.x - zero.x) / 20);
    expect(minutes).toBeCloseTo(sampleResult.warmUp!.soaked_s! / 60, 0);
  });

  it('stand in a file of their own with their font, escaped', () => {
    const hostile = { ...sampleResult, design: { ...sampleDesign, name: '<script>&"' } };
    const [{ config }] = estimateCharts(hostile);
    const fonts = [{ weight: 500, base64: 'AAAA' }];
    const svg = sceneSvg(chartScene(config, chartWords(config)), { id: 'x', standalone: { fonts } });
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" width="1000" height="625"/);
    expect(svg).toContain('&lt;script&gt;&amp;&quot;');
    expect(svg).not.toContain('<script');
    expect(svg).toContain('base64,AAAA');
  });

  it('show what flows through each opening, with its number', () => {
    const config = ventChart(sampleResult, sampleDesign.name)!;
    expect(config.data.labels).toContain('throat');
    expect(config.data.datasets).toHaveLength(2);
    const throat = config.data.labels!.indexOf('throat');
    expect(config.data.datasets[0].data[throat]).toBeCloseTo((0.0232 * 3600) / 0.45359237, 6);
    expect(ventChart({ ...sampleResult, steady: null, assumed: null }, '')).toBeNull();
  });

  it('leave an options chart out where no option has a warm-up', () => {
    expect(optionsChart([{ label: 'a', result: { ...sampleResult, warmUp: null } }], 1000)).toBeNull();
  });
});

describe('a curve read between its points', () => {
  it.each([
    [-1, 10],
    [0, 10],
    [5, 15],
    [10, 20],
    [15, 30],
    [99, 40],
  ])('at %d', (time, value) => expect(interpolate([0, 10, 20], [10, 20, 40], time)).toBe(value));
});

describe('drawings as scenes', () => {
  const drawing = pitDrawing(sampleDesign, { width: 720, arrange: 'row', maxHeight: 280 });

  it('are drawn to one scale: twice the length is twice as many pixels', () => {
    const twice = structuredClone(sampleDesign);
    const scene = drawingScene(drawing, { title: 't', description: 'd' });
    const firebox = widestBox(scene);
    twice.chamber!.length *= 2;
    const longer = drawingScene(pitDrawing(twice, { width: 720, arrange: 'row', maxHeight: 280 }), {
      title: 't',
      description: 'd',
    });
    expect(widestBox(longer).pixels / widestBox(longer).scale).toBeCloseTo((2 * firebox.pixels) / firebox.scale, 1);

    function widestBox(of: Scene): { pixels: number; scale: number } {
      const boxes = pathsOf(of).filter(
        ({ steps, stroke, width }) => stroke && width === 2 && steps.at(-1)?.[0] === 'Z' && steps.length === 5,
      );
      const wide = boxes.map(({ steps }) => Math.abs((steps[1][1] as number) - (steps[0][1] as number)));
      const { scale } = of === scene ? drawing : pitDrawing(twice, { width: 720, arrange: 'row', maxHeight: 280 });
      return { pixels: Math.max(...wide), scale };
    }
  });

  it('colour temperatures light to dark, so that a grey print keeps their order', () => {
    const grey = (share: number) => {
      const [r, g, b] = [1, 3, 5].map((at) => parseInt(heatColour(share).slice(at, at + 2), 16));
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const greys = Array.from({ length: 21 }, (_, i) => grey(i / 20));
    greys.slice(1).forEach((value, i) => expect(value).toBeLessThan(greys[i]));
  });

  it('write the numbers of every station and place into the side view, with a scale in °F and °C', () => {
    const scene = temperatureView(sampleResult, sampleResult.steady!, {
      width: 1000,
      maxHeight: 640,
      title: 'Holding',
    });
    expect(lettersOf(scene)).toEqual(expect.arrayContaining(['gas 441 °F', '°F gas', '°C']));
    // the dial that is held at the target, the ends of the grate, and the layers of the middle, 20 K off its mean
    expect(lettersOf(scene)).toEqual(expect.arrayContaining(['250 °F', '235 °F', '219 °F', '350 °F', '278 °F']));
    expect(scene.description).toContain('middle 314 °F');
  });
});
