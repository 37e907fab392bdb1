/**
 * SI to text, in shop units or SI.
 *
 * - `format(kind, si, system, options?)`: one quantity with its unit: `250 °F`, `5.05 lb/h`, `0.0035 in H2O`, `31,900
 *   BTU/h`, `29 min` (`110 s`, `7 min 40 s`, `1 h 35 min`), `24 in`, `1/4 in`; in SI `121 °C`, `2.29 kg/h`, `0.87 Pa`,
 *   `9.35 kW`, `610 mm`, `6.35 mm`.
 * - `formatBoth(kind, si, options?)`: shop units with SI in brackets: `250 °F (121 °C)`.
 * - `formatPlate(si)`: stock thickness: the fraction within 0.002 in of a sixteenth, the gauge where it is one, else mm
 *   and in.
 * - `unitOf(kind, system)` and `convert(kind, si, system, options?)`: unit name and plain number, for axes and tables.
 *
 * Numbers are rounded to what is known: three significant figures (`digits` changes that), temperatures to one degree.
 * A price is told to the cent: `$1.20/lb`. `unit` forces a unit of the kind's table (`{ unit: 'g/s' }` for air, `{
 * unit: 'ft' }` for altitude). null, NaN or an infinity prints as a dash, never as a number.
 */
import { gaugeNumbers, gaugeThickness } from './gauges.js';
import { findUnit, PRICE_KINDS, type Kind, type UnitRow } from './kinds.js';
import { withCurrency } from './price.js';

/** The shop's units (°F, in, lb) or SI. */
export type UnitSystem = 'shop' | 'si';

/** What may be other than usual about a printed quantity. */
export interface FormatOptions {
  /** significant figures, default 3 */
  digits?: number;
  /** a unit of the kind's table instead of the usual one */
  unit?: string;
  /** of a price */
  currency?: string;
}

type SystemUnits = Readonly<Record<UnitSystem, string>>;

const USUAL: Readonly<Record<Exclude<Kind, 'number'>, SystemUnits>> = {
  length: { shop: 'in', si: 'mm' },
  plate: { shop: 'in', si: 'mm' },
  area: { shop: 'in²', si: 'cm²' },
  volume: { shop: 'ft³', si: 'L' },
  temperature: { shop: '°F', si: '°C' },
  temperatureDifference: { shop: '°F', si: 'K' },
  power: { shop: 'BTU/h', si: 'kW' },
  energy: { shop: 'BTU', si: 'MJ' },
  mass: { shop: 'lb', si: 'kg' },
  massFlow: { shop: 'lb/h', si: 'kg/h' },
  volumeFlow: { shop: 'CFM', si: 'm³/h' },
  energyPerMass: { shop: 'BTU/lb', si: 'MJ/kg' },
  density: { shop: 'lb/ft³', si: 'kg/m³' },
  pressure: { shop: 'in H2O', si: 'Pa' },
  speed: { shop: 'mph', si: 'm/s' },
  time: { shop: 'min', si: 'min' },
  share: { shop: '%', si: '%' },
  perLength: { shop: 'per ft', si: 'per m' },
  heatFlux: { shop: 'BTU/(h ft²)', si: 'W/m²' },
  pricePerMass: { shop: '/lb', si: '/kg' },
  pricePerArea: { shop: '/ft²', si: '/m²' },
};

const DASH = '–';
const INCH = 0.0254;

function row(kind: Kind, si: number, system: UnitSystem, options: FormatOptions): UnitRow | undefined {
  if (kind === 'number') return undefined;
  const name = options.unit ?? largerUnit(kind, Math.abs(si), system) ?? USUAL[kind][system];
  const found = findUnit(kind, name);
  if (!found) throw new RangeError(`'${name}' is no unit of ${kind}`);
  return found;
}

/** Where the usual unit would give an unhandy number. */
function largerUnit(kind: Kind, si: number, system: UnitSystem): string | undefined {
  if (kind === 'length' && system === 'si' && si >= 2) return 'm';
  if (kind === 'length' && system === 'shop' && si >= 240 * INCH) return 'ft';
  if (kind === 'area' && si >= 0.65) return system === 'si' ? 'm²' : 'ft²';
  if (kind === 'volume' && system === 'si' && si >= 1) return 'm³';
  if (kind === 'power' && system === 'si' && si < 100) return 'W';
  if (kind === 'time' && si < SHORT) return 's';
  return undefined;
}

/** The plain number in the unit that `unitOf` names, unrounded. */
export function convert(kind: Kind, si: number, system: UnitSystem, options: FormatOptions = {}): number {
  const unit = kind === 'number' ? undefined : findUnit(kind, options.unit ?? USUAL[kind][system]);
  return unit ? (si - (unit.offset ?? 0)) / unit.factor : si;
}

/** Name of the unit a kind is shown in; axes and table heads take it. */
export function unitOf(kind: Kind, system: UnitSystem): string {
  return kind === 'number' ? '' : USUAL[kind][system];
}

