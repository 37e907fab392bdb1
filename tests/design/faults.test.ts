import { describe, expect, it } from 'vitest';
import { formatFault, formatFaults } from '../../src/design/faults.js';
import { changed, faultsOf, inChamber, PLAIN } from './designFiles.js';

/** Line and column (1-based) where a text first stands. */
function placeOf(text: string, part: string): { line: number; column: number } {
  const at = text.indexOf(part);
  if (at < 0) throw new Error(`'${part}' is not in the text`);
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: before[before.length - 1].length + 1 };
}

interface Expected {
  code: string;
  path: string;
  /** text that the fault points at */
  at: string;
  value?: string | null;
  message: RegExp;
  allowed?: RegExp;
  nearest?: string | null;
}

const ONE_FAULT: [string, string, Expected][] = [
  [
    'a bare number where a unit is due',
    changed(['air: 70 °F', 'air: 70']),
    {
      code: 'no-unit',
      path: 'site.air',
      at: '70\n',
      value: '70',
      message: /no unit/,
      allowed: /°F, °C, K/,
      nearest: '70 °F',
    },
  ],
  [
    'a mistyped unit',
    changed(['wind: 5 mph', 'wind: 5 mhp']),
    { code: 'unknown-unit', path: 'site.wind', at: '5 mhp', value: '5 mhp', message: /does not fit/, nearest: 'mph' },
  ],
  [
    'a unit of another kind',
    changed(['wind: 5 mph', 'wind: 5 in H2O']),
    { code: 'unknown-unit', path: 'site.wind', at: '5 in H2O', message: /does not fit/, allowed: /mph/ },
  ],
  [
    'no quantity at all',
    inChamber('plate: 1/4 in', 'plate: quarter'),
    { code: 'not-a-quantity', path: 'chamber.plate', at: 'quarter', message: /number/, allowed: /ga/ },
  ],
  [
    'an unknown gauge',
    changed(['wall: 11 ga', 'wall: 35 ga']),
    {
      code: 'not-a-quantity',
      path: 'stacks[0].wall',
      at: '35 ga',
      message: /gauge/,
      allowed: /11, 12/,
      nearest: '24 ga',
    },
  ],
  [
    'a mistyped field',
    changed(['  moisture: 20 %', '  mosture: 20 %']),
    { code: 'unknown-key', path: 'wood.mosture', at: 'mosture', value: null, message: /no field/, nearest: 'moisture' },
  ],
  [
    'a mistyped field that is needed',
    inChamber('length: 60 in', 'lenght: 60 in'),
    { code: 'unknown-key', path: 'chamber.lenght', at: 'lenght', message: /no field/, nearest: 'length' },
  ],
  [
    'another word for a field that is needed',
    inChamber('centre: 40 in', 'center: 40 in'),
    { code: 'unknown-key', path: 'chamber.center', at: 'center', message: /no field/, nearest: 'centre' },
  ],
  [
    'a mistyped size of a vent, which needs one of several',
    changed(['diameter: 4 in', 'diamter: 4 in']),
    {
      code: 'unknown-key',
      path: 'firebox.intakes[0].diamter',
      at: 'diamter',
      message: /no field/,
      nearest: 'diameter',
    },
  ],
  [
    'a mistyped part, one of which is needed',
    changed(['chamber:\n', 'chambr:\n']),
    { code: 'unknown-key', path: 'chambr', at: 'chambr', message: /no field/, nearest: 'chamber' },
  ],
  [
    'a field of another block',
    inChamber('plate: 1/4 in', 'plate: 1/4 in\n  intakes: []'),
    {
      code: 'unknown-key',
      path: 'chamber.intakes',
      at: 'intakes: []',
      message: /no field/,
      allowed: /diameter, width/,
    },
  ],
  [
    'a mistyped name',
    changed(['kind: oak', 'kind: hickery']),
    {
      code: 'unknown-name',
      path: 'wood.kind',
      at: 'hickery',
      value: 'hickery',
      message: /not known/,
      nearest: 'hickory',
    },
  ],
  [
    'a missing field',
    changed(['  target: 250 °F\n', '']),
    { code: 'missing', path: 'fire.target', at: 'fire:', value: null, message: /missing/, allowed: /100 °F to 700 °F/ },
  ],
  [
    'a missing block',
    changed(['throat: { area: 90 in^2, centre: 34 in }\n', '']),
    { code: 'missing', path: 'throat', at: 'schema', value: null, message: /missing/, allowed: /block/ },
  ],
  [
    'an empty field',
    changed(['target: 250 °F', 'target:']),
    { code: 'missing', path: 'fire.target', at: 'target', value: null, message: /empty/ },
  ],
  [
    'a list where a block is due',
    changed(['throat: { area: 90 in^2, centre: 34 in }', 'throat: [90 in^2, 34 in]']),
    { code: 'wrong-type', path: 'throat', at: '[90 in^2', message: /is a list/, allowed: /block/ },
  ],
  [
    'text where a block is due',
    changed(['throat: { area: 90 in^2, centre: 34 in }', 'throat: 90 in^2']),
    { code: 'wrong-type', path: 'throat', at: '90 in^2', message: /is text/, allowed: /block/ },
  ],
  [
    'a truth value where a quantity is due',
    changed(['air: 70 °F', 'air: true']),
    { code: 'wrong-type', path: 'site.air', at: 'true', message: /yes or no/ },
  ],
  [
    'an empty list',
    changed(['[{ part: chamber, diameter: 6 in, height: 36 in, wall: 11 ga, base: 42 in }]', '[]']),
    { code: 'out-of-range', path: 'stacks', at: '[]', message: /too few/, allowed: /at least 1/ },
  ],
  [
    'another schema number',
    changed(['schema: 1', 'schema: 2']),
    { code: 'unknown-name', path: 'schema', at: '2\n', value: '2', message: /not known/, allowed: /^1$/ },
  ],
  [
    'a number too large',
    changed(['length: 60 in', 'length: 60 ft']),
    { code: 'out-of-range', path: 'chamber.length', at: '60 ft', message: /too large/, allowed: /6 in to 20 ft/ },
  ],
  [
    'a negative number',
    changed(['length: 60 in', 'length: -60 in']),
    { code: 'out-of-range', path: 'chamber.length', at: '-60 in', message: /too small/, allowed: /6 in to 20 ft/ },
  ],
  [
    'a share written as a plain percentage',
    changed(['moisture: 20 %', 'moisture: 20']),
    { code: 'out-of-range', path: 'wood.moisture', at: '20\n', message: /too large/, nearest: '20 %' },
  ],
  [
    'a number that is not finite',
    changed(['moisture: 20 %', 'moisture: .inf']),
    { code: 'not-finite', path: 'wood.moisture', at: '.inf', message: /finite/ },
  ],
  [
    'half a vent',
    changed(['count: 2', 'count: 1.5']),
    { code: 'wrong-type', path: 'firebox.intakes[0].count', at: '1.5', message: /whole number/ },
  ],
  [
    'a round part without diameter',
    inChamber('  diameter: 24 in\n', ''),
    { code: 'missing', path: 'chamber.diameter', at: 'chamber:', message: /round part/ },
  ],
  [
    'a round part with a width',
    inChamber('diameter: 24 in', 'diameter: 24 in\n  width: 24 in'),
    { code: 'unknown-key', path: 'chamber.width', at: 'width: 24 in', message: /round part/, allowed: /diameter/ },
  ],
  [
    'no plate and no pipe wall',
    inChamber('  plate: 1/4 in\n', ''),
    { code: 'missing', path: 'chamber.plate', at: 'chamber:', message: /missing/, allowed: /pipe/ },
  ],
  [
    'a vent without a size',
    changed([' diameter: 4 in,', '']),
    { code: 'missing', path: 'firebox.intakes[0]', at: '{ kind: disc', message: /no size/, allowed: /diameter/ },
  ],
  [
    'a vent of two sizes',
    changed(['diameter: 4 in,', 'diameter: 4 in, area: 12 in^2,']),
    { code: 'cannot-be-built', path: 'firebox.intakes[0]', at: '{ kind: disc', message: /two sizes/ },
  ],
  [
    'a composition over 100 %',
    changed(['moisture: 20 %', 'composition: { carbon: 60 %, hydrogen: 6 %, oxygen: 43.5 % }']),
    { code: 'cannot-be-built', path: 'wood.composition', at: '{ carbon', message: /109\.5 %/, allowed: /100 %/ },
  ],
  [
    'a duplicate field',
    changed(['wind: 5 mph', 'wind: 5 mph\n  wind: 6 mph']),
    { code: 'duplicate-key', path: 'site.wind', at: 'wind: 6 mph', message: /twice/, allowed: /once/ },
  ],
  [
    'a thousands comma inside braces',
    changed([
      'fire:\n  heat: 70,000 BTU/h\n  rise: 10 min\n  target: 250 °F',
      'fire: { heat: 70,000 BTU/h, target: 250 °F }',
    ]),
    {
      code: 'comma-in-braces',
      path: 'fire.heat',
      at: '70,000',
      value: '70,000 BTU/h',
      message: /comma/,
      allowed: /quotes/,
      nearest: '"70,000 BTU/h"',
    },
  ],
  [
    'a tab',
    changed(['  wind: 5 mph', '\twind: 5 mph']),
    { code: 'syntax', path: '', at: '\twind', message: /tab/, allowed: /spaces/ },
  ],
  [
    'wood an hour that makes too small a fire',
    changed(['heat: 70,000 BTU/h', 'heat: 0.1 lb wood/h']),
    { code: 'out-of-range', path: 'fire.heat', at: '0.1 lb wood/h', message: /too small/, allowed: /500 W/ },
  ],
  [
    'an alias that is wrong where it is used',
    changed(['wind: 5 mph', 'wind: &w 5 mph'], ['altitude: 500 ft', 'altitude: *w']),
    { code: 'unknown-unit', path: 'site.altitude', at: '*w', value: '5 mph', message: /does not fit/, allowed: /ft/ },
  ],
];

