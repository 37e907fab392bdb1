/**
 * The units of the trade, as one exact table.
 *
 * Factors are exact by definition (NIST SP 811, Appendix B): inch 25.4 mm, pound 0.45359237 kg, BTU(IT) 1055.05585262
 * J, mile 1609.344 m. Inch of water is the conventional one, 25.4 mm of water of 1000 kg/m3 at 9.80665 m/s2 = 249.08891
 * Pa. A quantity in SI is value x factor + offset (the offset is used by temperatures alone).
 */

import { settle } from './numbers.js';

/** What a quantity measures: it decides which units fit. */
export type Kind =
  | 'length'
  | 'plate'
  | 'area'
  | 'volume'
  | 'temperature'
  | 'temperatureDifference'
  | 'power'
  | 'energy'
  | 'mass'
  | 'massFlow'
  | 'volumeFlow'
  | 'energyPerMass'
  | 'density'
  | 'pressure'
  | 'speed'
  | 'time'
  | 'share'
  | 'perLength'
  | 'heatFlux'
  | 'pricePerMass'
  | 'pricePerArea'
  | 'number';

/** A unit: how it is spelled, and what makes SI of it. */
export interface UnitRow {
  /** spelling used in output and in messages */
  name: string;
  /** other spellings, compared without regard to case */
  also: readonly string[];
  factor: number;
  offset?: number;
  /** compare with regard to case: a capital changes the meaning (MJ, mJ) */
  exact?: boolean;
}

const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.45359237;
const BTU = 1055.05585262;
const HOUR = 3600;
const ZERO_CELSIUS = 273.15;
const GRAVITY = 9.80665;

const row = (name: string, factor: number, ...also: string[]): UnitRow => ({ name, factor, also });
const exact = (name: string, factor: number, ...also: string[]): UnitRow => ({ name, factor, also, exact: true });

const LENGTHS: UnitRow[] = [
  row('in', INCH, '"', "''", 'inch', 'inches', 'in.', 'ins'),
  row('ft', FOOT, "'", 'foot', 'feet', 'ft.'),
  row('mm', 1e-3, 'millimetre', 'millimetres', 'millimeter', 'millimeters'),
  row('cm', 1e-2, 'centimetre', 'centimetres', 'centimeter', 'centimeters'),
  row('m', 1, 'metre', 'metres', 'meter', 'meters'),
];

const MASSES: UnitRow[] = [
  row('lb', POUND, 'lbs', 'lb.', 'lbm', 'pound', 'pounds', '#'),
  row('oz', POUND / 16, 'ounce', 'ounces'),
  row('kg', 1, 'kilogram', 'kilograms'),
  row('g', 1e-3, 'gram', 'grams'),
  row('US ton', 2000 * POUND, 'ton', 'tons', 'short ton', 'short tons'),
  row('tonne', 1000, 'tonnes', 'metric ton', 'metric tons'),
];

const AREAS: UnitRow[] = [
  row('in²', INCH ** 2, 'in^2', 'in2', 'sq in', 'sq. in.', 'sqin', 'square inch', 'square inches'),
  row('ft²', FOOT ** 2, 'ft^2', 'ft2', 'sq ft', 'sq. ft.', 'sqft', 'square foot', 'square feet'),
  row('mm²', 1e-6, 'mm^2', 'mm2'),
  row('cm²', 1e-4, 'cm^2', 'cm2', 'sq cm'),
  row('m²', 1, 'm^2', 'm2', 'sq m'),
];

/** What a price is for; the currency stands with the amount. */
const each = (units: readonly UnitRow[], names: readonly string[]): UnitRow[] =>
  names.map((name) => {
    const { factor, also } = units.find((unit) => unit.name === name)!;
    return row(`/${name}`, 1 / factor, ...also.map((other) => `/${other}`));
  });

