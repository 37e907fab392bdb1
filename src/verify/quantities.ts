/**
 * Quantities of a check's inputs and results, and the units a case file may write them in. Shop kinds come from the one
 * table of units; kinds that only physics needs are added here.
 */
import { findUnit, nearestName, readNumber, UNITS, type Kind, type UnitRow } from '../units/index.js';

type PhysicsKind =
  | 'conductivity'
  | 'coefficient'
  | 'specificHeat'
  | 'viscosity'
  | 'diffusivity'
  | 'heatPerLength'
  | 'molarEnergy'
  | 'massPerLength'
  | 'massPerArea'
  | 'pressureGradient';

/** What a case's number may measure: a kind of the shop or one of physics alone. */
export type CaseKind = Kind | PhysicsKind;

const row = (name: string, factor: number, ...also: string[]): UnitRow => ({ name, factor, also });

const POUND_FORCE = 0.45359237 * 9.80665;
const FOOT = 0.3048;

/** Rows that physics adds; the first of a physics kind is the SI unit. */
const ADDED: Readonly<Partial<Record<CaseKind, readonly UnitRow[]>>> = {
  conductivity: [row('W/(m K)', 1, 'W/m K', 'W/(m·K)')],
  coefficient: [row('W/(m2 K)', 1, 'W/(m² K)', 'W/m2 K')],
  specificHeat: [row('J/(kg K)', 1, 'J/kg K'), row('kJ/(kg K)', 1e3)],
  viscosity: [row('Pa s', 1, 'kg/(m s)')],
  diffusivity: [row('m2/s', 1, 'm²/s')],
  heatPerLength: [row('W/m', 1), row('kW/m', 1e3)],
  molarEnergy: [row('J/mol', 1), row('kJ/mol', 1e3)],
  massPerLength: [row('kg/m', 1), row('lb/ft', 0.45359237 / FOOT)],
  massPerArea: [row('kg/m2', 1, 'kg/m²'), row('lb/ft2', 0.45359237 / FOOT ** 2, 'lb/ft²')],
  pressureGradient: [row('Pa/m', 1), row('in H2O/ft', (0.0254 * 9806.65) / FOOT)],
  pressure: [
    row('psi', POUND_FORCE / 0.0254 ** 2, 'lb/in2'),
    row('lb/ft2', POUND_FORCE / FOOT ** 2, 'psf'),
    row('inHg', 3386.389),
    row('bar', 1e5),
    row('atm', 101325),
  ],
  power: [{ name: 'MW', also: [], factor: 1e6, exact: true }],
  density: [row('lb/ft2 per in', 0.45359237 / FOOT ** 2 / 0.0254)],
  share: [row('mass %', 0.01), row('vol %', 0.01)],
  number: [row('-', 1, '', 'kg/kg')],
};

/** SI unit that a bare number of a kind is taken in, and that the list of checks prints. */
const SI: Readonly<Record<CaseKind, string>> = {
  length: 'm',
  plate: 'm',
  area: 'm²',
  volume: 'm³',
  temperature: 'K',
  temperatureDifference: 'K',
  power: 'W',
  energy: 'J',
  mass: 'kg',
  massFlow: 'kg/s',
  volumeFlow: 'm³/s',
  energyPerMass: 'J/kg',
  density: 'kg/m³',
  pressure: 'Pa',
  speed: 'm/s',
  time: 's',
  share: 'share',
  perLength: '1/m',
  heatFlux: 'W/m²',
  pricePerMass: '$/kg',
  pricePerArea: '$/m²',
  number: '-',
  conductivity: 'W/(m K)',
  coefficient: 'W/(m2 K)',
  specificHeat: 'J/(kg K)',
  viscosity: 'Pa s',
  diffusivity: 'm2/s',
  heatPerLength: 'W/m',
  molarEnergy: 'J/mol',
  massPerLength: 'kg/m',
  massPerArea: 'kg/m2',
  pressureGradient: 'Pa/m',
};

/** The SI unit of a kind. */
export function siUnit(kind: CaseKind): string {
  return SI[kind];
}

const isShopKind = (kind: CaseKind): kind is Kind => kind in UNITS;

/** All unit names of a kind, for messages. */
export function unitNames(kind: CaseKind): string[] {
  const rows = [...(isShopKind(kind) ? UNITS[kind] : []), ...(ADDED[kind] ?? [])];
  return [...new Set([SI[kind], ...rows.map((each) => each.name)])].filter((name) => name !== '-');
}

/** A unit with its factor and offset to SI: value x factor + offset. */
export interface CaseUnit {
  factor: number;
  offset: number;
}

/**
 * Unit of a kind as a case file writes it; a power of ten before it counts (`1e-6 m2/s`).
 * @returns undefined when the unit does not fit the kind
 */
export function caseUnit(kind: CaseKind, written: string): CaseUnit | undefined {
  const scaled = /^(1e[-+]?\d+)\s+(.+)$/i.exec(written.trim());
  const name = scaled ? scaled[2] : written.trim();
  const scale = scaled ? Number(scaled[1]) : 1;
  if (name === SI[kind]) return { factor: scale, offset: 0 };
  const tidy = name.toLowerCase();
  const found =
    (isShopKind(kind) ? findUnit(kind, name) : undefined) ??
    ADDED[kind]?.find((each) =>
      [each.name, ...each.also].some((spelling) => (each.exact ? spelling === name : spelling.toLowerCase() === tidy)),
    );
  return found && { factor: scale * found.factor, offset: found.offset ?? 0 };
}

/** A quantity's value in SI, or what is wrong with it. */
type ReadValue = { ok: true; si: number } | { ok: false; problem: string };

/**
 * Input of a case: a number in the kind's SI unit, or text with a unit ("60 °F", "0.3 atm").
 */
export function readValue(kind: CaseKind, written: unknown): ReadValue {
  if (typeof written === 'number' && Number.isFinite(written)) return { ok: true, si: written };
  if (typeof written !== 'string') return { ok: false, problem: `must be a number in ${SI[kind]} or text with a unit` };
  const number = readNumber(written.trim());
  if (!number) return { ok: false, problem: 'does not begin with a number' };
  const unit = caseUnit(kind, number.rest.trim());
  if (!unit) {
    const near = nearestName(number.rest.trim(), unitNames(kind));
    return {
      ok: false,
      problem: `has no unit of ${unitNames(kind).join(', ')}${near ? `; did you mean ${near}?` : ''}`,
    };
  }
  return { ok: true, si: number.value * unit.factor + unit.offset };
}