describe('one fault', () => {
  it.each(ONE_FAULT)('%s', (_, text, expected) => {
    const faults = faultsOf(text);
    expect(formatFaults(faults).split('\n')).toHaveLength(1);
    const [fault] = faults;
    expect(fault).toMatchObject({ file: 'pit.yaml', code: expected.code, path: expected.path });
    expect({ line: fault.line, column: fault.column }).toEqual(placeOf(text, expected.at));
    expect(fault.message).toMatch(expected.message);
    if (expected.allowed) expect(fault.allowed).toMatch(expected.allowed);
    if (expected.nearest !== undefined) expect(fault.nearest).toBe(expected.nearest);
    if (expected.value !== undefined) expect(fault.value).toBe(expected.value);
  });
});

describe('a report', () => {
  it('holds every fault of a file, in its order', () => {
    const text = changed(
      ['air: 70 °F', 'air: 70'],
      ['kind: oak', 'kind: oka'],
      ['target: 250 °F', 'taget: 250 °F'],
      ['area: 90 in^2', 'area: 9000 in^2'],
      ['gauge: middle', 'gauge: midle'],
    );
    const faults = faultsOf(text);
    expect(faults.map((each) => each.path)).toEqual(['site.air', 'wood.kind', 'fire.taget', 'throat.area', 'gauge']);
    const lines = faults.map((each) => each.line);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });

  it('is one line a fault, with everything in it', () => {
    expect(formatFault(faultsOf(inChamber('plate: 1/4 in', 'plate: 0.25'))[0])).toBe(
      "pit.yaml:26:10: chamber.plate: '0.25' has no unit; allowed: a plate thickness in in, ga, ft, mm, cm, m; did you mean '0.25 in'?",
    );
  });

  it('shows hostile text inert: one line, no control characters, shortened', () => {
    const text = changed(['kind: oak', 'kind: "\\e[31mred\\nline \\u202e' + 'x'.repeat(500) + '"']);
    const line = formatFaults(faultsOf(text));
    expect(line).not.toMatch(/[\u0000-\u001f\u202e]/);
    expect(line.length).toBeLessThan(400);
  });
});

