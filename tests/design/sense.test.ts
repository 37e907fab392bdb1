import { describe, expect, it } from 'vitest';
import { formatFaults } from '../../src/design/faults.js';
import { changed, faultsOf, inChamber, OVER, PLAIN, read, UPRIGHT } from './designFiles.js';

function edit(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`'${from}' is not in the text`);
  return text.replace(from, () => to);
}

const REVERSE = edit(
  PLAIN.replace('centre: 34 in }', 'centre: 31 in }'),
  'doorGap: 2.0 in^2',
  'doorGap: 2.0 in^2\n  reverse: { height: 7 in, plate: 3/16 in, turn: 90 in^2 }',
).replace('area: 90 in^2', 'area: 60 in^2');

describe('designs that can be built', () => {
  it.each([
    ['plain', PLAIN],
    ['with an upright', UPRIGHT],
    ['an upright on its firebox', OVER],
    ['reverse flow', REVERSE],
    [
      'an upright beside its firebox',
      OVER.replace(', through: top', '')
        .replace('centre: 48 in\n', 'centre: 30 in\n')
        .replace('centre: 24 in }', 'centre: 15 in }')
        .replace('base: 72 in', 'base: 54 in'),
    ],
    [
      'two stacks that are the same',
      changed(['stacks: [', 'stacks: [{ part: chamber, diameter: 6 in, height: 36 in, wall: 11 ga, base: 42 in }, ']),
    ],
    ['closed vents and damper', changed(['open: 100 %', 'open: 0 %'], ['base: 42 in', 'base: 42 in, damper: 0 %'])],
  ])('%s', (_, text) => {
    expect(formatFaults(read(text).faults ?? [])).toBe('');
  });
});

