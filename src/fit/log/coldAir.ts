/**
 * Outdoor air against a pit that is still cold: both thermometers then read the same, or one of them is in another
 * unit.
 */
import type { Design } from '../../design/design.js';
import { format, parseQuantity } from '../../units/index.js';
import type { Column } from './columns.js';
import type { LogCurve } from './log.js';
import type { Readings } from './readings.js';
import type { Report } from './report.js';

/**
 * A cold pit reads outdoor air within this [K] (estimate: a night's steel lags the morning by a few K, probes are off
 * by less).
 */
const SAME = 6;
/** So far apart they are not the same air [K]; no pit without a fire is so much colder than outdoors. */
const APART = 10;

/** Tells where the probes of a cold pit and outdoor air don't go together. */
export function tellColdAir(
  channels: readonly Readings[],
  air: LogCurve | null,
  column: Column | undefined,
  { site }: Design,
  report: Report,
): void {
  if (column && !air && report.notes.some(({ code, where }) => code === 'out-of-range' && where === column.header)) {
    report.note({
      code: 'air-unit',
      message: `Nothing in ${column.header} can be outdoor air, so that the design's is taken, ${format('temperature', site.air)}. Is its unit right?`,
      where: column.header,
      line: null,
      count: 1,
    });
    return;
  }
  const firsts = channels.map(({ value }) => value[0]).sort((a, b) => a - b);
  if (firsts.length === 0) return;
  const outdoors = air ? air.value[0] : site.air;
  // at least half of the probes must be on the one side of it: one that lies makes no weather
  const [low, high] = [firsts[(firsts.length - 1) >> 1], firsts[firsts.length >> 1]];
  const probes = outdoors - high > APART ? high : low;
  if (outdoors - high <= APART && low - outdoors <= APART) return;
  const read = format('temperature', outdoors);
  const cold = format('temperature', probes);
  const other = air && column ? inOtherUnit(outdoors, column.unit) : null;
  const at = { where: column?.header ?? 'log', line: channels[0].line[0], count: 1 };
  if (other && Math.abs(probes - other.value) < SAME) {
    report.note({
      ...at,
      code: 'air-unit',
      message: `It says ${read} outdoors where the probes begin at ${cold}: as ${other.unit} it would be just that. Is its unit right?`,
    });
  } else if (probes < outdoors) {
    const whose = air ? `${column!.header} says ${read}` : `the design has ${read}, and the log says nothing of it`;
    report.note({
      ...at,
      code: 'colder-than-air',
      message: `The probes begin at ${cold}, colder than outdoors: ${whose}. One of them is wrong.`,
    });
  }
}

/** What was written, read in the other of the two units. */
function inOtherUnit(kelvin: number, unit: string | null): { value: number; unit: string } | null {
  const zero = unit === null ? undefined : parseQuantity('temperature', `0 ${unit}`);
  if (!zero?.ok) return null;
  const [celsius, fahrenheit] = [273.15, 459.67 / 1.8];
  if (Math.abs(zero.si - celsius) < 0.01) return { value: (kelvin - celsius) / 1.8 + fahrenheit, unit: '°F' };
  if (Math.abs(zero.si - fahrenheit) < 0.01) return { value: 1.8 * kelvin - 459.67 + celsius, unit: '°C' };
  return null;
}
