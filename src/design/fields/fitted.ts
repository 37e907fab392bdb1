/** What measured cooks have told: the block of a fitted file or a design, with every fault of it. */
import * as z from 'zod';
import { nearestName } from '../../units/index.js';
import { choleskyFactor } from '../correlation.js';
import { FITTABLE, fittableField } from '../unknownInputs.js';
import type { Fitted, FittedLog, FittedValue } from '../fitted.js';
import { range } from '../ranges.js';
import type { Fields } from '../reading.js';
import { quantity } from './field.js';

/** What a fitted factor may be. */
export const FACTOR = range('number', '0.02', '50');
/** How long a log may be. */
export const LOG_TIME = range('time', '1 min', '1000 h');
/** How far a fit may be off a log. */
export const LOG_ERROR = range('temperatureDifference', '0 °F', '1000 °F');

const log = z
  .strictObject({
    name: z.string().min(1).max(200).meta({ description: 'File name of the log.' }),
    hash: z
      .string()
      .regex(/^[0-9a-f]{16}$/)
      .meta({ description: 'First 16 hex digits of the SHA-256 of its bytes, in quotes: it must not count twice.' }),
    design: z.string().max(200).meta({ description: 'Name of the design that it was measured on.' }),
    fitted: quantity(LOG_TIME, 'How much of it was fitted.').zod,
    readings: z.number().meta({ description: 'Temperature readings in that.' }),
    error: quantity(
      LOG_ERROR,
      'Root mean square error on the part that was not fitted; left out where nothing was held back.',
    ).zod.optional(),
  })
  .meta({ description: 'A log that the values rest on.' });

/** A value in the unit of its field, whichever that is. */
const value = (description: string) => z.union([z.number(), z.string()]).meta({ description });

const fittedValue = z
  .strictObject({
    field: z.string().meta({ description: 'The field of a design file that it is of.', examples: [...FITTABLE] }),
    is: value('The value itself, for a field that is off by an amount.').optional(),
    times: quantity(FACTOR, 'A factor on what a design gives, for a field that is off by a factor.').zod.optional(),
    low: value('Low end of its 90 % interval.'),
    high: value('High end of its 90 % interval.'),
    was: value('What the design had that the log was measured on.'),
  })
  .meta({ description: 'One fitted value.' });

const fittedBlock = z
  .strictObject({
    logs: z.array(log).min(1).max(100).meta({ description: 'The logs.' }),
    values: z.array(fittedValue).min(1).max(30).meta({ description: 'What they told.' }),
    correlation: z
      .array(z.array(z.number()).max(30))
      .max(30)
      .meta({ description: 'Correlation of the values with each other, a row a value, in their order.' }),
  })
  .meta({ description: 'What measured cooks have told.' });

const either = z.union([z.string(), fittedBlock]).meta({
  description: 'What measured cooks have told: the name of a fitted file, or the block itself.',
});

/** In a design; it is read by itself, since it may stand in a file of its own. */
export const fitted = { zod: either.optional() };

/** A fitted file. */
export const fittedFileSchema = z.strictObject({ fitted: fittedBlock });

/** With faults recorded in the block's reading, numbers may be NaN. */
export function resolveFitted(block: Fields): Fitted {
  const logs = block.list('logs').map(resolveLog);
  const values = block.list('values').map(resolveValue);
  refuseTwice(
    block,
    'logs',
    'hash',
    logs.map(({ hash }) => hash),
    'is the hash of two logs: one of them counts twice',
  );
  refuseTwice(
    block,
    'values',
    'field',
    values.map(({ path }) => path),
    'is fitted twice',
  );
  return { logs, values, correlation: resolveCorrelation(block, values.length) };
}

