import { describe, expect, it } from 'vitest';
import { TANKS } from '../../src/design/catalog/index.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { headOf, headReach, torispherical } from '../../src/design/heads.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { weightOf } from '../../src/study/carry/weight.js';
import { designOf, faultsOf, inChamber, PLAIN, read } from './designFiles.js';

const INCH = 0.0254;
const GALLON = 231 * INCH ** 3;

const chamberOf = (text: string) => {
  const design = designOf(text);
  const geometry = geometryOf(design);
  return { design, geometry, chamber: geometry.parts.find(({ name }) => name === 'chamber')! };
};
const face = ({ faces }: ReturnType<typeof chamberOf>['chamber'], name: string) =>
  faces.find((each) => each.name === name)!;
const withHeads = (heads: string) => inChamber('length: 60 in', `length: 60 in\n  heads: ${heads}`);

describe('a head', () => {
  it('of a great crown radius and a sharp knuckle is a flat disc', () => {
    const { area, volume, depth } = torispherical({ diameter: 0.6, crown: 600, knuckle: 1e-6 });
    expect(area).toBeCloseTo((Math.PI / 4) * 0.6 ** 2, 5);
    expect(volume).toBeLessThan(1e-4);
    expect(depth).toBeLessThan(1e-4);
  });

  it.each(['dished', 'elliptical', 'hemispherical'] as const)('%s: its outline turned round is its outside', (kind) => {
    const shell = { diameter: 24 * INCH, plate: 0.25 * INCH };
    const { outsideArea, insideArea, depth, steelVolume, gasVolume } = headOf(kind, shell);
    const steps = 4000;
    const radius = shell.diameter / 2;
    let [area, volume] = [0, 0];
    let before = [0, headReach(kind, shell, 0)];
    expect(before[1]).toBeCloseTo(depth, 9);
    for (let i = 1; i <= steps; i++) {
      const r = radius * Math.sin(((Math.PI / 2) * i) / steps);
      const z = headReach(kind, shell, r);
      const mean = (r + before[0]) / 2;
      area += 2 * Math.PI * mean * Math.hypot(r - before[0], z - before[1]);
      volume += (2 * Math.PI * mean * (r - before[0]) * (z + before[1])) / 2;
      before = [r, z];
    }
    expect(Math.abs(outsideArea / area - 1)).toBeLessThan(2e-3);
    // plate between both surfaces: the outside of a 2:1 head, which is no ellipse, is drawn as one
    expect(Math.abs((gasVolume + steelVolume) / volume - 1)).toBeLessThan(3e-3);
    expect(steelVolume / shell.plate).toBeGreaterThan(insideArea);
    expect(steelVolume / shell.plate).toBeLessThan(outsideArea);
  });
});

describe('a chamber with heads', () => {
  const flat = chamberOf(PLAIN);

  it('has its length between the seams, and what the heads hold beyond it', () => {
    const { chamber } = chamberOf(withHeads('elliptical'));
    const bore = 23.5 * INCH;
    const head = (Math.PI / 24) * bore ** 3;
    const section = (Math.PI / 4) * bore ** 2;
    // the firebox covers a lens of two 24 in circles 10 in apart, 219.53 in2, of the head at the fire
    const left = 1 - 219.53 / ((Math.PI / 4) * 24 ** 2);
    expect(chamber.length).toBeCloseTo(60 * INCH, 9);
    expect(chamber.gasVolume).toBeCloseTo(section * 60 * INCH + (1 + left) * head, 5);
    expect(face(chamber, 'farEnd').beyond).toBeGreaterThan(2 * INCH);
    expect(face(chamber, 'fireEnd').mass / face(chamber, 'farEnd').mass).toBeCloseTo(left, 3);
  });

  it('weighs the more the further its heads stand out, and has the more outside to lose heat by', () => {
    const kinds = ['dished', 'elliptical', 'hemispherical'].map((kind) => chamberOf(withHeads(kind)).chamber);
    const ends = [flat.chamber, ...kinds].map((each) => face(each, 'farEnd'));
    for (let i = 1; i < ends.length; i++) {
      expect(ends[i].outsideArea).toBeGreaterThan(ends[i - 1].outsideArea);
      expect(ends[i].mass).toBeGreaterThan(ends[i - 1].mass);
    }
    // handbooks: surface of a standard dished head 1.19 times, of a 2:1 head 1.38 times that of its disc (outside,
    // plate in it)
    const ratio = (at: number) => ends[at].outsideArea / ends[0].outsideArea;
    expect(ratio(1)).toBeGreaterThan(1.15);
    expect(ratio(1)).toBeLessThan(1.22);
    expect(ratio(2)).toBeCloseTo(1.38, 1);
    expect(ratio(3)).toBeCloseTo(2, 6);
  });

  it('a straight flange makes the shell longer at both ends', () => {
    const [short, long] = ['dished', 'dished\n  flange: 2 in'].map((heads) => chamberOf(withHeads(heads)).chamber);
    expect(long.length - short.length).toBeCloseTo(4 * INCH, 9);
    expect(face(long, 'farEnd').beyond! - face(short, 'farEnd').beyond!).toBeCloseTo(2 * INCH, 9);
    expect(face(long, 'shell').mass).toBeGreaterThan(face(short, 'shell').mass);
  });

  it('loses more than a flat one, and its weight lies further out', () => {
    const [plain, domed] = [flat.design, chamberOf(withHeads('hemispherical')).design].map((design) => ({
      steady: estimate(design).steady!,
      weight: weightOf(design, geometryOf(design)),
    }));
    expect(domed.steady.heatLoss_W.chamber).toBeGreaterThan(1.05 * plain.steady.heatLoss_W.chamber);
    expect(domed.weight.pit.mass_kg).toBeGreaterThan(plain.weight.pit.mass_kg);
    expect(domed.weight.pit.position_m).toBeGreaterThan(plain.weight.pit.position_m);
  }, 20_000);

  it('has no flange on flat ends, and no heads when it is square', () => {
    expect(faultsOf(inChamber('length: 60 in', 'length: 60 in\n  flange: 2 in'))).toMatchObject([
      { code: 'cannot-be-built', path: 'chamber.flange' },
    ]);
  });
});

