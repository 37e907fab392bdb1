/**
 * The fields of a design that are estimates: what no correlation settles, so that a measured cook may. One table for all who
 * move them: a spread study, a fit, and a design that takes over what was fitted.
 */
import { netHeatAsFired } from '../physics/wood.js';
import type { Design } from './design.js';
import { RANGES, type RangeName } from './ranges.js';
import { valueAt } from './source.js';
import { stepsOf } from './vary.js';

/**
 * How an estimate is off, and so how it is fitted and carried over to another design: 'times' by a factor, 'is' by an amount.
 */
export type Scale = 'is' | 'times';

const KINDS = {
  heat: { range: 'fireHeat', scale: 'times' },
  radiant: { range: 'radiant', scale: 'is' },
  soot: { range: 'soot', scale: 'is' },
  rise: { range: 'rise', scale: 'times' },
  flame: { range: 'splitTime', scale: 'times' },
  charcoal: { range: 'charcoal', scale: 'is' },
  glow: { range: 'splitTime', scale: 'times' },
  moisture: { range: 'moisture', scale: 'is' },
  woodHeat: { range: 'woodHeat', scale: 'times' },
  wind: { range: 'wind', scale: 'times' },
  innerConvection: { range: 'innerConvection', scale: 'is' },
  oxygenUse: { range: 'oxygenUse', scale: 'is' },
  stemFill: { range: 'stemFill', scale: 'is' },
  inside: { range: 'insideEmissivity', scale: 'is' },
  outside: { range: 'emissivity', scale: 'is' },
  discharge: { range: 'discharge', scale: 'is' },
  doorGap: { range: 'doorGap', scale: 'times' },
} as const satisfies Record<string, { range: RangeName; scale: Scale }>;

export type EstimateKind = keyof typeof KINDS;

/** Kind of estimate by its path. With several stacks of unlike finish theirs is `stacks[0].emissivity` and so on. */
const PATHS = {
  'fire.heat': 'heat',
  'fire.radiant': 'radiant',
  'fire.soot': 'soot',
  'fire.rise': 'rise',
  'wood.moisture': 'moisture',
  'site.wind': 'wind',
  innerConvection: 'innerConvection',
  'estimates.oxygenUse': 'oxygenUse',
  'estimates.stemFill': 'stemFill',
  'estimates.insideEmissivity': 'inside',
  'firebox.emissivity': 'outside',
  'chamber.emissivity': 'outside',
  'upright.emissivity': 'outside',
  'stacks.emissivity': 'outside',
  'firebox.intakes.discharge': 'discharge',
  'throat.discharge': 'discharge',
  'upright.opening.discharge': 'discharge',
  'firebox.doorGap': 'doorGap',
  'chamber.doorGap': 'doorGap',
  'upright.doorGap': 'doorGap',
  'wood.heat': 'woodHeat',
  'fire.splits.flame': 'flame',
  'fire.splits.charcoal': 'charcoal',
  'fire.splits.glow': 'glow',
} as const satisfies Record<string, EstimateKind>;

type KnownPath = keyof typeof PATHS;

/** Estimates that a fit may settle, by path: all but the weather of a day. */
export const FITTABLE: readonly string[] = Object.keys(PATHS).filter((path) => path !== 'site.wind');

/** Range and scale of an estimate that a fit may settle; undefined for another path. */
export function fittableField(path: string): Pick<EstimateField, 'range' | 'scale'> | undefined {
  const known = path.replace(/^stacks\[[0-7]\]\./, 'stacks.');
  return FITTABLE.includes(known) ? KINDS[PATHS[known as KnownPath]] : undefined;
}

/** One number of a design. */
export interface EstimateTarget {
  /** its own path in the design file */
  path: string;
  get: (design: Design) => number;
  set: (design: Design, value: number) => void;
}

/** One estimate. It may stand in several fields (all intakes, all parts of one finish), which then move together. */
export interface EstimateField {
  path: string;
  kind: EstimateKind;
  range: RangeName;
  scale: Scale;
  /** at least one; the first has the estimate's own value */
  targets: EstimateTarget[];
}

/** Every estimate of a design, in a fixed order. */
export function estimateFieldsOf(design: Design): EstimateField[] {
  const paths = Object.keys(PATHS) as KnownPath[];
  const outside = paths.filter((path) => PATHS[path] === 'outside');
  return paths.flatMap((path) => {
    if (path === outside[0]) return outsideEmissivities(design);
    if (outside.includes(path)) return [];
    const places =
      path === 'firebox.intakes.discharge'
        ? design.firebox.intakes.map((_, i) => `firebox.intakes[${i}].discharge`)
        : [path];
    const targets = places.filter((place) => valueAt(design, stepsOf(place)) !== undefined).map(target);
    return targets.length > 0 ? [field(path, targets)] : [];
  });
}

function field(path: string, targets: EstimateTarget[]): EstimateField {
  const kind = PATHS[path.replace(/^stacks\[\d+\]/, 'stacks') as KnownPath];
  return { path, kind, ...KINDS[kind], targets };
}

function target(path: string): EstimateTarget {
  return {
    path,
    get: (design) => valueAt(design, stepsOf(path)) as number,
    set: path === 'wood.moisture' ? setMoisture : (design, value) => put(design, path, value),
  };
}

function put(design: Design, path: string, value: number): void {
  const steps = stepsOf(path);
  (valueAt(design, steps.slice(0, -1)) as Record<string, number>)[steps[steps.length - 1]] = value;
}

/** Parts of one finish move together: the same can of paint. */
function outsideEmissivities(design: Design): EstimateField[] {
  const groups = new Map<string, EstimateField>();
  const add = (path: string, surface: { finish: string; emissivity: number } | undefined, place = path) => {
    if (!surface) return;
    const key = `${surface.finish} ${surface.emissivity}`;
    const group = groups.get(key) ?? field(path, []);
    group.targets.push(target(place));
    groups.set(key, group);
  };
  for (const part of ['firebox', 'chamber', 'upright'] as const) add(`${part}.emissivity`, design[part]);
  design.stacks.forEach((stack, i) => {
    const place = `stacks[${i}].emissivity`;
    add(design.stacks.length > 1 ? place : 'stacks.emissivity', stack, place);
  });
  return [...groups.values()];
}

/** Wetter wood gives less heat: the heat value goes along, also where the design gives its own. */
function setMoisture(design: Design, moisture: number): void {
  const { wood } = design;
  const heat = wood.heat * (netHeatAsFired(moisture) / netHeatAsFired(wood.moisture));
  wood.heat = Math.min(RANGES.woodHeat.max, Math.max(RANGES.woodHeat.min, heat));
  wood.moisture = moisture;
}
