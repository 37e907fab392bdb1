import { describe, expect, test } from 'vitest';
import { BASE } from '../../src/verify/validation/assumptions.js';
import { CORRIDOR_COLUMNS, LAYERED, runCorridor } from '../../src/verify/validation/corridor.js';
import { readMeasured } from '../../src/verify/validation/measured.js';
import { runSteckler, STECKLER_COLUMNS } from '../../src/verify/validation/steckler.js';
import { correctedRelease, runSteelRoom, STEEL_ROOM_COLUMNS } from '../../src/verify/validation/steelRoom.js';
import { summarise } from '../../src/verify/validation/summary.js';
import { bareRoomTables } from '../../src/verify/validation/tables.js';
import type { Validation } from '../../src/verify/validation/validation.js';
import { reference } from './referenceFiles.js';

const { steckler, steelRoom, corridor } = reference();
const rows = readMeasured(steelRoom.text, steelRoom.file, STEEL_ROOM_COLUMNS).rows;
const rowsOfTest = (name: string) => rows.filter((row) => row.text('test') === name);

/** What was run of the measured rooms is held against what was measured in them. */
export function expectValidated(validation: Validation): void {
  const of = (experiment: string, quantity: string) =>
    validation.quantities.find((each) => each.experiment.includes(experiment) && each.quantity.includes(quantity))!;

  describe('the vent-flow rooms', () => {
    test('every row is there with every quantity', () => {
      for (const quantity of ['flow out', 'flow in', 'neutral plane', 'gas rise, upper', 'gas rise, mean']) {
        expect(of('vent-flow', quantity).rows).toHaveLength(11);
      }
    });

    test('flows are within 20 % on at least 80 % of rows, each way', () => {
      const { rows: all, outflow, inflow } = validation.flowsWithinFifth;
      expect(outflow / all).toBeGreaterThanOrEqual(0.8);
      expect(inflow / all).toBeGreaterThanOrEqual(0.8);
    });

    test('the neutral plane is too low by 0.05 to 0.1 of the opening, and measured layers explain most of that', () => {
      const [base] = validation.mechanisms;
      const layers = validation.mechanisms.find((each) => each.name.startsWith('layering'))!;
      expect(base.neutral).toBeGreaterThan(-0.1);
      expect(base.neutral).toBeLessThan(-0.05);
      expect(Math.abs(layers.neutral!)).toBeLessThan(0.5 * Math.abs(base.neutral!));
    });

    test('repeats weigh as one case', () => {
      expect(of('vent-flow', 'flow out').statistics).toMatchObject({ n: 11, cases: 7 });
    });

    test('heat and mass close in each', () => {
      for (const row of readMeasured(steckler.text, steckler.file, STECKLER_COLUMNS).rows) {
        const { state } = runSteckler(row, BASE);
        expect(Math.abs(state.wallLoss + state.gasLoss - row.number('fire_kW') * 1e3)).toBeLessThan(0.1);
      }
    });
  });

  describe('the thin steel room', () => {
    test('every row is there', () => {
      expect(of('bare', 'steel rise, mean').rows).toHaveLength(10);
      expect(of('wool', 'plate thermometers').rows).toHaveLength(8);
    });

    test('its steel rises to 0.55 to 0.95 of the measured rise at 300 and 1200 s, under every single change', () => {
      for (const { name, steelAt300, steelAt1200 } of validation.mechanisms.filter(
        (each) => each.steelAt300 !== null,
      )) {
        expect(steelAt300, name).toBeGreaterThan(0.55);
        expect(steelAt300, name).toBeLessThan(0.9);
        expect(steelAt1200, name).toBeGreaterThan(0.65);
        expect(steelAt1200, name).toBeLessThan(0.95);
      }
    });

    test('a plume that strikes its ceiling heats it by over a fifth more and no plate by more than 7 % less', () => {
      const own = rowsOfTest('C1');
      const at1200 = (struckRoof: boolean) =>
        runSteelRoom(own, correctedRelease(own), { ...BASE, struckRoof }).find(({ row }) => row.id === 'sp-C1-1200')!;
      const [struck, free] = [at1200(true), at1200(false)];
      expect(struck.plates.ceiling / free.plates.ceiling).toBeGreaterThan(1.2);
      expect(struck.plateMean).toBeGreaterThan(free.plateMean);
      for (const surface of ['wallUpper', 'wallLower', 'floor'] as const) {
        expect(struck.plates[surface] / free.plates[surface]).toBeGreaterThan(0.93);
      }
    });

    test('is met as was asked of it: lower wall 0.9 to 1.1 of the measured, mean steel 0.72', () => {
      const bias = (quantity: string) => of('bare', quantity).statistics!.bias;
      expect(bias('steel rise, mean')).toBeGreaterThanOrEqual(0.72);
      expect(bias('steel rise, lower wall')).toBeGreaterThanOrEqual(0.9);
      expect(bias('steel rise, lower wall')).toBeLessThanOrEqual(1.1);
    });

    // asked, and not met since the doorway radiates: half a thousandth short (MODEL.md); this fails as well once it is met
    test.fails('has its ceiling at 0.65 of the measured', () => {
      expect(of('bare', 'steel rise, ceiling').statistics!.bias).toBeGreaterThanOrEqual(0.65);
    });

    test('has it there with nothing out of its doorway', () => {
      const own = rowsOfTest('C1');
      const corrected = runSteelRoom(own, correctedRelease(own), { ...BASE, doorRadiates: false });
      const rows = bareRoomTables({ corrected, asIs: corrected });
      const ceiling = summarise(rows.find(({ quantity }) => quantity === 'steel rise, ceiling')!).statistics!.bias;
      expect(ceiling).toBeGreaterThanOrEqual(0.65);
    });

    test('the calorimeter as it stands makes the early steel colder than the corrected one', () => {
      const early = of('bare', 'steel rise, mean').rows.filter(({ id }) => /0120|0180|0300/.test(id));
      expect(early).toHaveLength(3);
      for (const row of early) expect(row.computedAsIs).toBeLessThan(row.computed);
    });

    test('only what the fire leaves unsure is not counted, with the reason', () => {
      const { rows: all } = of('bare', 'steel rise, mean');
      const left = all.filter(({ leftOut }) => leftOut !== '').map(({ id }) => id);
      expect(left).toEqual(['sp-C1-0060', 'sp-C1-1800']);
    });

    test('was lit when the plates say', () => {
      const [bare] = validation.fires;
      expect(bare.platesDrawnBack).toBeGreaterThan(30);
      expect(bare.ignition).toBeGreaterThan(bare.platesDrawnBack!);
      expect(bare.shut).toBeGreaterThan(1700);
      expect(bare.shut).toBeLessThan(1735);
    });

    test('more slices in the wool move the plate thermometers by less than 1 %', () => {
      const own = rowsOfTest('B1');
      const probes = (slices: number) =>
        runSteelRoom(own, correctedRelease(own), BASE, slices).map((each) => each.probeMean);
      const [coarse, fine] = [probes(40), probes(80)];
      coarse.forEach((rise, n) => expect(Math.abs(rise / fine[n] - 1)).toBeLessThan(0.01));
    });

    test('as hot as measured, its walls would give off more than the fire leaves them', () => {
      expect(validation.balances.map((each) => each.time)).toEqual([900, 1200, 1500]);
      for (const each of validation.balances) {
        expect(each.wallsRadiate).toBeGreaterThan(each.released - each.convective);
        expect(Math.abs(each.modelWalls + each.modelGas - each.released) / each.released).toBeLessThan(0.06);
      }
    });
  });

  describe('the corridor behind a burn room', () => {
    const far = (quantity: string) => of('corridor', quantity).rows;

    test('layered, its lower gas is within 6 K of the measured at the far end, where mixed gas is 35 K off', () => {
      const rows = far('lower layer');
      expect(rows).toHaveLength(3);
      for (const { measured, computed, mixed } of rows) {
        expect(Math.abs(computed - measured)).toBeLessThan(6);
        expect(mixed! - measured).toBeGreaterThan(35);
      }
    });

    test('its upper gas is nearer to the measured than mixed gas is, and the edge within 0.25 m', () => {
      for (const { measured, computed, mixed } of far('upper layer at the far end')) {
        expect(Math.abs(computed - measured)).toBeLessThan(Math.abs(mixed! - measured));
      }
      for (const { measured, computed } of far('layer height'))
        expect(Math.abs(computed - measured)).toBeLessThan(0.25);
    });

    test('half of what rising gas takes in, or 0.7 of what sinks, moves it by less than 0.03 m and 3 %', () => {
      const { rows } = readMeasured(corridor.text, corridor.file, CORRIDOR_COLUMNS);
      const base = runCorridor(rows, BASE, LAYERED);
      for (const change of [{ entrainment: 0.5 }, { downflow: 0.7 }]) {
        runCorridor(rows, { ...BASE, ...change }, LAYERED).forEach(({ farEnd }, n) => {
          expect(Math.abs(farEnd.height - base[n].farEnd.height)).toBeLessThan(0.03);
          expect(Math.abs(farEnd.upper / base[n].farEnd.upper - 1)).toBeLessThan(0.03);
        });
      }
    });
  });

  describe('with layers where it burns', () => {
    const beside = (experiment: string, quantity: string) => of(experiment, quantity).layered!.bias!;

    test('the steel room is met as was asked of it: ceiling, walls, mean steel, upper gas', () => {
      expect(beside('bare', 'steel rise, ceiling')).toBeGreaterThanOrEqual(0.65);
      expect(beside('bare', 'steel rise, lower wall')).toBeGreaterThanOrEqual(0.9);
      expect(beside('bare', 'steel rise, lower wall')).toBeLessThanOrEqual(1.1);
      expect(beside('bare', 'steel rise, mean')).toBeGreaterThanOrEqual(0.72);
      expect(beside('bare', 'gas rise, upper')).toBeGreaterThanOrEqual(0.75);
      expect(beside('bare', 'gas rise, upper')).toBeLessThanOrEqual(1.1);
    });

    test('the neutral plane of the vent-flow rooms is within 0.03 of the opening', () => {
      const [base, layers] = ['as the tool', 'layers where it burns'].map((name) =>
        validation.mechanisms.find((each) => each.name.startsWith(name))!,
      );
      expect(Math.abs(layers.neutral!)).toBeLessThan(0.03);
      expect(Math.abs(base.neutral!)).toBeGreaterThan(0.05);
    });

    test('the corridor is within 0.15 m, 20 % and 6 K of the measured at its far end', () => {
      const far = (quantity: string) => of('corridor', quantity).rows;
      for (const { measured, layered } of far('layer height')) expect(Math.abs(layered! - measured)).toBeLessThan(0.15);
      for (const { measured, layered } of far('upper layer at the far end')) {
        expect(Math.abs(layered! / measured - 1)).toBeLessThan(0.2);
      }
      for (const { measured, layered } of far('lower layer')) expect(Math.abs(layered! - measured)).toBeLessThan(6);
    });

    test('gas under the roof of the firebox-sized box has lost more than twice the oxygen that mixed gas has', () => {
      const { rows: all } = of('box the size', 'oxygen');
      expect(all).toHaveLength(23);
      for (const { computed, layered, measured } of all) {
        expect(layered!).toBeGreaterThan(2 * computed);
        expect(Math.abs(layered! - measured)).toBeLessThan(Math.abs(computed - measured));
      }
    });
  });
}