describe('a tank by its name', () => {
  const TANK = inChamber(
    '  shape: round\n  diameter: 24 in\n  length: 60 in\n  plate: 1/4 in',
    '  shell: 120 gal tank',
  );

  it.each(Object.entries(TANKS))('%s holds about what it is called by', (name, { diameter, length, plate, heads }) => {
    const bore = diameter - 2 * plate;
    const head = heads === 'flat' ? 0 : headOf(heads, { diameter, plate }).gasVolume;
    const gallons = ((Math.PI / 4) * bore ** 2 * length + 2 * head) / GALLON;
    expect(Math.abs(gallons / parseFloat(name) - 1)).toBeLessThan(0.05);
  });

  it('gives shape, diameter, length, plate and heads, and says that makers differ', () => {
    const result = read(TANK);
    expect(result.faults).toBeUndefined();
    expect(result.design!.chamber).toMatchObject({ shell: '120 gal tank', shape: 'round', heads: 'elliptical' });
    expect(result.design!.chamber!.width).toBeCloseTo(24 * INCH, 9);
    expect(result.design!.chamber!.length).toBeCloseTo(54 * INCH, 9);
    expect(result.design!.chamber!.plate).toBeCloseTo(INCH * (3 / 16), 9);
    if (result.faults) return;
    expect(result.defaults).toEqual(expect.arrayContaining(['chamber.diameter', 'chamber.length', 'chamber.plate']));
    expect(result.warnings.map(({ code }) => code)).toEqual(['tank-by-name']);
  });

  it('yields to what stands beside it, and says so', () => {
    const result = read(TANK.replace('120 gal tank', '120 gal tank\n  plate: 1/4 in\n  length: 50 in'));
    expect(result.design!.chamber!.plate).toBeCloseTo(0.25 * INCH, 9);
    expect(result.design!.chamber!.length).toBeCloseTo(50 * INCH, 9);
    expect(result.faults ? [] : result.warnings[0].message).toContain('length and plate as the design gives');
  });

  it('is round, and one of those on the list', () => {
    expect(faultsOf(TANK.replace('120 gal tank', '120 gal tank\n  shape: square\n  width: 24 in'))).toMatchObject([
      { code: 'cannot-be-built', path: 'chamber.shell' },
    ]);
    expect(faultsOf(TANK.replace('120 gal tank', '250 gal tnak'))).toMatchObject([
      { code: 'unknown-name', path: 'chamber.shell', nearest: '250 gal tank' },
    ]);
  });

  it('without it shape, diameter, length and plate must be given', () => {
    const bare = inChamber('  shape: round\n  diameter: 24 in\n  length: 60 in\n', '');
    expect(faultsOf(bare).map(({ code, path }) => [code, path])).toEqual(
      expect.arrayContaining([
        ['missing', 'chamber.shape'],
        ['missing', 'chamber.length'],
      ]),
    );
  });
});
