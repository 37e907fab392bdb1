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
  const { x, outcome } = solveUnderFire(pit, design.fire.heat);
  expect(outcome.converged).toBe(true);
  pit.balances.evaluate(x, { mode: 'release', heat: design.fire.heat });
  return { pit, x };
}

describe('published ranges', () => {
  test.each(exampleNames)('are kept by every relation in %s', (name) => {
    const { pit, x } = solved(name);
    expect(rangeWarnings(pit, x)).toEqual([]);
  });

  test('of a roof that flames do not reach are left by a narrow fire whose flames do', () => {
    const { pit, x } = solved('wind-cold.yaml');
    pit.model.network.fire.roof!.across *= 0.5;
    const [warning, ...more] = rangeWarnings(pit, x);
    expect(more).toEqual([]);
    expect(warning).toMatchObject({ code: 'relation-outside-range', limits: { high: 1 } });
    expect(warning.message).toContain('ceilingJet');
    expect(warning.value).toBeGreaterThan(1);
  });

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
    expect(warnings[0].message).toMatch(
      / there, and the relation used \(nusseltHorizontalCylinder\) was published for 0 to 1e12:/,
    );
  });

  test('of what lies next to its gas in temperature do not matter', () => {
    const { pit, x } = solved('plain-24.yaml');
    const cold = x.slice().fill(pit.model.network.outdoors.temperature, 0, pit.model.fuel);
    pit.model.faceLength.fill(1e-4);
    expect(rangeWarnings(pit, cold)).toEqual([]);
  });
});
