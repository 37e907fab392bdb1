import type { Design } from '../../design/design.js';
import { unknownInputsOf, type UnknownInput, type UnknownKind } from '../../design/unknownInputs.js';
import { valuesInUse, type FittedLog, type FittedValue } from '../../design/fitted.js';
import { listed } from '../../units/listed.js';
import type { UnknownUsed } from '../estimate/result.js';
import { triangleOfInterval, triangularQuantile } from './sampling.js';

/**
 * The inputs that no correlation settles, as a design uses them: each with its spread, the shape of the spread and
 * where it comes from. A spread study draws from this table; every result prints it.
 *
 * The likeliest value is the design's own. Where that lies outside the spread the spread is widened to it. One unknown
 * may set several fields (all intakes, all parts of one finish): they then move together. What is off by a factor
 * ('times') is spread in its logarithm. Where a measured cook has settled an unknown, the interval that it left takes
 * the place of the spread in this table.
 */
export interface Unknown extends UnknownUsed {
  scale: UnknownInput['scale'];
  fields: UnknownField[];
}

interface UnknownField {
  value: number;
  low: number;
  high: number;
  set: (design: Design, value: number) => void;
}

interface Spread {
  /** bounds around a likeliest value */
  around: (value: number) => readonly [number, number];
  unit: string;
  source: string;
}

const fixed = (low: number, high: number) => () => [low, high] as const;
const times = (low: number, high: number) => (value: number) => [low * value, high * value] as const;
const spread = (around: Spread['around'], source: string, unit = '-'): Spread => ({ around, unit, source });

/** Above this a surface counts as coated or sooted, below as bare metal. */
const COATED = 0.85;

/** A full fire that the design does not give. */
const OF_THE_BOX = spread(times(0.5, 1.8), 'estimate: what a bed releases by its plan, and how large it is', 'W');

/** How far each kind of unknown may lie off. Estimates of ours but where a source is named. */
const SPREADS: Record<UnknownKind, Spread | ((value: number) => Spread)> = {
  heat: spread(times(0.8, 1.25), 'estimate: how nearly a tender burns what is meant', 'W'),
  radiant: spread(fixed(0.2, 0.45), 'estimate'),
  soot: spread(fixed(0, 1.2), 'estimate', '1/m'),
  rise: spread(fixed(300, 1200), 'estimate', 's'),
  flame: spread(
    times(0.52, 1.86),
    'estimate: a firebox chars wood 0.7 to 2.5 times as fast as the standard fire of EN 1995-1-2; default 1.3',
    's',
  ),
  charcoal: spread(fixed(0.25, 0.4), 'estimate round a third (Baldwin 1987): kind of wood and how fast it is heated'),
  glow: spread(fixed(1200, 4800), 'estimate: how well the bed gets its air', 's'),
  innerConvection: spread(
    fixed(0.8, 1.5),
    'estimate: published relations for one surface lie 15 to 30 % apart, and jets stir; doubled it would heat the steel of the measured room by a twentieth more at most',
  ),
  oxygenUse: spread(fixed(0.8, 0.95), 'estimate'),
  stemFill: spread(fixed(0.2, 1), 'estimate'),
  inside: spread(fixed(0.85, 0.98), 'estimate: soot, thin to thick'),
  entrainment: spread(fixed(0.3, 3), 'estimate: the relation is for wide openings, a throat is square'),
  downflow: spread(fixed(0.3, 1.3), 'estimate: boundary layers of plane walls, in gas that is layered'),
  outsideConvection: spread(fixed(0.85, 1.2), 'published relations for one cylinder in still air lie that far apart'),
  levelConvection: spread(fixed(0.6, 1), 'published relations for one level plate lie that far apart'),
  outside: (emissivity) =>
    emissivity >= COATED
      ? spread((e) => [e - 0.05, Math.min(0.98, e + 0.05)], 'estimate: between tables of coatings')
      : spread((e) => [0.75 * e, Math.min(0.98, 1.15 * e)], 'estimate: between tables of metal surfaces'),
  discharge: spread(fixed(0.55, 0.7), 'estimate'),
  doorGap: spread(times(0.5, 2), 'estimate: how well a door closes', 'm2'),
  moisture: spread((m) => [m - 0.05, m + 0.05], 'estimate: within a stack of air-dried wood'),
  woodHeat: spread(times(0.8, 1.25), 'estimate: kind, moisture and how completely it burns', 'J/kg'),
  wind: spread(times(0.4, 2), 'estimate: lulls and gusts', 'm/s'),
};

/**
 * What a fit alone takes as unknown, and a design then from it. The heat of the wood and its moisture pull the same
 * way, so that drawing both would count twice: where the first is fitted the second is left out. How a split burns
 * matters under a logged fire, and hardly in an estimate.
 */
const OF_FITS: readonly UnknownKind[] = ['woodHeat', 'flame', 'charcoal', 'glow'];

/** Every unknown of a design, in a fixed order. What has no room to move (no gap, no wind) is left out. */
export function unknownsOf(design: Design): Unknown[] {
  const fitted = fittedIn(design);
  return unknownsIn(design, fitted, ({ kind, path }) => {
    if (kind === 'moisture') return !fitted.has('wood.heat');
    return !OF_FITS.includes(kind) || fitted.has(path);
  });
}

