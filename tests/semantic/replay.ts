/**
 * A warm-up once more, by another way of stepping: implicit Euler under the fire that the first run tells, with steps
 * of our own and the gas given its small heat capacity. What it shares with the first run is the network's balances
 * alone.
 */
import { geometryOf } from '../../src/design/geometryOf.js';
import type { Design } from '../../src/design/design.js';
import type { Demand } from '../../src/network/balances.js';
import { makePit, type Pit } from '../../src/network/pit.js';
import type { WarmUp } from '../../src/study/estimate/result.js';
import type { Failure } from './checks.js';

/**
 * Longest step [s], also as a share of the time since the match or the first reading; how long the former counts after
 * that [s].
 */
const STEP = { longest: 15, share: 0.02, short: 3600 };

export interface Replay {
  /** when the gauge first reads the target [s] */
  gauge: number;
  time: number[];
  /** the gauge's lagging reading [K] */
  reading: number[];
  /** heat above outdoors in the steel of chamber and upright, as a share of what it holds in the end */
  share: number[];
}

/**
 * Heat above outdoors that the plates of chamber and upright hold at x [J], the plate they share with the firebox left
 * out.
 */
function steelHeat({ built, model, balances }: Pit, x: Float64Array): number {
  const { nodes, faces, fire, outdoors } = built.network;
  const [held, cold] = [x, x.map(() => outdoors.temperature)].map((at) => {
    const contents = new Float64Array(model.nodeCount);
    balances.heats.evaluate(at, contents);
    return contents;
  });
  let sum = 0;
  for (let i = 0; i < model.nodeCount; i++) {
    const node = nodes[i];
    if ((node.part !== 'chamber' && node.part !== 'upright') || node.thickness === 0) continue;
    if (faces.some((face) => face.node === i && face.zone === fire.zone)) continue;
    if (node.hiddenFrom?.includes(fire.zone)) continue;
    sum += held[i] - cold[i];
  }
  return sum;
}

/**
 * One step from x of at most h, under the fire at its end, gas with its small heat capacity; its length, null: none
 * converges.
 */
function eulerStep({ solver, balances, model }: Pit, x: Float64Array, h: number, fireAfter: (h: number) => number) {
  const from = x.slice();
  const fixed = new Float64Array(model.differential);
  for (; h >= 0.01; h /= 3) {
    const demand: Demand & { mode: 'release' } = { mode: 'release', heat: fireAfter(h) };
    solver.balanceFlows(x);
    if (solver.implicitStep(x, from, demand, 'nothing', h).converged) {
      balances.evaluate(x, demand);
      balances.contents(from, fixed);
      balances.stems.solve(x, fixed, h);
      return h;
    }
    x.set(from);
  }
  return null;
}

/**
 * What the gauge reads, and what burns, when a pit that is lit cold gets its full fire for so long, at each of some
 * times [s].
 *
 * @returns null where a step doesn't converge
 */
export function underFullFire(design: Design, times: readonly number[]): { reading: number; fire: number }[] | null {
  const pit = makePit(design, geometryOf(design));
  const { solver, model } = pit;
  const { heat, rise } = design.fire;
  const x = solver.coldState();
  let time = 0;
  return times.reduce<{ reading: number; fire: number }[] | null>((read, end) => {
    while (read && time < end) {
      const most = Math.min(end - time, Math.max(STEP.longest, STEP.share * time));
      const h = eulerStep(pit, x, most, (length) => heat * (1 - Math.exp(-(time + length) / rise)));
      if (h === null) return null;
      time += h;
    }
    return read && [...read, { reading: x[model.nodeCount + model.network.gauge], fire: x[model.fire] }];
  }, []);
}

/**
 * Follow a design's warm-up: the full fire until the gauge reads the target, then what the first run burned from there
 * on.
 *
 * @param after how long it is followed after that, until it has settled [s]
 * @returns null where a step doesn't converge, or the target isn't read in twice the time that the first run took
 */