/** Rows of every kind; the first two or three names are the ones a message offers. */
export const UNITS: Readonly<Record<Kind, readonly UnitRow[]>> = {
  length: [...LENGTHS, row('yd', 3 * FOOT, 'yard', 'yards')],
  plate: LENGTHS,
  area: AREAS,
  volume: [
    row('ft³', FOOT ** 3, 'ft^3', 'ft3', 'cu ft', 'cuft', 'cubic foot', 'cubic feet'),
    row('in³', INCH ** 3, 'in^3', 'in3', 'cu in', 'cubic inch', 'cubic inches'),
    row('gal', 231 * INCH ** 3, 'gallon', 'gallons', 'US gal'),
    row('L', 1e-3, 'litre', 'litres', 'liter', 'liters'),
    row('m³', 1, 'm^3', 'm3'),
  ],
  temperature: [
    { ...row('°F', 5 / 9, 'F', 'deg F', 'degF', 'fahrenheit'), offset: ZERO_CELSIUS - (32 * 5) / 9 },
    { ...row('°C', 1, 'C', 'deg C', 'degC', 'celsius'), offset: ZERO_CELSIUS },
    row('K', 1, 'kelvin'),
  ],
  temperatureDifference: [
    row('°F', 5 / 9, 'F', 'deg F', 'degF', 'fahrenheit'),
    row('°C', 1, 'C', 'deg C', 'degC', 'celsius'),
    row('K', 1, 'kelvin'),
  ],
  power: [
    row('BTU/h', BTU / HOUR, 'BTU/hr', 'BTU per hour', 'BTU an hour', 'BTUH', 'BTU/hour'),
    row('kW', 1e3, 'kilowatt', 'kilowatts'),
    row('kBTU/h', (1e3 * BTU) / HOUR, 'kBTU/hr'),
    exact('W', 1, 'w', 'watt', 'watts'),
  ],
  energy: [row('BTU', BTU), exact('MJ', 1e6), exact('kJ', 1e3, 'KJ', 'kj'), row('kWh', 3.6e6), exact('J', 1)],
  mass: MASSES,
  massFlow: [
    row('lb/h', POUND / HOUR, 'lb/hr', 'lbs/h', 'lbs/hr', 'lb/hour', 'lb an hour', 'lb per hour', 'pounds an hour'),
    row('kg/h', 1 / HOUR, 'kg/hr', 'kg/hour', 'kg an hour', 'kg per hour'),
    row('g/s', 1e-3),
    row('kg/s', 1),
  ],
  volumeFlow: [
    row('CFM', FOOT ** 3 / 60, 'ft³/min', 'ft^3/min', 'cu ft/min'),
    row('m³/h', 1 / HOUR, 'm^3/h'),
    row('m³/s', 1, 'm^3/s'),
  ],
  energyPerMass: [
    row('BTU/lb', 2326, 'BTU per lb', 'BTU/pound', 'BTU per pound'),
    exact('MJ/kg', 1e6),
    row('kWh/kg', 3.6e6),
    exact('kJ/kg', 1e3, 'KJ/kg', 'kj/kg'),
    exact('J/kg', 1),
  ],
  density: [
    row('lb/ft³', POUND / FOOT ** 3, 'lb/ft^3', 'lb/ft3', 'lb/cu ft', 'pcf'),
    row('kg/m³', 1, 'kg/m^3', 'kg/m3'),
  ],
  pressure: [
    row(
      'in H2O',
      INCH * 1000 * GRAVITY,
      'inH2O',
      'in. H2O',
      'in H₂O',
      'in WC',
      'inWC',
      'in. WC',
      'in wg',
      'inches of water',
      'inch of water',
      'in of water',
      'in water',
    ),
    exact('Pa', 1, 'pascal', 'pascals'),
    exact('hPa', 100),
    exact('kPa', 1000),
    exact('mbar', 100),
    row('mm H2O', 1e-3 * 1000 * GRAVITY, 'mmH2O'),
  ],
  speed: [
    row('mph', 1609.344 / HOUR, 'mi/h', 'miles per hour', 'miles an hour'),
    row('ft/min', FOOT / 60, 'fpm', 'feet per minute'),
    row('ft/s', FOOT, 'fps', 'feet per second'),
    row('m/s', 1),
    row('km/h', 1000 / HOUR, 'kmh', 'kph', 'km/hr'),
    row('kn', 1852 / HOUR, 'kt', 'knot', 'knots'),
  ],
  time: [
    row('min', 60, 'm', 'mins', 'minute', 'minutes'),
    row('h', HOUR, 'hr', 'hrs', 'hour', 'hours'),
    row('s', 1, 'sec', 'secs', 'second', 'seconds'),
    row('d', 86400, 'day', 'days'),
  ],
  share: [row('%', 0.01, 'percent', 'per cent', 'pct')],
  perLength: [
    row('per m', 1, '1/m', '/m', 'm^-1', 'per metre', 'per meter'),
    row('per ft', 1 / FOOT, '1/ft', '/ft', 'ft^-1', 'per foot'),
  ],
  heatFlux: [
    exact('W/m²', 1, 'W/m^2', 'W/m2'),
    exact('kW/m²', 1e3, 'kW/m^2', 'kW/m2'),
    row('BTU/(h ft²)', BTU / HOUR / FOOT ** 2, 'BTU/(h ft^2)', 'BTU/h/ft^2', 'BTU/h/ft2', 'BTU/(h ft2)', 'BTU/h ft²'),
  ],
  pricePerMass: each(MASSES, ['lb', 'kg', 'US ton', 'tonne']),
  pricePerArea: each(AREAS, ['ft²', 'm²']),
  number: [],
};

