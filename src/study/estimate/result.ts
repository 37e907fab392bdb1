/**
 * The result tree, SI only. Key names are part of the file format: additions are welcome, renames need a new schema
 * number. A quantity that does not exist (a target never reached) is null and a warning says why.
 */
import type { PlatePlace } from '../../network/types.js';
import type { Told } from '../../units/index.js';
import type { Design, PartName, StationName } from '../../design/design.js';
import type { ColdSmoke } from '../events/coldSmoke.js';
import type { Lit } from '../events/lighting.js';
import type { VentCurve } from '../air/ventCurve.js';
import type { Swing } from '../events/swing.js';
import type { VentTurn } from '../events/ventTurn.js';
import type { HandsResult } from '../carry/touch.js';
import type { Spread } from '../spread/uncertainty.js';
import type { WeightResult } from '../carry/weight.js';

/** The full fire of the design, or the fire that holds the thermometer at its target, as the JSON names them. */
export type WhichFire = 'assumed fire' | 'hold fire';

/** What the builder should know of a result: a stable code, cause and remedy. */
export interface Warning {
  /**
   * kebab-case, stable: fire-limited-by-air, biot-above-limit, paint-above-limit, door-gap-smoke, target-not-reached
   * ...
   */
  code: string;
  /** one sentence: cause, then remedy; the JSON has it in words */
  message: Told;
  /** part, station, opening or correlation; empty: the pit as a whole. The JSON has the fire behind it */
  where: string;
  /** under which fire; absent: it is no matter of one */
  fire?: WhichFire;
  /** SI */
  value: number | null;
  limits: { low?: number; high?: number; unit: string; source?: string } | null;
}

/** Temperatures of a station in a steady state. */
export interface StationState {
  name: StationName;
  gas_K: number;
  /** height of its thermometer's stem above the ground, and what that settles at */
  dial_m: number;
  thermometer_K: number;
  /** area mean of the station's outside walls */
  steel_K: number;
  /** outermost surface, hottest patch: skin where there is one (for hands) */
  outside_K: number;
  /** gas by height above the ground, lowest first; one where it counts as mixed */
  layers: { from_m: number; to_m: number; gas_K: number }[];
  /** the outside walls by where they stand; null: none there */
  steelBy: { roof_K: number | null; upper_K: number | null; lower_K: number | null; floor_K: number | null };
}

/** A place that a cook reads: a grate, at several places along it, a rack, or a thermometer that the design names. */
export interface PlaceState {
  name: string;
  kind: 'grate' | 'rack' | 'thermometer';
  part: PartName;
  /** station that it belongs to */
  station: StationName;
  /** share of the part's length from its fire end */
  along: number;
  /** above the ground */
  height_m: number;
  gas_K: number;
  /** settled reading of a stem there */
  thermometer_K: number;
}

/** How far apart the places read where food lies. */
export interface Evenness {
  /** of each grate, from its hottest to its coldest place */
  grates: { name: string; endToEnd_K: number }[];
  /** of grates over each other, where that is most; null: there is one */
  topToBottom_K: number | null;
  /** of the upright's racks; null: there are none, or one */
  racks_K: number | null;
}

/** The hottest patch of the outside. */
export interface HottestOutside {
  part: string;
  station: StationName | null;
  place: PlatePlace | null;
  steel_K: number;
}

/** A lined wall at its hottest place: hot face, and the steel behind. */
export interface LiningState {
  part: PartName;
  /** shell | roof | floor | sides | fireEnd | farEnd | door */
  face: string;
  material: string;
  hot_K: number;
  steel_K: number;
}

/** Where the heat of a steady state goes [W]. */
export interface HeatLoss {
  firebox: number;
  chamber: number;
  upright: number;
  stackWall: number;
  stackGas: number;
  /** gas that leaves otherwise than by a stack, and what vents radiate */
  leaks: number;
  total: number;
}

/** What flows through an opening in a steady state. */
export interface OpeningState {
  name: string;
  /** intake | throat | passage | stackEntry | stackExit | gap */
  role: string;
  /** of a door gap's piece at a station: what the whole gap is called */
  gap?: string;
  /** of a door gap: whose door, and the station behind it */
  part?: PartName;
  station?: StationName;
  /** where its own direction leads */
  way: 'in' | 'up' | 'along';
  /** gas may go the other way as well: it goes round past plates, or comes back over one */
  eitherWay: boolean;
  area_m2: number;
  /** net flow in its own direction (intake: inwards; throat: from the fire; stack: upwards; gap: outwards) */
  flow_kg_per_s: number;
  /** what runs against that direction at the same time [kg/s], contained in the net */
  back_kg_per_s: number;
  dp_Pa: number;
}

