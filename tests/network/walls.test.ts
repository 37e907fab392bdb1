import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readDesign } from '../../src/design/read.js';
import type { Design } from '../../src/design/design.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { gapHeat, type GapHeat } from '../../src/network/airGap.js';
import { Balances } from '../../src/network/balances.js';
import { heatCapacity, HeatContents, isSteel } from '../../src/network/materials.js';
import { Model } from '../../src/network/model.js';
import { DEFAULT_RESOLUTION } from '../../src/network/build.js';
import { makePit, stationSteel, type Pit } from '../../src/network/pit.js';
import { QuasiSteadySolver } from '../../src/network/quasiSteady.js';
import type { AirGap, ThermalNode } from '../../src/network/types.js';
import { openGapNusselt, shutLevelNusselt, shutUprightNusselt } from '../../src/physics/airGap.js';
import { layerHeat, layerSpecificHeat } from '../../src/physics/insulation.js';
import { solveUnderFire } from '../../src/study/estimate/steady.js';
import { PLAIN } from '../design/designFiles.js';
import { shopDesign } from '../design/shopDesign.js';
import { generator } from '../design/seeded.js';
import { withWalls } from '../design/wallDraws.js';

type Tree = Record<string, Record<string, unknown>>;

function pitWith(change: (tree: Tree) => void): Pit {
  const tree = parse(PLAIN) as Tree;
  change(tree);
  return pitOf(JSON.stringify(tree));
}

function pitOf(text: string, levels = 5): Pit {
  const read = readDesign(text, { fileName: 'walls' });
  if (read.faults) throw new Error(JSON.stringify(read.faults));
  return made(read.design, levels);
}

function made(design: Design, levels = 5): Pit {
  return makePit(design, geometryOf(design), { ...DEFAULT_RESOLUTION, levels });
}

/** The pit made ready again after its network was changed. */
function remade(pit: Pit): Pit {
  const model = new Model(pit.built.network);
  const balances = new Balances(model);
  return { ...pit, model, balances, solver: new QuasiSteadySolver(balances) };
}

/** Heat that the firebox's walls lose, and its steel, under a fire [W], [K]. */
function firebox(pit: Pit, heat = 15_000) {
  const { x } = solveUnderFire(pit, heat);
  pit.balances.evaluate(x, { mode: 'release', heat });
  return { loss: pit.balances.lossOf('firebox'), steel: stationSteel(pit, x, 'firebox'), x };
}

const brick = (more: object = {}) => ({ material: 'firebrick', thickness: '1-1/4 in', ...more });

describe('a lining', () => {
  it('that conducts nothing lets no heat into the steel (derived)', () => {
    const pit = pitWith((tree) => (tree.firebox.lining = brick({ faces: ['roof', 'floor', 'sides', 'fireEnd'] })));
    const { network } = pit.model;
    for (const link of network.links) {
      if ([link.a, link.b].some((node) => / lining \d/.test(network.nodes[node].name))) link.factor *= 1e-9;
    }
    const { nodes, faces } = network;
    const outside = new Set(faces.filter(({ zone }) => zone === -1).map(({ node }) => node));
    const own = nodes.flatMap(({ name }, i) => (/^firebox (shell|fireEnd)/.test(name) && outside.has(i) ? [i] : []));
    // cut the steel from the chamber's, which warms it from behind
    network.links = network.links.filter(({ a, b }) => own.includes(a) === own.includes(b));
    const { x } = firebox(remade(pit));
    expect(own.length).toBeGreaterThan(5);
    for (const node of own) expect(x[node]).toBeCloseTo(network.outdoors.temperature, 3);
  });

  it('so thin that it is none changes next to nothing (derived)', () => {
    const [bare, thin] = [
      pitWith(() => undefined),
      pitWith((tree) => (tree.firebox.lining = brick({ thickness: '0.01 mm' }))),
    ].map((pit) => firebox(pit));
    expect(thin.loss / bare.loss).toBeCloseTo(1, 3);
    expect(thin.steel).toBeCloseTo(bare.steel, 0);
  });

  it('keeps the steel cooler the less it conducts, and the hot face hotter', () => {
    const [bare, dense, light] = [undefined, 'firebrick', 'insulating firebrick'].map((material) =>
      firebox(pitWith((tree) => material && (tree.firebox.lining = brick({ material })))),
    );
    expect(dense.steel).toBeLessThan(bare.steel);
    expect(light.steel).toBeLessThan(dense.steel);
    expect(light.loss).toBeLessThan(dense.loss);
    expect(dense.loss).toBeLessThan(bare.loss);
  });

  it('hides its side of the plate to the chamber, steel and chamber side staying as they are', () => {
    const pit = pitWith((tree) => (tree.firebox.lining = brick()));
    const { nodes, faces, fire } = pit.model.network;
    const plates = nodes.flatMap(({ hiddenFrom }, i) => (hiddenFrom?.includes(fire.zone) ? [i] : []));
    expect(plates.length).toBeGreaterThan(0);
    for (const plate of plates) {
      expect(faces.filter(({ node }) => node === plate)).toHaveLength(1);
      expect(nodes.filter(({ lines }) => lines === plate)).toHaveLength(1);
    }
  });
});

