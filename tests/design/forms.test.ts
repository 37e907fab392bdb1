import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { OTHER_NAMES } from '../../src/design/otherNames.js';
import { readDesign } from '../../src/design/read.js';
import { unknownStep } from '../../src/design/shape.js';
import { SPECIMENS } from '../../src/design/specimens.js';
import { starterDesign } from '../../src/design/starter.js';
import { changed, designOf, faultsOf, inChamber, PLAIN } from './designFiles.js';

type Tree = Record<string, unknown>;

/** PLAIN with an example where it belongs; an upright takes the stack with it. */
function withSpecimen(path: string): string {
  const tree = parse(PLAIN) as Tree;
  const set = (steps: string[], value: unknown): void => {
    const block = steps.slice(0, -1).reduce((node, step) => (node[step] ??= {}) as Tree, tree);
    block[steps[steps.length - 1]] = value;
  };
  if (path.startsWith('upright.')) set(['upright'], parse(SPECIMENS.upright));
  if (path.startsWith('cook.')) set(['cook'], parse(SPECIMENS.cook));
  if (path === 'firebox.ashDoor') set(['firebox', 'grate'], parse(SPECIMENS['firebox.grate']));
  if (path === 'chamber.reverse' || path === 'chamber.plates') set(['throat', 'centre'], '33 in');
  const steps = path.startsWith('stacks.') ? ['stacks', '0', ...path.split('.').slice(1)] : path.split('.');
  set(steps, parse(SPECIMENS[path]));
  return JSON.stringify(tree);
}

describe('a field by another name', () => {
  it.each([
    ['chamber.waterPan', inChamber('length: 60 in', 'length: 60 in\n  waterPan: 10 lb'), 'contents'],
    ['stacks[0].butterfly', changed(['base: 42 in', 'base: 42 in, butterfly: 50 %']), 'damper'],
    ['firebox.firebrick', changed(['doorGap: 1.0 in^2', 'doorGap: 1.0 in^2\n  firebrick: 1-1/4 in']), 'lining'],
    ['chamber.butterfly', inChamber('length: 60 in', 'length: 60 in\n  butterfly: 50 %'), 'stacks.damper'],
    ['firebox.water_pan', changed(['doorGap: 1.0 in^2', 'doorGap: 1.0 in^2\n  water_pan: 10 lb']), 'contents'],
    ['chimney', `${PLAIN}chimney: 6 in\n`, 'stacks'],
    ['firebox.wraping', changed(['doorGap: 1.0 in^2', 'doorGap: 1.0 in^2\n  wraping: 1 in']), 'insulation'],
  ])('%s names the one that does the job', (path, text, nearest) => {
    expect(faultsOf(text)).toMatchObject([{ code: 'unknown-key', path, nearest }]);
  });

  it.each(OTHER_NAMES)('%s leads to %s, which there is', (name, field) => {
    expect(unknownStep(field.replace('{part}', 'chamber').split('.'))).toBeUndefined();
    expect(unknownStep([name])?.at ?? [name]).toEqual([name]);
  });

  it('reads a dial as a disc', () => {
    expect(designOf(changed(['kind: disc', 'kind: dial'])).firebox.intakes).toEqual(designOf(PLAIN).firebox.intakes);
  });
});

describe('a value of the wrong form', () => {
  it.each([
    ['throat', changed(['{ area: 90 in^2, centre: 34 in }', '90 in^2'])],
    ['firebox.intakes', changed(['[{ kind: disc, count: 2, diameter: 4 in, open: 100 %, centre: 26 in }]', '4 in'])],
    ['chamber.insulation', inChamber('length: 60 in', 'length: 60 in\n  insulation: 2 in')],
    ['firebox.door', changed(['doorGap: 1.0 in^2', 'doorGap: 1.0 in^2\n  door: 16 in'])],
    ['stacks[0]', changed(['[{ part: chamber, diameter: 6 in, height: 36 in, wall: 11 ga, base: 42 in }]', '[6 in]'])],
    ['fire', changed(['  heat: 70,000 BTU/h\n  rise: 10 min\n  target: 250 °F\n', '  - 20 kW\n'])],
  ])('at %s shows one of the right form', (path, text) => {
    const [fault, ...others] = faultsOf(text);
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ code: 'wrong-type', path });
    const specimen = path.replace(/\[\d\]/, '').replace('firebox.door', 'chamber.door');
    expect(fault.example).toBe(SPECIMENS[specimen]);
  });

  it.each(Object.keys(SPECIMENS))('of %s: the example stands in a design without a fault', (path) => {
    expect(readDesign(withSpecimen(path), { fileName: path }).faults ?? []).toEqual([]);
  });
});

describe('a design to start from', () => {
  it('brings the examples that it is asked for, as comments', () => {
    const things = Object.keys(SPECIMENS);
    const text = starterDesign(things);
    expect(designOf(text)).toEqual(designOf(starterDesign()));
    for (const path of things) expect(text).toContain(`# ${path.split('.').pop()}: ${SPECIMENS[path]}`);
  });
});
