/**
 * Where the rows `whole-board-*` come from: a room 3 x 3 x 2.4 m of 25 mm board (k 0.1 W/(m K)) with a doorway 0.6 x
 * 1.8 m and a heater of 20 kW, worked out from the printed relations with the printed properties of air, and none of
 * the functions they check.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readCases } from '../../src/verify/readCases.js';
import { REGISTRY } from '../../src/verify/registry.js';

const OUTDOORS = 293.15;
const SIGMA = 5.670374e-8;
const GRAVITY = 9.80665;
const CONDUCTANCE = 0.1 / 0.025;
const EMISSIVITY = { inside: 0.95, outside: 0.9 };

/**
 * Incropera et al. (2007), Table A.4, air at 1 atm: K, kinematic viscosity [m2/s], conductivity [W/(m K)], Prandtl
 * number.
 */
const AIR = [
  [250, 11.44e-6, 22.3e-3, 0.72],
  [300, 15.89e-6, 26.3e-3, 0.707],
  [350, 20.92e-6, 30.0e-3, 0.7],
];
const HEAT = 1007;

const density = (T: number) => 101325 / (287.05 * T);

/** Straight between the rows of the table. */
function airAt(T: number): number[] {
  const [low, high] = T < 300 ? [AIR[0], AIR[1]] : [AIR[1], AIR[2]];
  const share = (T - low[0]) / (high[0] - low[0]);
  return low.map((value, i) => value + share * (high[i] - value));
}

type Relation = (Ra: number, Pr: number) => number;
const churchillChu: Relation = (Ra, Pr) =>
  (0.825 + (0.387 * Ra ** (1 / 6)) / (1 + (0.492 / Pr) ** (9 / 16)) ** (8 / 27)) ** 2;
const mcAdams: Relation = (Ra) => Math.max(0.54 * Ra ** (1 / 4), 0.15 * Ra ** (1 / 3));
const radziemska: Relation = (Ra) => 0.52 * Ra ** (1 / 5);

function freeConvection(relation: Relation, length: number, surface: number, air: number): number {
  const film = (surface + air) / 2;
  const [, viscosity, conductivity, Pr] = airAt(film);
  const Ra = ((GRAVITY / film) * Math.abs(surface - air) * length ** 3 * Pr) / viscosity ** 2;
  return (relation(Ra, Pr) * conductivity) / length;
}

/**
 * Roof and floor by area over perimeter, the walls, less the doorway, by their height; inside and outside alike, heat
 * goes one way.
 */
const SURFACES = [
  { area: 9, length: 0.75, relation: mcAdams },
  { area: 4 * 3 * 2.4 - 0.6 * 1.8, length: 2.4, relation: churchillChu },
  { area: 9, length: 0.75, relation: radziemska },
];

/** Settled by repeated substitution. */
function room() {
  let gas = 330;
  let [flow, loss] = [0, 0];
  const walls = SURFACES.map((surface) => ({ ...surface, inside: 315, outside: 300 }));
  const resistance = 1 / ((1 - EMISSIVITY.inside) / EMISSIVITY.inside + 1);
  const whole = walls.reduce((sum, { area }) => sum + area, 0);
  for (let turn = 0; turn < 3000; turn++) {
    // all have one emissivity, so that what the surface node sends is their mean by area
    const node = walls.reduce((sum, { area, inside }) => sum + (area * inside ** 4) / whole, 0);
    let convected = 0;
    loss = 0;
    for (const wall of walls) {
      const { area, length, relation, inside, outside } = wall;
      const hot = freeConvection(relation, length, inside, gas);
      const cold =
        freeConvection(relation, length, outside, OUTDOORS) +
        EMISSIVITY.outside * SIGMA * (outside ** 2 + OUTDOORS ** 2) * (outside + OUTDOORS);
      const taken = hot * (gas - inside) + resistance * SIGMA * (node - inside ** 4);
      const through = CONDUCTANCE * (inside - outside);
      const given = cold * (outside - OUTDOORS);
      wall.inside += 0.05 * (taken - through);
      wall.outside += 0.05 * (through - given);
      convected += area * hot * (gas - inside);
      loss += area * given;
    }
    // as much in below the neutral plane as out above it
    const split = (density(gas) / density(OUTDOORS)) ** (1 / 3);
    const neutral = (1.8 * split) / (1 + split);
    const drive = 2 * GRAVITY * density(OUTDOORS) * (density(OUTDOORS) - density(gas));
    flow = (2 / 3) * 0.7 * 0.6 * Math.sqrt(drive) * neutral ** 1.5;
    gas += 0.1 * (OUTDOORS + (20_000 - convected) / (flow * HEAT) - gas);
  }
  const mean = (side: 'inside' | 'outside') => walls.reduce((sum, wall) => sum + (wall.area * wall[side]) / whole, 0);
  return { gas, out: flow, loss, inside: mean('inside'), outside: mean('outside') };
}

it('gives the rows of the room of board', () => {
  const name = 'cases-whole-model.csv';
  const text = readFileSync(new URL(`../../reference/${name}`, import.meta.url), 'utf8');
  const { cases } = readCases(text, name, REGISTRY);
  const printed = (what: string) => cases.find(({ id }) => id === `whole-board-${what}`)!.expected.low;
  const { gas, out, loss, inside, outside } = room();
  expect(loss).toBeCloseTo(20_000 - out * HEAT * (gas - OUTDOORS), 1);
  expect(printed('gas')).toBeCloseTo(gas - 273.15, 2);
  expect(printed('out')).toBeCloseTo(out, 5);
  expect(printed('loss')).toBeCloseTo(loss, 0);
  expect(printed('inside')).toBeCloseTo(inside - 273.15, 2);
  expect(printed('outside')).toBeCloseTo(outside - 273.15, 2);
});
