import { describe, expect, it } from 'vitest';
import { controlsFor } from '../../src/page/controls.js';
import { otherSteps } from '../../src/page/trySteps.js';
import { Workbench } from '../../src/page/workbench.js';
import { edit, labels, textOf } from './support/bench.js';

const tank = () => new Workbench(textOf('tank-on-trailer'));
const controlsOf = ({ current: { design, text } }: Workbench) =>
  controlsFor(design, text).flatMap(({ title, controls }) => controls.map((control) => ({ title, ...control })));

describe('what the file gives and no slider stands for', () => {
  it('is shown: plates by face, doors by name, the lining, handles', () => {
    const shown = new Map(controlsOf(tank()).map(({ id, title, label }) => [id, `${title}: ${label}`]));
    expect(Object.fromEntries(shown)).toMatchObject({
      'firebox.roof.plate': 'More of the firebox: Roof plate',
      'firebox.lining.thickness': 'More of the firebox: Lining thickness',
      'firebox.lining.faces': 'More of the firebox: Lining faces',
      'chamber.doors[1].gap': 'More of the chamber: Door right gap',
      'handles[0].standoff': 'Wood and all else in the file: Handles firebox door standoff',
    });
  });

  it('names every number and word of the file once', () => {
    const ids = controlsOf(tank()).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const bench = tank();
    for (const path of ['chamber.floor.insulation', 'chamber.shell', 'prices.steel', 'size.keep', 'gauge']) {
      expect(ids).toContain(path);
      const control = controlsOf(bench).find(({ id }) => id === path)!;
      expect(bench.current.text.get(control.path), path).not.toBe(undefined);
    }
  });

  it('is changed there, and what else stands in the file stays', () => {
    const bench = tank();
    const before = bench.current.text.text();
    expect(edit(bench, 'firebox.roof.plate', '1/2 in')).toBe(true);
    expect(bench.current.design.firebox.roof?.plate).toBeCloseTo(0.0127, 6);
    expect(edit(bench, 'firebox.lining.faces', 'floor, sides, roof')).toBe(true);
    expect(bench.current.design.firebox.lining?.faces).toEqual(['roof', 'floor', 'sides']);
    expect(edit(bench, 'chamber.doors[1].gap', '1 in^2')).toBe(true);
    const lines = (text: string) => text.split('\n').map((line) => line.replace(/\s+/g, ' ').trim());
    const gone = lines(before).filter((line) => !lines(bench.current.text.text()).includes(line));
    expect(gone.filter((line) => !/roof:|faces: \[ ?floor, sides ?\]|name: right/.test(line))).toEqual([]);
    expect(bench.current.text.text()).toContain('# fat runs along it to the drain');
  });

  it('and refused with the reader’s words where it makes no pit', () => {
    const bench = tank();
    expect(edit(bench, 'firebox.lining.thickness', 'a brick')).toBe(false);
    expect(bench.current.refused.get('firebox.lining.thickness')?.message).toMatch(/a brick/);
    expect(bench.current.design.firebox.lining?.thickness).toBeCloseTo(0.03175, 5);
  });

  it('an option is named by it, but a door that goes with its part says nothing', () => {
    const bench = tank();
    bench.current = bench.baseline;
    bench.add();
    edit(bench, 'firebox.lining.thickness', '2 in');
    expect(labels(bench).at(-1)).toBe('Firebox lining thickness 2 in');
    bench.current = bench.baseline;
    bench.add();
    edit(bench, 'firebox.plate', '3/8 in');
    expect(labels(bench).at(-1)).toBe('Firebox plate 3/8 in');
  });
});

describe('another shape', () => {
  it('may keep the weight as well as the volume', () => {
    const bench = new Workbench(textOf('plain-24'));
    const steps = otherSteps(bench.current).filter(({ id }) => id.startsWith('chamber-square'));
    expect(steps.map(({ label }) => label)).toEqual(['Square chamber, same volume', 'Square chamber, same weight']);
    const [volume, weight] = steps.map(({ design }) => design.chamber!.width);
    // a square of the same steel holds less than the round
    expect(weight).toBeLessThan(volume);
    expect(weight).toBeCloseTo((Math.PI / 4) * 0.6096, 1);
  });
});
