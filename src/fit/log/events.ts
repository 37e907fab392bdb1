/** What was done to the pit and what the weather did: wood, fire, vents, door, air, wind. */
import type { Design } from '../../design/design.js';
import { rangeOf } from '../../design/fields.js';
import { format, parseQuantity, type OtherUnits } from '../../units/index.js';
import type { Column } from './columns.js';
import type { CookLog, LogCurve, Stretch, WoodAdded } from './log.js';
import { readNumbers, type NumberStyle } from './numbers.js';
import type { Timeline } from './order.js';
import { readingsOf, type Bounds } from './readings.js';
import { counted, type Report } from './report.js';
import { looksLikeRunningTotal } from './runningTotal.js';
import type { LogTable } from './table.js';

/** All that reading wood, vents, doors and weather out of a table needs. */
export interface Source {
  table: LogTable;
  columns: readonly Column[];
  style: NumberStyle;
  timeline: Timeline;
  design: Design;
  otherUnits?: OtherUnits;
  report: Report;
}

/** More wood at once than this is a slipped unit: 200 lb, common practice, no source [kg]. */
const MOST_WOOD = 200 * 0.45359237;

const OPEN = /^(?:open|opened|1|y|yes|true|on)$/i;
const SHUT = /^(?:shut|closed?|0|n|no|false|off)$/i;

type Events = Pick<CookLog, 'wood' | 'fire' | 'air' | 'wind' | 'intakes' | 'damper' | 'door'>;

export function readEvents(source: Source): Events {
  const [air, wind] = [rangeOf('site.air'), rangeOf('site.wind')];
  const [open, fireHeat] = [rangeOf('firebox.intakes.open'), rangeOf('fire.heat')];
  return {
    wood: readWood(source),
    fire: curveOf(source, 'fire', { low: 0, high: fireHeat.max, kind: 'power', tellBlank: true }),
    air: curveOf(source, 'air', { low: air.min, high: air.max, kind: 'temperature', tellBlank: true }),
    wind: curveOf(source, 'wind', { low: wind.min, high: wind.max, kind: 'speed', tellBlank: true }),
    intakes: heldCurve(curveOf(source, 'intakes', { low: open.min, high: open.max, kind: 'share', tellBlank: false })),
    damper: heldCurve(curveOf(source, 'damper', { low: open.min, high: open.max, kind: 'share', tellBlank: false })),
    door: readDoor(source),
  };
}

function columnOfKind({ columns }: Source, kind: Column['kind']): Column | undefined {
  return columns.find((each) => each.kind === kind);
}

/** A quantity against time; null: no such column, or nothing in it. */
function curveOf(source: Source, kind: Column['kind'], bounds: Bounds): LogCurve | null {
  const { table, style, timeline, otherUnits, report } = source;
  const column = columnOfKind(source, kind);
  if (!column) return null;
  const numbers = readNumbers(table, column, style, otherUnits);
  // Wood per hour becomes heat by the design's own wood.
  if (isWoodRate(column, otherUnits)) numbers.si = numbers.si.map((rate) => rate * source.design.wood.heat);
  if (kind === 'intakes' || kind === 'damper') refusePercent(column, numbers.si, table, report);
  const { time_s, value } = readingsOf(column, numbers, timeline, bounds, table, report);
  return time_s.length === 0 ? null : { time_s, value };
}

function isWoodRate({ quantity, unit }: Column, otherUnits?: OtherUnits): boolean {
  if (quantity === 'massFlow') return true;
  if (quantity !== 'power' || unit === null) return false;
  const one = parseQuantity('power', `1 ${unit}`, { otherUnits });
  return one.ok && one.wood === true;
}

/** 50 under a header without a unit is a percentage that does not say so. */
function refusePercent(column: Column, si: Float64Array, table: LogTable, report: Report): void {
  if (column.unit !== null) return;
  const row = si.findIndex((share) => share > 1 && share <= 100);
  if (row < 0 || table.cells[row][column.index].includes('%')) return;
  report.fault({
    code: 'no-unit',
    line: table.lines[row],
    header: column.header,
    value: table.cells[row][column.index],
    message: 'has no unit, and is more than all open',
    allowed: 'a share from 0 to 1, or percent',
    nearest: `${column.header} [%]`,
  });
}

