import type { Design } from '../design/design.js';
import { netHeatAsFired } from '../design/catalog.js';
import { RANGES, type RangeName } from '../design/ranges.js';
import type { EstimateUsed } from './result.js';
import { triangularQuantile } from './sampling.js';

/**
 * The inputs that no correlation settles, as a design uses them: each with its spread, the shape of the spread and where it
 * comes from. A spread study draws from this table; every result prints it.
 *
 * The likeliest value is the design's own. Where that lies outside the spread the spread is widened to it. One unknown may
 * set several fields (all intakes, all parts of one finish): they then move together.
 */
export interface Unknown extends EstimateUsed {
  fields: UnknownField[];
}

interface UnknownField {
  value: number;
  low: number;
  high: number;
  set: (design: Design, value: number) => void;
}

interface Spread {
  distribution: EstimateUsed['distribution'];
  /** bounds around a likeliest value */
  around: (value: number) => readonly [number, number];
  range: RangeName;
  unit: string;
  source: string;
}

const fixed = (low: number, high: number) => () => [low, high] as const;
const times = (low: number, high: number) => (value: number) => [low * value, high * value] as const;
const shape = (distribution: EstimateUsed['distribution'], around: Spread['around'], range: RangeName, unit = '-') => ({
  distribution,
  around,
  range,
  unit,
});

/** How far each kind of unknown may lie off. Estimates of ours but where a source is named. */
const SPREADS = {
  heat: {
    ...shape('log-triangular', times(0.8, 1.25), 'fireHeat', 'W'),
    source: 'estimate: how nearly a tender burns what is meant',
  },
  radiant: { ...shape('triangular', fixed(0.2, 0.45), 'radiant'), source: 'estimate' },
  soot: { ...shape('triangular', fixed(0, 1.2), 'soot', '1/m'), source: 'estimate' },
  rise: { ...shape('log-triangular', fixed(300, 1200), 'rise', 's'), source: 'estimate' },
  innerConvection: {
    ...shape('triangular', fixed(0.8, 2), 'innerConvection'),
    source: 'estimate; wider upwards, since well-mixed zones gave less steel rise than a measured room with a fire',
  },
  oxygenUse: { ...shape('triangular', fixed(0.8, 0.95), 'oxygenUse'), source: 'estimate' },
  stemFill: { ...shape('triangular', fixed(0.2, 1), 'stemFill'), source: 'estimate' },
  inside: { ...shape('triangular', fixed(0.85, 0.98), 'insideEmissivity'), source: 'estimate: soot, thin to thick' },
  painted: {
    ...shape('triangular', (e) => [e - 0.05, Math.min(0.98, e + 0.05)], 'emissivity'),
    source: 'estimate: between tables of coatings',
  },
  bareMetal: {
    ...shape('triangular', (e) => [0.75 * e, Math.min(0.98, 1.15 * e)], 'emissivity'),
    source: 'estimate: between tables of metal surfaces',
  },
  discharge: { ...shape('triangular', fixed(0.55, 0.7), 'discharge'), source: 'estimate' },
  doorGap: {
    ...shape('log-triangular', times(0.5, 2), 'doorGap', 'm2'),
    source: 'estimate: how well a door closes',
  },
  moisture: {
    ...shape('triangular', (m) => [m - 0.05, m + 0.05], 'moisture'),
    source: 'estimate: within a stack of air-dried wood',
  },
  wind: { ...shape('log-triangular', times(0.4, 2), 'wind', 'm/s'), source: 'estimate: lulls and gusts' },
} as const satisfies Record<string, Spread>;

/** Above this a surface counts as coated or sooted, below as bare metal. */
const COATED = 0.85;

