/** One body of one temperature, stepped through time by the integrator that steps a pit. */
import { LuSolver } from '../solve/linear.js';
import { nextStep } from '../solve/esdirk.js';
import { StiffStepper } from '../solve/stiff.js';
import { type StiffSystem } from '../solve/stiffSystem.js';

/** A body of one temperature that takes up heat, for studies of steps. */
export interface Body {
  /** heat content per area, any datum [J/m2], rising with temperature */
  content(T: number): number;
  /** its slope [J/(m2 K)] */
  capacity(T: number): number;
  /** heat taken up per area at a time [W/m2] */
  uptake(time: number, T: number): number;
}

/** A body's temperature [K] at a time [s]. */
export interface BodyMoment {
  time: number;
  temperature: number;
}

/** Local error allowed in a step [K]. */
const STEP_ERROR = 1e-3;
const SLOPE_STEP = 1e-3; // K
const LANDING = 1e-6; // K

/** The body as a system of one unknown. */
export function bodySystem(body: Body): StiffSystem {
  return {
    size: 1,
    differential: 1,
    quadratures: 0,
    contents: (x, out) => {
      out[0] = body.content(x[0]);
    },
    evaluate: (t, x, rate) => {
      rate[0] = body.uptake(t, x[0]);
    },
    jacobian: (t, x, matrix, gamma) => {
      const slope = (body.uptake(t, x[0] + SLOPE_STEP) - body.uptake(t, x[0] - SLOPE_STEP)) / (2 * SLOPE_STEP);
      matrix[0] = body.capacity(x[0]) - gamma * slope;
    },
    limit: (_, step) => Math.min(1, 100 / Math.abs(step[0])),
    measure: (_, step) => Math.abs(step[0]) / 1e-9,
    quadrature: () => undefined,
    errorWeights: (_, out) => {
      out[0] = 1 / STEP_ERROR;
    },
  };
}

/**
 * Steps a body until a time, or until it passes a temperature if that comes first.
 * @param from state at the start
 * @param until end time [s], and the temperature that ends it earlier [K]
 * @returns the state there
 * @throws RangeError when the temperature is never passed, or no step converges
 */
export function heatBody(body: Body, from: BodyMoment, until: { time: number; temperature?: number }): BodyMoment {
  const stepper = new StiffStepper(bodySystem(body), new LuSolver(1));
  let now = from;
  let h = 1e-3;
  stepper.begin(now.time, Float64Array.of(now.temperature));
  const side = until.temperature === undefined ? 0 : Math.sign(now.temperature - until.temperature);
  while (now.time < until.time) {
    const step = Math.min(h, until.time - now.time);
    const error = stepper.attempt(now.time, step);
    if (!(error <= 1)) {
      h = step * (Number.isFinite(error) ? Math.min(0.9, nextStep(1, error)) : 0.25);
      if (h < 1e-9) throw new RangeError(`no time step converges at ${now.time} s and ${now.temperature} K`);
      continue;
    }
    const reached = stepper.next[0];
    if (until.temperature !== undefined && Math.sign(reached - until.temperature) !== side) {
      return landOn(stepper, now, step, until.temperature);
    }
    stepper.accept(step);
    now = { time: now.time + step, temperature: reached };
    h = nextStep(step, error);
  }
  if (until.temperature !== undefined) {
    throw new RangeError(
      `${until.temperature} K is not reached within ${until.time} s; the body comes to ${now.temperature} K`,
    );
  }
  return now;
}

/** The shorter step, by halving, that ends on the temperature. */
function landOn(stepper: StiffStepper, now: BodyMoment, step: number, wanted: number): BodyMoment {
  const rising = wanted > now.temperature;
  let low = 0;
  let high = step;
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    stepper.attempt(now.time, middle);
    const reached = stepper.next[0];
    if (Math.abs(reached - wanted) < LANDING) return { time: now.time + middle, temperature: reached };
    if (reached > wanted === rising) high = middle;
    else low = middle;
  }
  return { time: now.time + high, temperature: wanted };
}
