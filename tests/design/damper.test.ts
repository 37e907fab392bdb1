import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { damperHeight } from '../../src/design/stackSection.js';
import { buildNetwork, DEFAULT_RESOLUTION } from '../../src/network/build.js';
import { damperLoss } from '../../src/physics/friction.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { changed, designOf, faultsOf, inChamber } from './designFiles.js';

const withDamper = (fields: string) => designOf(changed(['base: 42 in', `base: 42 in, ${fields}`]));
const losses = (design: Design, cells: number) => {
  const resolution = { ...DEFAULT_RESOLUTION, stack: cells };
  const { openings } = buildNetwork(design, geometryOf(design), resolution).network;
  return openings.flatMap(({ name, stack, discharge, role }) =>
    role === 'stackEntry' ? [[name, 1 / discharge ** 2]] : stack ? [[name, stack.loss]] : [],
  );
};

describe('a damper anywhere in the stack', () => {
  it('takes the same loss at the joint that it is nearest to', () => {
    const K = damperLoss(0.4);
    const at = (place: string) => losses(withDamper(`damper: 40 %, damperAt: ${place}`), 3);
    const slices = at('top').filter(([name]) => name === 'stack entry').length;
    const told = (place: string) =>
      at(place)
        .slice(slices - 1)
        .map(([, loss]) => loss as number);
    expect(told('top')).toEqual([expect.closeTo(0.5, 9), 0, 0, expect.closeTo(1 + K, 9)]);
    expect(told('base')).toEqual([expect.closeTo(0.5 + K, 9), 0, 0, expect.closeTo(1, 9)]);
    expect(told('55 in')).toEqual([expect.closeTo(0.5, 9), expect.closeTo(K, 9), 0, expect.closeTo(1, 9)]);
  });

  it('wide open or at the top it is as without a word of it', () => {
    const bare = losses(withDamper('damper: 100 %'), 1);
    expect(losses(withDamper('damper: 100 %, damperAt: base'), 1)).toEqual(bare);
    expect(withDamper('damper: 40 %').stacks[0].damperAt).toBe('top');
  });

  it('at the base takes a little more draft, as its gas is the hotter, and leaves the tube above at the pressure of the air', () => {
    const held = (place: string) => estimate(withDamper(`damper: 30 %, damperAt: ${place}`)).assumed!;
    const [top, base] = [held('top'), held('base')];
    expect(base.air_kg_per_s).toBeLessThanOrEqual(top.air_kg_per_s * 1.001);
    expect(base.air_kg_per_s).toBeGreaterThan(0.9 * top.air_kg_per_s);
    const inside = (state: typeof top) =>
      state.pressurePath.find(({ where }) => where === 'inside the stack at its base')!.gauge_Pa;
    expect(inside(base)).toBeLessThan(inside(top) - 1);
  }, 20_000);

  it('stands where it is put', () => {
    const height = (place: string) => damperHeight(withDamper(`damper: 40 %, damperAt: ${place}`).stacks[0]) / 0.0254;
    expect(height('top')).toBeCloseTo(78, 9);
    expect(height('base')).toBeCloseTo(42, 9);
    expect(height('60 in')).toBeCloseTo(60, 9);
  });

  it('shut lets nothing through wherever it sits', () => {
    const [top, base] = ['top', 'base'].map((at) => estimate(withDamper(`damper: 0 %, damperAt: ${at}`)));
    expect(base.assumed!.openings.map(({ name }) => name)).not.toContain('stack');
    expect(base.assumed!.air_kg_per_s).toBe(top.assumed!.air_kg_per_s);
  }, 20_000);

  it.each([
    ['outside the stack', 'cannot-be-built', 'stacks[0].damperAt', 'damperAt: 30 in'],
    ['by no such place', 'unknown-name', 'stacks[0].damperAt', 'damperAt: tip'],
    ['without a unit', 'no-unit', 'stacks[0].damperAt', 'damperAt: 60'],
    ['of the wrong form', 'wrong-type', 'stacks[0].damper', 'damper: { at: base }'],
  ])('%s: %s at %s', (_, code, path, fields) => {
    expect(faultsOf(changed(['base: 42 in', `base: 42 in, ${fields}`]))).toMatchObject([{ code, path }]);
  });

  it('written as a block shows how it is written, and other words lead to it', () => {
    expect(faultsOf(changed(['base: 42 in', 'base: 42 in, damper: { at: base }']))[0].example).toBe(
      'damper: 50 %, damperAt: base',
    );
    expect(faultsOf(inChamber('length: 60 in', 'length: 60 in\n  flueDamper: 50 %'))[0].nearest).toBe('stacks.damper');
  });
});