describe('a text that is no design', () => {
  it.each([
    ['an empty file', '', /empty/],
    ['blank lines', '\n\n  \n', /empty/],
    ['a comment alone', '# nothing\n', /holds no design/],
    ['binary', `${PLAIN}\u0000\u0001`, /not text/],
    ['badly decoded text', '\uFFFD\uFFFD\uFFFD\uFFFD', /not text/],
    ['a file over 1 MB', `${PLAIN}# ${'x'.repeat(1_000_001)}`, /too large/],
    ['far more than a design', `${PLAIN}x: [${'1, '.repeat(20_000)}]`, /far more/],
    ['too many lines', PLAIN + '\n'.repeat(30_000), /too many lines/],
    ['deep brackets', `a: ${'['.repeat(5000)}`, /too deeply/],
    ['deep blocks', Array.from({ length: 200 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'), /too deeply/],
    ['deep dashes', `${'- '.repeat(3000)}a`, /too deeply/],
    ['two documents', `${PLAIN}---\n${PLAIN}`, /more than one document/],
    ['an unclosed bracket', 'a: [1, 2', /can't be read/],
    ['an unknown tag', '!!js/function "x"', /can't be read/],
    ['a list for a name', '? [a, b]\n: 1\n', /name of a field/],
    ['a list', '- 1\n- 2\n', /list/],
    ['a word', 'pit\n', /text/],
    [
      'an alias bomb',
      'a: &a [x,x,x,x,x,x,x,x,x]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a]\nc: &c [*b,*b,*b,*b,*b,*b,*b,*b,*b]\nd: [*c,*c,*c,*c,*c,*c,*c,*c,*c]\n',
      /aliases/,
    ],
    ['an alias to nothing', 'a: *nowhere\n', /can't be read|aliases/],
    ['an alias to itself', 'a: &a [*a]\n', /./],
  ])('%s', (_, text, message) => {
    const faults = faultsOf(text);
    expect(faults.length).toBeGreaterThan(0);
    expect(faults.map((each) => each.message).join('\n')).toMatch(message);
    for (const fault of faults) expect(fault.line).toBeGreaterThanOrEqual(1);
  });
});

describe('a slip in brackets, columns and quotes', () => {
  it.each([
    ['no comma', 'fire: { heat: 3 kW target: 250 F }', "1:15 no comma before 'target'"],
    ['a semicolon for one', 'fire: { heat: 3 kW; target: 250 F }', "1:15 no comma before 'target'"],
    ['an open brace', 'name: x\nfire: { heat: 3 kW\nsite: { air: 50 F }\n', "2:7 a '{' is never closed"],
    ['an open bracket', "name: Bob's\nstacks: [ 1, 2 # ]\n", "2:9 a '[' is never closed"],
    ['a brace too many', 'a:\n  - { b: 1, c: 2 }}\n', "2:19 a '}' closes nothing"],
    ['an open quote', 'fire: { heat: "30 }\nb: 2', '1:15 a quote is never closed'],
    ['no colon', 'chamber\n  shape: round\n', '1:1 no colon behind the name of a field'],
    ['more behind quotes', 'name: "a pit" of mine\n', '1:15 more stands behind a value that has ended'],
    ['a mark of its own', 'name: `a pit`\n', '1:7 a value begins with `'],
    ['a dash too many', 'a: 1\n- b: 2\n', '2:1 a dash where no list is'],
    ['a dash left out', 'a:\n  - b: 1\n   c: 2\n', '3:1 a field stands in no column'],
    ['a quote before a field', "a:\n  b: 1\n  'length: 24 in\n  plate: 3\n", '3:3 a quote is never closed'],
    ['a field behind braces', 'a: { b: 1 } c: 2\n', '1:13 more stands behind a value that has ended'],
    ['a brace that goes on', 'throat: { area: 3\nfire: 2\n', "1:9 a '{' is never closed"],
    ['two colons', 'name: a pit: the big one', '1:7 a second colon on one line'],
    ['a column to the right', 'fire:\n  heat: 3 kW\n   target: 250 F\n', '3:4 a field stands further right'],
    ['a column of its own', 'intakes:\n  - kind: pipe\n  centre: 3\n', '3:1 a field stands in no column'],
  ])('%s: is told where it is, in plain words', (_, text, expected) => {
    const [{ line, column, message, value, allowed }] = faultsOf(text);
    expect(`${line}:${column} ${message.replace("can't be read: ", '')}`.slice(0, expected.length)).toBe(expected);
    expect(text.split('\n')[line - 1]).toContain(value);
    expect(allowed).not.toBeNull();
  });

  it('is one fault, however much of the file it keeps from being read', () => {
    expect(faultsOf(changed(['firebox:', 'firebox: ]']))).toHaveLength(1);
    expect(faultsOf(changed(['firebox:', 'firebox']))).toHaveLength(1);
    const two = faultsOf(changed(['firebox:', 'firebox'], ['name:', 'name: a:']));
    expect(two.map(({ message }) => message)).toEqual([
      "can't be read: a second colon on one line",
      "can't be read: no colon behind the name of a field",
    ]);
  });

  it('a comma within a number hides no misspelt name', () => {
    const faults = faultsOf(
      changed([
        'fire:\n  heat: 70,000 BTU/h\n  rise: 10 min\n  target: 250 °F',
        'fire: { heet: 70,000 BTU/h, target: 250 °F }',
      ]),
    );
    expect(faults.map(({ code, path }) => `${code} ${path}`)).toEqual([
      'unknown-key fire.heet',
      'comma-in-braces fire.heet',
    ]);
  });
});
