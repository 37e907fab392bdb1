import { describe, expect, it } from 'vitest';
import { choleskyFactor } from '../../src/design/correlation.js';
import { unknownInputsOf, FITTABLE, fittableField } from '../../src/design/unknownInputs.js';
import { formatFault, type DesignFault } from '../../src/design/faults.js';
import { sameLog, valuesInUse } from '../../src/design/fitted.js';
import { rangeOf } from '../../src/design/fields.js';
import type { ReadResult } from '../../src/design/read.js';
import { readFittedFile, textWithFitted } from '../../src/design/readFitted.js';
import { fittedYaml } from '../../src/report/fittedYaml.js';
import { changed, designOf, faultsOf, OVER, PLAIN, read, UPRIGHT } from './designFiles.js';
import { FITTED, fittedOf, fittedWith } from './fittedFiles.js';
import { anyFitPasses, back, damagedNeverThrows, fileOf, named, NAMES } from './fittedFuzz.js';

function good(result: ReadResult): Extract<ReadResult, { faults?: undefined }> {
  if (result.faults) throw new Error(result.faults.map(formatFault).join('\n'));
  return result;
}

function faulty(result: ReadResult): DesignFault[] {
  if (!result.faults) throw new Error('read without a fault');
  return result.faults;
}

describe('a design that names what a cook told', () => {
  it('has the fitted value where it has what the fit’s own design had, and its own number times a factor', () => {
    const { design, warnings } = good(named(PLAIN, FITTED));
    expect(design.innerConvection).toBe(1.31);
    // derived: 2.0 in^2 times 1.43
    expect(design.chamber!.doorGap).toBeCloseTo(2 * 1.43 * 0.0254 ** 2, 12);
    expect(warnings).toEqual([]);
  });

  it('multiplies a gap of its own', () => {
    const { design } = good(named(changed(['doorGap: 2.0 in^2', 'doorGap: 3.0 in^2']), FITTED));
    expect(design.chamber!.doorGap).toBeCloseTo(3 * 1.43 * 0.0254 ** 2, 12);
  });

  it('is the same with the block itself inside, and carries it', () => {
    const inline = good(read(PLAIN + FITTED)).design;
    expect(inline).toEqual(good(named(PLAIN, FITTED)).design);
    expect(inline.fitted!.logs).toEqual([
      {
        name: 'yard-cook.csv',
        hash: '0123456789abcdef',
        design: 'Backyard 24',
        fitted_s: 15120,
        readings: 4536,
        error_K: expect.closeTo(3.1 / 1.8, 9) as number,
      },
    ]);
    expect(inline.fitted!.values.map(({ path, own }) => [path, own])).toEqual([
      ['innerConvection', 1],
      ['chamber.doorGap', expect.closeTo(2 * 0.0254 ** 2, 12)],
    ]);
  });

  it('keeps a number of its own, and says so', () => {
    const { design, warnings } = good(named(`${PLAIN}innerConvection: 1.5\n`, FITTED));
    expect(design.innerConvection).toBe(1.5);
    expect(design.fitted!.values[0].own).toBeNull();
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toMatchObject({ code: 'fitted-not-used', where: 'innerConvection', value: 1.5 });
    expect(warnings[0].message).toMatch(/has 1\.5, .* had 1:/);
  });

  it('keeps another finish’s emissivity; parts of the fitted one go together', () => {
    const paint = fittedOf('field: firebox.emissivity, is: 0.85, low: 0.8, high: 0.9, was: 0.92');
    const black = good(named(PLAIN, paint)).design;
    expect([black.firebox, black.chamber!, black.stacks[0]].map(({ emissivity }) => emissivity)).toEqual([
      0.85, 0.85, 0.85,
    ]);
    const bright = changed(['centre: 30 in\n', 'centre: 30 in\n  finish: stainless\n']);
    const { design, warnings } = good(named(bright, paint));
    expect(design.firebox.emissivity).toBe(designOf(bright).firebox.emissivity);
    expect(design.chamber!.emissivity).toBe(0.92);
    expect(warnings.map(({ code }) => code)).toEqual(['fitted-not-used']);
  });

  it('says so where a part had another finish and now shares its neighbour’s', () => {
    const apart = fittedOf('field: chamber.emissivity, is: 0.3, low: 0.25, high: 0.4, was: 0.28');
    const { design, warnings } = good(named(PLAIN, apart));
    expect(design.chamber!.emissivity).toBe(0.92);
    expect(warnings.map(({ code, where }) => [code, where])).toEqual([['fitted-not-used', 'chamber.emissivity']]);
  });

  it('takes `was` as rounded as the file writes it', () => {
    const drawn = `${PLAIN}innerConvection: 1.23456\n`;
    const near = fittedOf('field: innerConvection, is: 1.3, low: 1.2, high: 1.4, was: 1.235');
    expect(good(named(drawn, near)).design.innerConvection).toBe(1.3);
    const off = fittedOf('field: innerConvection, is: 1.3, low: 1.2, high: 1.4, was: 1.24');
    expect(good(named(drawn, off)).design.innerConvection).toBe(1.23456);
  });

  it('passes over what it has no field for', () => {
    const upright = fittedOf(
      'field: upright.doorGap, times: 2, low: 1, high: 3, was: 1 in^2',
      'field: innerConvection, is: 1.2, low: 1.1, high: 1.3, was: 1',
    );
    const { design, warnings } = good(named(PLAIN, upright));
    expect(warnings).toEqual([]);
    expect(design.innerConvection).toBe(1.2);
    expect(valuesInUse(design.fitted!).values.map(({ path }) => path)).toEqual(['innerConvection']);
    // derived: 1.5 in^2 of UPRIGHT twice
    expect(good(named(UPRIGHT, upright)).design.upright!.doorGap).toBeCloseTo(3 * 0.0254 ** 2, 12);
  });

  it('stays within what a design may have, with a warning', () => {
    const wide = fittedOf('field: chamber.doorGap, times: 40, low: 30, high: 50, was: 2 in^2');
    const { design, warnings } = good(named(PLAIN, wide));
    expect(design.chamber!.doorGap).toBe(rangeOf('chamber.doorGap').max);
    expect(warnings.map(({ code }) => code)).toEqual(['fitted-out-of-range']);
  });

  it('a fire given by weight of wood follows the heat of the wood; one given by heat does not', () => {
    const wood = fittedOf('field: wood.heat, times: 0.9, low: 0.85, high: 0.95, was: 6325 BTU/lb');
    const byWood = changed(['heat: 70,000 BTU/h', 'heat: 10 lb wood/h']);
    expect(good(named(byWood, wood)).design.fire.heat / designOf(byWood).fire.heat).toBeCloseTo(0.9, 9);
    expect(good(named(PLAIN, wood)).design.fire.heat).toBe(designOf(PLAIN).fire.heat);
    expect(good(named(PLAIN, wood)).design.wood.heat / designOf(PLAIN).wood.heat).toBeCloseTo(0.9, 9);
  });

  it('no longer counts a fitted number among the defaults', () => {
    expect(good(read(PLAIN)).defaults).toContain('innerConvection');
    expect(good(named(PLAIN, FITTED)).defaults).not.toContain('innerConvection');
  });

  it('every estimate that a fit settles is found in some design, set and read back', () => {
    const designs = [UPRIGHT, OVER].map(designOf);
    for (const path of FITTABLE) {
      const found = designs.flatMap((design) =>
        unknownInputsOf(design)
          .filter((field) => field.path === path || field.targets.some((target) => target.path === path))
          .map((field) => ({ design: structuredClone(design), field })),
      );
      // parts that share a finish go by the first of them
      if (path.endsWith('.emissivity') && found.length === 0) continue;
      expect(found.length, path).toBeGreaterThan(0);
      const [{ design, field }] = found;
      const value = 0.5 * (field.range.min + field.range.max);
      field.targets[0].set(design, value);
      expect(field.targets[0].get(design), path).toBe(value);
      expect(fittableField(path)).toMatchObject({ range: field.range, scale: field.scale });
    }
  });
});

