import { describe, expect, it } from 'vitest';
import { geometryOf } from '../../src/design/geometryOf.js';
import type { Demand } from '../../src/network/balances.js';
import { makePit, type Pit } from '../../src/network/pit.js';
import { solveUnderFire } from '../../src/study/estimate/steady.js';
import { openDoor } from '../../src/study/events/door.js';
import { variantOf } from '../../src/study/events/variant.js';
import { exampleDesign, exampleNames } from '../support/examples.js';

function solved(name: string): { pit: Pit; x: Float64Array; heat: number } {
  const design = exampleDesign(name);
  const pit = makePit(design, geometryOf(design));
  return { pit, x: solveUnderFire(pit, design.fire.heat).x, heat: design.fire.heat };
}

/** The same, settled with the gauge's door open and the firebox's. */
function opened(name: string): ReturnType<typeof solved> {
  const { pit: shut, x, heat } = solved(name);
  const pit = variantOf(shut, (built) => {
    openDoor(shut.design)(built);
    openDoor(shut.design, 'firebox')(built);
  });
  expect(pit.solver.solve(x, { mode: 'release', heat }).converged).toBe(true);
  return { pit, x, heat };
}

/** All examples, and the plain one and another with their doors open. */
const solvedAnd = (other: string) => [
  ...exampleNames.map((name) => [name, solved] as const),
  ...['plain-24.yaml', other].map((name) => [name, opened] as const),
];

/** What Newton's matrix has at x, and what differences of the balances say. */
function slopes(
  { pit, x }: { pit: Pit; x: Float64Array },
  demand: Demand,
): Record<'matrix' | 'difference', Float64Array> {
  const { model, balances } = pit;
  const n = model.size;
  const matrix = new Float64Array(n * n);
  balances.evaluate(x, demand);
  balances.jacobian(x, demand, matrix, 0, 1);
  const at = (y: Float64Array): number[] => {
    balances.evaluate(y, demand);
    return [...balances.rate, ...balances.algebraic];
  };
  const step = (j: number) => (j < model.fuel ? 1e-4 : j < model.fire ? 1e-8 : 1e-2);
  const difference = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const [up, down] = [x.slice(), x.slice()];
    up[j] += step(j);
    down[j] -= step(j);
    const [high, low] = [at(up), at(down)];
    for (let i = 0; i < n; i++) difference[i * n + j] = -(high[i] - low[i]) / (2 * step(j));
  }
  return { matrix, difference };
}

describe('slopes of the balances against finite differences (derived)', () => {
  it.each(solvedAnd('reverse-flow.yaml'))('%s', (name, made) => {
    const { pit, x, heat } = made(name);
    const { model } = pit;
    const n = model.size;
    const { matrix, difference } = slopes({ pit, x }, { mode: 'release', heat });
    // a kelvin, a hundredth of a pascal and of a fuel share, a watt: what each unknown typically moves by
    const size = (j: number) => (j < model.fuel ? 1 : j < model.fire ? 1e-2 : 1);
    const worst = (rows: [number, number], columns: number): number => {
      let most = 0;
      for (let i = rows[0]; i < rows[1]; i++) {
        let largest = 0;
        for (let j = 0; j < n; j++) largest = Math.max(largest, Math.abs(difference[i * n + j]) * size(j));
        for (let j = 0; j < columns; j++) {
          most = Math.max(most, (Math.abs(difference[i * n + j] - matrix[i * n + j]) * size(j)) / largest);
        }
      }
      return most;
    };
    // the one slope left out on purpose, that of the through-flow speed in the convection, stays below this
    expect(worst([model.surfaceNode, n], n)).toBeLessThan(0.12);
    // plates and insulation by each other: the film's power and the conductivity of steel go by rules of thumb
    expect(worst([0, model.nodeCount], model.nodeCount)).toBeLessThan(0.03);
  });

  it.each(exampleNames)('%s: a fire that holds the gauge, by the walls that it sees', (name) => {
    const { pit, x } = solved(name);
    const { size: n, fire, surfaceNode, gas } = pit.model;
    const { matrix, difference } = slopes({ pit, x }, { mode: 'hold', target: pit.design.fire.target });
    const seen = Array.from({ length: gas - surfaceNode }, (_, k) => fire * n + surfaceNode + k);
    expect(Math.max(...seen.map((at) => difference[at]))).toBeGreaterThan(1);
    for (const at of seen) expect(matrix[at]).toBeCloseTo(difference[at], 2);
  });
});

describe('what a solved state must keep (derived)', () => {
  it.each(solvedAnd('insulated-upright.yaml'))(
    '%s: every node and zone in balance, heat in = heat out',
    (name, made) => {
      const { pit, x, heat } = made(name);
      pit.balances.evaluate(x, { mode: 'release', heat });
      for (let i = 0; i < pit.model.nodeCount; i++) expect(Math.abs(pit.balances.rate[i])).toBeLessThan(1e-3);
      expect(pit.balances.massError()).toBeLessThan(1e-9);
      const fire = x[pit.model.fire];
      expect(Math.abs(pit.balances.totalLoss() - fire) / fire).toBeLessThan(1e-6);
    },
  );

  it('puts an outdoor face on every outside patch and none on a shared plate', () => {
    const { pit } = solved('offset-with-upright.yaml');
    const { nodes, faces } = pit.built.network;
    for (let i = 0; i < nodes.length; i++) {
      // a grate inside is no patch
      if (nodes[i].thickness === 0) continue;
      const own = faces.filter((f) => f.node === i);
      expect(own).toHaveLength(2);
      const outdoors = own.filter((f) => f.zone < 0).length;
      expect(outdoors).toBe(nodes[i].name.endsWith('plate') ? 0 : 1);
    }
  });

  it('hands all of the radiation to faces (derived)', () => {
    for (const name of exampleNames) {
      const { pit } = solved(name);
      const { faceFireShare, fireOutShare } = pit.model;
      expect(faceFireShare.reduce((a, b) => a + b, 0) + fireOutShare).toBeCloseTo(1, 12);
    }
  });
});
