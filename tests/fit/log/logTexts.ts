/** Made-up logs by formula: a pit that is lit, reaches its heat, is opened once for a minute and holds. */
import type { CookLog } from '../../../src/fit/log/log.js';
import { formatLogFaults, readLog, type LogFault } from '../../../src/fit/log/readLog.js';
import type { Design } from '../../../src/design/design.js';
import { designOf, PLAIN, UPRIGHT } from '../../design/designFiles.js';

export const DESIGN = designOf(PLAIN);
export const WITH_UPRIGHT = designOf(UPRIGHT);

export const STEP = 10;
export const ROWS = 1080;
export const HEADER = ['time [s]', 'fire end [°F]', 'middle [°F]', 'firebox steel [°F]', 'wood [lb]', 'door'];
/** Columns of HEADER that hold readings. */
export const READINGS = [1, 2, 3];
/** The door stands open for a minute from here [s]. */
export const DOOR = 6000;

/**
 * Fahrenheit at a time [s]: a rise of its own time constant, a slow swing, a fall at the door that recovers in minutes.
 */
function reading(time: number, top: number, rise: number, share: number): number {
  const since = time - DOOR;
  const fall = since < 0 ? 0 : share * (since < 60 ? since / 60 : Math.exp((60 - since) / 240));
  return 70 + top * (1 - Math.exp(-time / rise)) + (top / 40) * Math.sin(time / 700) - 70 * fall;
}

function rowAt(i: number): string[] {
  const time = STEP * i;
  return [
    String(time),
    reading(time, 205, 1500, 1).toFixed(1),
    reading(time, 185, 1800, 0.9).toFixed(1),
    reading(time, 420, 900, 0.05).toFixed(1),
    i % 270 === 0 ? '4.5' : '',
    time >= DOOR && time < DOOR + 60 ? 'open' : 'shut',
  ];
}

export const GOOD: readonly (readonly string[])[] = Array.from({ length: ROWS }, (_, i) => rowAt(i));

/** A good log's rows, to be changed. */
export function goodRows(): string[][] {
  return GOOD.map((row) => [...row]);
}

export function textOf(rows: readonly (readonly string[])[], header: readonly string[] = HEADER, mark = ','): string {
  return [header, ...rows].map((row) => row.join(mark)).join('\n') + '\n';
}

/** Some columns of a row, by their place in HEADER, with a new time if one is given. */
export function withTimes(timeOf: (seconds: number, i: number) => string, header = 'time'): string {
  return textOf(
    GOOD.map(([time, ...rest], i) => [timeOf(Number(time), i), ...rest]),
    [header, ...HEADER.slice(1)],
  );
}

export function logOf(text: string, design: Design = DESIGN): CookLog {
  const result = readLog(text, { fileName: 'cook.csv', design });
  if (result.faults) throw new Error(formatLogFaults(result.faults));
  return result.log;
}

export function faultsOf(text: string, design: Design = DESIGN): LogFault[] {
  const result = readLog(text, { fileName: 'cook.csv', design });
  if (!result.faults) throw new Error('the text was read without a fault');
  return result.faults;
}

export function note(log: CookLog, code: string, where?: string): CookLog['notes'][number] | undefined {
  return log.notes.find((each) => each.code === code && (where === undefined || each.where === where));
}

export const kelvin = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9 + 273.15;