describe('what is wrong with a fitted block', () => {
  const cases: [what: string, from: string, to: string, line: number, column: number, told: RegExp][] = [
    [
      'an unknown field',
      'innerConvection',
      'inerConvection',
      5,
      16,
      /'inerConvection' .* did you mean 'innerConvection'\?/,
    ],
    [
      'weather',
      'innerConvection, is: 1.31',
      'site.wind, times: 1.31',
      5,
      16,
      /'site\.wind' is no field that a fit settles/,
    ],
    ['a factor for a value', 'is: 1.31', 'times: 1.31', 5, 33, /times: does not fit innerConvection/],
    ['no value', 'is: 1.31, ', '', 5, 7, /values\[0\]\.is: is missing/],
    ['a low end above it', 'low: 1.22', 'low: 1.35', 5, 48, /'1\.35' lies above the value; allowed: low <= value/],
    ['a high end below it', 'high: 1.70', 'high: 1.40', 6, 63, /lies below the value/],
    ['a value out of range', 'is: 1.31', 'is: 7', 5, 37, /'7' is too large; allowed: 0\.2 to 5/],
    ['no unit', '2.0 in^2', '2', 6, 74, /'2' has no unit.*did you mean '2 in²'/],
    ['a field twice', 'chamber.doorGap, times', 'innerConvection, is', 6, 16, /is fitted twice/],
    [
      'a row too few',
      '[[1, -0.4], [-0.4, 1]]',
      '[[1, -0.4]]',
      7,
      16,
      /has 1 row; allowed: a row for each of the 2 values/,
    ],
    ['a number too few', '[-0.4, 1]]', '[-0.4]]', 7, 28, /has 1 number/],
    ['no symmetry', '[-0.4, 1]', '[0.4, 1]', 7, 29, /is not what stands across the diagonal \(-0\.4\)/],
    ['a diagonal of its own', '[[1,', '[[0.9,', 7, 18, /'0\.9' stands on the diagonal; allowed: 1/],
    ['beyond 1', '[1, -0.4], [-0.4, 1]', '[1, -1.4], [-1.4, 1]', 7, 21, /'-1\.4' is no correlation/],
    ['words', '[1, -0.4], [-0.4, 1]', '[1, much], [-0.4, 1]', 7, 21, /'much' is no correlation/],
    ['not positive definite', '[1, -0.4], [-0.4, 1]', '[1, -1], [-1, 1]', 7, 16, /positive definite/],
    ['a mistyped key', 'error:', 'eror:', 3, 106, /eror: is no field here; .* did you mean 'error'\?/],
    ['no hash', 'hash: 0123456789abcdef', 'hash: yes', 3, 36, /'yes' is no hash of a log/],
    ['a hash read as a number', '0123456789abcdef', '1234567890123456', 3, 36, /in quotes/],
    ['no name', 'name: yard-cook.csv, ', '', 3, 7, /name: is missing/],
    ['half a reading', '4536', '4536.5', 3, 100, /is no number of readings/],
    ['no finite number', 'times: 1.43', 'times: .nan', 6, 40, /is not a finite number/],
  ];
  it.each(cases)('%s: its file, line and column', (_, from, to, line, column, told) => {
    const text = fittedWith(from, to);
    const [first] = faulty(named(PLAIN, text));
    expect(first).toMatchObject({ file: 'yard.fitted.yaml', line, column });
    expect(formatFault(first)).toMatch(told);
    const inline = faultsOf(PLAIN + text);
    const above = PLAIN.split('\n').length - 1;
    expect(inline[0]).toMatchObject({ file: 'pit.yaml', line: line + above, column, path: first.path });
  });

  it('the same log twice', () => {
    const line = FITTED.split('\n')[2];
    const [fault] = faulty(named(PLAIN, fittedWith(line, `${line}\n${line}`)));
    expect(fault).toMatchObject({ path: 'fitted.logs[1].hash', line: 4 });
    expect(fault.message).toMatch(/counts twice/);
  });

  it('every fault is told, of the design and then of the file', () => {
    const faults = faulty(named(changed(['plate: 1/4 in', 'plate: 1/4']), fittedWith('low: 1.22', 'low: 1.35')));
    expect(faults.map(({ file }) => file)).toEqual(['pit.yaml', 'yard.fitted.yaml']);
  });

  it.each([
    ['', /the file is empty; allowed: what `pitwright fit` writes/],
    ['fitted: other.yaml\n', /'other\.yaml' names another file/],
    ['fitted: [1]\n', /is a list; allowed: a block of fields/],
    ['fitted:\n', /holds no fitted block/],
    [PLAIN, /holds no fitted block/],
    [`${FITTED}more: 1\n`, /more: is no field here; allowed: fitted/],
    ['fitted: {\n', /yard\.fitted\.yaml:\d/],
    ['just words\n', /holds no fitted block/],
  ])('a file that holds %j', (text, told) => {
    const faults = faulty(named(PLAIN, text));
    expect(faults.map(formatFault).join('\n')).toMatch(told);
    expect(faults[0].file).toBe('yard.fitted.yaml');
  });

  it('a file where none can be read: the block belongs into the design', () => {
    const [fault] = faultsOf(PLAIN + NAMES);
    expect(fault).toMatchObject({ path: 'fitted', value: 'yard.fitted.yaml', line: 32 });
    expect(fault.allowed).toMatch(/the block of that file itself/);
  });

  it('neither a name nor a block', () => {
    expect(formatFault(faultsOf(`${PLAIN}fitted: 5\n`)[0])).toMatch(
      /'5' is a plain number; allowed: a name or a block/,
    );
    expect(faultsOf(`${PLAIN}fitted: {}\n`).map(({ path }) => path)).toEqual([
      'fitted.logs',
      'fitted.values',
      'fitted.correlation',
    ]);
  });

  it('a damaged file never throws: faults with a place, or a design with finite numbers', () => {
    damagedNeverThrows(60);
  });
});

