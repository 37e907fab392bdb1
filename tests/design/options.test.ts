import { describe, expect, it } from 'vitest';
import { AS_DRAWN, type DesignOption } from '../../src/design/options.js';
import { readDesign } from '../../src/design/read.js';
import { changed, designOf, faultsOf, inChamber, PLAIN, read } from './designFiles.js';

const withOptions = (options: string, text = PLAIN) => `${text}options:\n${options}`;
const option = (changes: string, text = PLAIN) => withOptions(`  - { name: other, changes: ${changes} }\n`, text);

function optionsOf(text: string): DesignOption[] {
  const result = read(text);
  if (result.faults) throw new Error(JSON.stringify(result.faults));
  return result.options;
}

describe('an option', () => {
  it.each([
    ['one field', '{ chamber.plate: 3/16 in }', inChamber('plate: 1/4 in', 'plate: 3/16 in')],
    [
      'several at once, a block among them',
      '{ fire.target: 265 °F, firebox.insulation: { material: ceramic fibre, thickness: 2 in, skin: 16 ga } }',
      changed(
        ['target: 250 °F', 'target: 265 °F'],
        [
          'doorGap: 1.0 in^2',
          'doorGap: 1.0 in^2\n  insulation: { material: ceramic fibre, thickness: 2 in, skin: 16 ga }',
        ],
      ),
    ],
    ['every stack', '{ stacks.height: 40 in }', changed(['height: 36 in', 'height: 40 in'])],
    ['one field of a list', '{ "firebox.intakes[0].open": 50 % }', changed(['open: 100 %', 'open: 50 %'])],
    [
      'fields with one value',
      '{ "fire.rise, fire.splits.every": 20 min }',
      changed(['rise: 10 min', 'rise: 20 min\n  splits: { every: 20 min }']),
    ],
    [
      'a value each',
      '{ "chamber.length, chamber.doorGap": 62 in; 3 in^2 }',
      inChamber('length: 60 in', 'length: 62 in').replace('doorGap: 2.0 in^2', 'doorGap: 3 in^2'),
    ],
    ['a field away', '{ site.altitude: none }', changed(['  altitude: 500 ft\n', ''])],
    [
      'a shape, with the size that goes with it',
      '{ chamber.shape: square, chamber.width: 24 in }',
      inChamber('shape: round\n  diameter: 24 in', 'shape: square\n  width: 24 in'),
    ],
  ])('that changes %s is the file with that changed', (_, changes, file) => {
    const [made, ...others] = optionsOf(option(changes));
    expect(others).toEqual([]);
    expect(made.design).toEqual(designOf(file));
    expect(made.name).toBe('other');
    expect(designOf(option(changes))).toEqual(designOf(PLAIN));
  });

  it('takes the door of a part along, and says so', () => {
    const doored = inChamber('length: 60 in', 'length: 60 in\n  door: { width: 40 in, height: 18 in, plate: 1/4 in }');
    const [made] = optionsOf(option('{ chamber.plate: 3/8 in }', doored));
    expect(made.changes).toEqual([{ path: 'chamber.plate', value: '3/8 in' }]);
    expect(made.also).toEqual([{ path: 'chamber.door.plate', value: '3/8 in' }]);
    expect(made.design.chamber!.door!.plate).toBe(made.design.chamber!.plate);
  });

  it('warns where one plate for all thins a part that was drawn heavier', () => {
    const heavy = changed(['plate: 1/4 in\n  centre: 30 in', 'plate: 3/8 in\n  centre: 30 in']);
    const [made] = optionsOf(option('{ all.plate: 1/4 in }', heavy));
    expect(made.warnings).toMatchObject([{ code: 'heavier-part-thinned', where: 'firebox' }]);
  });

  it('is left alone, right or wrong, where only the design is asked for', () => {
    const text = option('{ chamber.plat: 3 in }');
    expect(readDesign(text, { fileName: 'pit.yaml', alone: true })).toMatchObject({
      design: designOf(PLAIN),
      options: [],
    });
  });
});

