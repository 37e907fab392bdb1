import { describe, expect, it } from 'vitest';
import { pitDrawing } from '../../src/draw/pit/pitDrawing.js';
import { geometryOf, stackSkinMass } from '../../src/design/geometryOf.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { changed, designOf, faultsOf } from './designFiles.js';

const INCH = 0.0254;
const withStack = (fields: string) =>
  changed(['[{ part: chamber, diameter: 6 in, height: 36 in, wall: 11 ga, base: 42 in }]', `[{ ${fields} }]`]);
const square = (fields: string) =>
  withStack(`part: chamber, shape: square, ${fields}, height: 36 in, wall: 1/8 in, base: 42 in`);
const stackOf = (text: string) => geometryOf(designOf(text)).stacks[0];

describe('a square stack', () => {
  it('is as deep as it is wide unless the file says otherwise', () => {
    expect(designOf(square('width: 6 in')).stacks[0]).toEqual(designOf(square('width: 6 in, depth: 6 in')).stacks[0]);
    expect(designOf(square('width: 6 in')).stacks[0].diameter).toBeUndefined();
  });

  it('has the area, girth, steel and bore of its section', () => {
    // derived: 6 x 8 in outside, 5.75 x 7.75 in inside, 36 in long
    const { flowArea, insideArea, outsideArea, bore, mass, volume } = stackOf(square('width: 6 in, depth: 8 in'));
    expect(flowArea).toBeCloseTo(5.75 * 7.75 * INCH ** 2, 10);
    expect(outsideArea).toBeCloseTo(28 * 36 * INCH ** 2, 10);
    expect(insideArea).toBeCloseTo(27 * 36 * INCH ** 2, 10);
    expect(bore).toBeCloseTo(((4 * 5.75 * 7.75) / 27) * INCH, 10);
    expect(volume).toBeCloseTo(5.75 * 7.75 * 36 * INCH ** 3, 10);
    expect(mass).toBeCloseTo((48 - 5.75 * 7.75) * 36 * INCH ** 3 * 7850, 6);
  });

  it('takes its foot out of what it stands on', () => {
    const shell = (text: string) => geometryOf(designOf(text)).parts[1].faces.find(({ name }) => name === 'shell')!;
    const round = withStack('part: chamber, diameter: 6 in, height: 36 in, wall: 1/8 in, base: 42 in');
    const less = shell(round).outsideArea - shell(square('width: 6 in')).outsideArea;
    expect(less).toBeCloseTo((1 - Math.PI / 4) * 36 * INCH ** 2, 10);
  });

  it('wears a skin all round its insulation', () => {
    const wrapped = 'width: 6 in, depth: 8 in, insulation: { material: ceramic fibre, thickness: 2 in, skin: 1/16 in }';
    // derived: 10 x 12 in over the insulation
    expect(stackSkinMass(designOf(square(wrapped)).stacks[0])).toBeCloseTo((44 * 36 * INCH ** 3 * 7850) / 16, 6);
  });

  it('draws more than the round one that fits into it, and less than the round one around it', () => {
    const air = (text: string) => estimate(designOf(text), { steadyOnly: true }).steady!.air_kg_per_s;
    const round = (diameter: string) =>
      air(withStack(`part: chamber, diameter: ${diameter}, height: 36 in, wall: 1/8 in, base: 42 in`));
    const own = air(square('width: 4 in'));
    expect(own).toBeGreaterThan(round('4 in'));
    expect(own).toBeLessThan(round('5-3/4 in'));
  });

  it('is drawn with both its sides', () => {
    const texts = JSON.stringify(
      pitDrawing(designOf(square('width: 6 in, depth: 8 in')), { width: 900, arrange: 'row' }),
    );
    expect(texts).toContain('6 in × 8 in');
    expect(texts).not.toContain('Ø 6 in');
  });
});

describe('a stack whose sizes do not go with its shape', () => {
  it.each([
    ['unknown-key', 'stacks[0].diameter', 'part: chamber, shape: square, width: 6 in, diameter: 6 in'],
    ['unknown-key', 'stacks[0].width', 'part: chamber, diameter: 6 in, width: 6 in'],
    ['missing', 'stacks[0].width', 'part: chamber, shape: square'],
    ['missing', 'stacks[0].diameter', 'part: chamber'],
    ['unknown-name', 'stacks[0].shape', 'part: chamber, shape: oval, width: 6 in'],
    ['out-of-range', 'stacks[0].depth', 'part: chamber, shape: square, width: 6 in, depth: 25 in'],
    ['cannot-be-built', 'stacks[0].wall', 'part: chamber, shape: square, width: 6 in, depth: 2 in, wall: 1 in'],
  ])('has the fault %s at %s', (code, path, fields) => {
    const wall = fields.includes('wall') ? '' : 'wall: 11 ga, ';
    const faults = faultsOf(withStack(`${fields}, ${wall}height: 36 in, base: 42 in`));
    expect(faults).toMatchObject([{ code, path }]);
  });
});