describe('a text that stands for itself', () => {
  it('holds the block in place of the name, reads the same, and stays as it is without one', () => {
    const own = textWithFitted(PLAIN + NAMES, fileOf(FITTED));
    expect(good(read(own)).design).toEqual(good(named(PLAIN, FITTED)).design);
    expect(own).toContain('intakes: [ { kind: disc');
    expect(textWithFitted(PLAIN, fileOf(FITTED))).toBe(PLAIN);
    expect(textWithFitted(PLAIN + FITTED, fileOf(''))).toBe(PLAIN + FITTED);
  });
});

describe('Cholesky', () => {
  it('its factor times its transpose is the matrix; what is no correlation has none', () => {
    const matrix = [
      [1, 0.5, -0.2],
      [0.5, 1, 0.3],
      [-0.2, 0.3, 1],
    ];
    const factor = choleskyFactor(matrix)!;
    matrix.forEach((row, i) =>
      row.forEach((each, j) =>
        expect(factor[i].reduce((sum, f, k) => sum + f * factor[j][k], 0)).toBeCloseTo(each, 12),
      ),
    );
    expect(
      choleskyFactor([
        [1, 1],
        [1, 1],
      ]),
    ).toBeNull();
    // derived: three values can't all pull apart so far (least eigenvalue 1 - 2 * 0.6)
    const apart = [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === j ? 1 : -0.6)));
    expect(choleskyFactor(apart)).toBeNull();
  });
});