/** All of a pit that has settled under one fire. */
export interface SteadyState {
  fire_W: number;
  /** heat asked for, where air limited the release below it; else equal to fire_W */
  fireAsked_W: number;
  wood_kg_per_s: number;
  air_kg_per_s: number;
  excessAirRatio: number;
  /** the same of what comes into the firebox from outdoors alone: vents must not rest on what leaks in elsewhere */
  letInRatio: number;
  converged: boolean;
  iterations: number;
  residual: number;
  stations: StationState[];
  /** grates, racks and thermometers with a name of their own */
  places: PlaceState[];
  evenness: Evenness;
  hottestOutside: HottestOutside;
  /** where the design lines any wall */
  linings?: LiningState[];
  heatLoss_W: HeatLoss;
  draft: {
    stackBase_Pa: number;
    firebox_Pa: number;
    throat_Pa: number;
    theoretical_Pa: number;
    stackVelocity_m_per_s: number;
    intakeVelocity_m_per_s: number;
    neutralPlane_m: number | null;
    airChanges_per_s: number;
    residence_s: number;
  };
  /** gauge pressure against outdoors at the same height, along the gas path */
  pressurePath: { where: string; height_m: number; gauge_Pa: number }[];
  openings: OpeningState[];
  limitedByAir: boolean;
  /** this state's own imbalances */
  energyError: number;
  massError_kg_per_s: number;
}

/** A station's temperatures at the times of a warm-up. */
export interface StationSeries {
  name: StationName;
  thermometer_K: number[];
  gas_K: number[];
  steel_K: number[];
}

/** The same of a grate, a rack or a thermometer. */
export interface PlaceSeries extends Pick<PlaceState, 'name' | 'kind' | 'part' | 'station' | 'along' | 'height_m'> {
  thermometer_K: number[];
  gas_K: number[];
}

/** The way from cold under the full fire. */
export interface WarmUp {
  /** first time the lagged thermometer reads the target; null: never */
  gauge_s: number | null;
  /**
   * when it has read it and the steel of chamber and upright holds 90 % of the heat above outdoors that it holds once
   * settled there, and never less after; null: never
   */
  soaked_s: number | null;
  woodToGauge_kg: number | null;
  woodToSoaked_kg: number | null;
  /** curves of the gauge, and steel of its station; `stations` and `places` have all */
  series: {
    time_s: number[];
    fire_W: number[];
    thermometer_K: number[];
    gas_K: number[];
    steel_K: number[];
    stations: StationSeries[];
    places: PlaceSeries[];
    /** cumulated energies at each time: fire heat, lost, stored [J] */
    fire_J: number[];
    lost_J: number[];
    stored_J: number[];
  };
  steps: number;
}

/** Sizes and weights of a part or a stack. */
export interface PartResult {
  name: string;
  /** thickness of its plate, or a stack's wall, and of its door's where the design gives it one */
  plate_m: number;
  doorPlate_m?: number;
  steelArea_m2: number;
  steelMass_kg: number;
  gasVolume_m3: number;
  /** brick and board inside it, where there is any */
  liningMass_kg?: number;
  biot: number;
}

/** The intakes at which the fire that holds burns with just the air of a clean one. */
export interface CleanVents {
  /** share that all intakes stand open, as drawn and there */
  drawn: number;
  open: number;
  /** the fire that holds the target there, and its wood */
  fire_W: number;
  wood_kg_per_s: number;
}

/** An input that no correlation settles, as used, with its spread; printed with every result. */
export interface UnknownUsed {
  /** path in the design file */
  path: string;
  value: number;
  low: number;
  high: number;
  unit: string;
  /** shape of the spread, with `value` the likeliest */
  distribution: 'triangular' | 'log-triangular';
  /** where the spread comes from */
  source: string;
  /**
   * where a measured cook has settled it: the 90 % interval that is left; `low` and `high` are the ends of the spread
   */
  fitted?: { low: number; high: number };
}

/** What `estimate` finds: the contract of `--json`. */
export interface EstimateResult {
  schema: 1;
  tool: { name: 'pitwright'; version: string };
  design: Design;
  warnings: Warning[];
  geometry: { parts: PartResult[]; totalSteelMass_kg: number };
  estimates: UnknownUsed[];
  /** the fire that holds fire.target; null with a warning when no fire can */
  steady: SteadyState | null;
  /** the steady state under fire.heat */
  assumed: SteadyState | null;
  warmUp: WarmUp | null;
  /**
   * how a cook with splits keeps it there; null: no fire does, or it could not be followed. Absent where it was not
   * asked for
   */
  splits?: Swing | null;
  /** how a cook brings it there, from the match; null: he does not. Absent where it was not asked for */
  lit?: Lit | null;
  /** null: no opening burns so. Absent where it was not asked for */
  vents?: CleanVents | null;
  /**
   * the vents in use, and how fast turning them is answered; null: it can't be followed. Absent where it was not asked
   * for
   */
  ventCurve?: VentCurve;
  ventTurn?: VentTurn | null;
  balance: { energyError: number; massError_kg_per_s: number };
  /** whether its upright can smoke cold, where it has one. Absent where it was not asked for */
  coldSmoke?: ColdSmoke;
  /** what hands find, where the design names handles */
  hands?: HandsResult;
  /** weights and where they act, where the design names a trailer or loads */
  weight?: WeightResult;
  /** how far the numbers spread with the estimates, where that was asked for */
  spread?: Spread;
}
