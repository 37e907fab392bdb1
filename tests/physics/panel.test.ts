import { describe, expect, test } from 'vitest';
import { freePanelStrain, heldPanelStrain, POISSON, type PanelEdges } from '../../src/physics/panelBuckling.js';
import { leafOverRim, middleOverEdge } from '../../src/physics/panelEdge.js';
import { pushedPanel } from '../../src/physics/plateBending.js';
import { scaleLoss, scalingRate } from '../../src/physics/scaling.js';
import { steelElongation, steelExpansion, steelModulus } from '../../src/physics/steelStrength.js';
import { expectJoin } from './joins.js';

/**
 * Least load at which a disc of radius 1 buckles round its middle: phi'' + phi'/r - phi/r2 + load s(r) phi = 0 for the
 * slope phi, by Runge and Kutta, and the load by halving.
 */
function discBuckles(stress: (r: number) => number, edges: PanelEdges): number {
  const edge = (load: number) => {
    let [phi, slope] = [1e-3, 1];
    const steps = 2000;
    const step = (1 - 1e-3) / steps;
    const bend = (r: number, p: number, s: number) => -s / r + p / (r * r) - load * stress(r) * p;
    for (let i = 0; i < steps; i++) {
      const r = 1e-3 + i * step;
      const k1 = bend(r, phi, slope);
      const k2 = bend(r + step / 2, phi + (step / 2) * slope, slope + (step / 2) * k1);
      const k3 = bend(r + step / 2, phi + (step / 2) * (slope + (step / 2) * k1), slope + (step / 2) * k2);
      const k4 = bend(r + step, phi + step * (slope + (step / 2) * k2), slope + step * k3);
      phi += step * (slope + (step / 6) * (k1 + k2 + k3));
      slope += (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    }
    return edges === 'clamped' ? phi : slope + POISSON * phi;
  };
  let [low, high] = [0, 1];
  while (edge(high) > 0) high += 1;
  low = high - 1;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (edge(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

describe('a flat panel that is hotter in its middle', () => {
  const disc = { diameter: 2 };
  test.each(['supported', 'clamped'] as const)('buckles as the equation of a disc has it: %s', (edges) => {
    // held: N = E h eps/(1 - nu); free: a parabola of T gives N = -E h eps (1 - r2)/4 (Timoshenko & Goodier)
    const held = discBuckles(() => 1, edges) / (12 * (1 + POISSON));
    const free = discBuckles((r) => 1 - r * r, edges) / (3 * (1 - POISSON ** 2));
    expect(heldPanelStrain(disc, 0.01, edges) / 1e-4 / held).toBeCloseTo(1, 2);
    expect(freePanelStrain(disc, 0.01, edges) / 1e-4 / free).toBeCloseTo(1, 3);
  });

  test.each(['supported', 'clamped'] as const)('has no jumps over the shapes of a rectangle: %s', (edges) => {
    const at = (ratio: number) => freePanelStrain({ a: ratio, b: 1 }, 0.01, edges);
    for (const ratio of [1.25, 1.5, 2, 3, 4]) expectJoin(at, ratio, 1e-6);
    expect(at(9)).toBe(at(4));
    expect(at(0.5)).toBeCloseTo(4 * at(2), 12);
  });

  test('buckles sooner held than free, tilting than clamped, thin than thick', () => {
    for (const size of [disc, { a: 0.6, b: 0.6 }, { a: 1.2, b: 0.5 }]) {
      for (const strain of [heldPanelStrain, freePanelStrain]) {
        expect(strain(size, 0.005, 'supported')).toBeLessThan(strain(size, 0.005, 'clamped'));
        expect(strain(size, 0.01, 'clamped')).toBeCloseTo(4 * strain(size, 0.005, 'clamped'), 12);
      }
      expect(heldPanelStrain(size, 0.005, 'clamped')).toBeLessThan(freePanelStrain(size, 0.005, 'supported'));
    }
  });

  test('is no hotter than its edge where its neighbour is as hot, and cooler where that is hotter', () => {
    const beside = (temperature: number) =>
      middleOverEdge(
        { panel: { temperature: 500, thickness: 0.006 }, neighbour: { temperature, thickness: 0.006 } },
        0.5,
        60,
        42,
      );
    expect(beside(500)).toBe(0);
    expect(beside(600)).toBeLessThan(0);
    expect(beside(400)).toBeLessThanOrEqual(50);
    const rim = { leaf: 500, outdoors: 294, thickness: 0.006, inside: 20, outside: 20, conductivity: 45 };
    expect(leafOverRim({ ...rim, lap: 0 })).toBeCloseTo(0, 9);
    expect(leafOverRim({ ...rim, lap: 0.02 })).toBeLessThan(leafOverRim({ ...rim, lap: 0.04 }));
  });

  test('gives less to a push the thicker it is, by the cube', () => {
    const push = (thickness: number) => pushedPanel({ a: 0.6, b: 0.4 }, thickness, 100, 200e9);
    expect(push(0.003) / push(0.006)).toBeCloseTo(8, 9);
  });
});

describe('hot steel', () => {
  test.each(['carbon', 'stainless'] as const)('softens and grows without a jump: %s', (steel) => {
    for (let t = 100; t < 1200; t += 100) expectJoin((T) => steelModulus(steel, T), t + 273.15, 1e-6);
    for (const t of [750, 860]) expectJoin((T) => steelElongation(steel, T), t + 273.15, 1e-2);
    for (let T = 300; T < 1400; T += 20) {
      expect(steelElongation(steel, T + 20)).toBeGreaterThanOrEqual(steelElongation(steel, T));
      expect(steelModulus(steel, T + 20)).toBeLessThanOrEqual(steelModulus(steel, T));
    }
    expect(steelExpansion(steel, 500, 500)).toBeCloseTo(steelExpansion(steel, 499, 501), 8);
  });

  test('scales by the root of time, and by time where the scale falls off', () => {
    expect(scaleLoss(800, 4 * 3600)).toBeCloseTo(2 * scaleLoss(800, 3600), 15);
    expect(scaleLoss(900, 3600)).toBeGreaterThan(scaleLoss(800, 3600));
    // where it falls off at the thickness that an hour makes, an hour's loss is that of the parabola
    const hour = scaleLoss(800, 3600);
    const thickness = hour / ((5700 * 0.777) / 7850);
    expect(3600 * scalingRate(800, thickness)).toBeCloseTo(hour, 12);
  });
});
