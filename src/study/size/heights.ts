/**
 * The size that is chosen with its stack's foot, or its throat, at other heights: what that does to grate, lid, floor
 * and draft.
 */
import type { Design } from '../../design/design.js';
import { readDesignAnyUnit } from '../../design/read.js';
import { partOfStation } from '../../design/stations.js';
import type { Tree } from '../../design/vary.js';
import { inchText } from '../../units/index.js';
import { cleanVents, withOpening } from '../air/cleanHold.js';
import { airState } from '../air/states.js';
import { fullFire, holdFire } from '../air/states.js';
import { describeState } from '../estimate/describeState.js';
import type { StationState, SteadyState } from '../estimate/result.js';

/** What food is in. */
export interface Food {
  /** mean of what the grate, or the racks, of the gauge's part read, and how far apart they are */
  grate_K: number | null;
  apart_K: number | null;
}

/** What another height of stack or throat would do. */
export interface HeightOption {
  /** which height is another; null: none, as chosen */
  of: 'base' | 'throat' | null;
  height_m: number | null;
  /** the pit holding with a clean fire; null where it can't be built so, or holds nowhere */
  state:
    | (Food & {
        wood_kg_per_s: number;
        /** steel of roof and floor at the gauge's station */
        lid_K: number | null;
        floor_K: number | null;
        draft_Pa: number;
        smokeShare: number;
      })
    | null;
}

/** The chosen design, and it with each height that is asked about. The top of the stack stays where it is. */
export async function heightOptions(tree: Tree, design: Design): Promise<HeightOption[]> {
  const { base = [], throat = [] } = design.size?.heights ?? {};
  if (base.length + throat.length === 0) return [];
  const asked = [
    ...base.map((height) => ({ of: 'base' as const, height, tree: withBase(tree, design, height) })),
    ...throat.map((height) => ({ of: 'throat' as const, height, tree: withThroat(tree, height) })),
  ];
  const options: HeightOption[] = [{ of: null, height_m: null, state: heldState(design) }];
  for (const { of, height, tree: file } of asked) {
    const read = await readDesignAnyUnit(JSON.stringify(file), { fileName: 'design', alone: true });
    options.push({ of, height_m: height, state: read.design ? heldState(read.design) : null });
  }
  return options;
}

function withBase(tree: Tree, design: Design, base: number): Tree {
  const stacks = (tree.stacks as Tree[]).map((each, i) => {
    const { base: foot, height } = design.stacks[i];
    return { ...each, base: inchText(base), height: inchText(Math.max(0.0254, foot + height - base)) };
  });
  return { ...tree, stacks };
}

function withThroat(tree: Tree, centre: number): Tree {
  return { ...tree, throat: { ...(tree.throat as Tree), centre: inchText(centre) } };
}

function heldState(design: Design): HeightOption['state'] {
  const full = fullFire(withOpening(design, 1));
  const clean = full && cleanVents(design, full.solved);
  const held = clean && holdFire(withOpening(design, clean.open), full.solved);
  if (!held) return null;
  const state = describeState(held.pit, held.solved);
  const station = gaugeStation(design, state);
  const air = airState(held.pit, held.solved);
  return {
    wood_kg_per_s: state.wood_kg_per_s,
    ...foodIn(design, state),
    lid_K: station.steelBy.roof_K,
    floor_K: station.steelBy.floor_K,
    draft_Pa: air.stackBase_Pa,
    smokeShare: air.smokeShare,
  };
}

function gaugeStation(design: Design, { places, stations }: SteadyState): StationState {
  const gauge = places.find(({ name }) => name === design.gauge);
  return stations.find(({ name }) => name === (gauge?.station ?? design.gauge)) ?? stations[0];
}

/** What the food gets where the cook's thermometer is: how hot it is, and how even. */
export function foodIn(design: Design, state: SteadyState): Food {
  const part = partOfStation(gaugeStation(design, state).name) === 'upright' ? 'upright' : 'chamber';
  const food = state.places.filter((each) => each.kind !== 'thermometer' && each.part === part);
  const readings = food
    .filter(({ name }) => part === 'upright' || name === food[0].name)
    .map((each) => each.thermometer_K);
  return {
    grate_K: readings.length > 0 ? readings.reduce((sum, each) => sum + each, 0) / readings.length : null,
    apart_K: readings.length > 1 ? Math.max(...readings) - Math.min(...readings) : null,
  };
}
