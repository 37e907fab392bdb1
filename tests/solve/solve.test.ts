import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LuSolver } from '../../src/solve/linear.js';
import { newton } from '../../src/solve/newton.js';
import { bracketedRoot } from '../../src/solve/root.js';
import { rootNear } from '../../src/solve/rootNear.js';
import { ESDIRK, nextStep } from '../../src/solve/esdirk.js';
import { StiffStepper } from '../../src/solve/stiff.js';
import { type StiffSystem } from '../../src/solve/stiffSystem.js';

/** A body of one temperature with heat content H(T), heated at rate(T, t). */
function body(content: (T: number) => number, rate: (T: number, t: number) => number): StiffSystem {
  let last = 0;
  const slope = (f: (T: number) => number, T: number) => (f(T + 1e-4) - f(T - 1e-4)) / 2e-4;
  return {
    size: 1,
    differential: 1,
    quadratures: 1,
    contents: (x, out) => void (out[0] = content(x[0])),
    evaluate: (t, x, out) => void (last = out[0] = rate(x[0], t)),
    jacobian: (t, x, m, gamma) => void (m[0] = slope(content, x[0]) - gamma * slope((T) => rate(T, t), x[0])),
    limit: () => 1,
    measure: (_x, step) => Math.abs(step[0]) / 1e-11,
    quadrature: (out) => void (out[0] = last),
    errorWeights: (_x, out) => void (out[0] = 1),
  };
}

function run(system: StiffSystem, start: number, end: number, steps: number): { T: number; gained: number } {
  const stepper = new StiffStepper(system, new LuSolver(1));
  stepper.begin(0, Float64Array.of(start));
  let h = end / steps;
  let gained = 0;
  for (let t = 0; t < end - 1e-9;) {
    if (stepper.attempt(t, Math.min(h, end - t)) === Infinity) {
      h *= 0.5;
      expect(h).toBeGreaterThan(1e-6);
      continue;
    }
    gained += stepper.gained[0];
    stepper.accept(Math.min(h, end - t));
    t += h;
  }
  return { T: stepper.next[0], gained };
}

describe('LU of mostly empty matrices', () => {
  it('solves what it factored, with and without pivoting (derived: residual of the system)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 14 }),
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 400, maxLength: 400 }),
        (n, numbers) => {
          const lu = new LuSolver(n);
          const a = new Float64Array(n * n);
          for (let i = 0; i < n * n; i++) a[i] = Math.abs(numbers[i]) < 0.5 ? 0 : numbers[i];
          for (let i = 0; i < n; i++) a[i * n + i] = n + 1;
          // rows that may be exchanged come in another order
          if (n > 4)
            for (let j = 0; j < n; j++)
              [a[(n - 1) * n + j], a[(n - 2) * n + j]] = [a[(n - 2) * n + j], a[(n - 1) * n + j]];
          const b = Float64Array.from({ length: n }, (_, i) => numbers[399 - i]);
          lu.matrix.set(a);
          expect(lu.factor()).toBe(true);
          const x = b.slice();
          lu.solve(x);
          for (let i = 0; i < n; i++) {
            let sum = 0;
            for (let j = 0; j < n; j++) sum += a[i * n + j] * x[j];
            expect(sum).toBeCloseTo(b[i], 10);
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  it('is itself again after a matrix that it could not factor (derived: residual of the system)', () => {
    const lu = new LuSolver(3);
    const good = [1e6, 2e6, 0, 1, 3, 1e-3, 0, 5e-6, 2e-6];
    lu.matrix.set(good);
    expect(lu.factor()).toBe(true);
    for (const spoilt of [
      [1, Number.NaN, 0, 0, 1, 0, 0, 0, 1],
      [1, 2, 0, 0, 0, 0, 0, 0, 1],
    ]) {
      lu.matrix.set(spoilt);
      expect(lu.factor()).toBe(false);
      lu.matrix.set(good);
      expect(lu.factor()).toBe(true);
      const x = Float64Array.of(3e6, 4.001, 7e-6);
      lu.solve(x);
      for (const value of x) expect(value).toBeCloseTo(1, 9);
    }
  });

  it('eliminates one unknown last, whether its own entry is there or not, and where there is no way on without it (derived)', () => {
    const lu = new LuSolver(3, 2);
    const [given, held] = [
      [4, 1, -1, 1, 3, 0, 0, 0, 1],
      [4, 1, -1, 1, 3, 0, 0, 1, 0],
    ];
    // the first row has an entry in the last column alone
    const astray = [0, 0, 2, 1, 3, 0, 5, 1, 0];
    for (const matrix of [given, held, given, astray, held]) {
      lu.matrix.set(matrix);
      expect(lu.factor()).toBe(true);
      const x = Float64Array.from(
        { length: 3 },
        (_, i) => matrix[3 * i] + 2 * matrix[3 * i + 1] + 3 * matrix[3 * i + 2],
      );
      lu.solve(x);
      for (const [i, value] of [1, 2, 3].entries()) expect(x[i]).toBeCloseTo(value, 12);
    }
  });

  it('says when a matrix is singular', () => {
    const lu = new LuSolver(2);
    lu.matrix.set([1, 2, 0, 0]);
    expect(lu.factor()).toBe(false);
  });
});

describe('Newton', () => {
  it('finds a root and reports when it does not', () => {
    const lu = new LuSolver(1);
    const problem = {
      residual: (x: Float64Array, rhs: Float64Array) => void (rhs[0] = 2 - x[0] * x[0]),
      matrix: (x: Float64Array, m: Float64Array) => void (m[0] = 2 * x[0]),
      limit: () => 1,
      measure: (_x: Float64Array, step: Float64Array) => Math.abs(step[0]) / 1e-12,
    };
    const x = Float64Array.of(1);
    expect(newton(problem, x, new Float64Array(1), lu, { maxIterations: 10 }).converged).toBe(true);
    expect(x[0]).toBeCloseTo(Math.SQRT2, 12);
    expect(newton(problem, Float64Array.of(100), new Float64Array(1), lu, { maxIterations: 2 }).converged).toBe(false);
  });
});

describe('bracketed root', () => {
  it('stays in its bracket and meets its tolerance', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.9, max: 0.9, noNaN: true }), (root) => {
        const found = bracketedRoot((x) => Math.tanh(20 * (x - root)), { low: -1, high: 1, tolerance: 1e-10 });
        expect(found.converged).toBe(true);
        expect(Math.abs(found.root - root)).toBeLessThan(1e-8);
      }),
    );
  });

  it('refuses a bracket without a change of sign', () => {
    expect(() => bracketedRoot(() => 1, { low: 0, high: 1, tolerance: 1e-6 })).toThrow(RangeError);
  });
});

