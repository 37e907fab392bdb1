import { describe, expect, test } from 'vitest';
import { judge, readExpected, readTolerance } from '../../src/verify/expectation.js';
import { readMisses } from '../../src/verify/misses.js';
import { CASE_COLUMNS, readCases } from '../../src/verify/readCases.js';
import { REGISTRY } from '../../src/verify/registry.js';
import { describeOutcome, isFailure, runCases } from '../../src/verify/runCases.js';

const HEADER = CASE_COLUMNS.join(',');
const GOOD = `a,airDensity,"{""temperature"": ""300 K""}",1.1764,kg/m3,0.2 %,derived,mass balance,recomputed`;

const read = (...lines: string[]) => readCases([HEADER, ...lines].join('\n'), 'mine.csv', REGISTRY);
const faults = (...lines: string[]) =>
  read(...lines).faults.map((each) => `${each.line} ${each.field}: ${each.message}`);

describe('a case file', () => {
  test('runs from its text', () => {
    const { cases, faults: none } = read(GOOD);
    expect(none).toEqual([]);
    const [outcome] = runCases(cases, REGISTRY);
    expect(outcome.status).toBe('within');
    expect(outcome.computed).toBeCloseTo(1.1764, 3);
  });

  test.each([
    ['unknown check', GOOD.replace('airDensity', 'airDensty'), /check: 'airDensty' is not registered; did you mean 'airDensity'/],
    ['unknown input', GOOD.replace('""300 K""', '""300 K"", ""presure"": 1'), /inputs.presure: is no input of airDensity; did you mean 'pressure'/],
    ['missing input', GOOD.replace('{""temperature"": ""300 K""}', '{}'), /inputs.temperature: is missing/],
    ['unit of another kind', GOOD.replace('300 K', '300 ft'), /"300 ft" has no unit of K, °F, °C/],
    ['no number', GOOD.replace('300 K', 'warm'), /"warm" does not begin with a number/],
    ['inputs that are no JSON', GOOD.replace('{""temperature"": ""300 K""}', '{oops'), /inputs: is not JSON/],
    ['inputs that are no object', GOOD.replace('{""temperature"": ""300 K""}', '[1]'), /inputs: must be a JSON object/],
    ['expected that is no number', GOOD.replace('1.1764', 'about one'), /expected: 'about one' must be a number/],
    ['unit that does not fit', GOOD.replace('kg/m3', 'kg'), /unit: 'kg' does not fit airDensity: use kg\/m³/],
    ['tolerance of no known form', GOOD.replace('0.2 %', 'close'), /tolerance: 'close' must be N %/],
    ['unknown kind', GOOD.replace('derived', 'derivd'), /kind: 'derivd' must be published or derived; did you mean 'derived'/],
    ['no source', GOOD.replace('mass balance', ''), /source: is empty/],
    ['no id', GOOD.replace(/^a,/, ','), /id: is empty/],
    ['no check without being information', GOOD.replace('airDensity', ''), /check: is empty/],
  ])('%s is refused with what would be right', (_, line, message) => {
    expect(faults(line)).toEqual([expect.stringMatching(message)]);
    expect(faults(line)[0]).toMatch(/^2 /);
  });

  test('all faults of all lines come at once, each with its line', () => {
    const found = faults(GOOD, GOOD, GOOD.replace(/^a/, 'b').replace('airDensity', 'airDensiti').replace('1.1764', 'x'));
    expect(found).toHaveLength(3);
    expect(found[0]).toMatch(/^3 id: 'a' stands on line 2 already/);
    expect(found[1]).toMatch(/^4 /);
  });

  test('a line is counted where it begins, quoted line breaks above it notwithstanding', () => {
    const broken = GOOD.replace('mass balance', '"mass\nbalance"');
    expect(faults(broken, GOOD.replace(/^a/, 'b').replace('airDensity', 'airDensiti'))[0]).toMatch(/^4 check/);
  });

  test('lacking columns, a table that is none, and an empty file are said plainly', () => {
    expect(readCases('id,check\n', 'mine.csv', REGISTRY).faults[0].message).toMatch(/lacks the columns inputs, expected/);
    expect(readCases('', 'mine.csv', REGISTRY).faults[0].message).toMatch(/is empty/);
    expect(readCases(`${HEADER}\n"a`, 'mine.csv', REGISTRY).faults[0].message).toMatch(/is not a CSV table/);
  });

  test('names of built-in properties are no inputs', () => {
    expect(faults(GOOD.replace('""temperature""', '""__proto__""')).length).toBeGreaterThan(0);
    expect(faults(GOOD.replace('airDensity', 'constructor'))).toEqual([expect.stringMatching(/not registered/)]);
  });

  test('choices, lists and tables are checked too', () => {
    const steel = (inputs: string) => `s,gaugeThickness,"${inputs}",0.1,in,1 %,published,x,published`;
    expect(faults(steel('{""gauge"": 10, ""steel"": ""carbn""}'))).toEqual([
      expect.stringMatching(/"carbn" must be one of carbon, stainless; did you mean 'carbon'/),
    ]);
    const heat = (inputs: string) => `s,enclosureHeat,"${inputs}",0.1,W,1 %,published,x,published`;
    const start = '{""areas"": [1, 1], ""emissivities"": [1, 1], ""temperatures"": [""400 K"", ""300 K""], ""surfaces"": ';
    expect(faults(heat(`${start}1, ""viewFactors"": [[0, 1], [1, 0]]}`))).toEqual([
      expect.stringMatching(/inputs.surfaces: 1 must be a JSON array of numbers/),
    ]);
    expect(faults(heat(`${start}[1], ""viewFactors"": [0, 1]}`))).toEqual([
      expect.stringMatching(/inputs.viewFactors: .* must be a JSON array of arrays of numbers/),
    ]);
  });
});