describe('a faulty option is told at its own line', () => {
  const line = option('{}').split('\n').length - 1;
  const at = (path: string) => `options[0].changes.${path}`;

  it.each([
    ['a field that there is none of', '{ chamber.plat: 3/16 in }', 'unknown-key', at('chamber.plat'), 'plate'],
    ['a field by another name', '{ chamber.waterPan: 3/16 in }', 'unknown-key', at('chamber.waterPan'), 'contents'],
    ['a field of parts without its part', '{ plate: 3/16 in }', 'unknown-key', at('plate'), 'all.plate'],
    ['what is no path', '{ chamber plate: 3/16 in }', 'unknown-key', at('chamber plate'), 'chamber.plate'],
    ['a part that there is none of', '{ upright.plate: 3/16 in }', 'cannot-be-built', at('upright.plate'), null],
    ['no such item of a list', '{ "stacks[3].height": 3 ft }', 'cannot-be-built', at('stacks[3].height'), null],
    ['a value without its unit', '{ chamber.plate: 3/16 }', 'no-unit', at('chamber.plate'), '3/16 in'],
    ['one value wrong in every part', '{ all.plate: 3/16 }', 'no-unit', at('all.plate'), '3/16 in'],
    ['a value out of range', '{ chamber.plate: 5 in }', 'out-of-range', at('chamber.plate'), null],
    ['a value of the wrong form', '{ firebox.insulation: 2 in }', 'wrong-type', at('firebox.insulation'), null],
    ['a name that is not known', '{ wood.kind: oek }', 'unknown-name', at('wood.kind'), 'oak'],
    ['no value', '{ chamber.plate: }', 'missing', at('chamber.plate'), null],
    ['too many values', '{ chamber.plate: 1/8 in; 3/8 in }', 'cannot-be-built', at('chamber.plate'), null],
    ['a thousands comma', '{ fire.heat: 80,000 BTU/h }', 'comma-in-braces', at('fire.heat'), '"80,000 BTU/h"'],
    ['a field twice', '{ chamber.plate: 1/8 in, chamber.plate: 3/8 in }', 'duplicate-key', at('chamber.plate'), null],
    ['a pit that can’t be', '{ chamber.diameter: 10 in }', 'cannot-be-built', at('chamber.diameter'), null],
    ['nothing', '{}', 'no-change', 'options[0].changes', null],
    ['to what it is already', '{ chamber.plate: 0.25 in }', 'no-change', 'options[0].changes', null],
    ['its name alone', '{ name: Other }', 'no-change', 'options[0].changes', null],
    ['a list in place of changes', '[chamber.plate]', 'wrong-type', 'options[0].changes', null],
  ])('that changes %s', (_, changes, code, path, nearest) => {
    const [fault] = faultsOf(option(changes));
    expect(fault).toMatchObject({ code, path, nearest, line });
  });

  it('once, however many parts or faults that follow from it', () => {
    const doored = inChamber('length: 60 in', 'length: 60 in\n  door: { width: 40 in, height: 18 in, plate: 1/4 in }');
    expect(faultsOf(option('{ all.plate: 3/16 }', doored))).toHaveLength(1);
    expect(faultsOf(option('{ chamber.plate: 5 in }', doored))).toHaveLength(1);
  });

  it('inside a block as well', () => {
    expect(faultsOf(option('{ firebox.insulation: { material: mineral wool, thicknes: 2 in } }'))).toMatchObject([
      { code: 'unknown-key', path: at('firebox.insulation.thicknes'), nearest: 'thickness' },
    ]);
  });

  it('shows one of the right form', () => {
    expect(faultsOf(option('{ firebox.insulation: 2 in }'))[0].example).toMatch(/material: .*thickness: /);
    expect(faultsOf(option('[1]'))[0].example).toMatch(/name: .*changes: /);
    expect(faultsOf(option('{}'))[0].example).toMatch(/chamber\.plate: /);
  });

  it.each([
    ['two of one name', ['thin', 'Thin'], 'options[1].name'],
    ['the name of the design as drawn', [AS_DRAWN, 'thin'], 'options[0].name'],
  ])('%s', (_, [first, second], path) => {
    const text = withOptions(
      `  - { name: ${first}, changes: { chamber.plate: 3/16 in } }\n  - { name: ${second}, changes: { chamber.plate: 3/8 in } }\n`,
    );
    expect(faultsOf(text)).toMatchObject([{ code: 'duplicate-key', path }]);
  });

  it.each([
    ['no name', '  - { changes: { chamber.plate: 3/8 in } }\n', 'missing', 'options[0].name'],
    ['an empty name', '  - { name: "", changes: { chamber.plate: 3/8 in } }\n', 'missing', 'options[0].name'],
    ['no changes', '  - { name: thin }\n', 'missing', 'options[0].changes'],
    ['a block in place of a list', '  thin: { chamber.plate: 3/8 in }\n', 'wrong-type', 'options'],
    ['no option', '  []\n', 'out-of-range', 'options'],
  ])('%s', (_, options, code, path) => {
    expect(faultsOf(withOptions(options))).toMatchObject([{ code, path }]);
  });

  it('shows the quotes that a path with brackets needs', () => {
    const [fault] = faultsOf(option('{ firebox.intakes[0].open: 50 % }'));
    expect(fault).toMatchObject({ code: 'syntax', value: 'firebox.intakes[0].open', line });
    expect(read(option(`{ ${fault.example!.replace('...', '50 %')} }`)).faults).toBeUndefined();
  });

  it('not while the design itself has faults, which it would only repeat', () => {
    expect(faultsOf(option('{ chamber.plat: 3 in }', changed(['length: 24 in', 'length: 24'])))).toMatchObject([
      { code: 'no-unit', path: 'firebox.length' },
    ]);
  });
});

describe('prices', () => {
  const priced = (prices: string) => `${PLAIN}prices: ${prices}\n`;

  it('are read in SI and in one currency', () => {
    expect(designOf(priced('{ steel: 2 €/kg, insulation: 40 €/m2, wood: 300 €/tonne }')).prices).toEqual({
      steel: 2,
      insulation: 40,
      wood: 0.3,
      currency: '€',
    });
    expect(designOf(PLAIN).prices).toBeUndefined();
  });

  it.each([
    ['{ steel: $1.20 }', 'no-unit', 'prices.steel', '$1.20/lb'],
    ['{ steel: 1.20 }', 'no-unit', 'prices.steel', '$1.2/lb'],
    ['{ insulation: $4/lb }', 'unknown-unit', 'prices.insulation', '$4/ft²'],
    ['{ wood: cheap }', 'not-a-quantity', 'prices.wood', null],
    ['{ wood: $0/lb }', 'out-of-range', 'prices.wood', null],
    ['{ steel: $1.20/lb, wood: 0.30 €/kg }', 'unknown-unit', 'prices.wood', null],
    ['{ stel: $1.20/lb }', 'unknown-key', 'prices.stel', 'steel'],
    ['$1.20/lb', 'wrong-type', 'prices', null],
  ])('%s is refused', (prices, code, path, nearest) => {
    expect(faultsOf(priced(prices))).toMatchObject([{ code, path, nearest }]);
  });
});
