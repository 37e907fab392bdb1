/**
 * A design as the solver sees it: every quantity in SI, every default filled in.
 *
 * Units: m, m2, kg, s, K, Pa, W, J. All sizes of parts are OUTSIDE sizes, as a builder measures them;
 * heights are above the ground. Made by `readDesign` from a builder's file, never typed by hand.
 */
import type { Steel } from '../physics/steel.js';
import type { WoodComposition } from '../physics/wood.js';
import type { FittedUse } from './fitted.js';

export type { Steel, WoodComposition };

/** A builder's name for a place where temperatures are reported. */
export type StationName =
  | 'firebox'
  | 'plenumFireEnd'
  | 'plenumMiddle'
  | 'plenumStackEnd'
  | 'fireEnd'
  | 'middle'
  | 'stackEnd'
  | 'uprightLower'
  | 'uprightUpper';

/** Where the cook's thermometer may sit. */
export type GaugeStation = 'fireEnd' | 'middle' | 'stackEnd' | 'uprightLower' | 'uprightUpper';

export type PartName = 'firebox' | 'chamber' | 'upright';

export interface Site {
  /** outdoor air temperature [K] */
  air: number;
  /** wind speed at the pit [m/s] */
  wind: number;
  /** altitude above sea level [m] */
  altitude: number;
  /** relative humidity, 0..1 (default 0.5) */
  humidity: number;
  /** radiant temperature of the surroundings [K] (default: outdoor air) */
  surroundings: number;
  /** sunshine on a level surface [W/m2] (default 0) */
  sun: number;
  /** share of the upward-facing outside kept wet by rain, 0..1 (default 0) */
  rain: number;
  /** wind pressure coefficients on intakes and on stack tops (default 0: no wind pressure) */
  windPressure: { intake: number; stack: number };
}

export interface Wood {
  kind: string;
  /** moisture, share of the wet mass, 0..0.6 */
  moisture: number;
  /** net heat as burned [J per kg of wood as fired] */
  heat: number;
  composition: WoodComposition;
}

export interface Fire {
  /** heat release of the assumed fire [W] */
  heat: number;
  /** time constant of the rise 1 - exp(-t/rise) [s] (estimate, default 600) */
  rise: number;
  /** share of the heat that leaves the fuel bed as radiation (estimate, default 0.30, spread 0.20-0.45) */
  radiant: number;
  /** soot absorption coefficient in the firebox [1/m] (estimate, default 0.5, spread 0-1.2) */
  soot: number;
  /** cook temperature wanted on the thermometer [K] */
  target: number;
  splits: Splits;
}

/** How a tender feeds the fire by single splits, and how each of them burns. */
export interface Splits {
  /** one split every [s] (default 45 min); 0: so many small ones that the fire is steady */
  every: number;
  /** mean time after it is laid on at which the flaming share of a split burns [s] (estimate 15 min, spread 8-25 min) */
  flame: number;
  /** share of its heat that comes from charcoal (estimate 0.30, spread 0.20-0.40) */
  charcoal: number;
  /** mean time at which that charcoal burns [s] (estimate 45 min, spread 25-70 min) */
  glow: number;
}

export interface Insulation {
  /** catalog name */
  material: string;
  /** thickness [m]; 0 is allowed and equals no insulation */
  thickness: number;
  /** outer steel skin [m]; 0 = none */
  skin: number;
  /** what the skin is made of; absent: the steel of what it wraps */
  skinSteel?: Steel;
}

/** A body inside a part: grates, racks, baffle, water pan, food. */
export interface Content {
  name: string;
  material: 'steel' | 'stainless' | 'water' | 'food';
  /** [kg] */
  mass: number;
  /** surface that sees gas and walls, both sides [m2] */
  area: number;
  /** where it stands; default: spread over the part's stations */
  station?: StationName;
}

export interface Door {
  /** opening cut into the shell [m] */
  width: number;
  height: number;
  /** plate of the door leaf [m] */
  plate: number;
  /** by how much the leaf laps over the opening on each side [m] */
  lap: number;
}

interface PartBase {
  /** plate thickness [m] */
  plate: number;
  /** of shell, ends, door leaf and reverse-flow plate alike */
  steel: Steel;
  /** height of its middle above the ground [m] */
  centre: number;
  /** total leak area round its doors [m2] */
  doorGap: number;
  door?: Door;
  insulation?: Insulation;
  /** catalog name of the outside finish (default 'black paint') */
  finish: string;
  /** outside emissivity, from the finish unless given */
  emissivity: number;
  contents: Content[];
}

export interface HorizontalPart extends PartBase {
  shape: 'round' | 'square';
  /** outside width [m]; the diameter of a round part */
  width: number;
  /** outside height [m]; the diameter of a round part */
  height: number;
  /** outside length [m] */
  length: number;
}

export interface Intake {
  kind: 'disc' | 'slide' | 'pipe';
  count: number;
  /** full open area of ONE vent [m2] */
  area: number;
  /** open share, 0..1 */
  open: number;
  /** height of its middle above the ground [m] */
  centre: number;
  /** discharge coefficient (estimate, default 0.62) */
  discharge: number;
}

export interface Firebox extends HorizontalPart {
  intakes: Intake[];
}

/** Reverse flow: gas runs under a plate to the far end, turns, and comes back over the racks to a stack by the fire. */
export interface ReversePlate {
  /** height of the plate above the chamber's inside floor line [m] */
  height: number;
  /** thickness [m] */
  plate: number;
  /** free area where the gas turns at the far end [m2] */
  turn: number;
}

export interface Chamber extends HorizontalPart {
  reverse?: ReversePlate;
}

export interface Upright extends PartBase {
  width: number;
  depth: number;
  height: number;
  /** chamber to upright; absent when there is no chamber */
  opening?: Opening;
}

