/**
 * A builder's text to SI.
 *
 * The text is tokenised here, never evaluated: a number (fractions, mixed numbers, thousands commas), then a unit from
 * the table of the trade. What the table does not know goes, if the caller brings one, to a converter for any other
 * legal unit.
 */
import { nearestName } from './nearest.js';
import { gaugeNumbers, gaugeThickness, type GaugeTable } from './gauges.js';
import { findUnit, KIND_NAMES, PLAIN_KINDS, PRICE_KINDS, UNITS, unitsThatFit, type Kind } from './kinds.js';
import { readNumber, settle, tidyText, withDecimalPoint } from './numbers.js';
import { PIPES, scheduleKey, type PipeSize } from './pipe.js';
import { splitPrice } from './price.js';

/** Converts a number and a unit the table lacks into SI of the kind; undefined when it is no such unit. */
export type OtherUnits = (kind: Kind, value: number, unit: string) => number | undefined;

interface ParseOptions {
  /** which steel a gauge number means (default carbon) */
  gauges?: GaugeTable;
  /** may a length be a pipe by its nominal size (default yes)? */
  pipes?: boolean;
  otherUnits?: OtherUnits;
}

type Quantity =
  | {
      ok: true;
      /** SI value; for wood written per hour as a power: see `wood` */
      si: number;
      /** the text named a pipe: outside diameter is `si`, and its wall where it named one [m] */
      pipe?: { nominal: number; wall?: number };
      /** the text named a gauge: the table that it was read from */
      gauge?: GaugeTable;
      /** a power written as wood per hour: `si` is then kg/s of wood as fired */
      wood?: true;
      /** of a price: the currency's sign or letters as written; empty where it has none */
      currency?: string;
    }
  | {
      ok: false;
      code: 'no-unit' | 'unknown-unit' | 'not-a-quantity' | 'not-finite';
      /** one clause that follows the quoted value */
      problem: string;
      /** units or forms that fit */
      allowed: string;
      nearest?: string;
    };

type Fault = Extract<Quantity, { ok: false }>;

/** A compound is read as larger unit then smaller: 2 ft 6 in, 1 h 30 min, 2 lb 8 oz. */
const COMPOUNDS: Partial<Record<Kind, readonly [string, string][]>> = {
  length: [['ft', 'in']],
  time: [
    ['h', 'min'],
    ['min', 's'],
  ],
  mass: [['lb', 'oz']],
};

function fault(code: Fault['code'], kind: Kind, problem: string, nearest?: string): Fault {
  const allowed =
    kind === 'number'
      ? 'a plain number'
      : `${KIND_NAMES[kind]} in ${unitsThatFit(kind).join(', ').replace(', or', ' or')}`;
  return nearest === undefined ? { ok: false, code, problem, allowed } : { ok: false, code, problem, allowed, nearest };
}

/**
 * SI value of a written quantity.
 *
 * @param kind what the field holds
 * @param written the text or number of the file
 * @returns the SI value, or a fault that names the units that fit; never throws
 * @example parseQuantity('length', `2' 6 1/2"`) gives 0.7747 m
 */
export function parseQuantity(kind: Kind, written: string | number, options: ParseOptions = {}): Quantity {
  if (typeof written === 'number') return plainNumber(kind, written, String(written));
  if (written.length > 80) return fault('not-a-quantity', kind, 'is too long to be a quantity');
  const text = tidyText(written);
  if (text === '') return fault('not-a-quantity', kind, 'is empty');
  if (PRICE_KINDS.has(kind)) return readPrice(kind, text);
  const number = readNumber(text);
  if (!number) {
    const comma = /^[-+]?[\d.,]*,\d/.test(text);
    return fault(
      'not-a-quantity',
      kind,
      comma ? 'has a comma where no thousands are parted (write 0.25, or 70,000)' : 'does not begin with a number',
      comma ? withDecimalPoint(text) : undefined,
    );
  }
  const unit = number.rest.replace(/^-(?=[a-z])/i, '').trim();
  if (unit === '') return plainNumber(kind, number.value, text);
  const si = withUnit(kind, number.value, unit, options);
  if (si.ok && !Number.isFinite(si.si)) return fault('not-finite', kind, 'is not a finite number');
  return si;
}

