/**
 * The fields of a design that are unknowns: what no correlation settles, so that a measured cook may. One table for all
 * who move them: a spread study, a fit, and a design that takes over what was fitted.
 */
import { netHeatAsFired } from '../physics/wood.js';
import type { Design } from './design.js';
import { NUMBER_PATHS, rangeOf, rowAt } from './fields.js';
import { UNKNOWN_SCALES, type UnknownKind } from './fields/fieldType.js';
import type { Range } from './ranges.js';
import { PARTS } from './stations.js';
import { stepsOf, valueAt } from './path.js';

export type { UnknownKind };

type Scale = (typeof UNKNOWN_SCALES)[UnknownKind];

const KINDS = Object.keys(UNKNOWN_SCALES);

/**
 * Paths of all unknowns in the order of their kinds. With several stacks of unlike finish theirs is
 * `stacks[0].emissivity` and so on.
 */
const PATHS = NUMBER_PATHS.filter((path) => rowAt(path)?.unknown).sort((a, b) => place(a) - place(b));

function place(path: string): number {
  return KINDS.indexOf(kindOf(path));
}

function kindOf(path: string): UnknownKind {
  return rowAt(path)!.unknown!.kind;
}

/** Estimates that a fit may settle, by path: all but the weather of a day. */
export const FITTABLE: readonly string[] = PATHS.filter((path) => path !== 'site.wind');

/** Range and scale of an estimate that a fit may settle; undefined for another path. */
export function fittableField(path: string): Pick<UnknownInput, 'range' | 'scale'> | undefined {
  const known = path.replace(/^stacks\[[0-7]\]\./, 'stacks.');
  return FITTABLE.includes(known) ? { range: rangeOf(known), scale: UNKNOWN_SCALES[kindOf(known)] } : undefined;
}

/** One number of a design. */
interface UnknownTarget {
  /** its own path in the design file */
  path: string;
  get: (design: Design) => number;
  set: (design: Design, value: number) => void;
}

/** One estimate. It may stand in several fields (all intakes, all parts of one finish), which then move together. */
export interface UnknownInput {
  path: string;
  kind: UnknownKind;
  range: Range;
  /** how it is off, and so how it is fitted and carried over: 'times' by a factor, 'is' by an amount */
  scale: Scale;
  /** at least one; the first has the estimate's own value */
  targets: UnknownTarget[];
}

/** Every estimate of a design, in a fixed order. */
export function unknownInputsOf(design: Design): UnknownInput[] {
  const outside = PATHS.filter((path) => kindOf(path) === 'outside');
  return PATHS.flatMap((path) => {
    if (path === outside[0]) return outsideEmissivities(design);
    if (outside.includes(path)) return [];
    if (kindOf(path) === 'levelConvection' && !hasLevelPlates(design)) return [];
    const places =
      path === 'firebox.intakes.discharge'
        ? design.firebox.intakes.map((_, i) => `firebox.intakes[${i}].discharge`)
        : [path];
    const targets = places.filter((each) => valueAt(design, stepsOf(each)) !== undefined).map(target);
    return targets.length > 0 ? [field(path, targets)] : [];
  });
}

function field(path: string, targets: UnknownTarget[]): UnknownInput {
  const kind = kindOf(path);
  return { path, kind, range: rangeOf(path), scale: UNKNOWN_SCALES[kind], targets };
}

function target(path: string): UnknownTarget {
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

/** Boxes have a roof and a floor; a round part has none that lies level. */
function hasLevelPlates({ firebox, chamber, upright }: Design): boolean {
  return upright !== undefined || [firebox, chamber].some((part) => part?.shape === 'square');
}

/** Parts of one finish move together: the same can of paint. */
function outsideEmissivities(design: Design): UnknownInput[] {
  const groups = new Map<string, UnknownInput>();
  const add = (path: string, surface: { finish: string; emissivity: number } | undefined, place = path) => {
    if (!surface) return;
    const key = `${surface.finish} ${surface.emissivity}`;
    const group = groups.get(key) ?? field(path, []);
    group.targets.push(target(place));
    groups.set(key, group);
  };
  for (const part of PARTS) add(`${part}.emissivity`, design[part]);
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
  const { min, max } = rangeOf('wood.heat');
  wood.heat = Math.min(max, Math.max(min, heat));
  wood.moisture = moisture;
}
