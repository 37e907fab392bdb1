import { expect, test } from 'vitest';
import { freePanelStrain, heldPanelStrain, POISSON, type PanelEdges } from '../../src/physics/panelBuckling.js';

// The table of panels that are free to grow, computed anew: Ritz's method for the stress of a heated rectangle and for
// its buckling. Polynomials (1 - x2)^p x^2k over the half sides, integrals by Gauss and Legendre.

const POINTS = 26;

/** Points and weights on -1 to 1. */
function gauss(): [x: number, w: number][] {
  return Array.from({ length: POINTS }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (POINTS + 0.5));
    for (let turn = 0; ; turn++) {
      let [p, before] = [x, 1];
      for (let n = 2; n <= POINTS; n++) [p, before] = [((2 * n - 1) * x * p - (n - 1) * before) / n, p];
      const slope = (POINTS * (x * p - before)) / (x * x - 1);
      if (turn === 20) return [x, 2 / ((1 - x * x) * slope * slope)];
      x -= p / slope;
    }
  });
}

const NODES = gauss();

/** Coefficients of (1 - x2)^power x^(2 k). */
function polynomial(power: number, k: number): number[] {
  let out = [...Array<number>(2 * k).fill(0), 1];
  for (let i = 0; i < power; i++) {
    const next = [...out, 0, 0];
    out.forEach((c, n) => (next[n + 2] -= c));
    out = next;
  }
  return out;
}

function valueAt(coefficients: readonly number[], x: number, derivative: number): number {
  return coefficients.reduce((sum, c, n) => {
    if (n < derivative) return sum;
    let factor = c;
    for (let d = 0; d < derivative; d++) factor *= n - d;
    return sum + factor * x ** (n - derivative);
  }, 0);
}

/** A term of a two-dimensional series and its derivatives at every point, half sides a and 1. */
function terms(power: number, count: number, a: number) {
  const pairs = Array.from({ length: count * count }, (_, n) => [Math.floor(n / count), n % count]);
  const at = (i: number, j: number, dx: number, dy: number) =>
    NODES.flatMap(([x]) =>
      NODES.map(([y]) => (valueAt(polynomial(power, i), x, dx) / a ** dx) * valueAt(polynomial(power, j), y, dy)),
    );
  return pairs.map(([i, j]) => ({
    x: at(i, j, 1, 0),
    y: at(i, j, 0, 1),
    xx: at(i, j, 2, 0),
    yy: at(i, j, 0, 2),
    xy: at(i, j, 1, 1),
  }));
}

const WEIGHTS = NODES.flatMap(([, wx]) => NODES.map(([, wy]) => wx * wy));
const integral = (of: (n: number) => number) => WEIGHTS.reduce((sum, weight, n) => sum + weight * of(n), 0);

/** Lower triangle L of a matrix L L^T; null where it is not positive. */
function cholesky(m: readonly number[][]): number[][] | null {
  const l = m.map((row) => row.map(() => 0));
  for (let i = 0; i < m.length; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = m[i][j];
      for (let k = 0; k < j; k++) sum -= l[i][k] * l[j][k];
      if (i === j && sum <= 0) return null;
      l[i][j] = i === j ? Math.sqrt(sum) : sum / l[j][j];
    }
  }
  return l;
}

function solve(l: readonly number[][], right: readonly number[]): number[] {
  const y: number[] = [];
  l.forEach((row, i) => y.push((right[i] - y.reduce((sum, v, k) => sum + row[k] * v, 0)) / row[i]));
  for (let i = l.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < l.length; k++) y[i] -= l[k][i] * y[k];
    y[i] /= l[i][i];
  }
  return y;
}

/**
 * Strain alpha T0 at which a rectangle of half sides a and 1 and of thickness 1 buckles: 1/(12 (1 - nu2)) of the load
 * factor.
 */
function buckles(a: number, edges: PanelEdges, stress: 'free' | 'held'): number {
  let sx = WEIGHTS.map(() => -1 / (1 - POISSON));
  let sy = sx;
  let sxy = WEIGHTS.map(() => 0);
  if (stress === 'free') {
    // Airy's function of the plate whose edges bear nothing: least complementary energy, E and T0 one
    const series = terms(2, 6, a);
    const heat = NODES.flatMap(([x]) => NODES.map(([y]) => (1 - x * x) * (1 - y * y)));
    const lap = series.map(({ xx, yy }) => xx.map((v, n) => v + yy[n]));
    const l = cholesky(lap.map((p) => lap.map((q) => integral((n) => p[n] * q[n]))))!;
    const c = solve(
      l,
      lap.map((p) => -integral((n) => heat[n] * p[n])),
    );
    const sum = (of: 'xx' | 'yy' | 'xy') =>
      WEIGHTS.map((_, n) => series.reduce((s, term, k) => s + c[k] * term[of][n], 0));
    [sx, sy, sxy] = [sum('yy'), sum('xx'), sum('xy').map((v) => -v)];
  }
  const w = terms(edges === 'clamped' ? 2 : 1, 7, a);
  const bend = w.map((p) => w.map((q) => integral((n) => (p.xx[n] + p.yy[n]) * (q.xx[n] + q.yy[n]))));
  const push = w.map((p) =>
    w.map((q) =>
      integral((n) => sx[n] * p.x[n] * q.x[n] + sy[n] * p.y[n] * q.y[n] + sxy[n] * (p.x[n] * q.y[n] + p.y[n] * q.x[n])),
    ),
  );
  const stands = (load: number) => cholesky(bend.map((row, i) => row.map((v, j) => v + load * push[i][j]))) !== null;
  let [low, high] = [0, 1];
  while (stands(high)) [low, high] = [high, 2 * high];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (stands(middle)) low = middle;
    else high = middle;
  }
  return low / (12 * (1 - POISSON ** 2));
}

const thin = 1e-3;

test.each([1, 1.25, 1.5, 2, 3, 4])(
  'a rectangle %s times as long as wide, free to grow, buckles as Ritz has it',
  (a) => {
    for (const edges of ['supported', 'clamped'] as const) {
      const told = freePanelStrain({ a: 2 * a, b: 2 }, thin, edges) / thin ** 2;
      expect(Math.abs(told / buckles(a, edges, 'free') - 1), edges).toBeLessThan(0.005);
    }
  },
);

test('and held: exactly where it is supported, within a tenth where it is clamped', () => {
  for (const a of [1, 1.5, 3]) {
    const told = (edges: PanelEdges) => heldPanelStrain({ a: 2 * a, b: 2 }, thin, edges) / thin ** 2;
    expect(told('supported') / buckles(a, 'supported', 'held')).toBeCloseTo(1, 3);
    const clamped = told('clamped') / buckles(a, 'clamped', 'held');
    expect(clamped).toBeGreaterThan(0.999);
    expect(clamped).toBeLessThan(1.1);
  }
});