/** Rounded to significant figures, with thousands commas; a value that is round as it stands keeps no closing zeros. */
function plain(value: number, digits: number): string {
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(digits));
  if (Math.abs(value - rounded) <= 1e-9 * Math.abs(value) && Math.abs(rounded) < 1e15 && Math.abs(rounded) >= 1e-6) {
    const [head, tail] = String(rounded).split('.');
    return `${head.replace(/\B(?=(\d{3})+$)/g, ',')}${tail ? `.${tail}` : ''}`;
  }
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(rounded))));
  const [whole, rest] = Math.abs(rounded).toFixed(Math.min(decimals, 12)).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${rounded < 0 ? '-' : ''}${grouped}${rest ? `.${rest}` : ''}`;
}

/** 24 in, 6 1/2 in, 1/4 in: inches as a fraction when they lie within 0.002 in of a sixteenth. */
function fractionalInches(metres: number): string | undefined {
  const inches = metres / INCH;
  const sixteenths = Math.round(inches * 16);
  if (sixteenths <= 0 || Math.abs(inches - sixteenths / 16) > 0.002) return undefined;
  const whole = Math.floor(sixteenths / 16);
  let [top, bottom] = [sixteenths % 16, 16];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const fraction = top > 0 ? `${top}/${bottom}` : '';
  return `${[whole > 0 ? String(whole) : '', fraction].filter(Boolean).join(' ')} in`;
}

/** Stock thickness: `1/4 in`, `11 ga`, else `0.354 in`. */
export function formatPlate(si: number, system: UnitSystem = 'shop'): string {
  if (!Number.isFinite(si)) return DASH;
  if (system === 'si') return `${Number((si * 1000).toFixed(2))} mm`;
  const inches = si / INCH;
  // Gauge first: 11 ga is 0.1196 in and no eighth, and no gauge lies within 0.0001 in of a sixteenth.
  const gauge = gaugeNumbers().find((each) => Math.abs((gaugeThickness(each) ?? 0) - si) < 0.0001 * INCH);
  if (gauge !== undefined) return `${gauge} ga`;
  return fractionalInches(si) ?? `${plain(inches, 3)} in`;
}

/** A length in inches as a design file takes it: `6 in`, `2-1/2 in`. */
export function inchText(si: number): string {
  return format('length', si).replace(/^(\d+) (\d+\/)/, '$1-$2');
}

/** Below these a time is told in seconds alone, with its seconds, in minutes, in hours and minutes [s]. */
const [SHORT, BRIEF, LONG, VERY_LONG] = [120, 600, 5400, 172800];

/**
 * The last digit that a time is told to [s]: a second, a minute from 10 min on, a tenth of an hour from two days on.
 */
export function timeStep(seconds: number): number {
  const size = Math.abs(seconds);
  if (size < BRIEF) return 1;
  if (size < VERY_LONG) return 60;
  return size < 360_000 ? 360 : 3600;
}

/**
 * A time in the one style of all texts: `110 s`, `7 min 40 s`, `29 min`, `1 h 35 min`, `52.3 h`.
 *
 * @param step its last digit [s], where it has to match that of others beside it
 */
export function formatTime(seconds: number, step = timeStep(seconds)): string {
  const size = Math.round(Math.abs(seconds) / step) * step;
  const sign = seconds < 0 && size > 0 ? '-' : '';
  if (size >= VERY_LONG && step > 60) return `${sign}${Number((size / 3600).toFixed(1))} h`;
  if (step < 60 && size < SHORT) return `${sign}${size} s`;
  const whole = Math.floor(size / 60);
  const hours = size >= LONG ? Math.floor(whole / 60) : 0;
  const [minutes, rest] = [whole - 60 * hours, size % 60];
  const told = [
    ...(hours > 0 ? [`${hours} h`] : []),
    ...(minutes > 0 || hours + rest === 0 ? [`${minutes} min`] : []),
    ...(rest > 0 ? [`${rest} s`] : []),
  ];
  return sign + told.join(' ');
}

/**
 * One quantity with its unit.
 *
 * @param si the value in SI of the kind (temperatures in K); null or non-finite prints a dash
 * @throws RangeError when `options.unit` is no unit of the kind
 * @example format('temperature', 394.26, 'shop') gives '250 °F'
 */
export function format(
  kind: Kind,
  si: number | null,
  system: UnitSystem = 'shop',
  options: FormatOptions = {},
): string {
  if (si === null || !Number.isFinite(si)) return DASH;
  const digits = options.digits ?? 3;
  if (kind === 'plate' && options.unit === undefined) return formatPlate(si, system);
  if (kind === 'length' && system === 'shop' && options.unit === undefined && si < 240 * INCH) {
    const fraction = fractionalInches(si);
    if (fraction) return fraction;
  }
  if (kind === 'time' && options.unit === undefined && options.digits === undefined) return formatTime(si);
  const unit = row(kind, si, system, options);
  if (!unit) return plain(si, digits);
  const value = (si - (unit.offset ?? 0)) / unit.factor;
  if (PRICE_KINDS.has(kind)) return `${withCurrency(price(value), options.currency ?? '$')}${unit.name}`;
  const text = kind === 'temperature' ? withCommas(Math.round(value)) : plain(value, digits);
  return `${text}${unit.name === '%' ? ' %' : ` ${unit.name}`}`;
}

/** To the cent, unless it is round, or a few cents alone. */
function price(amount: number): string {
  const cents = Math.round(100 * amount) / 100;
  if (cents < 0.1) return plain(amount, 2);
  return Number.isInteger(cents) ? withCommas(cents) : cents.toFixed(2);
}

function withCommas(value: number): string {
  return String(value === 0 ? 0 : value).replace(/\B(?=(\d{3})+$)/g, ',');
}

/**
 * Shop units with SI in brackets: `250 °F (121 °C)`; one of them alone where both read the same (minutes, percent). A
 * `unit` is the shop's.
 */
export function formatBoth(kind: Kind, si: number | null, { unit, ...options }: FormatOptions = {}): string {
  const shop = format(kind, si, 'shop', { ...options, unit });
  const metric = format(kind, si, 'si', options);
  return shop === metric ? shop : `${shop} (${metric})`;
}