describe('heat of a material whose specific heat goes with temperature', () => {
  const table = { temperatures: [673.15, 873.15, 1073.15], values: [956, 997, 1021] };

  it('is the integral of it, below the first point, between and above the last (derived)', () => {
    // published: VDI Heat Atlas, fireclay brick; trapezoids between its points
    expect(layerHeat(table, 873.15)).toBeCloseTo(200 * 976.5, 6);
    expect(layerHeat(table, 1073.15)).toBeCloseTo(200 * (976.5 + 1009), 6);
    expect(layerHeat(table, 1173.15) - layerHeat(table, 1073.15)).toBeCloseTo(100 * 1021, 6);
    expect(layerHeat(table, 473.15)).toBeCloseTo(-200 * 935.5, 6);
  });

  it.each([300, 673.15, 700, 873.15, 1000, 1400])('has it as its slope at %d K (derived)', (T) => {
    const step = 1e-3;
    const slope = (layerHeat(table, T + step) - layerHeat(table, T - step)) / (2 * step);
    expect(slope).toBeCloseTo(layerSpecificHeat(table, T), 3);
    const node: ThermalNode = { name: 'brick', part: 'firebox', mass: 2, material: 'table', heat: table, specificHeat: 0, thickness: 0, area: 0 }; // prettier-ignore
    const heats = new HeatContents([node, node]);
    const held = new Float64Array(2);
    heats.evaluate(Float64Array.of(T - step, T + step), held);
    expect((held[1] - held[0]) / (2 * step)).toBeCloseTo(heatCapacity(node, T), 2);
  });
});

describe('a heat shield', () => {
  const shielded = (more: object) =>
    firebox(pitWith((tree) => (tree.firebox.shield = { plate: '16 ga', gap: '1 in', ...more })));

  it('keeps heat in, less where air rises behind it; narrow, the open gap comes to the shut one', () => {
    const bare = firebox(pitWith(() => undefined));
    const [open, shut] = [shielded({}), shielded({ edges: 'closed' })];
    expect(open.loss).toBeLessThan(bare.loss);
    expect(shut.loss).toBeLessThan(open.loss);
    expect(shut.steel).toBeGreaterThan(open.steel);
    expect(open.steel).toBeGreaterThan(bare.steel);
    const narrow = [{}, { edges: 'closed' }].map((edges) => shielded({ gap: '1/8 in', ...edges }).loss);
    expect(narrow[0] / narrow[1]).toBeCloseTo(1, 1);
  });

  it('has the slopes of its balance (derived)', () => {
    const pit = pitWith((tree) => {
      tree.firebox.shield = { plate: '16 ga', gap: '1 in' };
      tree.chamber.shield = { plate: '16 ga', gap: '1/2 in', edges: 'closed' };
    });
    const { x } = firebox(pit);
    const { model, balances } = pit;
    const demand = { mode: 'release', heat: 15_000 } as const;
    const n = model.size;
    const m = new Float64Array(n * n);
    balances.evaluate(x, demand);
    balances.jacobian(x, demand, m, 0, 1);
    for (const { wall, shield } of model.network.gaps) {
      for (const [row, column] of [
        [wall, shield],
        [shield, wall],
      ]) {
        const at = (step: number) => {
          const y = x.slice();
          y[column] += step;
          balances.evaluate(y, demand);
          return balances.rate[row];
        };
        const slope = -(at(0.01) - at(-0.01)) / 0.02;
        expect(m[row * n + column] / slope).toBeCloseTo(1, 3);
      }
    }
  });
});