export interface Opening {
  /** [m2] */
  area: number;
  /** height of its middle above the ground [m] */
  centre: number;
  /** discharge coefficient (estimate, default 0.62) */
  discharge: number;
}

export interface Throat extends Opening {
  /** 'end': through an upright face; 'top': through the firebox roof into an upright standing over it */
  through: 'end' | 'top';
}

export interface Stack {
  part: 'chamber' | 'upright';
  /** outside diameter [m] */
  diameter: number;
  /** length of the stack above its base [m] */
  height: number;
  /** tube wall [m] */
  wall: number;
  /** of the tube (default carbon) */
  steel: Steel;
  /** height of its base above the ground [m] */
  base: number;
  /** open share of a damper, 0..1 (default 1) */
  damper: number;
  /** loss coefficients: entry 0.5, bends and cap 0 unless given, exit 1 */
  entryLoss: number;
  bendLoss: number;
  capLoss: number;
  /** wall roughness [m] (default 0.1e-3) */
  roughness: number;
  insulation?: Insulation;
  finish: string;
  emissivity: number;
}

/** What no correlation settles; each is an input with a default and a published or stated spread. */
export interface Estimates {
  /** share of the oxygen a wood fire can use (default 0.90) */
  oxygenUse: number;
  /** solid share of the thermometer stem's heat capacity (default 0.4, spread 0.2-1) */
  stemFill: number;
  /** emissivity of the sooted inside (default 0.95) */
  insideEmissivity: number;
  /** factor on what hot gas takes in as it rises behind throat, turn and upright opening (default 1, spread 0.3-3) */
  entrainment: number;
  /** factor on what sinks along cold walls (default 0.7, spread 0.3-1.3) */
  downflow: number;
}

/** Food laid in cold: a wet body that warms and dries in the gas. */
export interface Food {
  name: string;
  /** [kg] */
  mass: number;
  /** surface that sees gas and walls [m2] */
  area: number;
  /** temperature at which it goes in [K] */
  start: number;
  /** where it lies; default: spread over the gauge's part */
  station?: StationName;
}

/** Something that happens while food is in: a door opened, or weather that turns for a while. */
export interface CookEvent {
  /** after loading [s] */
  at: number;
  /** how long it lasts [s] */
  lasts: number;
  /** the door of the gauge's part stands open */
  door: boolean;
  /** wind speed meanwhile [m/s]; absent: as before */
  wind?: number;
  /** wet share of the upward-facing outside meanwhile; absent: as before */
  rain?: number;
}

/** A cook's day: light, reach the target, load, tend, let die. */
export interface Cook {
  /** from first reading the target to loading [s] */
  soak: number;
  load: Food[];
  /** how long the door stands open to load [s] */
  loading: number;
  /** how long the fire is tended after loading [s] */
  tend: number;
  events: CookEvent[];
  /** how long the pit is followed after the last wood [s] */
  dieDown: number;
  /** the thermometer counts as in the band when it is within this of the target [K] */
  band: number;
}

/** A handle or knob that a hand takes hold of. */
export interface Handle {
  name: string;
  part: PartName;
  /** where on the part; default: the hottest of its stations */
  station?: StationName;
  kind: 'rod' | 'coil';
  /** of the rod, or of the coil's wire [m] */
  diameter: number;
  /** from the plate to the tip, along its axis; with two ends from plate to plate [m] */
  length: number;
  /** along its axis from the plate to where the hand begins [m] */
  standoff: number;
  /** ends that are fixed to the plate */
  ends: 1 | 2;
  /** outside diameter and pitch of a coil [m] (estimates) */
  coil?: number;
  pitch?: number;
  material: Steel;
  emissivity: number;
  /** share of its view that the hot plate takes (estimate, default 0.4, spread 0.2-0.5) */
  sees: number;
}

/** The trailer a pit stands on. Positions are along it, all from one mark [m]. */
export interface Trailer {
  /** its own weight, empty [kg], and where that acts */
  mass: number;
  balance: number;
  /** axle, or the middle between two */
  axle: number;
  hitch: number;
  /** where the firebox's outer end stands, and which way the pit runs from there */
  offset: number;
  runs: 'to hitch' | 'from hitch';
  /** [kg] */
  axleRating: number;
  hitchRating: number;
}

/** Something carried along. */
export interface Load {
  name: string;
  /** [kg] */
  mass: number;
  /** along the trailer; without one along the pit from the firebox's outer end [m] */
  position: number;
}

/** How a cook's log is read that was measured on this pit. */
export interface LogSettings {
  /** a logger's own headers, each with what the column holds in our words, or `ignore` */
  columns: Record<string, string>;
  /** how far a probe may read off all the time, standard deviation [K] (estimate, default 2 °F) */
  accuracy: number;
}

export interface Design {
  schema: 1;
  name: string;
  /** shop's name and job line for a buyer's sheet */
  shop: string;
  job: string;
  site: Site;
  wood: Wood;
  fire: Fire;
  firebox: Firebox;
  /** absent when the upright stands alone over or beside its firebox */
  chamber?: Chamber;
  upright?: Upright;
  /** firebox to chamber, or to the upright when there is no chamber */
  throat: Throat;
  stacks: Stack[];
  /** factor on all inner convection (estimate, default 1, spread 0.8-2) */
  innerConvection: number;
  gauge: GaugeStation;
  estimates: Estimates;
  /** the day to follow; absent when the file has none */
  cook?: Cook;
  /** absent when the file names none */
  handles?: Handle[];
  trailer?: Trailer;
  loads?: Load[];
  log?: LogSettings;
  /** what measured cooks told, already in the fields above; absent when the file names none */
  fitted?: FittedUse;
}
