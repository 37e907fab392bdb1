/** What measured cooks have told: the block of a fitted file or a design to SI, with every fault of it. */
import { choleskyFactor } from './correlation.js';
import { FITTABLE, fittableField } from './estimateFields.js';
import type { Fitted, FittedLog, FittedValue } from './fitted.js';
import type { Fields } from './reading.js';

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
  const readings = log.has('readings') ? log.number('readings', NaN) : NaN;
  if (readings < 0 || !(Number.isInteger(readings) || Number.isNaN(readings))) {
    log.fault('readings', { code: 'out-of-range', message: 'is no number of readings', allowed: '0, 1, 2 ...' });
  }
  return {
    name: log.text('name', ''),
    hash,
    design: log.text('design', ''),
    fitted_s: log.required('fitted', 'logTime'),
    readings,
    error_K: log.has('error') ? log.required('error', 'logError') : null,
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
        nearest: fields.nearest(path, FITTABLE),
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
  const read = (key: string) => fields.required(key, scale === 'is' ? range : 'factor');
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