function readPrice(kind: Kind, text: string): Quantity {
  const price = splitPrice(text);
  if (!price) return fault('not-a-quantity', kind, 'is no price');
  const { amount, currency, unit } = price;
  const row = findUnit(kind, unit);
  const nearest = `${text.replace(/\s*(?:\/|\bper\b).*$/, '')}${UNITS[kind][0].name}`;
  if (unit === '') return fault('no-unit', kind, 'does not say what it is the price of', nearest);
  if (!row) return fault('unknown-unit', kind, `is for what does not fit here ('${unit}')`, nearest);
  return { ok: true, si: settle(amount * row.factor), currency };
}

function plainNumber(kind: Kind, value: number, text: string): Quantity {
  if (!Number.isFinite(value)) return fault('not-finite', kind, 'is not a finite number');
  if (PLAIN_KINDS.has(kind)) return { ok: true, si: settle(value) };
  if (PRICE_KINDS.has(kind)) return readPrice(kind, `$${text}`);
  return fault('no-unit', kind, 'has no unit', `${text} ${unitsThatFit(kind)[0]}`);
}

function withUnit(kind: Kind, value: number, unit: string, options: ParseOptions): Quantity {
  const row = findUnit(kind, unit);
  if (row) return { ok: true, si: settle(value * row.factor + (row.offset ?? 0)) };
  if (kind === 'length' || kind === 'plate') {
    const shelf = readGauge(kind, value, unit, options) ?? readPipe(kind, value, unit, options);
    if (shelf) return shelf;
  }
  if (kind === 'power') {
    const wood =
      /^(.+?)\s*(?:of )?wood\s*(\/\s*|per |an )(h|hr|hour)$/i.exec(unit) ??
      /^(lbs?|kg)()\/(hr?|hour) (?:of )?wood$/i.exec(unit);
    const mass = wood && findUnit('mass', wood[1]);
    if (mass) return { ok: true, si: settle((value * mass.factor) / 3600), wood: true };
  }
  const compound = readCompound(kind, value, unit);
  if (compound) return compound;
  const slip = readSlip(kind, value, unit);
  if (slip) return slip;
  const other = options.otherUnits?.(kind, value, unit);
  if (other !== undefined) return { ok: true, si: settle(other) };
  if (kind === 'number') return fault('unknown-unit', kind, `has a unit ('${unit}') where a plain number is due`);
  const spellings = UNITS[kind].flatMap((each) => [each.name, ...each.also]);
  // a single letter is as near to any other
  const near = unit.length > 1 ? nearestName(unit, spellings) : undefined;
  return fault(
    'unknown-unit',
    kind,
    `has a unit that does not fit here ('${unit}')`,
    near && findUnit(kind, near)?.name,
  );
}

function readGauge(kind: Kind, value: number, unit: string, options: ParseOptions): Quantity | undefined {
  if (!/^(ga|ga\.|gauge|gage)$/i.test(unit)) return undefined;
  if (kind !== 'plate') return fault('not-a-quantity', kind, `names a sheet gauge where ${KIND_NAMES[kind]} is due`);
  const table = options.gauges ?? 'carbon';
  const thickness = gaugeThickness(value, table);
  if (thickness !== undefined) return { ok: true, si: settle(thickness), gauge: table };
  const known = gaugeNumbers(table);
  const nearest = known.reduce(
    (best, each) => (Math.abs(each - value) < Math.abs(best - value) ? each : best),
    known[0],
  );
  return {
    ok: false,
    code: 'not-a-quantity',
    problem: `is no ${table} sheet gauge`,
    allowed: `gauges ${known.join(', ')}`,
    nearest: `${nearest} ga`,
  };
}