/** Kinds that may be written as a plain number: a share from 0 to 1, a count, a factor. */
export const PLAIN_KINDS: ReadonlySet<Kind> = new Set<Kind>(['share', 'number']);

/** Kinds that are money for something, in the currency that the builder writes. */
export const PRICE_KINDS: ReadonlySet<Kind> = new Set<Kind>(['pricePerMass', 'pricePerArea']);

/** What one unit of a kind is called in messages. */
export const KIND_NAMES: Readonly<Record<Kind, string>> = {
  length: 'a length',
  plate: 'a plate thickness',
  area: 'an area',
  volume: 'a volume',
  temperature: 'a temperature',
  temperatureDifference: 'a temperature difference',
  power: 'a heat rate',
  energy: 'an amount of heat',
  mass: 'a weight',
  massFlow: 'a weight per hour',
  volumeFlow: 'a volume per minute',
  energyPerMass: 'a heat value per weight',
  density: 'a density',
  pressure: 'a pressure',
  speed: 'a speed',
  time: 'a time',
  share: 'a share',
  perLength: 'a number per length',
  heatFlux: 'a heat flow per area',
  pricePerMass: 'a price per weight',
  pricePerArea: 'a price per area',
  number: 'a number',
};

/** Units offered in a message for a kind, in the order of the table. */
export function unitsThatFit(kind: Kind): string[] {
  const names = UNITS[kind].map((unit) => unit.name);
  if (kind === 'plate') return [...names.slice(0, 1), 'ga', ...names.slice(1)];
  if (kind === 'power') return [...names, 'lb wood/h', 'kg wood/h'];
  if (PRICE_KINDS.has(kind)) return names.map((name) => `$${name}`);
  if (kind === 'share') return ['%', 'or a plain number from 0 to 1'];
  return names;
}

/** A number in a unit of the table in SI, the very number that its text reads as. */
export function siIn(kind: Kind, value: number, unit: string): number {
  const row = findUnit(kind, unit);
  if (!row) throw new RangeError(`'${unit}' is no unit of ${kind}`);
  return settle(value * row.factor + (row.offset ?? 0));
}

/** The row a written unit names, or undefined. */
export function findUnit(kind: Kind, written: string): UnitRow | undefined {
  const tidy = written.trim().replace(/\s+/g, ' ');
  const lower = tidy.toLowerCase();
  return UNITS[kind].find((unit) =>
    unit.exact
      ? unit.name === tidy || unit.also.includes(tidy)
      : unit.name.toLowerCase() === lower || unit.also.some((other) => other.toLowerCase() === lower),
  );
}
