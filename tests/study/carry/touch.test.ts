import { describe, expect, it } from 'vitest';
import type { Handle } from '../../../src/design/design.js';
import { rodProfile, rodTemperature } from '../../../src/physics/rod.js';
import { finHeat } from '../../../src/verify/relations/fin.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { handleState, touched, windingOf } from '../../../src/study/carry/touch.js';
import { designOf, faultsOf, PLAIN } from '../../design/designFiles.js';

const plain = designOf(PLAIN);
const HOT = 450;

const knob: Handle = {
  name: 'knob',
  part: 'firebox',
  kind: 'rod',
  diameter: 0.0127,
  length: 0.15,
  standoff: 0.05,
  ends: 1,
  material: 'carbon',
  emissivity: 0.79,
  sees: 0.4,
};

const hand = (change: Partial<Handle>, base = HOT) =>
  handleState(plain, { ...knob, ...change }, base).hand.temperature_K;

describe('a rod along which heat runs', () => {
  const rod = { length: 0.1, section: 1e-4, perimeter: 0.04, base: 400 };
  const constant = { conductivity: () => 50, loss: (t: number) => 20 * (t - 300) };

  // Incropera et al. (2007), 6th ed., eq. 3.76: heat of a fin with an adiabatic tip (derived)
  it('takes in what the textbook’s formula gives', () => {
    const profile = rodProfile({ ...rod, ...constant });
    const exact = finHeat({ perimeter: 0.04, section: 1e-4, conductivity: 50, coefficient: 20 }, 0.1, 100);
    expect(profile.heat / exact).toBeCloseTo(1, 4);
  });

  it('gives off along its surface what it takes in at its base, also with radiation', () => {
    const loss = (t: number) => 5 * Math.abs(t - 300) ** 0.25 * (t - 300) + 4e-8 * (t ** 4 - 300 ** 4);
    const { at, temperature, heat } = rodProfile({ ...rod, base: 700, conductivity: (t) => 60 - 0.03 * t, loss });
    const step = at[1];
    let given = 0;
    for (let i = 0; i < at.length; i++)
      given += loss(temperature[i]) * 0.04 * step * (i === 0 || i === at.length - 1 ? 0.5 : 1);
    expect(given / heat).toBeCloseTo(1, 6);
  });

  it('falls all the way, never below its surroundings', () => {
    const profile = rodProfile({ ...rod, ...constant, length: 2 });
    for (let i = 1; i < profile.at.length; i++) {
      expect(profile.temperature[i]).toBeLessThanOrEqual(profile.temperature[i - 1]);
      expect(profile.temperature[i]).toBeGreaterThan(300 - 1e-9);
    }
    expect(rodTemperature(profile, 0)).toBe(400);
    expect(rodTemperature(profile, 9)).toBe(profile.temperature[profile.temperature.length - 1]);
  });

  it('is all at the base’s temperature where it loses nothing', () => {
    const { temperature, heat } = rodProfile({ ...rod, conductivity: () => 50, loss: () => 0 });
    expect(Math.max(...temperature)).toBe(400);
    expect(Math.min(...temperature)).toBeCloseTo(400, 9);
    expect(heat).toBeCloseTo(0, 9);
  });
});

describe('a handle', () => {
  it('at the temperature of the air when its plate is', () => {
    expect(hand({}, plain.site.air)).toBeCloseTo(plain.site.air, 6);
  });

  it('is cooler farther out, of stainless, thinner, and where it sees less of the plate', () => {
    expect(hand({ standoff: 0.1 })).toBeLessThan(hand({}) - 2);
    expect(hand({ material: 'stainless' })).toBeLessThan(hand({}) - 10);
    expect(hand({ diameter: 0.006 })).toBeLessThan(hand({}));
    expect(hand({ sees: 0.2 })).toBeLessThan(hand({}) - 5);
  });

  it('stays between air and plate', () => {
    for (const base of [300, 400, 600, 900]) {
      expect(hand({}, base)).toBeLessThanOrEqual(base);
      expect(hand({}, base)).toBeGreaterThan(plain.site.air);
    }
  });

  it('as a bow is a knob of half its length, fed from both ends', () => {
    const bow = handleState(plain, { ...knob, ends: 2, length: 0.3 }, HOT);
    const half = handleState(plain, { ...knob, length: 0.15 - 0.25 * knob.diameter }, HOT);
    expect(bow.hand.temperature_K).toBeCloseTo(half.hand.temperature_K, 6);
    expect(bow.heat_W).toBeCloseTo(2 * half.heat_W, 6);
  });

  it('as a coil has the way of its wire, and is cooler than the rod of that wire', () => {
    const coil = { kind: 'coil', diameter: 0.0095, coil: 0.038, pitch: 0.019 } as const;
    const { path, exposed } = windingOf({ ...knob, ...coil });
    // one turn unwound: hypotenuse of its mean circumference and its pitch
    expect(path * 0.019).toBeCloseTo(Math.hypot(Math.PI * (0.038 - 0.0095), 0.019), 12);
    expect(exposed).toBeGreaterThan(0.3);
    expect(exposed).toBeLessThanOrEqual(1);
    expect(hand(coil)).toBeLessThan(hand({ diameter: 0.0095 }) - 5);
  });
});

