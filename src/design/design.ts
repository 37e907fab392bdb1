/**
 * A design as the solver sees it: every quantity in SI, every default filled in.
 *
 * Units: m, m2, kg, s, K, Pa, W, J; shares and factors 1. All sizes of parts are OUTSIDE sizes, as a builder measures
 * them; heights are above the ground. What each field is stands in its row, in `fields`. Made by `readDesign` from a
 * builder's file, never typed by hand.
 */
import type { Steel } from '../physics/steel.js';
import type { WoodComposition } from '../physics/wood.js';
import type { DESIGN } from './fields.js';
import type { Read } from './fields/fieldType.js';
import type { FittedUse } from './fitted.js';
import type { GaugeStation, PartName, StationName } from './stations.js';

export type { GaugeStation, PartName, StationName, Steel, WoodComposition };

/** A pit with its weather, wood and fire, every field in SI and no default left open. */
export interface Design extends Read<typeof DESIGN> {
  /** what measured cooks told, already in the fields; absent when the file names none */
  fitted?: FittedUse;
}

/** Where it stands, and in what weather. */
export type Site = Design['site'];
/** What is burned: its make-up, moisture and heat. */
export type Wood = Design['wood'];
/** How much burns, how it is tended, and the temperature wanted. */
export type Fire = Design['fire'];
/** How a tender feeds the fire by single splits, and how each of them burns. */
export type Splits = Fire['splits'];

/** The part that burns, with its vents, grate and doors. */
export type Firebox = Design['firebox'];
/** The lying part that cooks. */
export type Chamber = NonNullable<Design['chamber']>;
/** The standing part that cooks. */
export type Upright = NonNullable<Design['upright']>;
/** Firebox or chamber. Width and height of a round one are its diameter. */
export type HorizontalPart = Omit<Firebox, 'intakes' | 'grate' | 'ashDoor'>;
/** A door's plate, size and leak. */
export type Door = NonNullable<Firebox['door']>;
/** A layer outside the plate, under its skin. */
export type Insulation = NonNullable<Firebox['insulation']>;
/** A layer inside the plate. */
export type Lining = NonNullable<Firebox['lining']>;
/** A sheet that stands off the plate, with air behind it. */
export type Shield = NonNullable<Firebox['shield']>;
/** A body inside a part: grates, racks, baffle, water pan, food. */
export type Content = Firebox['contents'][number];
/** A level in the chamber on which food lies. */
export type Grate = Chamber['grates'][number];
/** A dial through the shell of the chamber, and how far its stem reaches in. */
export type Thermometer = Chamber['thermometers'][number];
/** Equal vents; the area is that of ONE of them, full open. */
export type Intake = Firebox['intakes'][number];
/** Reverse flow: gas runs under a plate to the far end, turns, and comes back over the racks to a stack by the fire. */
export type ReversePlate = NonNullable<Chamber['reverse']>;
/** The hole from the firebox to what follows. */
export type Throat = Design['throat'];
/** Between two parts. */
export type Opening = Omit<Throat, 'through'>;
/** A tube by which gas leaves, with its damper. */
export type Stack = Design['stacks'][number];
/** Inputs that no handbook settles, where the file gives them. */
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