describe('root near a guess', () => {
  const bounds = { low: -4, high: 4, stride: 1.5, tolerance: 1e-10 };

  it('is found from any guess, with a slope that is off up to ten times', () => {
    const number = fc.double({ min: -3.9, max: 3.9, noNaN: true });
    fc.assert(
      fc.property(number, number, fc.double({ min: -1, max: 1, noNaN: true }), (root, guess, power) => {
        const found = rootNear((x) => Math.sinh(root - x), { ...bounds, guess, slope: -(10 ** power) });
        expect(Math.abs(found! - root)).toBeLessThan(1e-8);
      }),
    );
  });

  it('is none where the sign never changes, or where there is no value on the way', () => {
    const from = { ...bounds, guess: 0, slope: 1 };
    expect(rootNear((x) => x + 5, from)).toBeNull();
    expect(rootNear((x) => (x < -1 ? NaN : x + 2), from)).toBeNull();
    expect(rootNear((x) => (x === 0 ? 1 : x > -0.6 ? NaN : x + 0.5), { ...from, slope: 2 })).toBeNull();
  });
});

describe('ESDIRK3(2)4L[2]SA', () => {
  const { a, b, c, embedded } = ESDIRK;
  const dot = (u: number[], v: number[]) => u.reduce((sum, x, i) => sum + x * v[i], 0);

  it('meets the order conditions to third order, the embedded formula to second (published: Butcher)', () => {
    a.forEach((row, i) => expect(row.reduce((s, x) => s + x, 0)).toBeCloseTo(c[i], 12));
    for (const weights of [b, embedded]) {
      expect(weights.reduce((s, x) => s + x, 0)).toBeCloseTo(1, 12);
      expect(dot(weights, c)).toBeCloseTo(1 / 2, 12);
    }
    expect(
      dot(
        b,
        c.map((x) => x * x),
      ),
    ).toBeCloseTo(1 / 3, 12);
    expect(
      dot(
        b,
        a.map((row) => dot(row, c)),
      ),
    ).toBeCloseTo(1 / 6, 12);
    expect(
      Math.abs(
        dot(
          embedded,
          c.map((x) => x * x),
        ) -
          1 / 3,
      ),
    ).toBeGreaterThan(1e-3);
  });

  it('shows third order on a nonlinear body (derived: halving the step)', () => {
    // dT/dt = -T^2, T(0) = 1: T(t) = 1/(1 + t)
    const error = (steps: number) =>
      Math.abs(
        run(
          body(
            (T) => T,
            (T) => -T * T,
          ),
          1,
          2,
          steps,
        ).T -
          1 / 3,
      );
    const order = Math.log2(error(16) / error(32));
    expect(order).toBeGreaterThan(2.7);
    expect(order).toBeLessThan(3.4);
  });

  it('forgets a fast body at once (L-stable)', () => {
    const { T } = run(
      body(
        (x) => x,
        (x) => -1e9 * (x - 7),
      ),
      300,
      1,
      2,
    );
    expect(T).toBeCloseTo(7, 5);
  });

  it('keeps heat across a peak of the specific heat, whatever the step (derived: H gained = integral of the rate)', () => {
    // latent-like peak, 3000 J/(kg K) high and a few kelvin wide
    const content = (T: number) => 500 * T + 3e4 * Math.tanh((T - 735) / 10);
    const { T, gained } = run(
      body(content, (x) => 4 * (1200 - x)),
      300,
      300,
      7,
    );
    expect(Math.abs(content(T) - content(300) - gained) / gained).toBeLessThan(1e-9);
    expect(T).toBeGreaterThan(735);
  });
});

describe('step length', () => {
  it('shrinks after a large error, grows after a small one, within limits', () => {
    expect(nextStep(1, 8)).toBeCloseTo(0.45, 2);
    expect(nextStep(1, 1e-9)).toBe(4);
    expect(nextStep(1, 1e9)).toBe(0.2);
    expect(nextStep(1, 0)).toBe(4);
  });
});