describe('a bare hand on metal', () => {
  // ISO 13732-1:2006, uncoated metal: 65-70 °C at 1 s, 55-57 °C at 10 s (memory); the lower edge counts
  it('is judged for 1 s and 10 s by the lower edge of the standard', () => {
    const at = (celsius: number) => touched(celsius + 273.15).verdicts.map(({ burns }) => burns);
    expect(at(54)).toEqual([false, false]);
    expect(at(56)).toEqual([false, true]);
    expect(at(66)).toEqual([true, true]);
    expect(touched(313.15).longest_s).toBeNull();
    expect(touched(330).longest_s).toBeLessThan(10);
    expect(touched(350).longest_s).toBe(0);
  });
});

describe('in an estimate', () => {
  const door = 'handles: [{ name: door, part: chamber, diameter: 1/2 in, length: 5 in, standoff: 2 in }]\n';

  it('handles stand on the hottest station of their part unless the file says where', () => {
    const result = estimate(designOf(PLAIN + door), { steadyOnly: true });
    const [found] = result.hands!.handles;
    expect(found.station).toBe('fireEnd');
    const state = result.steady!.stations.find(({ name }) => name === 'fireEnd')!;
    expect(found.hold!.base_K).toBe(state.outside_K);
    expect(found.full!.base_K).toBeGreaterThan(found.hold!.base_K);
    const placed = PLAIN + door.replace('part: chamber', 'part: chamber, station: stackEnd');
    expect(estimate(designOf(placed), { steadyOnly: true }).hands!.handles[0].station).toBe('stackEnd');
  });

  it('outer steel is judged with them; without handles there is no such key', () => {
    const { hands } = estimate(designOf(PLAIN + door), { steadyOnly: true });
    expect(hands!.surfaces.map(({ station }) => station)).toEqual(['firebox', 'fireEnd', 'middle', 'stackEnd']);
    expect(hands!.standard).toMatch(/ISO 13732-1.*memory/);
    expect(estimate(plain, { steadyOnly: true })).not.toHaveProperty('hands');
  });
});

describe('a handle that cannot be', () => {
  const file = (fields: string) => `${PLAIN}handles: [{ name: door, ${fields} }]\n`;
  it.each([
    ['on a part that is not there', 'part: upright, diameter: 1/2 in, length: 5 in', 'handles[0].part'],
    [
      'at another part’s station',
      'part: chamber, station: firebox, diameter: 1/2 in, length: 5 in',
      'handles[0].station',
    ],
    [
      'shorter than its stand-off',
      'part: chamber, diameter: 1/2 in, length: 5 in, standoff: 6 in',
      'handles[0].standoff',
    ],
    ['with three ends', 'part: chamber, diameter: 1/2 in, length: 5 in, ends: 3', 'handles[0].ends'],
    [
      'coiled tighter than its wire',
      'part: chamber, kind: coil, diameter: 1/2 in, length: 5 in, pitch: 1/4 in',
      'handles[0].pitch',
    ],
    ['of wood', 'part: chamber, diameter: 1/2 in, length: 5 in, material: wood', 'handles[0].material'],
  ])('%s is refused by name', (_, fields, path) => {
    expect(faultsOf(file(fields)).map((fault) => fault.path)).toEqual([path]);
  });
});