describe('an outcome', () => {
  const run = (line: string, reasons?: Record<string, string>) =>
    runCases(read(line).cases, REGISTRY, new Map(Object.entries(reasons ?? {})))[0];
  const missing = GOOD.replace('1.1764', '1.5');

  test('a miss fails, unless its reason is listed', () => {
    expect(isFailure(run(missing))).toBe(true);
    expect(run(missing, { a: 'because' })).toMatchObject({ status: 'explained', reason: 'because' });
    expect(isFailure(run(missing, { a: 'because' }))).toBe(false);
  });

  test('a listed miss that no longer misses fails', () => {
    expect(run(GOOD, { a: 'because' }).status).toBe('stale');
    expect(isFailure(run(GOOD, { a: 'because' }))).toBe(true);
  });

  test('information never passes and never fails', () => {
    const outcome = run(missing.replace('0.2 %', 'information: for scale'));
    expect(outcome).toMatchObject({ status: 'information', reason: 'for scale' });
    expect(outcome.computed).not.toBeNull();
    expect(isFailure(outcome)).toBe(false);
  });

  test('inputs without an answer are a miss with the reason given', () => {
    const outcome = run('a,humidityRatio,"{""temperature"": 400, ""relativeHumidity"": 1, ""pressure"": 1e5}",1,-,1 %,derived,x,y');
    expect(outcome.status).toBe('miss');
    expect(outcome.reason).toMatch(/must stay below the total pressure/);
  });

  test('its line names expected, computed, unit, tolerance and source', () => {
    expect(describeOutcome(run(missing))).toMatch(
      /^a miss: expected 1.5 kg\/m3, computed 1.1764 kg\/m3 \(off by -0.3236\d* kg\/m3, tolerance 0.2 %\) \[mass balance\]$/,
    );
  });
});

describe('tolerances', () => {
  const within = (computed: number, expected: string, tolerance: string, unit = 'm', kelvin?: number) =>
    judge(computed, readExpected(expected)!, readTolerance(tolerance, unit, kelvin)!).within;

  test('percent of the expected value, at both ends of a range', () => {
    expect(within(102, '100', '2 %')).toBe(true);
    expect(within(102.1, '100', '2 %')).toBe(false);
    expect(within(98, '100..200', '2 %')).toBe(true);
    expect(within(205, '100..200', '2 %')).toBe(false);
  });

  test('an amount in the unit, kelvins in any unit of temperature, percentage points', () => {
    expect(within(1.004, '1', '0.005 m')).toBe(true);
    expect(within(1.006, '1', '0.005 m')).toBe(false);
    expect(within(101.7, '100', '1 K', '°F', 1.8)).toBe(true);
    expect(within(101.9, '100', '1 K', '°F', 1.8)).toBe(false);
    expect(within(-48.7, '-49.6', '1 pt', '%')).toBe(true);
    expect(readTolerance('1 K', 'm')).toBeUndefined();
    expect(readTolerance('1 pt', 'm')).toBeUndefined();
    expect(readTolerance('-1 %', 'm')).toBeUndefined();
  });

  test('data must be equal, a range must hold it, a bound on its side', () => {
    expect(within(0.79, '0.79', 'data')).toBe(true);
    expect(within(0.791, '0.79', 'data')).toBe(false);
    expect(within(0.93, '0.92..0.96', 'range')).toBe(true);
    expect(within(0.97, '0.92..0.96', 'range')).toBe(false);
    expect(within(301, '> 300', 'range')).toBe(true);
    expect(within(299, '> 300', 'range')).toBe(false);
    expect(within(299, '< 300', 'range')).toBe(true);
  });

  test.each(['', 'ten', '1..', '5..3', '=3', '1 2'])('%j is no expected value', (text) => {
    expect(readExpected(text)).toBeUndefined();
  });
});

test('a list of misses may not name what is no case, twice, or without a reason', () => {
  const { faults: found } = readMisses('id,reason\na,why\nb,why\na,why\nc,\n', 'misses.csv', new Set(['a', 'c']));
  expect(found.map(({ line, message }) => `${line} ${message}`)).toEqual([
    "3 'b' is no case",
    "4 'a' is listed twice",
    expect.stringMatching(/^5 is empty/),
  ]);
});