function resolveLog(log: Fields): FittedLog {
  const hash = log.text('hash', '');
  if (log.has('hash') && hash !== '' && !/^[0-9a-f]{16}$/.test(hash)) {
    log.fault('hash', {
      code: 'wrong-type',
      message: 'is no hash of a log',
      allowed: '16 hex digits, 0-9 and a-f, in quotes',
    });
  }
  const raw = log.raw('readings');
  const readings = typeof raw === 'number' ? raw : NaN;
  if (readings < 0 || !(Number.isInteger(readings) || Number.isNaN(readings))) {
    log.fault('readings', { code: 'out-of-range', message: 'is no number of readings', allowed: '0, 1, 2 ...' });
  }
  return {
    name: log.text('name', ''),
    hash,
    design: log.text('design', ''),
    fitted_s: log.required('fitted', LOG_TIME),
    readings,
    error_K: log.has('error') ? log.required('error', LOG_ERROR) : null,
  };
}

function resolveValue(fields: Fields): FittedValue {
  const path = fields.text('field', '');
  const none = { path, scale: 'is' as const, value: NaN, low: NaN, high: NaN, was: NaN };
  const known = fittableField(path);
  if (!known) {
    if (fields.has('field')) {
      fields.fault('field', {
        code: 'unknown-name',
        message: 'is no field that a fit settles',
        allowed: FITTABLE.join(', '),
        nearest: nearestName(path, FITTABLE),
      });
    }
    return none;
  }
  const { scale, range } = known;
  const other = scale === 'is' ? 'times' : 'is';
  if (fields.has(other)) {
    fields.fault(other, {
      code: 'unknown-key',
      message: `does not fit ${path}`,
      allowed: scale === 'is' ? 'is: the value itself' : 'times: a factor on what a design gives',
      nearest: scale,
      atKey: true,
      value: null,
    });
    return none;
  }
  if (!fields.has(scale)) {
    fields.fault(scale, {
      code: 'missing',
      message: 'is missing',
      allowed: scale === 'is' ? `the value of ${path} itself` : `a factor on the ${path} that a design gives`,
      value: null,
    });
  }
  const read = (key: string) => fields.required(key, scale === 'is' ? range : FACTOR);
  const [value, low, high] = [read(scale), read('low'), read('high')];
  if (low > value || value > high) {
    fields.fault(low > value ? 'low' : 'high', {
      message: low > value ? 'lies above the value' : 'lies below the value',
      allowed: 'low <= value <= high',
    });
  }
  return { path, scale, value, low, high, was: fields.required('was', range) };
}

function refuseTwice(block: Fields, list: string, key: string, names: string[], message: string): void {
  names.forEach((name, i) => {
    if (name === '' || names.indexOf(name) === i) return;
    block.reading.fault([...block.path, list, i, key], { message, allowed: 'each once' });
  });
}

/** How far two numbers of a correlation that should be equal may lie apart: it is written to two decimals. */
const ROUNDING = 1e-6;

function resolveCorrelation(block: Fields, count: number): number[][] {
  const raw = block.raw('correlation');
  if (!Array.isArray(raw)) return [];
  const rows: number[][] = raw.map((row: unknown) => (Array.isArray(row) ? row.map(Number) : []));
  const fault = (at: number[], message: string, allowed: string): number[][] => {
    block.reading.fault([...block.path, 'correlation', ...at], { message, allowed });
    return [];
  };
  const square = `a row for each of the ${count} values, ${count} numbers in each`;
  if (rows.length !== count) return fault([], `has ${counted(rows.length, 'row')}`, square);
  for (const [i, row] of rows.entries()) {
    if (row.length !== count) return fault([i], `has ${counted(row.length, 'number')}`, square);
    for (const [j, each] of row.entries()) {
      if (!(Math.abs(each) <= 1)) return fault([i, j], 'is no correlation', '-1 to 1');
      if (i === j && Math.abs(each - 1) > ROUNDING) return fault([i, j], 'stands on the diagonal', '1');
      if (j < i && Math.abs(each - rows[j][i]) > ROUNDING) {
        return fault([i, j], `is not what stands across the diagonal (${rows[j][i]})`, 'the same both ways');
      }
    }
  }
  if (!choleskyFactor(rows)) {
    return fault([], 'can’t be: values can’t go together like this', 'a positive definite correlation');
  }
  return rows;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
