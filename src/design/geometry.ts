/** What a design's parts come to in areas, masses, volumes and heights. SI. (types; functions follow) */
import type { PartName, Steel } from './design.js';
import type { GatherBox } from './gather.js';
import type { Wall } from './walls.js';

/** How a face stands; it picks the convection relation. */
export type Orientation =
  | 'horizontalCylinder' // shell of a round horizontal part
  | 'verticalCylinder' // stack
  | 'vertical' // flat side or end disc
  | 'up' // roof
  | 'down'; // floor

/** One face of a part that has outdoors on its other side (shared plates are taken out). */
export interface Face {
  /** shell | roof | floor | sides | fireEnd | farEnd | door | door left ...: unique within the part */
  name: string;
  /** what it is made of and covered with */
  wall: Wall;
  orientation: Orientation;
  /**
   * where it sits along a horizontal part: 'along' is split over the stations, the ends belong to the first and the
   * last station; in an upright 'along' is split over the heights, 'bottom' and 'top' belong to the lowest and highest
   * station
   */
  place: 'along' | 'fireEnd' | 'farEnd' | 'bottom' | 'top';
  /** outside area that faces outdoors, cut-outs and shared plate subtracted, the door leaf counted as plate [m2] */
  outsideArea: number;
  /** the same face's inside area [m2] */
  insideArea: number;
  /** steel of this face, door leaf included [kg] */
  mass: number;
  /** brick or board inside it [m3] */
  lining: number;
  /** mean plate thickness that gives this mass over the mean area [m] */
  thickness: number;
  /**
   * length in the convection relations [m]: cylinder D; vertical: height (disc 0.886 D); up and down: area / perimeter
   */
  length: number;
  /** height of its middle above the ground [m] */
  centre: number;
  /** of a head: how far the middle of its plate lies beyond the seam [m] */
  beyond?: number;
  /** of a round part's shell of which it is a part: from where to where it reaches, as shares of the part's height */
  reach?: { low: number; high: number };
  /** the leaf of a door, parted from its face by a gap */
  leaf?: true;
}

/** A plate with one part on each side, the opening through it subtracted. No outside area of either. */
export interface SharedPlate {
  parts: [PartName, PartName];
  orientation: Orientation;
  area: number;
  /** of the thicker plate of the two */
  thickness: number;
  steel: Steel;
  mass: number;
  length: number;
  centre: number;
  /** what lines it towards each of its parts */
  linings: [Wall['lining'], Wall['lining']];
}

/** Sizes of a part that follow from its fields, inside and out. */
export interface PartGeometry {
  name: PartName;
  axis: 'horizontal' | 'vertical';
  faces: Face[];
  /** inside cross-section across the axis [m2] and its perimeter [m] */
  section: number;
  perimeter: number;
  /** inside length along the axis, of a round part with heads between their seams [m] */
  length: number;
  /** gas in the heads beyond the seams, part of the gas volume [m3] */
  heads?: { fireEnd: number; farEnd: number };
  /** heights above the ground of inside floor and inside roof, and of the middle [m] */
  floor: number;
  roof: number;
  centre: number;
  /** mean plate area [m2], mass with its share of shared plates [kg], gas volume [m3] */
  steelArea: number;
  steelMass: number;
  gasVolume: number;
  /** brick and board inside it, with its side of shared plates [kg] */
  liningMass: number;
}

/** Sizes of a stack that follow from its fields. */
export interface StackGeometry {
  /** the box that gathers gas before it, if any: not part of the other numbers */
  gather?: GatherBox;
  /** inside diameter [m], of a square stack four times its flow area over its girth; flow area [m2] */
  bore: number;
  flowArea: number;
  outsideArea: number;
  insideArea: number;
  mass: number;
  volume: number;
  base: number;
  top: number;
}

/** All areas, volumes and weights that follow from a design. */
export interface Geometry {
  parts: PartGeometry[];
  shared: SharedPlate[];
  stacks: StackGeometry[];
  /** steel of all parts, stacks, skins and steel contents [kg] */
  totalSteelMass: number;
}
