import { readFileSync } from 'node:fs';
import type { ChartConfiguration } from 'chart.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { twinAxes } from '../../src/charts/axes.js';
import { chartScene } from '../../src/charts/chartScene.js';
import { chartWords } from '../../src/charts/chartWords.js';
import { warmUpChart, type Curve } from '../../src/charts/warmUpChart.js';
import { convert } from '../../src/units/index.js';
import { roundTicks } from '../../src/draw/ticks.js';
import { estimateCharts } from '../../src/charts/estimateCharts.js';
import { pngRenderer, registerFont } from '../../src/draw/png.js';
import { STATION_STYLES } from '../../src/draw/theme.js';
import { sampleDesign, sampleResult } from '../support/sampleResult.js';

const charts = estimateCharts(sampleResult);
const byFile = (file: string) => charts.find((chart) => chart.file === file)!.config;
const scale = (config: ChartConfiguration, name: string) =>
  config.options!.scales![name] as unknown as { min: number; max: number; title: { text: string } };

describe('charts of an estimate', () => {
  it('are five, in reading order', () => {
    expect(charts.map(({ file }) => file)).toEqual([
      'warm-up-thermometer',
      'warm-up-gas',
      'warm-up-steel',
      'heat-loss',
      'draft',
    ]);
  });

  it('plot every station of the result and the middle of its grate, in °F', () => {
    const { datasets } = byFile('warm-up-thermometer').data;
    const { stations } = sampleResult.warmUp!.series;
    expect(datasets.map(({ label }) => label)).toEqual(['firebox', 'fire end', 'middle', 'stack end', 'grate, middle']);
    const middle = datasets[2].data as { x: number; y: number }[];
    const last = middle[middle.length - 1];
    expect(last.x).toBe(60);
    expect(last.y).toBeCloseTo((stations[2].thermometer_K.at(-1)! - 273.15) * 1.8 + 32, 9);
  });

  it('plot what the cook steers by, where that is no dial of a station', () => {
    const { series } = sampleResult.warmUp!;
    const probe = { ...series.places[0], name: 'lid left', kind: 'thermometer' as const };
    const charts = estimateCharts({
      ...sampleResult,
      design: { ...sampleDesign, gauge: 'lid left' },
      warmUp: { ...sampleResult.warmUp!, series: { ...series, places: [...series.places, probe] } },
    });
    const { datasets } = charts[0].config.data;
    expect(datasets.map(({ label }) => label).slice(-2)).toEqual(['grate, middle', 'lid left']);
    expect((datasets.at(-1) as { borderWidth: number }).borderWidth).toBe(3.5);
  });

  describe('with a spread', () => {
    const { series } = sampleResult.warmUp!;
    const kelvins = (shift: number) => (values: number[]) => values.map((value) => value + shift);
    const band = (values: number[]) => ({ p10: kelvins(-20)(values), p50: values, p90: kelvins(10)(values) });
    const { time_s, thermometer_K, gas_K, steel_K, fire_W } = series;
    const curves = {
      time_s,
      thermometer_K: band(thermometer_K),
      gas_K: band(gas_K),
      steel_K: band(steel_K),
      fire_W: band(fire_W),
    };
    const spread = { cases: 40, seed: 1, method: '', numbers: [], curves };
    /** Values at the corners of the areas of a chart, as its axis reads them. */
    const corners = (curve: Curve, hidden?: string) => {
      const config = warmUpChart({ ...sampleResult, spread }, 'x', curve) as ChartConfiguration;
      for (const dataset of config.data.datasets) dataset.hidden = dataset.label === hidden;
      let value: (pixel: number) => number = NaN as never;
      const { shapes } = chartScene(config, {
        ...chartWords(config),
        drawn: ({ scales }) => (value = (pixel) => scales.y.getValueForPixel(pixel)!),
      });
      return shapes.flatMap((shape) =>
        shape.kind === 'path' && shape.opacity === 0.2
          ? [shape.steps.flatMap((step) => (step[0] === 'M' || step[0] === 'L' ? [value(step[2])] : []))]
          : [],
      );
    };
    const shop = (values: number[]) => values.map((kelvin) => convert('temperature', kelvin, 'shop'));

    it.each(['thermometer', 'gas', 'steel'] as const)('show where eight of ten cases of the cook’s %s lie', (curve) => {
      const [area, ...others] = corners(curve);
      expect(others).toEqual([]);
      const { p10, p90 } = curves[`${curve}_K`];
      const edge = [...shop(p90), ...shop([...p10].reverse())];
      area.forEach((value, i) => expect(value).toBeCloseTo(edge[i], 6));
      expect(area).toHaveLength(edge.length);
    });

    it('switch the band off with its curve, and no other', () => {
      expect(corners('gas', 'middle')).toEqual([]);
      expect(corners('gas', 'firebox')).toHaveLength(1);
    });

    it('draw none without a study', () => {
      const config = warmUpChart(sampleResult, 'x', 'gas') as ChartConfiguration;
      const { shapes } = chartScene(config, chartWords(config));
      expect(shapes.some((shape) => shape.kind === 'path' && shape.opacity === 0.2)).toBe(false);
    });
  });

  it('title every axis as quantity [unit], °F beside °C over the same span', () => {
    const config = byFile('warm-up-gas');
    expect(scale(config, 'x').title.text).toBe('Time [min]');
    expect(scale(config, 'y').title.text).toBe('Gas temperature [°F]');
    expect(scale(config, 'si').title.text).toBe('Gas temperature [°C]');
    expect(scale(config, 'si').max).toBeCloseTo((scale(config, 'y').max - 32) / 1.8, 9);
    expect(scale(config, 'si').min).toBeCloseTo((scale(config, 'y').min - 32) / 1.8, 9);
  });

  it('hold every bar and every point within the axes', () => {
    const bars = byFile('heat-loss');
    for (const { data } of bars.data.datasets) {
      for (const value of data as number[]) expect(value).toBeLessThan(scale(bars, 'x').max);
    }
    const draft = byFile('draft');
    for (const { data } of draft.data.datasets) {
      for (const { y } of data as { y: number }[]) {
        expect(y).toBeGreaterThanOrEqual(scale(draft, 'y').min);
        expect(y).toBeLessThanOrEqual(scale(draft, 'y').max);
      }
    }
  });

  it('leave out what the result lacks', () => {
    const files = (result: typeof sampleResult) => estimateCharts(result).map(({ file }) => file);
    expect(files({ ...sampleResult, warmUp: null })).toEqual(['heat-loss', 'draft']);
    expect(files({ ...sampleResult, warmUp: null, steady: null, assumed: null })).toEqual([]);
  });

  it('cut a name that would not fit the title', () => {
    const name = 'long name '.repeat(30);
    const [first] = estimateCharts({ ...sampleResult, design: { ...sampleDesign, name } });
    expect(String(first.config.options!.plugins!.title!.text).length).toBeLessThan(90);
  });

  it('tell any two stations apart by colour or dash', () => {
    const styles = Object.values(STATION_STYLES).map(({ colour, dash }) => `${colour} ${dash.join(' ')}`);
    expect(new Set(styles).size).toBe(styles.length);
  });
});