describe('writing a fitted file', () => {
  it('reads back as it was, with comments in a builder’s words', () => {
    const fitted = readFittedFile(FITTED, 'f').fitted!;
    const text = fittedYaml(fitted, designOf(PLAIN));
    expect(text).toContain('{ field: innerConvection, is: 1.31, low: 1.22, high: 1.4, was: 1 }');
    expect(text).toContain('{ field: chamber.doorGap, times: 1.43, low: 1.2, high: 1.7, was: 2 in^2 }');
    expect(text).toMatch(/doorGap.* # gap of the chamber door/);
    expect(text).toMatch(/^# What a measured cook told, last on 'Backyard 24'/);
    expect(back(fitted)).toEqual(fitted);
  });

  it('leaves the error out where nothing was held back', () => {
    const fitted = readFittedFile(FITTED, 'f').fitted!;
    fitted.logs[0].error_K = null;
    expect(fittedYaml(fitted, designOf(PLAIN))).not.toMatch(/error: \d/);
    expect(back(fitted).logs[0].error_K).toBeNull();
  });

  it('any fit passes its own reader, within rounding', () => {
    anyFitPasses(60);
  });

  it('values that nothing tells apart are written so that the reader takes them', () => {
    const fitted = readFittedFile(FITTED, 'f').fitted!;
    fitted.correlation = [
      [1, 1],
      [1, 1],
    ];
    expect(back(fitted).correlation[0][1]).toBeGreaterThan(0.99);
  });

  it('refuses what is no field or no number', () => {
    const fitted = readFittedFile(FITTED, 'f').fitted!;
    expect(() => fittedYaml({ ...fitted, correlation: [[1, NaN]] }, designOf(PLAIN))).toThrow(RangeError);
    const [first] = fitted.values;
    expect(() => fittedYaml({ ...fitted, values: [{ ...first, path: 'site.wind' }] }, designOf(PLAIN))).toThrow(
      /no field/,
    );
  });
});

describe('the same log', () => {
  it('is found by its hash', () => {
    const { fitted } = good(named(PLAIN, FITTED)).design;
    expect(sameLog(fitted, '0123456789abcdef')?.name).toBe('yard-cook.csv');
    expect(sameLog(fitted, 'ffffffffffffffff')).toBeUndefined();
    expect(sameLog(undefined, '0123456789abcdef')).toBeUndefined();
  });
});
