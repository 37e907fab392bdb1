import { describe, expect, test } from 'vitest';
import { burnerFire, heaterFire } from '../../src/verify/rooms/burner.js';
import { bareNetwork } from '../../src/verify/rooms/bareNetwork.js';
import { areaMean, buildRoom, perSurface, surfaceMean, SURFACES, type RoomSpec } from '../../src/verify/rooms/room.js';
import { neutralHeightIn, roomThroughTime, steadyRoom } from '../../src/verify/rooms/solveRoom.js';
import { addWall, constantConductivity } from '../../src/verify/rooms/wall.js';

const spec: RoomSpec = {
  length: 3,
  width: 2,
  height: 2,
  vents: [{ width: 0.5, height: 1.5, sill: 0.25 }],
  discharge: 0.7,
  layers: [{ type: 'plate', thickness: 3e-3 }],
  fire: heaterFire(0.2),
  soot: 0,
  insideEmissivity: 0.95,
  outsideEmissivity: 0.9,
  innerConvection: 1,
  outdoors: { temperature: 293.15, pressure: 101325, wind: 0 },
};

describe('a gas burner', () => {
  test.each([
    // net heats of combustion and stoichiometric air of the two gases as any handbook prints them (from memory)
    ['methane', 50.0, 17.2],
    ['propane', 46.4, 15.7],
  ] as const)('of %s has its handbook heat and air', (gas, heat, air) => {
    const fire = burnerFire(gas, 0.2);
    expect(fire.heatValue / 1e6).toBeCloseTo(heat, 0);
    expect(fire.airPerFuel).toBeCloseTo(air, 0);
    // Huggett (1980): 13.1 MJ per kg of oxygen, within 5 %
    expect(Math.abs(fire.heatPerOxygen / 13.1e6 - 1)).toBeLessThan(0.05);
  });

  test('makes as much gas as it takes fuel, and its parts add up', () => {
    const { gasPerFuel, gasComposition: c } = burnerFire('propane', 0.3);
    expect(gasPerFuel).toBeCloseTo(1, 3);
    expect(c.N2 + c.O2 + c.CO2 + c.H2O).toBeCloseTo(1, 12);
    expect(c.O2).toBeLessThan(0);
  });
});

describe('a wall', () => {
  const common = {
    name: 'wall',
    area: 2,
    shape: 'vertical',
    length: 1,
    windLength: 1,
    insideEmissivity: 0.9,
    outsideEmissivity: 0.8,
  } as const;
  const board = {
    type: 'solid',
    thickness: 0.05,
    density: 200,
    specificHeat: 1000,
    conductivity: constantConductivity(0.1),
    slices: 10,
  } as const;
  const outdoors = { temperature: 293, pressure: 101325, wind: 0 };

  test.each([
    ['board alone', [board]],
    ['board inside plate', [board, { type: 'plate', thickness: 3e-3 }]],
    ['plate inside board', [{ type: 'plate', thickness: 3e-3 }, board]],
  ] as const)('of %s keeps its mass and its resistance', (_, layers) => {
    const network = bareNetwork(outdoors);
    const { inside, outside } = addWall(network, 0, { ...common, layers });
    const mass = network.nodes.reduce((sum, node) => sum + (node.material === 'constant' ? node.mass : 0), 0);
    expect(mass).toBeCloseTo(200 * 2 * 0.05, 9);
    const resistance = network.links.reduce((sum, link) => sum + 1 / (link.factor * 0.1), 0);
    expect(resistance).toBeCloseTo(0.05 / (0.1 * 2), 9);
    expect(network.faces.map((face) => face.node)).toEqual([inside, outside]);
  });
});

describe('a room', () => {
  test('takes openings from the half of the walls they lie in', () => {
    const { areas } = buildRoom(spec);
    expect(areas.ceiling).toBe(6);
    expect(areas.wallLower).toBeCloseTo(10 - 0.5 * 0.75, 9);
    expect(areas.wallUpper).toBeCloseTo(10 - 0.5 * 0.75, 9);
    expect(
      areaMean(
        areas,
        perSurface(() => 7),
      ),
    ).toBeCloseTo(7, 9);
  });

  test('steady, its heat and mass close, and the neutral plane lies in the opening', () => {
    const { network, column } = buildRoom({ ...spec, fire: burnerFire('methane', 0.2) });
    const state = steadyRoom(network, 50e3);
    const neutralHeight = neutralHeightIn(network, state, column);
    expect(Math.abs(state.wallLoss + state.gasLoss - 50e3)).toBeLessThan(0.05);
    const { heatValue, gasPerFuel } = burnerFire('methane', 0.2);
    expect(state.outflow - state.inflow).toBeCloseTo((gasPerFuel * 50e3) / heatValue, 8);
    expect(neutralHeight).toBeGreaterThan(0.25);
    expect(neutralHeight).toBeLessThan(1.75);
  });

  test('through time comes to its steady state', () => {
    const room = buildRoom(spec);
    const [, end] = roomThroughTime(room.network, { at: () => 20e3, breaks: [] }, [600, 20_000]);
    const steady = steadyRoom(room.network, 20e3);
    for (const surface of SURFACES) {
      const plate = (x: Float64Array) => surfaceMean(room.walls[surface], (nodes) => x[nodes.plate!]);
      expect(plate(end.x)).toBeCloseTo(plate(steady.x), 1);
    }
    expect(end.gas).toBeCloseTo(steady.gas, 1);
  });

  test('lets a fire jump without a trace of the steps before it', () => {
    const network = () => buildRoom(spec).network;
    const at = (time: number) => (time <= 100 ? 0 : 20e3);
    const [before, after] = roomThroughTime(network(), { at, breaks: [100] }, [99, 400]);
    const [late] = roomThroughTime(network(), { at: () => 20e3, breaks: [] }, [300]);
    expect(before.gas).toBeCloseTo(293.15, 3);
    expect(after.gas).toBeCloseTo(late.gas, 0);
  });

  test('has colder walls when its openings radiate', () => {
    const ceiling = (ventsRadiate: boolean) => {
      const room = buildRoom({ ...spec, ventsRadiate });
      const { x } = steadyRoom(room.network, 100e3);
      return surfaceMean(room.walls.ceiling, ({ plate }) => x[plate!]);
    };
    expect(ceiling(true)).toBeLessThan(ceiling(false) - 1);
  });
});
