import { Matrix } from 'ml-matrix';

/** One probe before a fit: what it reads against what the design computes, in means over blocks of time. */
export interface ScreenedProbe {
  header: string;
  /** index of its log */
  log: number;
  /** which block of time each mean is of */
  block: number[];
  /** computed, with the design's own estimates [K] */
  computed: number[];
  /** measured less computed of each block [K] */
  left: number[];
  /** what each block's error may be, one standard deviation [K] */
  deviation: number[];
  /** change of the computed reading with each estimate, a row an estimate [K] */
  slopes: number[][];
}

/**
 * What the estimates may be, from where the design has them: precision of what is known of them before the log, and
 * their bounds.
 */
interface ScreenedEstimates {
  known: number[][];
  low: number[];
  high: number[];
  /** which of them is the heat of all wood, and by what factor a step of its coordinate changes that */
  fire: { at: number; factor: number } | null;
}

/** A probe's own small offset, standard deviation [K], and how far it goes at most. */
interface OwnOffset {
  deviation: number;
  most: number;
}

/**
 * Best agreement of some probes with the model, each with a small offset of its own, estimates and offsets within what
 * they may be: the sum of squares that is left, and the estimates' coordinates there. As if readings went straight with
 * the estimates.
 */
function agreement(
  probes: readonly ScreenedProbe[],
  { known, low, high }: ScreenedEstimates,
  own: OwnOffset,
): { cost: number; q: number[] } {
  const n = low.length;
  const size = n + probes.length;
  const hessian = Matrix.zeros(size, size);
  const pull = new Float64Array(size);
  let rest = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) hessian.set(i, j, known[i][j]);
  probes.forEach(({ left, deviation, slopes }, c) => {
    left.forEach((value, b) => {
      const weight = 1 / deviation[b] ** 2;
      const row = new Float64Array(size);
      for (let k = 0; k < n; k++) row[k] = slopes[k][b];
      row[n + c] = 1;
      for (let i = 0; i < size; i++) {
        if (row[i] === 0) continue;
        pull[i] += weight * row[i] * value;
        for (let j = 0; j < size; j++) hessian.set(i, j, hessian.get(i, j) + weight * row[i] * row[j]);
      }
      rest += weight * value * value;
    });
    hessian.set(n + c, n + c, hessian.get(n + c, n + c) + 1 / own.deviation ** 2);
  });
  const bounds = { low: [...low, ...probes.map(() => -own.most)], high: [...high, ...probes.map(() => own.most)] };
  const x = withinBounds(hessian, pull, bounds);
  const column = Matrix.columnVector(x);
  const curved = column.transpose().mmul(hessian).mmul(column).get(0, 0);
  const cost = curved - 2 * x.reduce((sum, value, i) => sum + value * pull[i], 0) + rest;
  return { cost: Math.max(0, cost), q: x.slice(0, n) };
}

const SWEEPS = 400;
const STILL = 1e-7;

/** Least of x'Hx/2 - x'p between bounds, one coordinate after the other: sure for a positive definite H. */
function withinBounds(hessian: Matrix, pull: Float64Array, { low, high }: { low: number[]; high: number[] }): number[] {
  const x = low.map(() => 0);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let moved = 0;
    for (let i = 0; i < x.length; i++) {
      let slope = -pull[i];
      for (let j = 0; j < x.length; j++) slope += hessian.get(i, j) * x[j];
      const to = Math.min(high[i], Math.max(low[i], x[i] - slope / hessian.get(i, i)));
      moved = Math.max(moved, Math.abs(to - x[i]));
      x[i] = to;
    }
    if (moved < STILL) break;
  }
  return x;
}

/** What in some logs is not as it says: at most one of these. */
export interface Suspicion {
  /** header of a probe that reads what the others and the model leave no room for */
  liar: string | null;
  /** one of these does, and there is no telling which */
  torn: string[];
  /** probes that changed places: the header under which what belongs to each of them stands */
  swapped: Map<string, string> | null;
  /** all probes read as if the fire were so many times what the log says */
  fire: number | null;
}

/**
 * A log that lies is rare: the guess that it does must leave so much less, in the sum of squares, and less than this
 * share.
 */
const ODDS = 6;
const MOST_LEFT = 0.5;
/** And it must explain the log: no more left over a block than the model may be off. */
const EXPLAINED = 1;
/** The next best guess leaves so much more, or it can't be told which is right. */
const CLEAR = 4;
/** Guesses that keep all probes leave about as little as one that leaves one out. */
const AS_GOOD = 2;
/** A fire less wrong than this is not worth a guess of its own. */
const WRONG_FIRE = 1.3;