// derived: 24 in round sections at 30 and 40 in share a lens of 219 in2 outside (closed form), between 28 and 42 in
const NONSENSE: [string, string, string, RegExp, RegExp][] = [
  [
    'plate thicker than half the part',
    inChamber('plate: 1/4 in', 'plate: 13 in'),
    'chamber.plate',
    /thicker than half/,
    /24 in/,
  ],
  [
    'stack wall thicker than half the stack',
    changed(['diameter: 6 in, height: 36 in, wall: 11 ga', 'diameter: 2 in, height: 36 in, wall: 1.5 in']),
    'stacks[0].wall',
    /thicker than half/,
    /less than/,
  ],
  [
    'throat larger than a section',
    changed(['area: 90 in^2', 'area: 500 in^2']),
    'throat.area',
    /larger than the section of the firebox/,
    /in²/,
  ],
  [
    'throat larger than what the parts share',
    changed(['area: 90 in^2', 'area: 300 in^2']),
    'throat.area',
    /have in common/,
    /in²/,
  ],
  [
    'throat above the overlap',
    changed(['area: 90 in^2, centre: 34 in', 'area: 90 in^2, centre: 45 in']),
    'throat.centre',
    /above where/,
    /28 1\/4 in to 41 3\/4 in/,
  ],
  [
    'throat below the overlap',
    changed(['area: 90 in^2, centre: 34 in', 'area: 90 in^2, centre: 20 in']),
    'throat.centre',
    /below where/,
    /28 1\/4 in/,
  ],
  [
    'parts that do not meet',
    inChamber('centre: 40 in', 'centre: 80 in').replace('base: 42 in', 'base: 82 in'),
    'throat',
    /do not meet/,
    /overlap/,
  ],
  [
    'an upright opening larger than the chamber',
    edit(UPRIGHT, 'opening: { area: 90', 'opening: { area: 480'),
    'upright.opening.area',
    /section of the chamber/,
    /in²/,
  ],
  [
    'an upright opening above the chamber',
    edit(UPRIGHT, 'opening: { area: 90 in^2, centre: 40 in', 'opening: { area: 90 in^2, centre: 60 in'),
    'upright.opening.centre',
    /above/,
    /to/,
  ],
  [
    'an upright that does not reach the chamber',
    edit(UPRIGHT, 'centre: 48 in', 'centre: 90 in').replace('base: 67 in', 'base: 100 in'),
    'upright.opening',
    /do not meet/,
    /overlap/,
  ],
  [
    'a vent larger than the firebox face',
    changed(['count: 2, diameter: 4 in', 'count: 1, diameter: 30 in']),
    'firebox.intakes[0].diameter',
    /larger than the firebox face/,
    /in²/,
  ],
  [
    'vents larger than the firebox face together',
    changed(['count: 2, diameter: 4 in', 'count: 20, diameter: 6 in']),
    'firebox.intakes',
    /together/,
    /in²/,
  ],
  [
    'a vent above the firebox roof',
    changed(['centre: 26 in }]', 'centre: 41 in }]']),
    'firebox.intakes[0].centre',
    /above the firebox roof/,
    /20 in to 40 in/,
  ],
  [
    'a vent under the firebox floor',
    changed(['centre: 26 in }]', 'centre: 10 in }]']),
    'firebox.intakes[0].centre',
    /under the firebox floor/,
    /20 in to 40 in/,
  ],
  [
    'a stack base above its part',
    changed(['base: 42 in', 'base: 62 in']),
    'stacks[0].base',
    /outside the chamber/,
    /28 in to 55 in/,
  ],
  [
    'a stack base under its part',
    changed(['base: 42 in', 'base: 20 in']),
    'stacks[0].base',
    /outside the chamber/,
    /28 in to 55 in/,
  ],
  [
    'a stack wider than its part',
    edit(OVER, 'diameter: 4 in', 'diameter: 2 ft').replaceAll('width: 24 in', 'width: 20 in'),
    'stacks[0].diameter',
    /wider than the upright/,
    /20 in/,
  ],
  [
    'stacks that take the whole roof',
    edit(
      OVER,
      'stacks: [',
      'stacks: [{ diameter: 22 in, height: 24 in, wall: 16 ga, base: 72 in }, { diameter: 22 in, height: 24 in, wall: 16 ga, base: 72 in }, ',
    ),
    'stacks',
    /roof together/,
    /in all/,
  ],
  [
    'a stack on a part that is not there',
    changed(['part: chamber', 'part: upright']),
    'stacks[0].part',
    /lacks/,
    /chamber/,
  ],
  [
    'a stack on neither of two parts',
    edit(UPRIGHT, 'part: upright, ', ''),
    'stacks[0].part',
    /chamber and an upright/,
    /chamber or upright/,
  ],
  [
    'a gauge on a station that is not there',
    changed(['gauge: middle', 'gauge: uprightLower']),
    'gauge',
    /upright/,
    /fireEnd, middle, stackEnd/,
  ],
  [
    'a target below the outdoor air',
    changed(['air: 70 °F', 'air: 105 °F'], ['target: 250 °F', 'target: 100 °F']),
    'fire.target',
    /not above the outdoor air/,
    /114 °F/,
  ],
  [
    'a part under the ground',
    changed(
      ['centre: 30 in', 'centre: 10 in'],
      ['centre: 26 in }', 'centre: 10 in }'],
      ['centre: 40 in', 'centre: 20 in'],
      ['centre: 34 in', 'centre: 14 in'],
      ['base: 42 in', 'base: 22 in'],
    ),
    'firebox.centre',
    /under the ground/,
    /12 in/,
  ],
  ['neither chamber nor upright', PLAIN.replace(/chamber:\n(?: .*\n)+/, ''), 'chamber', /needs a chamber/, /upright/],
  [
    'a chamber and an upright that are not joined',
    UPRIGHT.replace(/ {2}opening: .*\n/, ''),
    'upright.opening',
    /missing/,
    /area/,
  ],
  [
    'an upright opening without a chamber',
    edit(OVER, '  plate: 3/16 in', '  plate: 3/16 in\n  opening: { area: 50 in^2, centre: 40 in }'),
    'upright.opening',
    /no chamber/,
    /leave it out/,
  ],
  [
    'a throat through the roof into a chamber',
    changed(['centre: 34 in }', 'centre: 34 in, through: top }']),
    'throat.through',
    /chamber stands between/,
    /end/,
  ],
  [
    'an upright that floats above its firebox',
    edit(OVER, 'centre: 48 in', 'centre: 60 in'),
    'upright.centre',
    /not on the firebox roof/,
    /to/,
  ],
  [
    'a throat that is not at the roof it leads through',
    edit(OVER, 'centre: 24 in, through', 'centre: 34 in, through'),
    'throat.centre',
    /not at the firebox roof/,
    /to/,
  ],
  [
    'a throat larger than the roof it leads through',
    edit(OVER, 'area: 60 in^2', 'area: 600 in^2'),
    'throat.area',
    /have in common/,
    /in²/,
  ],
  [
    'a reverse plate outside the chamber',
    edit(REVERSE, 'height: 7 in', 'height: 24 in'),
    'chamber.reverse.height',
    /outside the chamber/,
    /less than/,
  ],
  [
    'a throat above the reverse plate',
    edit(REVERSE, 'centre: 31 in }', 'centre: 38 in }'),
    'throat.centre',
    /above the reverse-flow plate/,
    /less than/,
  ],
  [
    'a turn that takes the plate away',
    edit(REVERSE, 'turn: 90 in^2', 'turn: 1200 in^2'),
    'chamber.reverse.turn',
    /half of the plate/,
    /up to/,
  ],
  [
    'a stack under the reverse plate',
    edit(REVERSE, 'base: 42 in', 'base: 30 in'),
    'stacks[0].base',
    /under the reverse-flow plate/,
    /more than/,
  ],
  [
    'a door wider than its part',
    inChamber('doorGap: 2.0 in^2', 'door: { width: 70 in, height: 20 in }'),
    'chamber.door.width',
    /wider/,
    /60 in/,
  ],
  [
    'a door higher than its part',
    inChamber('doorGap: 2.0 in^2', 'door: { width: 40 in, height: 40 in }'),
    'chamber.door.height',
    /higher/,
    /up to/,
  ],
  [
    'a square door on a round end',
    changed(['doorGap: 1.0 in^2', 'door: { width: 20 in, height: 20 in }']),
    'firebox.door',
    /corners/,
    /24 in/,
  ],
  [
    'contents at a station of another part',
    inChamber('doorGap: 2.0 in^2', 'contents: [{ name: pan, mass: 3 lb, area: 2 ft^2, station: uprightLower }]'),
    'chamber.contents[0].station',
    /no station/,
    /fireEnd, middle/,
  ],
  [
    'contents without a surface',
    inChamber('doorGap: 2.0 in^2', 'contents: [{ name: pan, mass: 3 lb, area: 0 in^2 }]'),
    'chamber.contents[0].area',
    /too small/,
    /1 in\^2/,
  ],
];

describe('designs that can not', () => {
  it.each(NONSENSE)('%s', (_, text, path, message, allowed) => {
    const faults = faultsOf(text);
    expect(faults.map((each) => each.path)).toEqual([path]);
    expect(faults[0].message).toMatch(message);
    expect(faults[0].allowed).toMatch(allowed);
    expect(faults[0].line).toBeGreaterThanOrEqual(1);
  });
});
