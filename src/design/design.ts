/**
 * A design as the solver sees it: every quantity in SI, every default filled in.
 *
 * Units: m, m2, kg, s, K, Pa, W, J; shares and factors 1. All sizes of parts are OUTSIDE sizes, as a builder measures them;
 * heights are above the ground. What each field is stands in its row, in `fields`. Made by `readDesign` from a builder's file,
 * never typed by hand.
 */
import type { Steel } from '../physics/steel.js';
import type { WoodComposition } from '../physics/wood.js';
import type { DESIGN } from './fields.js';
import type { Read } from './fields/fieldType.js';
import type { FittedUse } from './fitted.js';
import type { GaugeStation, PartName, StationName } from './stations.js';

export type { GaugeStation, PartName, StationName, Steel, WoodComposition };

export interface Design extends Read<typeof DESIGN> {
  /** what measured cooks told, already in the fields; absent when the file names none */
  fitted?: FittedUse;
}

export type Site = Design['site'];
export type Wood = Design['wood'];
export type Fire = Design['fire'];
/** How a tender feeds the fire by single splits, and how each of them burns. */
export type Splits = Fire['splits'];

export type Firebox = Design['firebox'];
export type Chamber = NonNullable<Design['chamber']>;
export type Upright = NonNullable<Design['upright']>;
/** Firebox or chamber. Width and height of a round one are its diameter. */
export type HorizontalPart = Omit<Firebox, 'intakes' | 'grate' | 'ashDoor'>;
export type Door = NonNullable<Firebox['door']>;
export type Insulation = NonNullable<Firebox['insulation']>;
export type Lining = NonNullable<Firebox['lining']>;
export type Shield = NonNullable<Firebox['shield']>;
/** A body inside a part: grates, racks, baffle, water pan, food. */
export type Content = Firebox['contents'][number];
export type Grate = Chamber['grates'][number];
export type Thermometer = Chamber['thermometers'][number];
/** Equal vents; the area is that of ONE of them, full open. */
export type Intake = Firebox['intakes'][number];
/** Reverse flow: gas runs under a plate to the far end, turns, and comes back over the racks to a stack by the fire. */
export type ReversePlate = NonNullable<Chamber['reverse']>;
export type Throat = Design['throat'];
/** Between two parts. */
export type Opening = Omit<Throat, 'through'>;
export type Stack = Design['stacks'][number];
export type Estimates = Design['estimates'];

/** A cook's day: light, reach the target, load, tend, let die. */
export type Cook = NonNullable<Design['cook']>;
/** Food laid in cold: a wet body that warms and dries in the gas. */
export type Food = Cook['load'][number];
/** A door opened, or weather that turns for a while. */
export type CookEvent = Cook['events'][number];

/** A handle or knob that a hand takes hold of. */
export type Handle = NonNullable<Design['handles']>[number];
/** The trailer a pit stands on. Positions are along it, all from one mark. */
export type Trailer = NonNullable<Design['trailer']>;
/** Something carried along. */
export type Load = NonNullable<Design['loads']>[number];
/** Prices in SI: per kg, per m2. */
export type Prices = NonNullable<Design['prices']>;
/** How a cook's log is read that was measured on this pit. */
export type LogSettings = NonNullable<Design['log']>;
