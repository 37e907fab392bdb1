/** Runs the measured rooms and gathers what the report shows of them. Pure: texts of the tables in, numbers out. */
import type { CaseFault } from '../readCases.js';
import { BASE, BURNING_IN_LAYERS } from './assumptions.js';
import { BOX_COLUMNS, boxTable } from './box.js';
import { CORRIDOR_COLUMNS, LAYERED, MIXED_CORRIDOR, runCorridor } from './corridor.js';
import { heatBalance, type HeatBalance } from './heatBalance.js';
import { readMeasured, type MeasuredRow } from './measured.js';
import { mechanismEffects, type MechanismEffect } from './mechanisms.js';
import { runSteckler, STECKLER_COLUMNS } from './steckler.js';
import { correctedRelease, measuredRises, releaseAsIs, runSteelRoom, STEEL_ROOM_COLUMNS } from './steelRoom.js';
import { countFlows, summarise, type FlowCount, type QuantityResult } from './summary.js';
import { bareRoomTables, corridorTables, stecklerTables, woolRoomTables, type SteelRoomRun } from './tables.js';

interface FireTiming {
  test: string;
  ignition: number;
  /** null: outlasts the table */
  shut: number | null;
  /** where the line through the plates' mean rises at 120 s and 180 s comes to nothing; null behind wool */
  platesDrawnBack: number | null;
}

/** All that the measured rooms show. */
export interface Validation {
  quantities: QuantityResult[];
  mechanisms: MechanismEffect[];
  fires: FireTiming[];
  balances: HeatBalance[];
  flowsWithinFifth: FlowCount;
}

function timing({ corrected }: SteelRoomRun): FireTiming {
  const { ignition, shut } = correctedRelease(corrected.map(({ row }) => row));
  const { row } = corrected[0];
  const at = (time: number) => {
    const moment = corrected.find((each) => each.row.number('t_s') === time)!;
    return measuredRises(moment.row, moment.areas).plateMean;
  };
  const [early, late] = [at(120), at(180)];
  return {
    test: row.text('test'),
    ignition,
    shut: Number.isFinite(shut) ? shut : null,
    platesDrawnBack: row.number('wool_mm') === 0 ? 120 - (60 * early) / (late - early) : null,
  };
}

const byTest = (rows: readonly MeasuredRow[], test: string) => rows.filter((row) => row.text('test') === test);

function runAll(rows: readonly MeasuredRow[]): SteelRoomRun {
  return {
    corrected: runSteelRoom(rows, correctedRelease(rows), BASE),
    asIs: runSteelRoom(rows, releaseAsIs(rows), BASE),
    layered: runSteelRoom(rows, correctedRelease(rows), BURNING_IN_LAYERS),
  };
}

/** Files of measurements, each with the name that faults carry. */
export interface MeasuredTables {
  steckler: { text: string; file: string };
  steelRoom: { text: string; file: string };
  corridor: { text: string; file: string };
  box: { text: string; file: string };
}

/** @returns faults of the tables instead, when they have any */
export function runValidation(tables: MeasuredTables): { validation: Validation } | { faults: CaseFault[] } {
  const steckler = readMeasured(tables.steckler.text, tables.steckler.file, STECKLER_COLUMNS);
  const steel = readMeasured(tables.steelRoom.text, tables.steelRoom.file, STEEL_ROOM_COLUMNS);
  const corridor = readMeasured(tables.corridor.text, tables.corridor.file, CORRIDOR_COLUMNS);
  const box = readMeasured(tables.box.text, tables.box.file, BOX_COLUMNS);
  const faults = [...steckler.faults, ...steel.faults, ...corridor.faults, ...box.faults];
  if (faults.length > 0) return { faults };
  const [bareRows, woolRows] = [byTest(steel.rows, 'C1'), byTest(steel.rows, 'B1')];
  const [bare, wool] = [runAll(bareRows), runAll(woolRows)];
  const [rooms, inLayers] = [BASE, BURNING_IN_LAYERS].map((a) => steckler.rows.map((row) => runSteckler(row, a)));
  const [layered, mixed] = [LAYERED, MIXED_CORRIDOR].map((cut) => runCorridor(corridor.rows, BASE, cut));
  const burning = runCorridor(corridor.rows, BURNING_IN_LAYERS, LAYERED);
  const quantities = [
    ...stecklerTables(rooms, inLayers),
    ...bareRoomTables(bare),
    ...woolRoomTables(wool),
    ...corridorTables(corridor.rows, layered, mixed, burning),
    boxTable(box.rows),
  ].map(summarise);
  return {
    validation: {
      quantities,
      mechanisms: mechanismEffects({ steckler: steckler.rows, bare: bareRows, wool: woolRows }),
      fires: [bare, wool].map(timing),
      balances: bare.corrected
        .filter(({ row }) => row.number('t_s') >= 900 && row.number('t_s') <= 1500)
        .map((moment) => heatBalance(moment, BASE)),
      flowsWithinFifth: countFlows(quantities[0].rows, quantities[1].rows),
    },
  };
}
