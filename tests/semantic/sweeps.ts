/**
 * One field of a design in steps, all else as it is: which way the numbers must go, whatever the design.
 */
import { readDesign } from '../../src/design/read.js';
import { PARTS, type PartName } from '../../src/design/stations.js';
import { changeTree, type Change } from '../../src/design/vary.js';
import { FACES } from '../../src/design/walls.js';
import { estimate, type EstimateOptions } from '../../src/study/estimate/estimate.js';
import type { EstimateResult, SteadyState } from '../../src/study/estimate/result.js';
import type { Tree } from '../design/randomDesign.js';
import { shopDesign } from '../design/shopDesign.js';
import { LONG, type Failure } from './checks.js';
import { compared, replay } from './replay.js';
import { Findings } from './telling.js';

/**
 * A share by which a number may go the wrong way: what the time steps leave open in a time, and the settling in a
 * state.
 */
const SLACK = { time: 0.005, state: 1e-3 };

const PLATE = ['1/8 in', '3/16 in', '1/4 in', '5/16 in', '3/8 in', '1/2 in'];
/** More than this share of the hold fire is no small change of a pit: it is another state. */
const OTHER_STATE = 0.05;
/** Outside sizes of a part in a file, and in a design, where a diameter is a width. */
const SIZES = { diameter: 'width', width: 'width', depth: 'depth', height: 'height', length: 'length' };
const WRAP = ['0 in', '1/2 in', '1 in', '2 in', '4 in'];
const HEIGHT = [1, 1.25, 1.6, 2];
const FIRE = [0.99, 0.995, 1, 1.005, 1.01];

interface Point {
  value: string;
  result: EstimateResult;
}

function solve(tree: Tree, changes: Change[], options: EstimateOptions = {}): EstimateResult {
  let changed = tree;
  for (const change of changes) {
    const made = changeTree(changed, change);
    if ('problem' in made) throw new Error(`${change.path}=${change.value} ${made.problem}`);
    changed = made.tree;
  }
  const { design, faults } = readDesign(JSON.stringify(changed), { fileName: 'sweep' });
  if (faults) throw new Error(`${JSON.stringify(changes)}: ${faults[0].message}`);
  return estimate(design, options);
}

/** Do these fields in these steps give designs at all? A thick plate may leave no room for a throat. */
function sweep(
  tree: Tree,
  paths: readonly string[],
  values: readonly string[],
  options?: EstimateOptions,
  also: readonly Change[] = [],
): Point[] {
  return values.flatMap((value) => {
    try {
      return [
        {
          value,
          result: solve(tree, [...also, ...paths.map((path) => ({ path, value }))], options),
        },
      ];
    } catch (error) {
      if (error instanceof Error && error.message.startsWith('[{')) return [];
      throw error;
    }
  });
}

type Of = (result: EstimateResult) => number | null | undefined;

interface Wrong {
  from: Point;
  to: Point;
  was: number;
  is: number;
}

/** Every point that lies beyond the furthest before it the wrong way, by more than the slack. */
function wrongWay(points: readonly Point[], of: Of, way: 1 | -1, slack: number): Wrong[] {
  const wrong: Wrong[] = [];
  let best: { from: Point; was: number } | undefined;
  for (const to of points) {
    const is = of(to.result);
    if (is === null || is === undefined) continue;
    if (best && way * (best.was - is) > slack * Math.abs(best.was)) wrong.push({ ...best, to, is });
    if (!best || way * (is - best.was) > 0) best = { from: to, was: is };
  }
  return wrong;
}

const told = ({ from, to, was, is }: Wrong) =>
  `${was.toPrecision(6)} at ${from.value}, ${is.toPrecision(6)} at ${to.value}`;

/** A number that is there at some values, missing at one between, and no word of why. */
function gaps(points: readonly Point[], of: Of, kind: string): Failure[] {
  const there = points.map(({ result }) => of(result) != null);
  return points.flatMap(({ value, result }, i) =>
    !there[i] && there.slice(0, i).includes(true) && there.slice(i).includes(true) && result.warnings.length === 0
      ? [{ kind, detail: `none at ${value}` }]
      : [],
  );
}

const gauge: Of = ({ warmUp }) => warmUp?.gauge_s;
const soaked: Of = ({ warmUp }) => warmUp?.soaked_s;

/**
 * Where a part's plates stand: that of all its faces, and those that a face or a door has of its own; of all parts for
 * 'all'.
 */
function platesOf(tree: Tree, part: string): string[] {
  if (part !== 'all') return [`${part}.plate`];
  const own = partsOf(tree).flatMap((each) =>
    ['door', ...FACES].flatMap((face) => {
      const given = (tree[each] as Tree)[face] as Tree | undefined;
      return given?.plate === undefined ? [] : [`${each}.${face}.plate`];
    }),
  );
  return ['all.plate', ...own];
}