describe('pictures', () => {
  const renderPng = pngRenderer();

  beforeAll(() =>
    registerFont(
      [400, 500, 600].map((weight) =>
        readFileSync(`node_modules/@fontsource/barlow/files/barlow-latin-${weight}-normal.woff`),
      ),
    ),
  );

  it('are 1600 by 1000 PNGs, the same bytes each time', () => {
    const first = Buffer.from(renderPng(byFile('warm-up-thermometer')));
    expect(first.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect([first.readUInt32BE(16), first.readUInt32BE(20)]).toEqual([1600, 1000]);
    const again = estimateCharts(sampleResult)[0].config;
    expect(first.equals(Buffer.from(renderPng(again)))).toBe(true);
  });

  it('draw every chart, also of hostile and of nearly flat results', () => {
    const name = '<script>"\u202e🔥'.repeat(10);
    const flat = structuredClone(sampleResult);
    for (const station of flat.warmUp!.series.stations) station.steel_K.fill(294.26);
    flat.design.name = name;
    for (const { config } of estimateCharts(flat)) expect(renderPng(config).length).toBeGreaterThan(5000);
  });

  it('refuse a font that is none', () => {
    expect(() => registerFont([Buffer.from('no font')])).toThrow('font');
  });
});

describe('round ticks', () => {
  it.each([
    [0, 100, 5, [0, 20, 40, 60, 80, 100]],
    [70, 557, 7, [0, 100, 200, 300, 400, 500, 600]],
    [-0.0072, 0.0004, 7, [-0.008, -0.006, -0.004, -0.002, 0, 0.002]],
  ])('from %d to %d', (low, high, count, ticks) => expect(roundTicks(low, high, count)).toEqual(ticks));

  it('give a span of some width even to a single value', () => {
    const { min, max } = twinAxes('Steel temperature', 'temperature', { low: 294.26, high: 294.26 });
    expect(max).toBeGreaterThan(min);
    expect(Number.isFinite(min) && Number.isFinite(max)).toBe(true);
  });
});
