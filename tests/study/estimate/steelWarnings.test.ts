import { describe, expect, it } from 'vitest';
import { STEELS, strengthLeft } from '../../../src/design/catalog/index.js';
import type { Design } from '../../../src/design/design.js';
import { geometryOf } from '../../../src/design/geometryOf.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { makePit, type Pit } from '../../../src/network/pit.js';
import { solveUnderFire } from '../../../src/study/estimate/steady.js';
import { steelWarnings } from '../../../src/study/estimate/steelWarnings.js';
import { designOf, PLAIN } from '../../design/designFiles.js';
import { inWords } from '../../../src/units/index.js';

const celsius = (degrees: number) => degrees + 273.15;
const SCALES = 'steel-above-scaling-limit';
const CREEPS = 'steel-above-creep-limit';

/** PLAIN with its firebox wrapped, a rack in it, and a fire. */
const wrapped = (heat: string, more = ''): Design =>
  designOf(
    PLAIN.replace(
      'doorGap: 1.0 in^2',
      `insulation: { material: ceramic fibre, thickness: 3 in, skin: 16 ga }\n  contents: [{ name: grate, mass: 30 lb, area: 4 ft^2 }]${more}`,
    ).replace('70,000 BTU/h', heat),
  );

/** A pit in which everything is at 100 °C but the nodes that are named [°C]. */
function stateOf(pit: Pit, hot: Record<string, number>): Float64Array {
  const x = new Float64Array(pit.model.size).fill(celsius(100));
  for (const [name, degrees] of Object.entries(hot)) {
    const at = pit.model.network.nodes.findIndex((node) => node.name === name);
    if (at < 0) throw new Error(`there is no ${name}: ${pit.model.network.nodes.map((node) => node.name).join(', ')}`);
    x[at] = celsius(degrees);
  }
  return x;
}
const warned = (design: Design, ...states: Record<string, number>[]) => {
  const pit = makePit(design, geometryOf(design));
  return steelWarnings(
    pit,
    states.map((hot, i) => ({ fire: (['hold fire', 'assumed fire'] as const)[i], x: stateOf(pit, hot) })),
  );
};

describe('steel too hot', () => {
  const design = wrapped('70,000 BTU/h');

  it('is not found where every plate stays under its limits, nor in hot insulation', () => {
    expect(warned(design, { 'firebox shell': 424, 'firebox shell insulation 1': 900 })).toEqual([]);
  });

  it('creeps from one limit on, and from the higher one on scales, which alone is then told', () => {
    const [creep, ...none] = warned(design, { 'firebox shell': 426 });
    expect(none).toEqual([]);
    expect(creep).toMatchObject({ code: CREEPS, where: 'firebox shell', fire: 'hold fire', value: celsius(426) });
    expect(creep.limits).toMatchObject({ high: STEELS.carbon.creep.limit, unit: 'K' });
    const [scale, ...others] = warned(design, { 'firebox shell': 539 });
    expect(others).toEqual([]);
    expect(scale).toMatchObject({ code: SCALES, where: 'firebox shell', fire: 'hold fire', value: celsius(539) });
    expect(scale.limits!.source).toBe(STEELS.carbon.scaling.source);
  });

  it('is ranked: what scales before what creeps, the hottest first, each fire by itself', () => {
    const found = warned(
      design,
      { 'firebox shell': 600, 'firebox fireEnd': 700, 'chamber shell 1': 450 },
      { 'firebox shell': 800, 'chamber shell 1': 500, 'chamber shell 2': 510 },
    );
    expect(found.map(({ code, where, fire, value }) => [code, where, fire, value])).toEqual([
      [SCALES, 'firebox shell', 'assumed fire', celsius(800)],
      [SCALES, 'firebox fire end', 'hold fire', celsius(700)],
      [CREEPS, 'chamber shell', 'assumed fire', celsius(510)],
      [CREEPS, 'chamber shell', 'hold fire', celsius(450)],
    ]);
    // the second plate of the hold fire stands beside the first
    expect(inWords(found[1].message)).toContain('firebox shell');
  });

  it('counts skins, racks, shared plates and stacks, each by its own steel', () => {
    for (const [node, where] of [
      ['firebox shell skin', 'firebox shell skin'],
      ['grate', 'grate in the firebox'],
      ['firebox to chamber plate', 'firebox to chamber plate'],
      ['stack 1 wall', 'stack 1 wall'],
    ]) {
      expect(warned(design, { [node]: 560 })).toMatchObject([{ code: SCALES, where, fire: 'hold fire' }]);
    }
    const stainless = wrapped('70,000 BTU/h', '\n  steel: stainless');
    expect(warned(stainless, { 'firebox shell': 560 })).toEqual([]);
    expect(warned(stainless, { 'firebox shell': 570 })).toMatchObject([{ code: CREEPS }]);
    expect(warned(stainless, { 'firebox shell': 875 })).toMatchObject([{ code: SCALES }]);
    expect(warned(stainless, { grate: 560 })).toMatchObject([{ code: SCALES }]);
  });

  it('is told of the state that is computed, and of none in a plain pit', () => {
    const hot = wrapped('130,000 BTU/h');
    const pit = makePit(hot, geometryOf(hot));
    const { x } = solveUnderFire(pit, hot.fire.heat);
    const steel = pit.model.network.nodes.flatMap(({ material }, i) => (material === 'constant' ? [] : [x[i]]));
    const found = estimate(hot, { steadyOnly: true }).warnings.filter(({ code }) => code.startsWith('steel-above'));
    const [first] = found;
    expect(first.code).toBe(SCALES);
    expect(first.fire).toBe('assumed fire');
    expect(first.value).toBeCloseTo(Math.max(...steel), 6);
    expect(first.value).toBeGreaterThan(STEELS.carbon.scaling.limit);
    expect(estimate(designOf(PLAIN), { steadyOnly: true }).warnings.map(({ code }) => code)).not.toContain(SCALES);
  });
});

describe('strength that is left', () => {
  it('is whole when cool, gone at 1200 °C, and never rises on the way', () => {
    expect(strengthLeft(celsius(20))).toBe(1);
    expect(strengthLeft(celsius(1300))).toBe(0);
    // derived: half way between the rows of EN 1993-1-2, table 3.1, at 500 and 600 °C
    expect(strengthLeft(celsius(550))).toBeCloseTo(0.625, 9);
    let before = 1;
    for (let t = 20; t <= 1250; t += 5) {
      const now = strengthLeft(celsius(t));
      expect(now).toBeLessThanOrEqual(before);
      before = now;
    }
  });
});
