/** A fitted file: what measured cooks told, as YAML that a builder can read and any design can name. */
import { stringify } from 'yaml';
import { lengthOf, plainText } from '../words/plainText.js';
import { unknownLabel } from '../words/unknownLabels.js';
import { choleskyFactor } from '../design/correlation.js';
import type { Design } from '../design/design.js';
import { fittableField } from '../design/unknownInputs.js';
import type { Fitted, FittedLog, FittedValue } from '../design/fitted.js';
import { FACTOR, LOG_ERROR, LOG_TIME } from '../design/fields/fitted.js';
import type { Range } from '../design/ranges.js';
import { convert, parseQuantity, type Kind } from '../units/index.js';

/** Units that values are written in, those of the trade in plain letters; numbers and shares have none. */
const UNIT: Partial<Record<Kind, string>> = {
  power: 'BTU/h',
  time: 'min',
  perLength: 'per m',
  area: 'in^2',
  energyPerMass: 'BTU/lb',
  temperatureDifference: '°F',
};

/**
 * The file, rounded to what is known: the reader gives the same back within that.
 *
 * @param design that it was fitted on
 * @throws RangeError when a path is none that a fit settles, or a correlation is no number
 */
export function fittedYaml({ logs, values, correlation }: Fitted, design: Design): string {
  const name = plainText(design.name, 80);
  const count = logs.length === 1 ? 'a measured cook' : `${logs.length} measured cooks`;
  const lines = values.map((value) => ({ text: flow(valueFields(value)), label: unknownLabel(value.path) }));
  const widest = Math.max(...lines.map(({ text }) => lengthOf(text)));
  return [
    `# What ${count} told, last on '${name}': estimates that no handbook settles, fitted to the log.`,
    '# A design takes it over with one line, this file beside it:',
    '#   fitted: NAME OF THIS FILE',
    "# 'is' takes the place of what the design has, where that is what it 'was' here; a number of the design's own stays.",
    "# 'times' multiplies what the design has. 'low' and 'high': with 9 chances in 10 it lies between them, if the model is right.",
    'fitted:',
    '  # hash: so that no log counts twice. error: on the part that was not fitted; none where nothing was held back.',
    '  logs:',
    ...logs.map((log) => `    - ${flow(logFields(log))}`),
    '  values:',
    ...lines.map(({ text, label }) => `    - ${text.padEnd(widest)}  # ${label}`),
    '  # How the values go together, in their order: near -1 or 1 the logs tell two of them apart only poorly.',
    '  correlation:',
    ...rounded(correlation).map((row) => `    - [${row.join(', ')}]`),
    '',
  ].join('\n');
}

function flow(fields: Record<string, string | number>): string {
  return stringify(fields, { collectionStyle: 'flow', lineWidth: 0 }).trim();
}

function logFields({ name, hash, design, fitted_s, readings, error_K }: FittedLog): Record<string, string | number> {
  return {
    name: plainText(name, 200) || 'a log without a name',
    hash,
    design: plainText(design, 200),
    fitted: fitted_s < 5400 ? written(LOG_TIME, fitted_s, 3) : written(LOG_TIME, fitted_s, 3, 'h'),
    readings,
    ...(error_K === null ? {} : { error: written(LOG_ERROR, error_K, 2) }),
  };
}

/** An interval narrower than this share of its value takes a digit more. */
const NARROW = 0.02;

function valueFields({ path, scale, value, low, high, was }: FittedValue): Record<string, string | number> {
  const field = fittableField(path);
  if (!field) throw new RangeError(`'${path}' is no field that a fit settles`);
  const range = scale === 'is' ? field.range : FACTOR;
  // all three alike, so that rounding keeps their order
  const digits = high - low > NARROW * Math.abs(value) ? 3 : 4;
  return {
    field: path,
    [scale]: written(range, value, digits),
    low: written(range, low, digits),
    high: written(range, high, digits),
    was: written(field.range, was, 4),
  };
}

/** A number with its unit as the reader takes it; with more digits where rounding would leave the range. */
function written(range: Range, si: number, digits: number, unit = UNIT[range.kind]): string | number {
  const { kind, min, max } = range;
  const value = unit === undefined ? si : convert(kind, si, 'shop', { unit });
  const number = Math.abs(value) < TINY ? 0 : Number(value.toPrecision(digits));
  const text = unit === undefined ? number : `${number} ${unit}`;
  const read = parseQuantity(kind, text);
  const inside = read.ok && read.si >= min && read.si <= max;
  return inside || digits >= 12 ? text : written(range, si, digits + 2, unit);
}

/** Below this a number is written as none. */
const TINY = 1e-6;
/** Decimals of a correlation, and most where fewer make it one that can't be. */
const DECIMALS = 2;
const MOST_DECIMALS = 6;
/** By so much values that nothing tells apart are drawn to each other less than wholly. */
const LESS = 0.999;

/** Rounded as far as it stays positive definite. */
function rounded(correlation: readonly (readonly number[])[]): number[][] {
  if (!correlation.flat().every(Number.isFinite)) throw new RangeError('a correlation is no number');
  let now = correlation.map((row, i) => row.map((each, j) => (i === j ? 1 : 0.5 * (each + correlation[j][i]))));
  for (;;) {
    for (let decimals = DECIMALS; decimals <= MOST_DECIMALS; decimals++) {
      const tried = now.map((row) => row.map((each) => Number(each.toFixed(decimals)) || 0));
      if (choleskyFactor(tried)) return tried;
    }
    now = now.map((row, i) => row.map((each, j) => (i === j ? 1 : LESS * each)));
  }
}
