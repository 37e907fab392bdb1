/**
 * Reads a CSV of cases against the registry. Every fault of the file is gathered, with its line and what would be
 * right.
 */
import { parse } from 'csv-parse/sync';
import { nearestName } from '../units/index.js';
import { listed } from '../units/listed.js';
import { mayBeLeftOut, type Check, type ChoiceInput, type Input, type RecordsInput, type Value } from './check.js';
import { readExpected, readTolerance, TOLERANCE_FORMS, type Expected, type Tolerance } from './expectation.js';
import { caseUnit, readValue, unitNames, type CaseUnit } from './quantities.js';

/** Columns a case file must have; `quantity`, a phrase for the report, may be added. */
export const CASE_COLUMNS = [
  'id',
  'check',
  'inputs',
  'expected',
  'unit',
  'tolerance',
  'kind',
  'source',
  'known',
] as const;

const KINDS = ['published', 'derived'] as const;
type CaseSource = (typeof KINDS)[number];

/** A case ready to run. */
export interface Case {
  id: string;
  file: string;
  line: number;
  /** what is computed, in words */
  quantity: string;
  /** '' when the tool has nothing to compute: a figure shown for information */
  check: string;
  inputs: Record<string, Value>;
  expected: Expected;
  unit: string;
  scale: CaseUnit;
  tolerance: Tolerance;
  kind: CaseSource;
  source: string;
  /** published | recomputed | memory, as the table it came from states */
  known: string;
}

/** What is wrong with a row of a file of cases. */
export interface CaseFault {
  file: string;
  line: number;
  id: string;
  field: string;
  message: string;
}

type Report = (field: string, message: string) => void;

const suggestion = (written: string, names: readonly string[]): string => {
  const near = nearestName(written, names);
  return near ? `; did you mean '${near}'?` : '';
};

/**
 * @param text contents of the CSV
 * @param file name for messages
 * @param registry checks by name
 */
export function readCases(
  text: string,
  file: string,
  registry: ReadonlyMap<string, Check>,
): { cases: Case[]; faults: CaseFault[] } {
  const faults: CaseFault[] = [];
  const rows = readRows(text, file, faults);
  const cases: Case[] = [];
  const seen = new Map<string, number>();
  for (const { line, record } of rows) {
    const before = faults.length;
    const id = record.id ?? '';
    const report: Report = (field, message) => faults.push({ file, line, id, field, message });
    if (id === '') report('id', 'is empty: every case needs a name of its own');
    const first = seen.get(id);
    if (first !== undefined) report('id', `'${id}' stands on line ${first} already`);
    seen.set(id, line);
    const ready = readCase(record, registry, report);
    if (ready && faults.length === before) cases.push({ id, file, line, ...ready });
  }
  return { cases, faults };
}

interface Row {
  line: number;
  record: Record<string, string>;
}

function readRows(text: string, file: string, faults: CaseFault[]): Row[] {
  const wrong = (line: number, message: string): Row[] => {
    faults.push({ file, line, id: '', field: '', message });
    return [];
  };
  let parsed: { info: { lines: number }; record: string[] }[];
  try {
    parsed = parse(text, { bom: true, info: true, skip_empty_lines: true, trim: true }) as unknown as typeof parsed;
  } catch (error) {
    const { lines, message } = error as { lines?: number; message: string };
    return wrong(lines ?? 1, `is not a CSV table: ${message}`);
  }
  if (parsed.length === 0) return wrong(1, `is empty: the first line names the columns ${CASE_COLUMNS.join(', ')}`);
  const header = parsed[0].record;
  const missing = CASE_COLUMNS.filter((column) => !header.includes(column));
  if (missing.length > 0) {
    return wrong(
      1,
      `lacks the column${missing.length > 1 ? 's' : ''} ${missing.join(', ')}; it has ${header.join(', ')}`,
    );
  }
  // a quoted cell may hold line breaks: a record begins on the line after the one before it ended
  return parsed.slice(1).map(({ record }, n) => ({
    line: parsed[n].info.lines + 1,
    record: Object.fromEntries(header.map((column, c) => [column, record[c] ?? ''])),
  }));
}

