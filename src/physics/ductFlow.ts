import { airViscosity } from './air.js';
import { haaland, roughnessTerm } from './friction.js';

/** What a duct carries under a pressure difference, and how that changes with it. */
export interface DuctFlow {
  /** mean velocity [m/s], 0 or more */
  velocity: number;
  /** dv/d(dp) [m/(s Pa)] */
  slope: number;
}

/** Pressure that a velocity takes: rho/2 v^2 (K + f L/D), f v finite as v goes to 0 (laminar 64/Re). */
function pressureOf(v: number, density: number, viscosity: number, duct: DuctShape, rough: number): number {
  const reynolds = (density * v * duct.bore) / viscosity;
  const frictionTimesV =
    reynolds > 1 ? haaland(reynolds, duct.roughness / duct.bore, rough) * v : (64 * viscosity) / (density * duct.bore);
  return 0.5 * density * v * (duct.loss * v + (frictionTimesV * duct.length) / duct.bore);
}

interface DuctShape {
  /** sum of loss coefficients [-] */
  loss: number;
  /** length with wall friction, inside diameter, wall roughness [m] */
  length: number;
  bore: number;
  roughness: number;
}

/**
 * Velocity in a duct under a pressure difference: dp = rho/2 v^2 (K + f L/D), solved for v by Newton's method.
 * @param out receives velocity and slope; a hot loop brings its own
 * @param dp [Pa]; 0 or more
 * @param density of the gas [kg/m3]
 * @param temperature of the gas [K], for the viscosity of air
 * @param duct its losses [-] and sizes [m]
 * @returns out [m/s]
 * @example ductFlow({ velocity: 0, slope: 0 }, 6, 1.2, 300, { loss: 2.5, length: 0, bore: 0.15, roughness: 1e-4 }).velocity // 2 m/s
 * Validity: that of the friction factor (Haaland 1983 above, 64/Re below transition).
 * Reference: Darcy-Weisbach.
 */
export function ductFlow(out: DuctFlow, dp: number, density: number, temperature: number, duct: DuctShape): DuctFlow {
  const viscosity = airViscosity(temperature);
  const rough = roughnessTerm(duct.roughness / duct.bore);
  let v = Math.sqrt((2 * dp) / (density * (duct.loss + 0.03 * (duct.length / duct.bore) + 1e-6))) + 1e-9;
  let slope = 0;
  for (let pass = 0; pass < 40; pass++) {
    const step = 1e-5 * v;
    const here = pressureOf(v, density, viscosity, duct, rough);
    slope = (pressureOf(v + step, density, viscosity, duct, rough) - here) / step;
    const next = v - (here - dp) / slope;
    const bounded = next > 0.1 * v ? next : 0.1 * v;
    if (Math.abs(bounded - v) <= 1e-13 * v || bounded < 1e-12) {
      v = bounded;
      break;
    }
    v = bounded;
  }
  out.velocity = dp > 0 ? v : 0;
  out.slope = 1 / slope;
  return out;
}
