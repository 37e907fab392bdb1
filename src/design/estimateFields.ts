/**
 * The fields of a design that are estimates: what no correlation settles, so that a measured cook may. One table for all who
 * move them: a spread study, a fit, and a design that takes over what was fitted.
 */
import type { Design } from './design.js';
import { netHeatAsFired } from './catalog.js';
import { RANGES, type RangeName } from './ranges.js';

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
  const { chamber, upright, firebox } = design;
  return [
    one(
      'fire.heat',
      'heat',
      ({ fire }) => fire.heat,
      ({ fire }, v) => (fire.heat = v),
    ),
    one(
      'fire.radiant',
      'radiant',
      ({ fire }) => fire.radiant,
      ({ fire }, v) => (fire.radiant = v),
    ),
    one(
      'fire.soot',
      'soot',
      ({ fire }) => fire.soot,
      ({ fire }, v) => (fire.soot = v),
    ),
    one(
      'fire.rise',
      'rise',
      ({ fire }) => fire.rise,
      ({ fire }, v) => (fire.rise = v),
    ),
    one('wood.moisture', 'moisture', ({ wood }) => wood.moisture, setMoisture),
    one(
      'site.wind',
      'wind',
      ({ site }) => site.wind,
      ({ site }, v) => (site.wind = v),
    ),
    one(
      'innerConvection',
      'innerConvection',
      (d) => d.innerConvection,
      (d, v) => (d.innerConvection = v),
    ),
    ...(['oxygenUse', 'stemFill'] as const).map((key) =>
      one(
        `estimates.${key}`,
        key,
        ({ estimates }) => estimates[key],
        ({ estimates }, v) => (estimates[key] = v),
      ),
    ),
    one(
      'estimates.insideEmissivity',
      'inside',
      ({ estimates }) => estimates.insideEmissivity,
      ({ estimates }, v) => (estimates.insideEmissivity = v),
    ),
    ...outsideEmissivities(design),
    field(
      'firebox.intakes.discharge',
      'discharge',
      firebox.intakes.map((_, i) => ({
        path: `firebox.intakes[${i}].discharge`,
        get: (d) => d.firebox.intakes[i].discharge,
        set: (d, v) => (d.firebox.intakes[i].discharge = v),
      })),
    ),
    one(
      'throat.discharge',
      'discharge',
      ({ throat }) => throat.discharge,
      ({ throat }, v) => (throat.discharge = v),
    ),
    ...(upright?.opening
      ? [
          one(
            'upright.opening.discharge',
            'discharge',
            (d) => d.upright!.opening!.discharge,
            (d, v) => (d.upright!.opening!.discharge = v),
          ),
        ]
      : []),
    one(
      'firebox.doorGap',
      'doorGap',
      (d) => d.firebox.doorGap,
      (d, v) => (d.firebox.doorGap = v),
    ),
    ...(chamber
      ? [
          one(
            'chamber.doorGap',
            'doorGap',
            (d) => d.chamber!.doorGap,
            (d, v) => (d.chamber!.doorGap = v),
          ),
        ]
      : []),
    ...(upright
      ? [
          one(
            'upright.doorGap',
            'doorGap',
            (d) => d.upright!.doorGap,
            (d, v) => (d.upright!.doorGap = v),
          ),
        ]
      : []),
    one(
      'wood.heat',
      'woodHeat',
      ({ wood }) => wood.heat,
      ({ wood }, v) => (wood.heat = v),
    ),
    ...(['flame', 'charcoal', 'glow'] as const).map((key) =>
      one(
        `fire.splits.${key}`,
        key,
        ({ fire }) => fire.splits[key],
        ({ fire }, v) => (fire.splits[key] = v),
      ),
    ),
  ];
}

function one(path: string, kind: EstimateKind, get: EstimateTarget['get'], set: EstimateTarget['set']): EstimateField {
  return field(path, kind, [{ path, get, set }]);
}

function field(path: string, kind: EstimateKind, targets: EstimateTarget[]): EstimateField {
  return { path, kind, ...KINDS[kind], targets };
}

/** Parts of one finish move together: the same can of paint. */
function outsideEmissivities(design: Design): EstimateField[] {
  const groups = new Map<string, EstimateField>();
  const add = (
    path: string,
    of: (design: Design) => { finish: string; emissivity: number } | undefined,
    own = path,
  ) => {
    const surface = of(design);
    if (!surface) return;
    const key = `${surface.finish} ${surface.emissivity}`;
    const group = groups.get(key) ?? field(path, 'outside', []);
    group.targets.push({ path: own, get: (d) => of(d)!.emissivity, set: (d, v) => (of(d)!.emissivity = v) });
    groups.set(key, group);
  };
  add('firebox.emissivity', (d) => d.firebox);
  add('chamber.emissivity', (d) => d.chamber);
  add('upright.emissivity', (d) => d.upright);
  design.stacks.forEach((_, i) => {
    const own = `stacks[${i}].emissivity`;
    add(design.stacks.length > 1 ? own : 'stacks.emissivity', (d) => d.stacks[i], own);
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