function readCompound(kind: Kind, value: number, unit: string): Quantity | undefined {
  for (const [large, small] of COMPOUNDS[kind] ?? []) {
    const largeRow = UNITS[kind].find((each) => each.name === large);
    const smallRow = UNITS[kind].find((each) => each.name === small);
    const parts = /^([^\d]+?)\s*-?\s*((?:\d|\.\d).*)$/.exec(unit);
    if (!parts || !largeRow || !smallRow || findUnit(kind, parts[1]) !== largeRow) continue;
    const second = readNumber(parts[2]);
    if (!second || findUnit(kind, second.rest.trim()) !== smallRow || second.value < 0) continue;
    const ratio = Math.round(largeRow.factor / smallRow.factor);
    const sign = value < 0 ? -1 : 1;
    return { ok: true, si: settle((value * ratio + sign * second.value) * smallRow.factor) };
  }
  return undefined;
}

/** Numbers in other people's ways: clocks, and thousands parted by a space. */
function readSlip(kind: Kind, value: number, unit: string): Fault | undefined {
  const clock = kind === 'time' ? /^:([0-5]\d)(?::[0-5]\d)?$/.exec(unit) : null;
  if (clock) {
    const nearest = Number.isInteger(value) && value < 24 ? `${value} h ${Number(clock[1])} min` : undefined;
    return fault('not-a-quantity', kind, 'is written as on a clock, which may mean hours or minutes', nearest);
  }
  const spaced = /^(\d{3}(?!\d).*)$/.exec(unit);
  if (!spaced || !Number.isInteger(value)) return undefined;
  return fault('not-a-quantity', kind, 'has a space inside its number', `${value},${spaced[1]}`);
}

function readPipe(kind: Kind, value: number, unit: string, options: ParseOptions): Quantity | undefined {
  const match = /^(?:(in|inch|"|mm) )?(?:nps )?pipe\b\s*,?\s*(.*)$/i.exec(unit.replace(/^"\s*/, '" '));
  if (!match) return undefined;
  const misplaced = `names a pipe where ${KIND_NAMES[kind]} is due`;
  if (kind === 'plate') {
    return { ok: false, code: 'not-a-quantity', problem: misplaced, allowed: '1/4 in, 6 mm, 11 ga ...' };
  }
  if (options.pipes === false) return fault('not-a-quantity', kind, misplaced);
  const size = PIPES.find((each) => each.nominal === value);
  if (!size || match[1]?.toLowerCase() === 'mm') {
    return {
      ok: false,
      code: 'not-a-quantity',
      problem: 'is no pipe size of ASME B36.10M that is listed',
      allowed: `${PIPES.map((each) => each.nominal).join(', ')} in pipe`,
    };
  }
  return pipeWall(size, match[2], options.gauges);
}

function pipeWall(size: PipeSize, written: string, gauges?: GaugeTable): Quantity {
  const pipe = (wall?: number, gauge?: GaugeTable): Quantity => ({
    ok: true,
    si: settle(size.diameter),
    pipe: wall === undefined ? { nominal: size.nominal } : { nominal: size.nominal, wall: settle(wall) },
    ...(gauge ? { gauge } : {}),
  });
  if (written === '') return pipe();
  const key = scheduleKey(written);
  if (key !== undefined && size.walls[key] !== undefined) return pipe(size.walls[key]);
  const own = key === undefined ? parseQuantity('plate', written.replace(/\s*\bwall$/i, ''), { gauges }) : undefined;
  if (own?.ok) return pipe(own.si, own.gauge);
  return {
    ok: false,
    code: 'not-a-quantity',
    problem: `names no wall of ${size.nominal} in pipe ('${written}')`,
    allowed: Object.keys(size.walls)
      .map((each) => (each === 'std' ? 'standard wall' : each === 'xs' ? 'extra strong' : `schedule ${each}`))
      .concat(`or a wall of its own (${size.nominal} in pipe, 1/4 in wall)`)
      .join(', '),
  };
}
