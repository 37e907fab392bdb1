import type { Design } from '../design/design.js';
import { CholeskyDecomposition, inverse, Matrix } from 'ml-matrix';
import { valuesInUse } from '../design/fitted.js';
import { fitUnknownsOf, type Unknown } from '../study/spread/unknowns.js';

/**
 * Estimates that a fit may move, each as one number: how far it lies from the design's own value, in units of the
 * standard deviation of its spread, in logarithms for what is off by a factor. 0 is where the design has it.
 *
 * A triangle of half width w has, seen from its tip, a root mean square of w / sqrt(6) on that side.
 */
export interface FitParameter {
  unknown: Unknown;
  /** bounds of the coordinate: the ends of the spread */
  low: number;
  high: number;
  /** standard deviation of the coordinate below and above 0 */
  below: number;
  above: number;
}

const SIDE = Math.sqrt(6);

/** What logs tell of fire and weather: that needs no estimate. */
export interface Told {
  wood: boolean;
  fire: boolean;
  wind: boolean;
}

/** Most of what a thermometer can tell: these come first. */
const FIRST = [
  'innerConvection',
  'fire.radiant',
  'chamber.doorGap',
  'upright.doorGap',
  'wood.heat',
  'fire.heat',
  'estimates.stemFill',
];

/**
 * Estimates that move what a log's probes read, those that it tells most of first. A fit takes up all of them when none
 * are named: one that is held where it is not makes the others lie, and one that the log doesn't tell stays where it
 * was anyway.
 */
export function tellingPaths(design: Design, told: Told): string[] {
  const out = new Set<string>();
  if (told.wind) out.add('site.wind');
  // the heat of the wood is what moisture is about; without wood in the log there is only the fire's
  out.add('wood.moisture');
  if (!told.wood || told.fire) for (const path of ['wood.heat', ...BURNING]) out.add(path);
  if (told.wood || told.fire) for (const path of ['fire.heat', 'fire.rise']) out.add(path);
  const paths = fitablePaths(design).filter((path) => !out.has(path));
  return [...FIRST.filter((path) => paths.includes(path)), ...paths.filter((path) => !FIRST.includes(path))];
}

const BURNING = ['fire.splits.flame', 'fire.splits.charcoal', 'fire.splits.glow'];

/**
 * Estimates of a design that one number can stand for: not a group whose members differ (vents of unlike discharge).
 */
export function fitablePaths(design: Design): string[] {
  return fitUnknownsOf(design)
    .filter(
      ({ distribution, fields }) =>
        distribution === 'log-triangular' || fields.every(({ value }) => value === fields[0].value),
    )
    .map(({ path }) => path);
}

/** @throws RangeError for a path that the design has no estimate for */
export function fitParameters(design: Design, paths: readonly string[]): FitParameter[] {
  const all = fitUnknownsOf(design);
  return paths.map((path) => {
    const unknown = all.find((each) => each.path === path);
    if (!unknown) throw new RangeError(`no estimate '${path}' in this design`);
    const first = unknown.fields.find(({ low, high }) => high > low)!;
    const width = sidesOf(unknown, first);
    const mean = 0.5 * (width.below + width.above);
    return {
      unknown,
      low: (-SIDE * width.below) / mean,
      high: (SIDE * width.above) / mean,
      below: width.below / mean,
      above: width.above / mean,
    };
  });
}

type Field = Unknown['fields'][number];

/** Standard deviations of a field's spread on both sides of its value, in the scale in which it is off. */
function sidesOf(unknown: Unknown, { value, low, high }: Field): { below: number; above: number } {
  const t = scaleOf(unknown);
  return { below: (t(value) - t(low)) / SIDE, above: (t(high) - t(value)) / SIDE };
}

const scaleOf = ({ distribution }: Unknown) => (distribution === 'log-triangular' ? Math.log : (v: number) => v);
const backOf = ({ distribution }: Unknown) => (distribution === 'log-triangular' ? Math.exp : (v: number) => v);

/** A field's value at a place of the coordinate, within its spread. */
function fieldAt(unknown: Unknown, field: Field, q: number): number {
  const { below, above } = sidesOf(unknown, field);
  const value = backOf(unknown)(scaleOf(unknown)(field.value) + q * 0.5 * (below + above));
  return Math.min(field.high, Math.max(field.low, value));
}

/** What an estimate is at a place of its coordinate, SI. */
export function valueAt({ unknown }: FitParameter, q: number): number {
  return fieldAt(
    unknown,
    unknown.fields.find(({ low, high }) => high > low)!,
    q,
  );
}

/** The design with its estimates moved; a copy. */
export function designAt(design: Design, parameters: readonly FitParameter[], q: readonly number[]): Design {
  const copy = structuredClone(design);
  parameters.forEach(({ unknown }, k) => {
    for (const field of unknown.fields) {
      if (field.high > field.low) field.set(copy, fieldAt(unknown, field, q[k]));
    }
  });
  return copy;
}

/**
 * What is known of the parameters before a log, as residuals: of unit size each where the parameters are a standard
 * deviation off, and turned so that they are independent where earlier fits found them to go together.
 */
export class Prior {
  /** turns standard scores into independent ones */
  private readonly turn: Matrix;

  constructor(
    design: Design,
    private readonly parameters: readonly FitParameter[],
  ) {
    const known = design.fitted && valuesInUse(design.fitted);
    const at = parameters.map(({ unknown }) => known?.values.findIndex(({ path }) => path === unknown.path) ?? -1);
    const correlation = at.map((i, a) =>
      at.map((j, b) => (a === b ? 1 : i >= 0 && j >= 0 ? known!.correlation[Math.min(i, j)][Math.max(i, j)] : 0)),
    );
    this.turn = inverse(new CholeskyDecomposition(new Matrix(correlation)).lowerTriangularMatrix);
  }

  residuals(q: readonly number[]): number[] {
    const scores = this.parameters.map(({ below, above }, k) => score(q[k], q[k] < 0 ? below : above));
    return this.turn.mmul(Matrix.columnVector(scores)).to1DArray();
  }

  /** Slopes of the residuals, a row a parameter; `sides` says for each on which side of 0 it counts. */
  slopes(sides: readonly ('below' | 'above')[]): number[][] {
    return this.parameters.map((parameter, k) => {
      const deviation = parameter[sides[k]];
      return this.turn.getColumn(k).map((each) => score(each, deviation));
    });
  }

  sidesAt(q: readonly number[]): ('below' | 'above')[] {
    return q.map((value) => (value < 0 ? 'below' : 'above'));
  }
}

/** A side without width can't be gone to: bounds see to that. */
function score(distance: number, deviation: number): number {
  return deviation > 0 ? distance / deviation : distance;
}