/** The same with what only a fit takes as unknown: the heat of the wood, and how a split burns. */
export function fitUnknownsOf(design: Design): Unknown[] {
  return unknownsIn(design, fittedIn(design), () => true);
}

/** How a split burns. */
const OF_SPLITS: readonly UnknownKind[] = ['flame', 'charcoal', 'glow'];
/** How long a firebox door may stand open for a split: common practice, no source [s]. */
const DOOR_OPEN = [10, 60] as const;

/**
 * What matters under splits alone, and so is drawn where these are followed: how one burns, and how long the door
 * stands open for it.
 */
export function splitUnknownsOf(design: Design): Unknown[] {
  const drawn = new Set(unknownsOf(design).map(({ path }) => path));
  const burning = unknownsIn(
    design,
    fittedIn(design),
    ({ kind, path }) => OF_SPLITS.includes(kind) && !drawn.has(path),
  );
  const { door } = design.fire.splits;
  if (!(door > 0)) return burning;
  const [low, high] = [Math.min(DOOR_OPEN[0], door), Math.max(DOOR_OPEN[1], door)];
  return [
    ...burning,
    {
      path: 'fire.splits.door',
      value: door,
      low,
      high,
      unit: 's',
      distribution: 'log-triangular',
      source: 'estimate: common practice, no source',
      scale: 'times',
      fields: [{ value: door, low, high, set: (copy, seconds) => void (copy.fire.splits.door = seconds) }],
    },
  ];
}

type FittedPaths = ReadonlyMap<string, FittedValue>;

/** What the design uses of what was fitted, by path. */
function fittedIn({ fitted }: Design): FittedPaths {
  return new Map(fitted ? valuesInUse(fitted).values.map((value) => [value.path, value]) : []);
}

function unknownsIn(design: Design, fitted: FittedPaths, wanted: (field: UnknownInput) => boolean): Unknown[] {
  return unknownInputsOf(design)
    .filter(wanted)
    .map((field) => {
      const value = fitted.get(field.path);
      return value ? fittedUnknown(field, value, design, design.fitted!.logs) : unknown(field, design);
    })
    .filter((each) => each !== null);
}

function unknown({ path, kind, range, scale, targets }: UnknownInput, design: Design): Unknown | null {
  const { min, max } = range;
  const { around, unit, source } =
    kind === 'heat' && design.fire.heatOf !== undefined ? OF_THE_BOX : spreadOf(kind, targets[0].get(design));
  const fields = targets.map(({ get, set }) => {
    const value = get(design);
    const [low, high] = around(value);
    return { value, low: Math.max(min, Math.min(low, value)), high: Math.min(max, Math.max(high, value)), set };
  });
  const first = fields.find(({ low, high }) => high > low);
  if (!first) return null;
  const { value, low, high } = first;
  return { path, value, low, high, unit, distribution: distributionOf(scale), source, scale, fields };
}

/** Logs named one by one. */
const LOGS = 3;

/** What stays unknown once a log has settled an estimate; a draw beyond what a design may have is held at its limit. */
function fittedUnknown(
  { path, kind, range, scale, targets }: UnknownInput,
  fitted: FittedValue,
  design: Design,
  logs: readonly FittedLog[],
): Unknown | null {
  const inRange = (each: number) => Math.min(range.max, Math.max(range.min, each));
  const value = targets[0].get(design);
  const factor = scale === 'times' ? value / fitted.value : 1;
  const interval = { low: Math.min(factor * fitted.low, value), high: Math.max(factor * fitted.high, value) };
  const distribution = distributionOf(scale);
  if (!(interval.high > interval.low)) return null;
  const { low, high } = triangleOfInterval(distribution, { ...interval, mode: value });
  const { unit } = spreadOf(kind, value);
  return {
    path,
    value,
    low: inRange(low),
    high: inRange(high),
    unit,
    distribution,
    source: `fitted to ${listed(
      logs.map(({ name }) => name),
      LOGS,
    )}`,
    fitted: { low: inRange(interval.low), high: inRange(interval.high) },
    scale,
    fields: targets.map(({ set }) => ({ value, low, high, set: (d, each) => set(d, inRange(each)) })),
  };
}

function spreadOf(kind: UnknownKind, value: number): Spread {
  const own = SPREADS[kind];
  return typeof own === 'function' ? own(value) : own;
}

function distributionOf(scale: UnknownInput['scale']): UnknownUsed['distribution'] {
  return scale === 'times' ? 'log-triangular' : 'triangular';
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
 * @param unknowns those that may move
 * @returns a copy; the design itself stays as it is
 */
export function movedDesign(
  design: Design,
  paths: readonly string[],
  sample: readonly number[],
  unknowns: readonly Unknown[] = unknownsOf(design),
): Design {
  const copy = structuredClone(design);
  for (const { path, fields, distribution } of unknowns) {
    const at = paths.indexOf(path);
    if (at < 0) continue;
    for (const { value, low, high, set } of fields) {
      if (high > low) set(copy, triangularQuantile(distribution, { low, mode: value, high }, sample[at]));
    }
  }
  return copy;
}