/** Every unknown of a design, in a fixed order. What has no room to move (no gap, no wind) is left out. */
export function unknownsOf(design: Design): Unknown[] {
  const { fire, firebox, chamber, upright, throat, estimates, wood, site } = design;
  const list: (Unknown | null)[] = [
    unknown('fire.heat', SPREADS.heat, [[fire.heat, (d, v) => (d.fire.heat = v)]]),
    unknown('fire.radiant', SPREADS.radiant, [[fire.radiant, (d, v) => (d.fire.radiant = v)]]),
    unknown('fire.soot', SPREADS.soot, [[fire.soot, (d, v) => (d.fire.soot = v)]]),
    unknown('fire.rise', SPREADS.rise, [[fire.rise, (d, v) => (d.fire.rise = v)]]),
    unknown('wood.moisture', SPREADS.moisture, [[wood.moisture, setMoisture]]),
    unknown('site.wind', SPREADS.wind, [[site.wind, (d, v) => (d.site.wind = v)]]),
    unknown('innerConvection', SPREADS.innerConvection, [[design.innerConvection, (d, v) => (d.innerConvection = v)]]),
    unknown('estimates.oxygenUse', SPREADS.oxygenUse, [[estimates.oxygenUse, (d, v) => (d.estimates.oxygenUse = v)]]),
    unknown('estimates.stemFill', SPREADS.stemFill, [[estimates.stemFill, (d, v) => (d.estimates.stemFill = v)]]),
    unknown('estimates.insideEmissivity', SPREADS.inside, [
      [estimates.insideEmissivity, (d, v) => (d.estimates.insideEmissivity = v)],
    ]),
    ...outsideEmissivities(design),
    unknown(
      'firebox.intakes.discharge',
      SPREADS.discharge,
      firebox.intakes.map(({ discharge }, i) => [discharge, (d, v) => (d.firebox.intakes[i].discharge = v)]),
    ),
    unknown('throat.discharge', SPREADS.discharge, [[throat.discharge, (d, v) => (d.throat.discharge = v)]]),
    unknown(
      'upright.opening.discharge',
      SPREADS.discharge,
      upright?.opening ? [[upright.opening.discharge, (d, v) => (d.upright!.opening!.discharge = v)]] : [],
    ),
    unknown('firebox.doorGap', SPREADS.doorGap, [[firebox.doorGap, (d, v) => (d.firebox.doorGap = v)]]),
    unknown('chamber.doorGap', SPREADS.doorGap, [[chamber?.doorGap ?? 0, (d, v) => (d.chamber!.doorGap = v)]]),
    unknown('upright.doorGap', SPREADS.doorGap, [[upright?.doorGap ?? 0, (d, v) => (d.upright!.doorGap = v)]]),
  ];
  return list.filter((each) => each !== null);
}

type Target = [value: number, set: UnknownField['set']];

function unknown(path: string, spread: Spread, targets: Target[]): Unknown | null {
  const { min, max } = RANGES[spread.range];
  const fields = targets.map(([value, set]) => {
    const [low, high] = spread.around(value);
    return { value, low: Math.max(min, Math.min(low, value)), high: Math.min(max, Math.max(high, value)), set };
  });
  const first = fields.find(({ low, high }) => high > low);
  if (!first) return null;
  const { distribution, unit, source } = spread;
  return { path, value: first.value, low: first.low, high: first.high, unit, distribution, source, fields };
}

/** Parts of one finish move together: the same can of paint. */
function outsideEmissivities(design: Design): (Unknown | null)[] {
  const groups = new Map<string, { path: string; targets: Target[] }>();
  const add = (path: string, surface: { finish: string; emissivity: number } | undefined, set: UnknownField['set']) => {
    if (!surface) return;
    const key = `${surface.finish} ${surface.emissivity}`;
    const group = groups.get(key) ?? { path, targets: [] };
    group.targets.push([surface.emissivity, set]);
    groups.set(key, group);
  };
  add('firebox.emissivity', design.firebox, (d, v) => (d.firebox.emissivity = v));
  add('chamber.emissivity', design.chamber, (d, v) => (d.chamber!.emissivity = v));
  add('upright.emissivity', design.upright, (d, v) => (d.upright!.emissivity = v));
  design.stacks.forEach((stack, i) => {
    add(design.stacks.length > 1 ? `stacks[${i}].emissivity` : 'stacks.emissivity', stack, (d, v) => {
      d.stacks[i].emissivity = v;
    });
  });
  return [...groups.values()].map(({ path, targets }) =>
    unknown(path, targets[0][0] >= COATED ? SPREADS.painted : SPREADS.bareMetal, targets),
  );
}

/** Wetter wood gives less heat: the heat value goes along, also where the design gives its own. */
function setMoisture(design: Design, moisture: number): void {
  const { wood } = design;
  const heat = wood.heat * (netHeatAsFired(moisture) / netHeatAsFired(wood.moisture));
  wood.heat = Math.min(RANGES.woodHeat.max, Math.max(RANGES.woodHeat.min, heat));
  wood.moisture = moisture;
}

/** Unknowns that any of several designs has, each path once, so that the designs can share their samples. */
export function pathsOf(designs: Design[]): string[] {
  return [...new Set(designs.flatMap((design) => unknownsOf(design).map(({ path }) => path)))];
}

/**
 * The design with its unknowns moved to a sample's place in their spreads.
 *
 * @param paths names of the sample's numbers; those that the design has no unknown for change nothing
 * @param sample place of each in its spread as a cumulated probability, 0..1
 * @returns a copy; the design itself stays as it is
 */
export function movedDesign(design: Design, paths: readonly string[], sample: readonly number[]): Design {
  const copy = structuredClone(design);
  for (const { path, fields, distribution } of unknownsOf(design)) {
    const at = paths.indexOf(path);
    if (at < 0) continue;
    for (const { value, low, high, set } of fields) {
      if (high > low) set(copy, triangularQuantile(distribution, { low, mode: value, high }, sample[at]));
    }
  }
  return copy;
}