export function replay(design: Design, { gauge_s, series }: WarmUp, after: number): Replay | null {
  const pit = makePit(design, geometryOf(design));
  const { solver, model } = pit;
  const { heat, rise, target } = design.fire;
  const gauge = model.nodeCount + model.network.gauge;
  const x = solver.coldState();
  const from = x.slice();
  const out: Replay = { gauge: NaN, time: [], reading: [], share: [] };
  let time = 0;
  let index = 0;
  const fireAt = (t: number): number => {
    if (Number.isNaN(out.gauge)) return heat * (1 - Math.exp(-t / rise));
    const { time_s, fire_W } = series;
    const then = gauge_s! + t - out.gauge;
    while (index + 1 < time_s.length && time_s[index + 1] <= then) index++;
    const next = Math.min(index + 1, time_s.length - 1);
    const span = time_s[next] - time_s[index];
    const share = span > 0 ? Math.min(1, (then - time_s[index]) / span) : 0;
    return Math.max(0, fire_W[index] + share * (fire_W[next] - fire_W[index]));
  };
  while (Number.isNaN(out.gauge) ? time < 2 * gauge_s! : time < out.gauge + after) {
    const since = Number.isNaN(out.gauge) ? time : time - out.gauge;
    const longest = Number.isNaN(out.gauge) || since < STEP.short ? STEP.longest : Infinity;
    from.set(x);
    const h = eulerStep(pit, x, Math.min(longest, Math.max(1, STEP.share * since)), (length) => fireAt(time + length));
    if (h === null) return null;
    if (Number.isNaN(out.gauge) && x[gauge] >= target) {
      out.gauge = time + (h * (target - from[gauge])) / (x[gauge] - from[gauge]);
      index = series.time_s.findIndex((t) => t > gauge_s!) - 1;
    }
    time += h;
    out.time.push(time);
    out.reading.push(x[gauge]);
    out.share.push(steelHeat(pit, x));
  }
  if (Number.isNaN(out.gauge)) return null;
  const settled = out.share[out.share.length - 1];
  out.share = out.share.map((heat) => heat / settled);
  return out;
}

/**
 * How far the replay may be off: the gas's own heat, which a quasi-steady run leaves out, delays it by some tens of
 * seconds [s]; Euler's error is a few percent of a time; a thermometer that creeps up to its target counts by what it
 * reads [K].
 */
const OFF = { seconds: 40, share: 0.035, reading: 1 };
/** What makes a pit soaked, and how far off the share of its heat may be at the time told. */
const SOAKED = 0.9;
const SHARE = 0.015;

/** Where a run and its replay disagree. */
export function compared({ gauge_s, soaked_s, series }: WarmUp, target: number, again: Replay): Failure[] {
  const failures: Failure[] = [];
  const late = again.gauge - gauge_s!;
  // what the later of the two reads when the earlier reads the target
  const [times, readings] = late > 0 ? [again.time, again.reading] : [series.time_s, series.thermometer_K];
  const reads = readings[times.findIndex((t) => t >= Math.min(gauge_s!, again.gauge))] - target;
  if (Math.abs(late) > Math.max(OFF.seconds, OFF.share * gauge_s!) && reads < -OFF.reading) {
    const detail = `${gauge_s} s, replay ${again.gauge} s: ${reads} K under the target when the other reads it`;
    failures.push({ kind: 'the replay reads the target at another time', detail });
  }
  // since the first reading, of which the replay has its own time
  const since = again.time.map((time) => time - again.gauge);
  const last = again.share.findLastIndex((share, i) => since[i] < 0 || share < SOAKED);
  const [soak, soakAgain] = [soaked_s! - gauge_s!, Math.max(0, since[last + 1])];
  const share = again.share[since.findIndex((time) => time >= soak)];
  if (Math.abs(soakAgain - soak) > Math.max(OFF.seconds, OFF.share * soaked_s!) && Math.abs(share - SOAKED) > SHARE) {
    const detail = `${soak} s after the first reading, replay ${soakAgain} s; it holds ${share} of its heat at the former`;
    failures.push({ kind: 'the replay soaks at another time', detail });
  }
  return failures;
}
