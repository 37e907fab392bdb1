import { describe, expect, it } from 'vitest';
import { Balances } from '../../src/network/balances.js';
import { DEFAULT_RESOLUTION } from '../../src/network/build.js';
import { Model } from '../../src/network/model.js';
import { QuasiSteadySolver } from '../../src/network/quasiSteady.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { burnerFire, heaterFire } from '../../src/verify/rooms/burner.js';
import { buildRoom, type RoomSpec } from '../../src/verify/rooms/room.js';
import { steadyRoom } from '../../src/verify/rooms/solveRoom.js';
import { exampleDesign } from '../support/examples.js';

const AIR = 293.15;
const room: RoomSpec = {
  length: 1.4,
  width: 1,
  height: 1,
  vents: [{ width: 0.5, height: 0.8, sill: 0 }],
  discharge: 0.7,
  layers: [{ type: 'plate', thickness: 3e-3 }],
  fire: burnerFire('methane', 0.2),
  soot: 0,
  insideEmissivity: 0.95,
  outsideEmissivity: 0.9,
  innerConvection: 1,
  levels: 5,
  burner: { across: 0.15, top: 0.15, strikes: true },
  ventsRadiate: true,
  outdoors: { temperature: AIR, pressure: 101325, wind: 0 },
};
const POWER = 30e3;

describe('a fire in a column of layers', () => {
  it.each([
    ['of gas', burnerFire('methane', 0.2)],
    ['that makes no gas', heaterFire(0.2)],
  ])('%s gives all its heat, and what comes in leaves again with its fuel', (_, fire) => {
    const { wallLoss, gasLoss, outflow, inflow } = steadyRoom(buildRoom({ ...room, fire }).network, POWER);
    expect(wallLoss + gasLoss).toBeCloseTo(POWER, 1);
    expect(outflow - inflow).toBeCloseTo((fire.gasPerFuel * POWER) / fire.heatValue, 9);
  });

  it('has hot gas with less oxygen above fresh air', () => {
    const { network, column } = buildRoom(room);
    const { gases, oxygen } = steadyRoom(network, POWER);
    const [low, high] = [column[0], column[4]];
    expect(gases[high] - AIR).toBeGreaterThan(10 * (gases[low] - AIR));
    expect(oxygen[low]).toBeGreaterThan(0.2);
    expect(oxygen[high]).toBeLessThan(0.19);
  });

  it('stands at ambient with no fire', () => {
    const { network, column } = buildRoom(room);
    const { gases } = steadyRoom(network, 0);
    for (const zone of column) expect(gases[zone]).toBeCloseTo(AIR, 6);
  });

  it('comes near to mixed gas where its plume takes in all there is', () => {
    const rise = (spec: Partial<RoomSpec>) => {
      const { network } = buildRoom({ ...room, ...spec });
      return steadyRoom(network, POWER).outflow;
    };
    const mixed = rise({ levels: 1 });
    const stirred = (bending: number) => rise({ burner: { ...room.burner!, bending } });
    expect(Math.abs(stirred(20) / mixed - 1)).toBeLessThan(0.5 * Math.abs(stirred(1) / mixed - 1));
  });

  it('changes nothing suddenly as the fire grows', () => {
    const { network, column } = buildRoom(room);
    const top = (heat: number) => steadyRoom(network, heat).gases[column[4]];
    const readings = Array.from({ length: 21 }, (_, i) => top(1e3 + 250 * i));
    const steps = readings.slice(1).map((reading, i) => reading - readings[i]);
    for (let i = 1; i < steps.length; i++) expect(Math.abs(steps[i] - steps[i - 1])).toBeLessThan(0.15 * steps[i - 1]);
  });

  it('has the slopes of its balances as differences give them (derived)', () => {
    const { network } = buildRoom(room);
    const solver = new QuasiSteadySolver(new Balances(new Model(network)));
    const { balances, model } = solver;
    const x = solver.burningState(POWER);
    const demand = { mode: 'release', heat: POWER } as const;
    expect(solver.solve(x, demand).converged).toBe(true);
    const n = model.size;
    const m = new Float64Array(n * n);
    balances.evaluate(x, demand);
    balances.jacobian(x, demand, m, 0, 1);
    const at = (unknown: number, off: number) => {
      const y = x.slice();
      y[unknown] += off;
      balances.evaluate(y, demand);
      return balances.algebraic.slice();
    };
    // gas of the fire's own layer and of the one above it, and the fire
    for (const [unknown, step] of [
      [model.gas, 1e-3],
      [model.gas + 1, 1e-3],
      [model.fire, 1],
    ]) {
      const [high, low] = [at(unknown, step), at(unknown, -step)];
      for (let z = 0; z < model.zoneCount; z++) {
        const difference = (high[model.gasRow + z] - low[model.gasRow + z]) / (2 * step);
        const slope = -m[(model.gas + z) * n + unknown];
        expect(Math.abs(slope - difference)).toBeLessThan(0.02 * Math.max(1, Math.abs(difference)));
      }
    }
  });
});

describe('a firebox in layers', () => {
  it.each(['plain-24.yaml', 'insulated-upright.yaml'])('closes its heat in %s, hot over cold', (name) => {
    const { steady, balance } = estimate(exampleDesign(name), { resolution: { ...DEFAULT_RESOLUTION, firebox: 5 } });
    expect(balance.energyError).toBeLessThan(1e-3);
    const { layers } = steady!.stations.find((station) => station.name === 'firebox')!;
    expect(layers).toHaveLength(5);
    expect(layers.at(-1)!.gas_K).toBeGreaterThan(layers[0].gas_K + 30);
  });
});