/**
 * Thicker plate never shortens a warm-up: all plates at once, and each part by itself.
 *
 * Two things may do it all the same, and are looked into:
 * - Sizes are outside sizes, so that thicker plate leaves a smaller inside, which takes less heat from the gas: the pit
 *   holds its target with less fire, and the same fire has more in hand. With its fire as much smaller, or its inside
 *   kept, it must not be sooner.
 * - Soaked is nine tenths of all the steel's heat. A part that warms fast counts for more of it when it is thicker, and
 *   a heavier firebox keeps the full fire on for longer. So one part's plate may shorten it (all plates at once may
 *   not), if a replay agrees.
 */
function plateSweep(tree: Tree, parts: readonly string[] = ['all', ...partsOf(tree)]): Failure[] {
  return parts.flatMap((part) => {
    const path = `${part}.plate`;
    const paths = platesOf(tree, part);
    const points = sweep(tree, paths, PLATE);
    return (
      [
        ['gauge time', gauge],
        ['soaking', soaked],
      ] as const
    ).flatMap(([words, of]) => {
      const missing = gaps(points, of, `${path}: no ${words}`);
      const [worst] = wrongWay(points, of, 1, SLACK.time).sort((a, b) => a.is / a.was - b.is / b.was);
      if (!worst) return missing;
      const again = [withLessFire(tree, paths, worst), withItsInside(tree, paths, worst)].map(
        (each) => each && of(each),
      );
      if (again.some((time) => time != null && time >= worst.was * (1 - SLACK.time))) return missing;
      if (words === 'soaking' && part !== 'all' && replaysSo(tree, path, worst)) return missing;
      const [less, kept] = again.map((time) => time?.toPrecision(6));
      const detail = `${told(worst)}, with as much less fire as it holds with ${less}, with its inside kept ${kept}`;
      return [...missing, { kind: `${path} shortens ${words}`, detail }];
    });
  });
}

/**
 * The thicker one with a fire as much smaller as its hold fire is; null where that is no smaller, or another state's.
 */
function withLessFire(tree: Tree, paths: readonly string[], { from, to }: Wrong): EstimateResult | null {
  const ratio = (to.result.steady?.fire_W ?? NaN) / (from.result.steady?.fire_W ?? NaN);
  if (!(ratio < 1 && ratio > 1 - OTHER_STATE)) return null;
  return solve(tree, [...paths.map((path) => ({ path, value: to.value })), fireChange(tree, ratio)]);
}

/** The thicker one with outside sizes as much larger as its plates are thicker; null where that is no design. */
function withItsInside(tree: Tree, paths: readonly string[], { from, to }: Wrong): EstimateResult | null {
  const sizes = partsOf(tree).flatMap((part) => {
    const [thin, thick] = [from, to].map(({ result }) => result.design[part as PartName]!);
    const more = 2 * (thick.plate - thin.plate);
    if (more === 0) return [];
    const given = thin as unknown as Record<string, number>;
    const written = Object.entries(SIZES).filter(([size]) => size in (tree[part] as Tree));
    return written.map(([size, as]): Change => ({
      path: `${part}.${size}`,
      value: `${(1000 * (given[as] + more)).toFixed(4)} mm`,
    }));
  });
  const [larger] = sweep(tree, paths, [to.value], {}, sizes);
  return larger?.result ?? null;
}

/** Do replays of both soak when the runs say? */
function replaysSo(tree: Tree, path: string, { from, to }: Wrong): boolean {
  return [from, to].every(({ value }) => {
    const { design, warmUp } = solve(tree, [{ path, value }], { until: LONG });
    const again = replay(design, warmUp!, LONG - warmUp!.gauge_s!);
    return again !== null && compared(warmUp!, design.fire.target, again).length === 0;
  });
}

function fireChange(tree: Tree, factor: number): Change {
  const [heat, unit] = String((tree.fire as Tree).heat).split(' ');
  return { path: 'fire.heat', value: `${Number(heat) * factor} ${unit}` };
}

/**
 * Thicker insulation never asks for more fire to hold, in the shade: it keeps the sun's heat out as it keeps the fire's
 * in, and a part that gas goes down through wants that heat. Past the gauge it may, by the air it draws: gas that
 * leaves hotter pulls harder. There the stacks are closed until the fire draws what it drew under the thinner layer,
 * and must then be no larger.
 */
function insulationSweep(given: Tree): Failure[] {
  const site: Tree = { ...(given.site as Tree) };
  delete site.sun;
  const tree: Tree = { ...given, site };
  return partsOf(tree).flatMap((part) => {
    const own = (tree[part] as Tree).insulation as { material?: string } | undefined;
    const wrap = (thickness: string): Change => ({
      path: `${part}.insulation`,
      value: `{ material: ${own?.material ?? 'ceramic fibre'}, thickness: ${thickness}, skin: 16 ga }`,
    });
    const points = WRAP.map((value) => ({ value, result: solve(tree, [wrap(value)], { steadyOnly: true }) }));
    return points.slice(1).flatMap(({ value, result }, i) => {
      const before = points[i].result.steady;
      const after = result.steady;
      if (!before || !after || after.fire_W <= before.fire_W * (1 + SLACK.state)) return [];
      const same = drawingLess(tree, [wrap(value)], before.air_kg_per_s);
      if (same && same.fire_W <= before.fire_W * (1 + SLACK.state)) return [];
      return [
        {
          kind: `${part}.insulation raises the hold fire`,
          detail: `${before.fire_W.toFixed(1)} W at ${points[i].value}, ${after.fire_W.toFixed(1)} W at ${value}; with the air of before ${same?.fire_W.toFixed(1)} W`,
        },
      ];
    });
  });
}