/**
 * What is not as a log says: the probe without which the others agree with the model and each other, probes that
 * changed places, or the fire, by a factor beyond what an estimate may be.
 */
export function suspicionOf(probes: readonly ScreenedProbe[], estimates: ScreenedEstimates, own: OwnOffset): Suspicion {
  const none: Suspicion = { liar: null, torn: [], swapped: null, fire: null };
  const { cost: all } = agreement(probes, estimates, own);
  /** cost of a guess that explains the log; Infinity: it does not */
  const costOf = (those: readonly ScreenedProbe[], what = estimates) => {
    const { cost, q } = agreement(those, what, own);
    const blocks = those.reduce((sum, { left }) => sum + left.length, 0);
    const explains = all - cost > ODDS && cost < Math.min(MOST_LEFT * all, EXPLAINED * blocks);
    return { cost: explains ? cost : Infinity, q };
  };
  const headers = [...new Set(probes.map(({ header }) => header))];
  const without = headers
    .map((header) => ({ header, ...costOf(probes.filter((each) => each.header !== header)) }))
    .sort((a, b) => a.cost - b.cost);
  const single = headers.length > 1 ? without[0].cost : Infinity;
  const fire = estimates.fire && costOf(probes, freed(estimates, estimates.fire.at));
  const factor = fire ? estimates.fire!.factor ** fire.q[estimates.fire!.at] : 1;
  const swaps = mixUps(headers).flatMap((places) => {
    const those = exchanged(probes, places);
    return those ? [{ places, ...costOf(those) }] : [];
  });
  const swap = swaps.sort((a, b) => a.cost - b.cost).at(0);
  const least = Math.min(single + AS_GOOD, fire ? fire.cost : Infinity);
  if (swap && swap.cost < least) return { ...none, swapped: swap.places };
  if (fire && fire.cost < single + AS_GOOD && Math.max(factor, 1 / factor) > WRONG_FIRE)
    return { ...none, fire: factor };
  if (single === Infinity) return none;
  const close = without.filter(({ cost }) => cost - single <= CLEAR).map(({ header }) => header);
  return close.length > 1 ? { ...none, torn: close } : { ...none, liar: close[0] };
}

/** The estimates with nothing known of one of them, and no bounds to it. */
function freed({ known, low, high, fire }: ScreenedEstimates, at: number): ScreenedEstimates {
  const other = (bounds: number[], value: number) => bounds.map((each, k) => (k === at ? value : each));
  return {
    known: known.map((row, i) => row.map((each, j) => (i === at || j === at ? (i === j ? NEXT_TO_NOTHING : 0) : each))),
    low: other(low, -Infinity),
    high: other(high, Infinity),
    fire,
  };
}

/** Precision of what is not known: enough to keep a log that tells nothing solvable. */
const NEXT_TO_NOTHING = 1e-3;

/** Ways in which headers get mixed up: two exchanged, all in the opposite order, all one further on. */
function mixUps(headers: readonly string[]): Map<string, string>[] {
  const last = headers.length - 1;
  const orders = headers.flatMap((_, i) =>
    headers
      .slice(i + 1)
      .map((__, k) => headers.map((each, j) => (j === i ? headers[i + 1 + k] : j === i + 1 + k ? headers[i] : each))),
  );
  if (headers.length > 3) orders.push([...headers].reverse());
  if (headers.length > 2) orders.push([...headers.slice(1), headers[0]], [headers[last], ...headers.slice(0, last)]);
  return orders.map((order) => new Map(headers.flatMap((each, i) => (order[i] === each ? [] : [[each, order[i]]]))));
}

/** Probes with the readings that stand under other headers. @returns null: they don't stand beside each other */
function exchanged(probes: readonly ScreenedProbe[], places: ReadonlyMap<string, string>): ScreenedProbe[] | null {
  const out: ScreenedProbe[] = [];
  for (const probe of probes) {
    const from = places.get(probe.header);
    if (from === undefined) {
      out.push(probe);
      continue;
    }
    const other = probes.find(({ log, header }) => log === probe.log && header === from);
    if (!other) return null;
    const both = probe.block.flatMap((place, i) => {
      const j = other.block.indexOf(place);
      return j < 0 ? [] : [{ i, j }];
    });
    if (both.length * 2 < probe.block.length) return null;
    out.push({
      ...probe,
      left: both.map(({ i, j }) => other.left[j] + other.computed[j] - probe.computed[i]),
      deviation: both.map(({ i }) => probe.deviation[i]),
      slopes: probe.slopes.map((row) => both.map(({ i }) => row[i])),
    });
  }
  return out;
}