describe('air gaps', () => {
  it('follow the relations that they name', () => {
    // recomputed by hand from the equations: Incropera eq. 9.52, 9.54 at no tilt, 9.49 with 576 and 2.87
    expect(shutUprightNusselt(38_600, 24, 0.7)).toBeCloseTo(2.259, 2);
    expect(shutUprightNusselt(10, 24, 0.7)).toBe(1);
    expect(shutLevelNusselt(38_600)).toBeCloseTo(3.254, 2);
    expect(shutLevelNusselt(1000)).toBe(1);
    expect(openGapNusselt(1000)).toBeCloseTo(3.309, 2);
    // far below and far above: fully developed El/24, and a plate by itself 0.59 El^(1/4)
    expect(openGapNusselt(0.01) / (0.01 / 24)).toBeCloseTo(1, 3);
    expect(openGapNusselt(1e7) / (0.59 * 1e7 ** 0.25)).toBeCloseTo(1, 2);
  });

  const gap: AirGap = { wall: 0, shield: 1, area: 1, width: 0.025, height: 0.6, radius: 0.3, shape: 'vertical', emissivity: 0.85, open: false }; // prettier-ignore
  const outdoors = pitWith(() => undefined).model.network.outdoors;
  const across = (change: Partial<AirGap>, wall: number, shield: number): GapHeat => {
    const out = { across: 0, fromWall: 0, fromShield: 0 };
    gapHeat({ ...gap, ...change }, wall, shield, outdoors, out);
    return out;
  };

  it.each(['vertical', 'up', 'down', 'horizontalCylinder'] as const)(
    'of shape %s carry nothing between equals',
    (shape) => {
      expect(across({ shape }, 400, 400).across).toBeCloseTo(0, 12);
      expect(across({ shape }, 500, 400).across).toBeGreaterThan(0);
      expect(across({ shape }, 400, 500).across).toBeLessThan(0);
    },
  );

  it('shut in, lose nothing on the way; open, warm the air that rises', () => {
    expect(across({}, 500, 400)).toMatchObject({ fromWall: 0, fromShield: 0 });
    const { fromWall, fromShield } = across({ open: true }, 500, 400);
    expect(fromWall).toBeGreaterThan(fromShield);
    expect(fromShield).toBeGreaterThan(0);
  });
});

describe('walls of a network', () => {
  const seeds = Array.from({ length: 24 }, (_, i) => i);

  it.each([3, 5, 8])('have the weight of the design’s, in %d levels (derived)', (levels) => {
    for (const seed of seeds) {
      const pit = pitOf(JSON.stringify(withWalls(shopDesign(seed), generator(seed))), levels);
      const { nodes } = pit.model.network;
      for (const { name, steelMass, liningMass } of pit.geometry.parts) {
        const shared = pit.geometry.shared.filter(({ parts }) => parts.includes(name));
        const own = nodes.filter((node) => node.part === name && node.thickness > 0 && isSteel(node.material));
        const plates = own.filter((node) => !/ plate$/.test(node.name)).reduce((sum, { mass }) => sum + mass, 0);
        const half = shared.reduce((sum, { mass }) => sum + mass / 2, 0);
        expect(plates / (steelMass - half), `seed ${seed}, ${name}`).toBeCloseTo(1, 7);
        const inside = nodes.filter(
          (node) => new RegExp(`^${name} .*lining \\d$`).test(node.name) && !/ plate /.test(node.name),
        );
        const between = nodes.filter((node) => / plate side \d lining \d$/.test(node.name));
        expect(liningMass, `seed ${seed}, ${name}`).toBeGreaterThanOrEqual(0);
        if (between.length === 0) expect(inside.reduce((sum, { mass }) => sum + mass, 0)).toBeCloseTo(liningMass, 9);
      }
    }
  });

  it('lose less where a face is wrapped than where none is, more than where all are', () => {
    const wrap = { material: 'ceramic fibre', thickness: '2 in' };
    const loss = (change: (tree: Tree) => void) => {
      const pit = pitWith(change);
      firebox(pit);
      return pit.balances.lossOf('chamber');
    };
    const none = loss(() => undefined);
    const roof = loss((tree) => (tree.chamber.roof = { insulation: wrap }));
    const all = loss((tree) => (tree.chamber.insulation = wrap));
    const butFloor = loss((tree) => Object.assign(tree.chamber, { insulation: wrap, floor: { insulation: 'none' } }));
    expect(roof).toBeLessThan(none);
    expect(butFloor).toBeLessThan(roof);
    expect(all).toBeLessThan(butFloor);
  });
});