/**
 * The hold state with all stacks closed so far that no more air comes in than given; null where it draws no more than
 * that.
 */
function drawingLess(tree: Tree, changes: Change[], air: number): SteadyState | null {
  const stacks = tree.stacks as { damper?: string }[];
  const closed = (share: number) =>
    solve(
      tree,
      [
        ...changes,
        ...stacks.map(({ damper }, i) => ({
          path: `stacks[${i}].damper`,
          value: String(share * (damper === undefined ? 1 : parseFloat(damper) / 100)),
        })),
      ],
      { steadyOnly: true },
    ).steady;
  const open = closed(1);
  if (!open || open.air_kg_per_s <= air) return null;
  let [low, high] = [0.1, 1];
  let best: SteadyState | null = null;
  for (let i = 0; i < 12; i++) {
    const middle = Math.sqrt(low * high);
    const state = closed(middle);
    if (state && state.air_kg_per_s < air) {
      low = middle;
    } else {
      high = middle;
      best = state ?? best;
    }
  }
  return best;
}

/** A taller stack never has less draft of its own (before any flow takes of it). */
function stackSweep(tree: Tree): Failure[] {
  const stacks = tree.stacks as { height: string }[];
  const points = HEIGHT.map((factor) => ({
    value: `${factor} times the height`,
    result: solve(
      tree,
      stacks.map(({ height }, i) => ({ path: `stacks[${i}].height`, value: `${parseFloat(height) * factor} in` })),
      { steadyOnly: true },
    ),
  }));
  return (['steady', 'assumed'] as const).flatMap((which) =>
    wrongWay(points, (result) => result[which]?.draft.theoretical_Pa, 1, SLACK.state).map((wrong) => ({
      kind: `a taller stack has less draft, ${which}`,
      detail: told(wrong),
    })),
  );
}

/** A little more fire reads the target a little sooner: no jump, and never later. */
function fireSweep(tree: Tree): Failure[] {
  const points = FIRE.map((factor) => ({
    value: `${factor} of the fire`,
    result: solve(tree, [fireChange(tree, factor)]),
  }));
  const times = points.map(({ result }) => gauge(result) ?? null);
  const detail = `${FIRE.join()}: ${times.map((t) => t?.toFixed(1)).join()} s`;
  const failures = [
    ...gaps(points, gauge, 'a fire between others reads nothing'),
    ...wrongWay(points, gauge, -1, 0.001).map((wrong) => ({ kind: 'more fire reads later', detail: told(wrong) })),
  ];
  const { design, assumed } = points[2].result;
  const own = assumed!.stations.find(({ name }) => name === design.gauge)!.thermometer_K;
  const left = 1 - (design.fire.target - design.site.air) / (own - design.site.air);
  // t = -tau ln(1 - target rise / settled rise): what half a percent of fire does to it, and to that
  const slope = (0.005 * (1 - left)) / left / -Math.log(left);
  for (let i = 1; i < times.length; i++) {
    const [before, after] = [times[i - 1], times[i]];
    if (before === null || after === null) continue;
    if (Math.abs(after / before - 1) > 0.01 + 2 * slope) {
      failures.push({
        kind: `half a percent of fire moves the gauge time by more than ${(100 * (0.01 + 2 * slope)).toFixed(1)} %`,
        detail,
      });
      break;
    }
  }
  for (let i = 2; i < times.length; i++) {
    const [a, b, c] = [times[i - 2], times[i - 1], times[i]];
    if (a === null || b === null || c === null) continue;
    if (Math.abs(a - 2 * b + c) > 0.01 * b + (0.01 / left) * Math.abs(a - b)) {
      failures.push({ kind: 'the gauge time bends between neighbouring fires', detail });
      break;
    }
  }
  return failures;
}

function partsOf(tree: Tree): string[] {
  return PARTS.filter((part) => part in tree);
}

/** Does a design soak at all, so that sweeps of it say something? */
function soaks(tree: Tree): boolean {
  return soaked(solve(tree, [])) != null;
}

/** All sweeps of a design. */
function sweepFailures(tree: Tree): Failure[] {
  return [...plateSweep(tree), ...insulationSweep(tree), ...stackSweep(tree), ...fireSweep(tree)];
}

/** Seeds whose designs soak, so that their sweeps say something; the layouts take turns. */
export function* soaking(): Generator<number> {
  for (let seed = 3000; ; seed++) if (soaks(shopDesign(seed))) yield seed;
}

/** Sweeps a design that a seed makes, and tells what fails. */
export function sweepDesign(seed: number): void {
  const findings = new Findings();
  const tree = shopDesign(seed);
  findings.add(seed, tree, sweepFailures(tree));
  findings.tell();
}
