import { describe, expect, test } from 'vitest';
import { geometryOf } from '../../../src/design/geometryOf.js';
import { OUTDOORS } from '../../../src/network/types.js';
import { makePit } from '../../../src/network/pit.js';
import { rangeWarnings } from '../../../src/study/estimate/ranges.js';
import { solveUnderFire } from '../../../src/study/estimate/steady.js';
import { exampleDesign, exampleNames } from '../../support/examples.js';

function solved(name: string) {
  const design = exampleDesign(name);
  const pit = makePit(design, geometryOf(design));
  const { x, settled } = solveUnderFire(pit, design.fire.heat);
  expect(settled.converged).toBe(true);
  pit.balances.evaluate(x, { mode: 'release', heat: design.fire.heat });
  return { pit, x };
}

describe('published ranges', () => {
  test.each(exampleNames)(
    'are kept by every relation in %s, but for flames longer than the firebox is high',
    (name) => {
      const { pit, x } = solved(name);
      // the one with a fire so large that its flames are longer than the firebox is high
      const left = name === 'wind-cold.yaml' ? [expect.stringContaining('ceilingJet')] : [];
      expect(rangeWarnings(pit, x).map(({ message }) => message)).toEqual(left);
    },
  );

  test('are told when left, once a relation, at the face that is farthest out', () => {
    const { pit, x } = solved('plain-24.yaml');
    const { model } = pit;
    const shells = model.network.faces.flatMap((face, i) =>
      face.zone === OUTDOORS && face.shape === 'horizontalCylinder' ? [i] : [],
    );
    expect(shells.length).toBeGreaterThan(1);
    model.faceLength[shells[0]] *= 20;
    model.faceLength[shells[1]] *= 40;
    const warnings = rangeWarnings(pit, x);
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toMatchObject({
      code: 'relation-outside-range',
      where: `${model.network.nodes[model.network.faces[shells[1]].node].name}, outside`,
      limits: { high: 1e12, unit: '-', source: expect.stringMatching(/Churchill & Chu/) },
    });
    expect(warnings[0].value).toBeGreaterThan(1e12);
    expect(warnings[0].message).toMatch(/nusseltHorizontalCylinder is .* there, outside the 0 to 1e12 it/);
  });

  test('of what lies next to its gas in temperature do not matter', () => {
    const { pit, x } = solved('plain-24.yaml');
    const cold = x.slice().fill(pit.model.network.outdoors.temperature, 0, pit.model.fuel);
    pit.model.faceLength.fill(1e-4);
    expect(rangeWarnings(pit, cold)).toEqual([]);
  });
});
