import type { Design } from '../../design/design.js';
import { CholeskyDecomposition, inverse, Matrix } from 'ml-matrix';
import { valuesInUse } from '../../design/fitted.js';
import { fitUnknownsOf, type Unknown } from '../unknowns.js';

/**
 * Estimates that a fit may move, each as one number: how far it lies from the design's own value, in units of the standard
 * deviation of its spread, in logarithms for what is off by a factor. 0 is where the design has it.
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

/** Paths that a fit takes up when none are named: what a thermometer in a pit can tell, of those the design has. */
export function usualPaths(design: Design, has: { wood: boolean; fire: boolean }): string[] {
  const fire = has.wood ? ['wood.heat'] : has.fire ? [] : ['fire.heat'];
  const gap = design.chamber && design.chamber.doorGap > 0 ? 'chamber.doorGap' : 'upright.doorGap';
  const there = fitUnknownsOf(design).map(({ path }) => path);
  return ['innerConvection', 'fire.radiant', gap, ...fire, 'estimates.stemFill'].filter((path) => there.includes(path));
}

/** Estimates that move what a log's probes read and are not fitted. */
export function otherPaths(
  design: Design,
  fitted: readonly string[],
  has: { wood: boolean; fire: boolean; wind: boolean },
): string[] {
  const out = new Set(fitted);
  if (has.wind) out.add('site.wind');
  // heat of wood is what moisture is about
  if (fitted.includes('wood.heat')) out.add('wood.moisture');
  else out.add('wood.heat');
  if (has.wood || has.fire) for (const path of ['fire.heat', 'fire.rise']) out.add(path);
  if (!has.wood || has.fire) for (const path of ['flame', 'charcoal', 'glow']) out.add(`fire.splits.${path}`);
  return fitUnknownsOf(design)
    .map(({ path }) => path)
    .filter((path) => !out.has(path));
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
 * What is known of the parameters before a log, as residuals: of unit size each where the parameters are a standard deviation
 * off, and turned so that they are independent where earlier fits found them to go together.
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
