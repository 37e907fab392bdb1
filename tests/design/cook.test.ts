import { describe, expect, it } from 'vitest';
import { designOf, faultsOf, PLAIN } from './designFiles.js';

const COOK = `cook:
  load: [{ name: brisket, mass: 14 lb, area: 2.5 ft^2, start: 40 °F, station: middle }]
  loading: 90 s
  tend: 8 h
  events:
    - { at: 1 h, lasts: 30 s, door: true }
    - { at: 2 h, lasts: 10 min, wind: 20 mph, rain: 50 % }
`;
const faultIn = (from: string, to: string) => {
  if (!COOK.includes(from)) throw new Error(`'${from}' is not in the cook`);
  return faultsOf(PLAIN + COOK.replace(from, to));
};

describe('splits and a cook in a design file', () => {
  it('read into SI with their defaults', () => {
    const { cook, fire } = designOf(PLAIN + COOK);
    expect(fire.splits).toMatchObject({ thickness: 0.0762, species: 'oak', charcoal: 0.33, glow: 2400 });
    expect(fire.splits.every).toBeUndefined();
    // derived: 38.1 mm at 1.3 x 0.5 mm/min, a third of it
    expect(fire.splits.flame).toBeCloseTo(1172.3, 1);
    expect(fire.cook).toEqual({ line: expect.closeTo(-15 / 1.8, 10), late: 300, look: 300, intakes: [] });
    expect(cook).toMatchObject({ soak: 0, loading: 90, tend: 28_800, dieDown: 3600 });
    expect(cook!.band).toBeCloseTo(15 / 1.8, 10);
    expect(cook!.load[0]).toMatchObject({ name: 'brisket', station: 'middle' });
    expect(cook!.load[0].start).toBeCloseTo(277.594, 3);
    expect(cook!.events[0]).toEqual({ at: 3600, lasts: 30, door: true, fireboxDoor: false });
    expect(cook!.events[1]).toMatchObject({ at: 7200, lasts: 600, door: false, rain: 0.5 });
    expect(designOf(PLAIN).cook).toBeUndefined();
  });

  it('read splits by their size, and a cook with limits for the intakes', () => {
    const { splits, cook } = designOf(
      PLAIN.replace(
        'target: 250 °F',
        'target: 250 °F\n  splits: { mass: 2.5 lb, thickness: 2 in, length: 14 in }\n  cook: { line: -10 °F, intakes: [20 %, 100 %] }',
      ),
    ).fire;
    expect(splits.mass).toBeCloseTo(1.134, 3);
    expect(splits.flame).toBeCloseTo((1172.3 * 2) / 3, 1);
    expect(cook.intakes).toEqual([0.2, 1]);
    expect(cook.line).toBeCloseTo(-10 / 1.8, 10);
  });

  it.each([
    ['intakes: [20 %]', 'fire.cook.intakes'],
    ['intakes: [80 %, 20 %]', 'fire.cook.intakes'],
    ['intakes: [0 %, 0 %]', 'fire.cook.intakes'],
    ['line: 15 °F', 'fire.cook.line'],
  ])('refuse a cook with %s', (text, path) => {
    const faults = faultsOf(PLAIN.replace('target: 250 °F', `target: 250 °F\n  cook: { ${text} }`));
    expect(faults.map((fault) => fault.path)).toContain(path);
  });

  it('take what the box can burn where no fire is given', () => {
    const { fire, firebox } = designOf(PLAIN.replace(/ +heat: 70,000 BTU\/h\n/, ''));
    expect(fire.heatOf).toBe('box');
    expect(fire.heat).toBeCloseTo(250e3 * 0.5 * firebox.width * firebox.length, 6);
    expect(designOf(PLAIN).fire.heatOf).toBeUndefined();
  });

  it('need no door where nothing is loaded', () => {
    expect(designOf(`${PLAIN}cook: { tend: 2 h }\n`).cook).toMatchObject({ load: [], loading: 0, events: [] });
  });

  it.each([
    ['station: middle', 'station: uprightLower', 'cook.load[0].station', /no station of this pit/],
    ['start: 40 °F', 'start: 90 C', 'cook.load[0].start', /too large/],
    ['at: 2 h', 'at: 45 min', 'cook.events[1].at', /begins before event 1 is over/],
    ['at: 1 h', 'at: 60 s', 'cook.events[0].at', /begins before the loading is over/],
    ['at: 2 h', 'at: 7 h 55 min', 'cook.events[1].at', /not over before the tending ends/],
    [', door: true', '', 'cook.events[0]', /says nothing that happens/],
    ['door: true', 'door: 1', 'cook.events[0].door', /is a plain number/],
    ['tend: 8 h', 'tent: 8 h', 'cook.tent', /no field here/],
    ['lasts: 30 s', 'lasts: 0 s', 'cook.events[0].lasts', /too small/],
    ['mass: 14 lb', 'mass: 14', 'cook.load[0].mass', /has no unit/],
  ])('%s to %s', (from, to, path, message) => {
    const fault = faultIn(from, to).find((each) => each.path === path);
    expect(fault?.message).toMatch(message);
  });

  it('refuse food that is hotter than the target', () => {
    const cool = PLAIN.replace('target: 250 °F', 'target: 150 °F');
    expect(faultsOf(cool + COOK.replace('start: 40 °F', 'start: 160 °F'))[0]).toMatchObject({
      path: 'cook.load[0].start',
      message: 'is not below the target of 150 °F',
    });
  });
});
