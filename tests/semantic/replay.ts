/**
 * A warm-up once more, by another way of stepping: implicit Euler under the fire that the first run tells, with steps of our own
 * and the gas given its small heat capacity. What it shares with the first run is the network's balances alone.
 */
import { geometryOf } from '../../src/design/geometryOf.js';
import type { Design } from '../../src/design/design.js';
import { heatContent } from '../../src/network/materials.js';
import type { Demand } from '../../src/network/balances.js';
import { makePit, type Pit } from '../../src/study/pit.js';
import type { WarmUp } from '../../src/study/result.js';

/** Longest step [s], and longest as a share of the time gone by. */
const STEP = { longest: 15, share: 0.02 };

export interface Replay {
  /** when the gauge first reads the target [s] */
  gauge: number;
  time: number[];
  /** the gauge's lagging reading [K] */
  reading: number[];
  /** heat above outdoors in the steel of chamber and upright, as a share of what it holds once settled at the target */
  share: number[];
}

/** Heat above outdoors that the plates of chamber and upright hold at x [J], the plate they share with the firebox left out. */
function steelHeat({ built, model }: Pit, x: Float64Array): number {
  const { nodes, faces, fire, outdoors } = built.network;
  let sum = 0;
  for (let i = 0; i < model.nodeCount; i++) {
    const node = nodes[i];
    if ((node.part !== 'chamber' && node.part !== 'upright') || node.thickness === 0) continue;
    if (faces.some((face) => face.node === i && face.zone === fire.zone)) continue;
    sum += heatContent(node, x[i]) - heatContent(node, outdoors.temperature);
  }
  return sum;
}

/**
 * Follow a design's warm-up: the full fire until the gauge reads the target, then what the first run burned from there on.
 *
 * @param after how long it is followed after that [s]
 * @returns null where a step doesn't converge, the target isn't read in twice the time that the first run took, or no steady state
 *   is near the end
 */
export function replay(design: Design, { gauge_s, series }: WarmUp, after: number): Replay | null {
  const pit = makePit(design, geometryOf(design));
  const { settler, balances, model } = pit;
  const { heat, rise, target } = design.fire;
  const gauge = model.nodeCount + model.network.gauge;
  const x = settler.coldState();
  const from = x.slice();
  const fixed = new Float64Array(model.differential);
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
    let h = Math.min(STEP.longest, Math.max(1, STEP.share * since));
    from.set(x);
    for (;;) {
      const demand: Demand & { mode: 'release' } = { mode: 'release', heat: fireAt(time + h) };
      settler.balanceFlows(x);
      if (settler.implicitStep(x, from, demand, 'nothing', h).converged) {
        balances.evaluate(x, demand);
        balances.contents(from, fixed);
        balances.settleStems(x, fixed, h);
        break;
      }
      x.set(from);
      h /= 3;
      if (h < 0.01) return null;
    }
    if (Number.isNaN(out.gauge) && x[gauge] >= target) {
      out.gauge = time + (h * (target - from[gauge])) / (x[gauge] - from[gauge]);
      index = series.time_s.findIndex((t) => t > gauge_s!) - 1;
    }
    time += h;
    out.time.push(time);
    out.reading.push(x[gauge]);
    out.share.push(steelHeat(pit, x));
  }
  if (Number.isNaN(out.gauge) || !settler.polish(x, { mode: 'hold', target }).converged) return null;
  const settled = steelHeat(pit, x);
  out.share = out.share.map((heat) => heat / settled);
  return out;
}
