/**
 * Where the rows of plates in a furnace and of a drum that cools come from: rho c d dT/dt = what both faces take, with
 * the specific heat of steel as EN 1993-1-2:2005, 3.4.1.2 prints it, in steps of a tenth of a second, and none of the
 * functions they check.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readCases } from '../../src/verify/readCases.js';
import { REGISTRY } from '../../src/verify/registry.js';

const SIGMA = 5.670374e-8;
const INCH = 0.0254;
const DENSITY = 7850;
const STEP = 0.1;

/** EN 1993-1-2:2005, eq. 3.2 [J/(kg K)] at t [°C] */
function specificHeat(t: number): number {
  if (t < 600) return 425 + 0.773 * t - 1.69e-3 * t ** 2 + 2.22e-6 * t ** 3;
  if (t < 735) return 666 + 13_002 / (738 - t);
  if (t < 900) return 545 + 17_820 / (t - 731);
  return 650;
}

/** ISO 834 [°C] at a time [s] */
const standardFurnace = (time: number) => 20 + 345 * Math.log10((8 * time) / 60 + 1);

/** Convection and radiation from gas and surroundings of one temperature [W/m2], both in °C. */
const exchange = (coefficient: number, emissivity: number, gas: number, t: number) =>
  coefficient * (gas - t) + emissivity * SIGMA * ((gas + 273.15) ** 4 - (t + 273.15) ** 4);

/** Temperature [°C] after a time, by the midpoint of each step. @param mass over the area that takes heat [kg/m2] */
function after(time: number, mass: number, start: number, taken: (time: number, t: number) => number): number {
  let t = start;
  for (let k = 0; k < Math.round(time / STEP); k++) {
    const rate = (at: number, own: number) => taken(at, own) / (mass * specificHeat(own));
    const half = t + 0.5 * STEP * rate(k * STEP, t);
    t += STEP * rate((k + 0.5) * STEP, half);
  }
  return t;
}

const name = 'cases-whole-model.csv';
const { cases } = readCases(readFileSync(new URL(`../../reference/${name}`, import.meta.url), 'utf8'), name, REGISTRY);
const printed = (id: string) => cases.find((each) => each.id === id)!.expected.low;

it('gives the plates in a furnace', () => {
  const quarter = (DENSITY * INCH) / 4;
  const both = after(600, quarter, 20, (time, t) => 2 * exchange(25, 0.7, standardFurnace(time), t));
  expect(printed('whole-plate-both')).toBeCloseTo(both, 1);
  const one = after(
    1200,
    quarter,
    20,
    (time, t) => exchange(25, 0.8, standardFurnace(time), t) + exchange(8, 0.8, 20, t),
  );
  expect(printed('whole-plate-one')).toBeCloseTo(one, 1);
  const rise = (time: number) => Math.min(600, 20 + (580 * time) / 300);
  const ramp = after(360, DENSITY * 0.003, 20, (time, t) => 2 * exchange(15, 0.9, rise(time), t));
  expect(printed('whole-plate-ramp')).toBeCloseTo(ramp, 1);
});

/**
 * Incropera et al. (2007), Table A.4, air at 1 atm: K, kinematic viscosity [m2/s], conductivity [W/(m K)], Prandtl
 * number.
 */
const AIR = [
  [250, 11.44e-6, 22.3e-3, 0.72],
  [300, 15.89e-6, 26.3e-3, 0.707],
  [350, 20.92e-6, 30.0e-3, 0.7],
  [400, 26.41e-6, 33.8e-3, 0.69],
];

it('gives the drum that cools in still air', () => {
  const air = 294.26;
  const diameter = 0.61;
  const cooled = (_: number, t: number) => {
    const surface = t + 273.15;
    const film = (surface + air) / 2;
    const i = Math.min(2, Math.floor((film - 250) / 50));
    const [, viscosity, conductivity, Pr] = AIR[i].map((v, k) => v + ((film - AIR[i][0]) / 50) * (AIR[i + 1][k] - v));
    const Ra = ((9.80665 / film) * Math.abs(surface - air) * diameter ** 3 * Pr) / viscosity ** 2;
    // Churchill & Chu (1975), horizontal cylinder
    const nusselt = (0.6 + (0.387 * Ra ** (1 / 6)) / (1 + (0.559 / Pr) ** (9 / 16)) ** (8 / 27)) ** 2;
    return exchange((nusselt * conductivity) / diameter, 0.92, air - 273.15, t);
  };
  expect(printed('whole-steel-outdoors')).toBeCloseTo(after(3600, 150 / 3, 450 - 273.15, cooled), 1);
});
