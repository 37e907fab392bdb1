import { format, type Kind, type UnitSystem } from '../units/index.js';

/** What an unknown is printed as, by its SI unit. */
const UNKNOWN_KINDS: Record<string, Kind> = {
  W: 'power',
  s: 'time',
  '1/m': 'perLength',
  'm/s': 'speed',
  m2: 'area',
  'J/kg': 'energyPerMass',
};

/** Shares that a builder says in percent. */
const IN_PERCENT: ReadonlySet<string> = new Set(['wood.moisture', 'fire.splits.charcoal']);

/** The value of an unknown with its unit; a plain number where it has none. */
export function sayUnknown(value: number, { path, unit }: { path: string; unit: string }, system: UnitSystem): string {
  const kind = IN_PERCENT.has(path) ? 'share' : UNKNOWN_KINDS[unit];
  return kind ? format(kind, value, system, kind === 'time' ? { unit: 'min' } : {}) : tidy(value);
}

function tidy(value: number): string {
  return String(Number(value.toPrecision(3)));
}
