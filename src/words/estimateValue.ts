import { format, type Kind, type UnitSystem } from '../units/index.js';

/** What an estimate is printed as, by its SI unit. */
const ESTIMATE_KINDS: Record<string, Kind> = {
  W: 'power',
  s: 'time',
  '1/m': 'perLength',
  'm/s': 'speed',
  m2: 'area',
  'J/kg': 'energyPerMass',
};

/** The value of an estimate with its unit; a plain number where it has none. */
export function sayEstimate(value: number, unit: string, system: UnitSystem): string {
  const kind = ESTIMATE_KINDS[unit];
  return kind ? format(kind, value, system, kind === 'time' ? { unit: 'min' } : {}) : tidy(value);
}

function tidy(value: number): string {
  return String(Number(value.toPrecision(3)));
}
