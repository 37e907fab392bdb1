import { describe, expect, it } from 'vitest';
import { FINISHES, INSULATION_ALIASES, INSULATIONS, STOCK_TUBES, WOODS } from '../../src/design/catalog/index.js';
import { gaugeThickness, PIPES } from '../../src/units/index.js';
import { layerConductivity } from '../../src/physics/insulation.js';
import { DRY_NET_HEAT, netHeatAsFired } from '../../src/physics/wood.js';

const MM = 1e-3;

describe('catalogs against print', () => {
  it.each([
    // published: US manufacturers standard gauge for sheet steel, in
    [3, 0.2391],
    [7, 0.1793],
    [8, 0.1644],
    [9, 0.1495],
    [10, 0.1345],
    [11, 0.1196],
    [12, 0.1046],
    [13, 0.0897],
    [14, 0.0747],
    [16, 0.0598],
    [18, 0.0478],
    [20, 0.0359],
    [22, 0.0299],
    [24, 0.0239],
  ])('gauge %s', (gauge, inches) => {
    expect(gaugeThickness(gauge)).toBeCloseTo(inches * 0.0254, 9);
  });

  it.each([
    // published: ASME B36.10M, Welded and Seamless Wrought Steel Pipe: outside diameter, wall by schedule, mm
    [3, 88.9, 'std', 5.49],
    [4, 114.3, 'std', 6.02],
    [5, 141.3, 'std', 6.55],
    [6, 168.3, 'std', 7.11],
    [8, 219.1, 'std', 8.18],
    [16, 406.4, '10', 6.35],
    [18, 457, '20', 7.92],
    [20, 508, '20', 9.53],
    [22, 559, 'std', 9.53],
    [24, 610, 'xs', 12.7],
    [26, 660, '10', 7.92],
    [28, 711, '20', 12.7],
    [30, 762, 'std', 9.53],
    [36, 914, 'xs', 12.7],
  ])('pipe %s', (nominal, diameter, schedule, wall) => {
    const pipe = PIPES.find((each) => each.nominal === nominal);
    expect(Math.abs((pipe?.diameter ?? 0) / MM - diameter)).toBeLessThanOrEqual(0.5);
    // millimetre walls are rounded from inch ones: .312 in is 7.925 mm
    expect(Math.abs((pipe?.walls[schedule] ?? 0) / MM - wall)).toBeLessThanOrEqual(0.0151);
  });

  it('finishes: emissivities of infrared instruments’ tables', () => {
    // published: FLIR manuals T559880 and T810253, Omega OS100, Raytek
    expect(FINISHES['black paint'].emissivity).toBe(0.92);
    expect(FINISHES['matt lacquer'].emissivity).toBe(0.97);
    expect(FINISHES.oxidised.emissivity).toBe(0.79);
    expect(FINISHES.rusted.emissivity).toBe(0.69);
    for (const row of Object.values(FINISHES)) {
      expect(row.emissivity > 0 && row.emissivity <= 1).toBe(true);
      if (row.maxTemperature !== undefined) expect(row.maxTemperature).toBeGreaterThan(400);
    }
  });

  it('insulation: conductivity at its rows, between them, below and above', () => {
    const fibre = INSULATIONS['ceramic fibre'];
    expect(layerConductivity(fibre.conductivity, 533.15)).toBeCloseTo(0.068, 9);
    expect(layerConductivity(fibre.conductivity, 811.15)).toBeCloseTo(0.098, 9);
    expect(layerConductivity(fibre.conductivity, 1089.15)).toBeCloseTo(0.141, 9);
    expect(layerConductivity(fibre.conductivity, 672.15)).toBeCloseTo(0.083, 9);
    // derived: linear below, 0.068 - (260 - 60) x 0.030 / 278
    expect(layerConductivity(fibre.conductivity, 333.15)).toBeCloseTo(0.068 - (200 * 0.03) / 278, 9);
    expect(layerConductivity(fibre.conductivity, 1400)).toBe(0.141);
    // published: ASHRAE Fundamentals (2013) ch. 26, mineral wool of 97.5 kg/m3; VDI Heat Atlas, fireclay brick at 600 °C
    expect(layerConductivity(INSULATIONS['mineral wool'].conductivity, 297.15)).toBeCloseTo(0.035, 9);
    expect(layerConductivity(INSULATIONS.firebrick.conductivity, 873.15)).toBeCloseTo(1.1, 9);
    for (const row of Object.values(INSULATIONS)) {
      for (let t = 220; t < 1600; t += 10) expect(layerConductivity(row.conductivity, t)).toBeGreaterThan(0.01);
    }
    for (const name of Object.values(INSULATION_ALIASES)) expect(INSULATIONS).toHaveProperty([name]);
  });

  it('woods: analyses that add up, net heat by moisture', () => {
    for (const [name, wood] of Object.entries(WOODS)) {
      const total = Object.values(wood.composition).reduce((a, b) => a + b, 0);
      expect(Math.abs(total - 1), name).toBeLessThan(1e-6);
    }
    // published: Gottlieb, in Babcock & Wilcox, Steam, Table 41: oak C 50.16, H 6.02 %
    expect(WOODS.oak.composition.carbon).toBeCloseTo(0.5016, 12);
    expect(WOODS.oak.composition.hydrogen).toBeCloseTo(0.0602, 12);
    // published: AIEL, Wood Fuels Handbook: 19.00, 15.79, 12.58, 10.44 MJ/kg at 0, 15, 30, 40 %
    expect(DRY_NET_HEAT).toBe(19e6);
    for (const [moisture, heat] of [
      [0, 19.0],
      [0.15, 15.79],
      [0.3, 12.58],
      [0.4, 10.44],
    ]) {
      expect(Math.abs(netHeatAsFired(moisture) / 1e6 / heat - 1)).toBeLessThan(0.005);
    }
  });

  it('stock tubes rise in size and have a bore', () => {
    const sizes = STOCK_TUBES.map((each) => each.diameter);
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
    for (const tube of STOCK_TUBES) expect(tube.diameter).toBeGreaterThan(4 * tube.wall);
  });
});
