import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { readFileSync } from 'node:fs';
import type { Design } from '../../../src/design/design.js';
import { readDesign } from '../../../src/design/read.js';
import { curvesCsv } from '../../../src/report/csv.js';
import { estimateText } from '../../../src/report/text/estimateText.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { gaugeReading } from '../../../src/study/estimate/gauge.js';
import type { EstimateResult } from '../../../src/study/estimate/result.js';
import { weightOf } from '../../../src/study/carry/weight.js';
import { interpolate } from '../../../src/solve/interpolate.js';
import { buildNetwork } from '../../../src/network/build.js';
import { geometryOf } from '../../../src/design/geometryOf.js';

type Tree = Record<string, Record<string, unknown> & unknown[]>;

/** An example with some blocks of a file changed. */
function changedExample(name: string, change: (tree: Tree) => void): Design {
  const tree = parse(readFileSync(new URL(`../../../examples/${name}`, import.meta.url), 'utf8')) as Tree;
  change(tree);
  const read = readDesign(stringify(tree), { fileName: name });
  if (read.faults) throw new Error(read.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
  return read.design;
}

const PLACES = {
  grates: [
    { name: 'main', height: '40 in' },
    { name: 'top', height: '46 in', from: '30 %' },
  ],
  thermometers: [{ name: 'lid left', along: '25 %', height: '48 in' }],
};

const offset = (gauge: string) =>
  changedExample('offset-with-upright.yaml', (tree) => {
    Object.assign(tree.chamber, PLACES);
    tree.upright.racks = ['34 in', '42 in', '50 in', '58 in'];
    // a fire that brings every one of them to the target
    tree.fire.heat = '110,000 BTU/h' as never;
    Object.assign(tree, { gauge });
  });

describe('a gauge that names a place', () => {
  it.each(['main', 'rack 4', 'lid left'])('%s: steers by it, first and while holding', (gauge) => {
    const result = estimate(offset(gauge));
    const { target } = result.design.fire;
    const { places } = result.steady!;
    const those = places.filter(({ name }) => name === gauge);
    const own = those[(those.length - 1) >> 1];
    expect(Math.abs(own.thermometer_K - target)).toBeLessThan(0.1);
    expect(gaugeReading(result.steady!, gauge)).toBe(own.thermometer_K);
    const { series, gauge_s } = result.warmUp!;
    const curves = series.places.filter(({ name }) => name === gauge);
    const curve = curves[(curves.length - 1) >> 1].thermometer_K;
    expect(series.thermometer_K).toEqual(curve);
    expect(Math.abs(interpolate(series.time_s, curve, gauge_s!) - target)).toBeLessThan(0.1);
    // the settled end of the curves, held by what reads there
    expect(Math.abs(curve[curve.length - 1] - target)).toBeLessThan(1);
    expect(estimateText(result, 'shop').replace(/\s+/g, ' ')).toContain(
      `the thermometer at ${gauge} first reads 250 °F`,
    );
  });

  it('takes more fire to bring a grate to what the lid reads', () => {
    const [lid, grate] = ['middle', 'main'].map((gauge) => estimate(offset(gauge), { steadyOnly: true }).steady!);
    const above = (state: typeof lid) => state.stations.find(({ name }) => name === 'middle')!.thermometer_K;
    expect(grate.fire_W).toBeGreaterThan(lid.fire_W);
    expect(above(grate)).toBeGreaterThan(above(lid));
  });
});

describe('places in a result', () => {
  const result: EstimateResult = estimate(offset('middle'));

  it('are read in both states and in time, lowest rack first', () => {
    const names = ['main', 'main', 'main', 'top', 'top', 'rack 1', 'rack 2', 'rack 3', 'rack 4', 'lid left'];
    for (const state of [result.steady!, result.assumed!]) {
      expect(state.places.map(({ name }) => name)).toEqual(names);
      for (const { gas_K, thermometer_K } of state.places) {
        expect(gas_K).toBeGreaterThan(result.design.site.air);
        expect(thermometer_K).toBeGreaterThan(result.design.site.air);
      }
    }
    const { places, time_s } = result.warmUp!.series;
    expect(places.map(({ name }) => name)).toEqual(names);
    for (const { thermometer_K } of places) expect(thermometer_K).toHaveLength(time_s.length);
  });

  it('tell how even grates and racks are, by their own readings alone', () => {
    const { places, evenness } = result.steady!;
    const reads = (name: string) => places.filter((place) => place.name === name).map((place) => place.thermometer_K);
    const range = (values: number[]) => Math.max(...values) - Math.min(...values);
    expect(evenness.grates).toEqual([
      { name: 'main', endToEnd_K: range(reads('main')) },
      { name: 'top', endToEnd_K: range(reads('top')) },
    ]);
    const [, middle, end] = reads('main');
    const [topMiddle, topEnd] = reads('top');
    expect(evenness.topToBottom_K).toBeCloseTo(Math.max(Math.abs(topMiddle - middle), Math.abs(topEnd - end)), 9);
    expect(evenness.racks_K).toBeCloseTo(range([1, 2, 3, 4].flatMap((i) => reads(`rack ${i}`))), 9);
    const text = estimateText(result, 'shop', { full: true }).replace(/\s+/g, ' ');
    expect(text).toMatch(
      /Apart: main [\d.]+ °F \([\d.]+ K\) end to end; top [\d.]+ °F .* grates [\d.]+ °F .* from top to bottom; racks/,
    );
  });

  it('stand in the text and the curves under the names they have', () => {
    const text = estimateText(result, 'shop', { full: true });
    expect(text).toMatch(/main, fire end +40 in \(1,020 mm\)/);
    expect(text).toMatch(/rack 4 +58 in/);
    const [head] = curvesCsv(result, 'shop').split('\r\n');
    expect(head).toContain('lid left thermometer [degF]');
    expect(head).toContain('"main, stack end gas [degF]"');
  });

  it('a thermometer between two stations reads between them', () => {
    const at = (along: string) => {
      const design = changedExample('plain-24.yaml', (tree) => {
        tree.chamber.thermometers = [{ name: 'probe', along, height: '48 in' }] as never;
      });
      return estimate(design, { steadyOnly: true }).steady!.places.find(({ name }) => name === 'probe')!.gas_K;
    };
    const [fireEnd, between, middle] = [`${100 / 6} %`, '30 %', '50 %'].map(at);
    // straight between the middles of the two cells
    expect((between - fireEnd) / (middle - fireEnd)).toBeCloseTo((0.3 - 1 / 6) / (1 / 2 - 1 / 6), 3);
  });
});

describe('a grate of steel', () => {
  const heavy = (more: object) =>
    changedExample('plain-24.yaml', (tree) => {
      tree.chamber.grates = [{ name: 'main', height: '40 in', ...more }] as never;
    });

  it('hangs with all its mass and surface at its height, and where it reaches', () => {
    const design = heavy({ mass: '30 lb', area: '20 ft^2', from: '50 %' });
    const { network } = buildNetwork(design, geometryOf(design));
    const nodes = network.nodes.flatMap((node, i) => (node.name === 'main' ? [i] : []));
    const faces = network.faces.filter(({ node }) => nodes.includes(node));
    const sum = (values: number[]) => values.reduce((a, b) => a + b, 0);
    // exact: the pound and the foot
    expect(sum(nodes.map((i) => network.nodes[i].mass))).toBeCloseTo(30 * 0.45359237, 9);
    expect(sum(faces.map(({ area }) => area))).toBeCloseTo(20 * 0.3048 ** 2, 9);
    const stations = new Set(faces.map(({ zone }) => network.zones[zone].station));
    expect([...stations]).toEqual(['middle', 'stackEnd']);
    for (const { zone } of faces) expect(Math.abs(network.zones[zone].centre - 40 * 0.0254)).toBeLessThan(0.13);
  });

  it('delays the first reading, and once settled does no more than even out its layer', () => {
    const [bare, steel] = [heavy({}), heavy({ mass: '60 lb', area: '40 ft^2' })].map((design) => estimate(design));
    expect(steel.warmUp!.gauge_s!).toBeGreaterThan(1.01 * bare.warmUp!.gauge_s!);
    // it takes no heat any more, but shines on the walls what its gas gives it, and the dial's stem sees it in place of
    // colder walls: 5.5 to 6.2 % in cells five times, layers twice as fine
    expect(Math.abs(steel.steady!.fire_W / bare.steady!.fire_W - 1)).toBeLessThan(0.065);
  });

  it('weighs on a trailer at its own height', () => {
    const change = (tree: Tree) => {
      tree.chamber.grates = [{ name: 'main', height: '50 in', mass: '30 lb' }] as never;
    };
    const design = changedExample('wind-cold.yaml', change);
    const item = weightOf(design, geometryOf(design))!.items.find(({ name }) => name === 'chamber, main')!;
    expect(item).toMatchObject({ mass_kg: 30 * 0.45359237 });
  });
});