function readCase(
  record: Record<string, string>,
  registry: ReadonlyMap<string, Check>,
  report: Report,
): Omit<Case, 'id' | 'file' | 'line'> | undefined {
  const { check: name, unit } = record;
  const check = registry.get(name);
  const expected = readExpected(record.expected);
  if (!expected) report('expected', `'${record.expected}' must be a number, a range a..b, or a bound > a or < a`);
  const kind = KINDS.find((each) => each === record.kind);
  if (!kind)
    report('kind', `'${record.kind}' must be ${listed(KINDS, Infinity, 'or')}${suggestion(record.kind, KINDS)}`);
  if (record.source === '') report('source', 'is empty: a value without a source checks nothing');
  const kelvin = check?.result === 'temperature' || check?.result === 'temperatureDifference';
  const scale = check ? caseUnit(check.result, unit) : { factor: 1, offset: 0 };
  if (check && !scale) {
    report(
      'unit',
      `'${unit}' does not fit ${name}: use ${unitNames(check.result).join(', ')}${suggestion(unit, unitNames(check.result))}`,
    );
  }
  const tolerance = readTolerance(record.tolerance, unit, kelvin && scale ? 1 / scale.factor : undefined);
  if (!tolerance) report('tolerance', `'${record.tolerance}' must be ${TOLERANCE_FORMS}`);
  if (!check && !(name === '' && tolerance?.type === 'information')) {
    const names = [...registry.keys()];
    report(
      'check',
      name === ''
        ? 'is empty: only a row for information may go without'
        : `'${name}' is not registered${suggestion(name, names)} (list them with --list)`,
    );
  }
  const inputs = readInputs(record.inputs, name, check, report);
  if (!expected || !kind || !scale || !tolerance || !inputs) return undefined;
  return {
    quantity: record.quantity || check?.about || '',
    check: name,
    inputs,
    expected,
    unit,
    scale,
    tolerance,
    kind,
    source: record.source,
    known: record.known,
  };
}

function readInputs(
  text: string,
  name: string,
  check: Check | undefined,
  report: Report,
): Record<string, Value> | undefined {
  let written: unknown;
  try {
    written = text.trim() === '' ? {} : JSON.parse(text);
  } catch (error) {
    report('inputs', `is not JSON: ${(error as Error).message}`);
    return undefined;
  }
  if (typeof written !== 'object' || written === null || Array.isArray(written)) {
    report('inputs', 'must be a JSON object of input names and values');
    return undefined;
  }
  if (!check) return {};
  return readFields(check.inputs, written as Record<string, unknown>, name, 'inputs', report);
}

/** Values of named inputs, each fault told at its own path. */
function readFields(
  inputs: Readonly<Record<string, Input>>,
  given: Record<string, unknown>,
  name: string,
  path: string,
  report: Report,
): Record<string, Value> {
  const names = Object.keys(inputs);
  const values: Record<string, Value> = {};
  for (const key of Object.keys(given)) {
    if (!Object.hasOwn(inputs, key)) {
      report(
        `${path}.${key}`,
        `is no input of ${name}${suggestion(key, names)}; it takes ${names.join(', ') || 'none'}`,
      );
    }
  }
  for (const [key, input] of Object.entries(inputs)) {
    const value = Object.hasOwn(given, key) ? given[key] : undefined;
    if (value === undefined) {
      if (!mayBeLeftOut(input)) report(`${path}.${key}`, `is missing: ${input.about}`);
      continue;
    }
    values[key] =
      input.type === 'records'
        ? readRecords(input, value, `${path}.${key}`, report)
        : readInput(input, value, (problem) => report(`${path}.${key}`, `${JSON.stringify(value)} ${problem}`));
  }
  return values;
}

function readRecords(
  input: RecordsInput,
  value: unknown,
  path: string,
  report: Report,
): Readonly<Record<string, Value>>[] {
  const isObject = (each: unknown) => typeof each === 'object' && each !== null && !Array.isArray(each);
  if (!Array.isArray(value) || !value.every(isObject)) {
    report(path, `${JSON.stringify(value)} must be a JSON array of objects`);
    return [];
  }
  return value.map((each: Record<string, unknown>, i) =>
    readFields(input.fields, each, path.slice(path.indexOf('.') + 1), `${path}[${i + 1}]`, report),
  );
}

function readInput(input: Exclude<Input, RecordsInput>, value: unknown, wrong: (problem: string) => void): Value {
  const number = (kind: Exclude<Input, ChoiceInput | RecordsInput>['kind'], one: unknown): number => {
    const read = readValue(kind, one);
    if (read.ok) return read.si;
    wrong(read.problem);
    return NaN;
  };
  switch (input.type) {
    case 'number':
      return number(input.kind, value);
    case 'choice':
      if (typeof value === 'string' && input.options.includes(value)) return value;
      wrong(`must be one of ${input.options.join(', ')}${suggestion(String(value), input.options)}`);
      return undefined;
    case 'list':
      if (Array.isArray(value)) return value.map((one) => number(input.kind, one));
      wrong('must be a JSON array of numbers');
      return undefined;
    case 'table':
      if (Array.isArray(value) && value.every((row) => Array.isArray(row))) {
        return value.map((row: unknown[]) => row.map((one) => number(input.kind, one)));
      }
      wrong('must be a JSON array of arrays of numbers');
      return undefined;
  }
}