/** Only where the value changes. */
function heldCurve(curve: LogCurve | null): LogCurve | null {
  if (!curve) return null;
  const changes = curve.value.flatMap((value, i) => (i === 0 || value !== curve.value[i - 1] ? [i] : []));
  return { time_s: changes.map((i) => curve.time_s[i]), value: changes.map((i) => curve.value[i]) };
}

/** Wood that can't be read stops the reading: a fit without it would blame the pit for the heat. */
function readWood(source: Source): WoodAdded[] | null {
  const { table, style, timeline, otherUnits, report } = source;
  const column = columnOfKind(source, 'wood');
  if (!column) return null;
  const { si, state } = readNumbers(table, column, style, otherUnits);
  const wood: WoodAdded[] = [];
  const at = (row: number): { line: number; header: string; value: string } => ({
    line: table.lines[row],
    header: column.header,
    value: table.cells[row][column.index],
  });
  const used = new Set<number>();
  timeline.rows.forEach((rows, i) => {
    let mass = 0;
    for (const row of rows) {
      used.add(row);
      if (state[row] === 'unreadable') {
        report.fault({
          ...at(row),
          code: 'not-a-quantity',
          message: 'is no weight of wood that can be read',
          allowed: 'a weight, or blank or 0 for none',
        });
      } else if (si[row] < 0 || si[row] > MOST_WOOD) {
        report.fault({
          ...at(row),
          code: 'out-of-range',
          message: si[row] < 0 ? 'is less than no wood' : 'is more wood than is laid on at once',
          allowed: `0 lb to ${format('mass', MOST_WOOD)}`,
        });
      } else if (si[row] > 0) mass += si[row];
    }
    if (mass > 0) wood.push({ time_s: timeline.time_s[i], mass_kg: mass });
  });
  tellLostWood(column, si, used, table, report);
  if (looksLikeRunningTotal(wood.map(({ mass_kg }) => mass_kg))) {
    report.note({
      code: 'running-total',
      message:
        `This looks like a running total: it rises piece by piece, up to ${format('mass', Math.max(...wood.map(({ mass_kg }) => mass_kg)))}. ` +
        'Each cell is read as wood laid on at that time; give each piece by itself.',
      where: column.header,
      line: table.headerLine,
      count: wood.length,
    });
  }
  return wood;
}

/** Rows that are left out may have held wood. */
function tellLostWood(
  column: Column,
  si: Float64Array,
  used: ReadonlySet<number>,
  table: LogTable,
  report: Report,
): void {
  if (used.size === table.cells.length) return;
  const seen = new Set([...used].map((row) => table.cells[row].join('\u0000')));
  const lost = [...si.keys()].filter(
    (row) => si[row] > 0 && !used.has(row) && !seen.has(table.cells[row].join('\u0000')),
  );
  report.note({
    code: 'lost-wood',
    message: `${counted(lost.length, 'row')} that had to be left out held wood (first in line ${table.lines[lost[0]]}): it is missing from the fire.`,
    where: column.header,
    line: table.lines[lost[0]] ?? null,
    count: lost.length,
  });
}

function readDoor(source: Source): Stretch[] {
  const { table, timeline, report } = source;
  const column = columnOfKind(source, 'door');
  if (!column) return [];
  const stretches: Stretch[] = [];
  let opened: number | undefined;
  let unreadable = 0;
  let first: number | null = null;
  timeline.rows.forEach((rows, i) => {
    for (const row of rows) {
      const cell = table.cells[row][column.index];
      if (cell === '') continue;
      if (OPEN.test(cell)) opened ??= timeline.time_s[i];
      else if (SHUT.test(cell)) {
        if (opened !== undefined && timeline.time_s[i] > opened) {
          stretches.push({ from_s: opened, to_s: timeline.time_s[i] });
        }
        opened = undefined;
      } else if (unreadable++ === 0) first = table.lines[row];
    }
  });
  const end = timeline.time_s.at(-1) ?? 0;
  if (opened !== undefined && end > opened) stretches.push({ from_s: opened, to_s: end });
  report.note({
    code: 'unreadable-cell',
    message: `${counted(unreadable, 'cell')} that say neither open nor shut left out; the door stays as it was.`,
    where: column.header,
    line: first,
    count: unreadable,
    leftOut: 'readings',
  });
  return stretches;
}
