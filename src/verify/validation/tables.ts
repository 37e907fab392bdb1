/** Measured beside computed, row by row and quantity by quantity. */
import { QUANTITIES, type QuantityName, type ValidationRow, type ValidationTable } from './quantities.js';
import { corridorRows } from './corridor.js';
import { stecklerRows } from './steckler.js';
import { correctedRelease, measuredRises, type SteelRoomMoment } from './steelRoom.js';
import { AVERAGED_OVER } from './calorimeter.js';

/** A test of the steel room with both heat releases. */
export interface SteelRoomRun {
  corrected: readonly SteelRoomMoment[];
  asIs: readonly SteelRoomMoment[];
  /** with gas in layers, where that is shown beside */
  layered?: readonly SteelRoomMoment[];
}

/** Tables of the vent-flow rooms. */
export function stecklerTables(...args: Parameters<typeof stecklerRows>): ValidationTable[] {
  return Object.entries(stecklerRows(...args)).map(([name, rows]) => ({ ...QUANTITIES[name as QuantityName], rows }));
}

/** Why a moment is shown but not counted: the fire at it is not known well enough. '' when it is. */
function unsureFire(moment: SteelRoomMoment, run: SteelRoomRun): string {
  const { ignition, shut } = correctedRelease(run.corrected.map(({ row }) => row));
  const time = moment.row.number('t_s');
  if (time - AVERAGED_OVER / 2 < ignition) return 'the fire was lit within its averaging time';
  return time > shut ? 'the burner was shut before it' : '';
}

function rowsOf(
  run: SteelRoomRun,
  least: number,
  of: (moment: SteelRoomMoment, measured: ReturnType<typeof measuredRises>) => [measured: number, computed: number],
): ValidationRow[] {
  return run.corrected.flatMap((moment, n) => {
    const measuredAll = measuredRises(moment.row, moment.areas);
    const [measured, computed] = of(moment, measuredAll);
    if (Number.isNaN(measured)) return [];
    const [, computedAsIs] = of(run.asIs[n], measuredAll);
    const small = measured < least ? `a rise of less than ${least} K says nothing about a ratio` : '';
    const leftOut = unsureFire(moment, run) || small;
    const beside = run.layered ? { layered: of(run.layered[n], measuredAll)[1] } : {};
    const time_s = moment.row.number('t_s');
    return [{ id: moment.row.id, time_s, group: moment.row.id, measured, computed, computedAsIs, ...beside, leftOut }];
  });
}

/** Tables of the corridor behind a burn room. */
export function corridorTables(...args: Parameters<typeof corridorRows>): ValidationTable[] {
  return Object.entries(corridorRows(...args)).map(([name, rows]) => ({ ...QUANTITIES[name as QuantityName], rows }));
}

/** Tables of the steel room with bare plate. */
export function bareRoomTables(run: SteelRoomRun): ValidationTable[] {
  const table = (name: QuantityName, of: Parameters<typeof rowsOf>[2]): ValidationTable => ({
    ...QUANTITIES[name],
    rows: rowsOf(run, 0, of),
  });
  return [
    table('steelMean', (moment, measured) => [measured.plateMean, moment.plateMean]),
    ...(['ceiling', 'wallUpper', 'wallLower', 'floor'] as const).map((surface) =>
      table(surface, (moment, measured) => [measured.plates[surface], moment.plates[surface]]),
    ),
    table('gasMean', (moment, measured) => [measured.gasMean, moment.gas]),
    table('gasUpper', (moment, measured) => [measured.gasUpper, moment.gasUpper]),
    table('probes', (moment, measured) => [measured.probeMean, moment.probeMean]),
  ];
}

/** Tables of the steel room with wool inside. */
export function woolRoomTables(run: SteelRoomRun): ValidationTable[] {
  return [
    {
      ...QUANTITIES.woolProbes,
      rows: rowsOf(run, 0, (moment, measured) => [measured.probeMean, moment.probeMean]),
    },
    {
      ...QUANTITIES.woolSteel,
      rows: rowsOf(run, QUANTITIES.woolSteel.least, (moment, measured) => [measured.plateMean, moment.plateMean]),
    },
  ];
}
