import { strengthLeft } from '../../design/catalog/index.js';
import type { Design, PartName, Steel } from '../../design/design.js';
import { doorLabel } from '../../design/doors.js';
import { wallAt } from '../../design/walls.js';
import type { Pit } from '../../network/pit.js';
import { freePanelStrain, heldPanelStrain } from '../../physics/panelBuckling.js';
import { leafOverRim, middleOverEdge } from '../../physics/panelEdge.js';
import { radiationFall, spotOverEdge } from '../../physics/panelFire.js';
import { pushedPanel, twistedLeaf } from '../../physics/plateBending.js';
import { blackPowerSlope } from '../../physics/radiation.js';
import { scaleLoss, scalingRate } from '../../physics/scaling.js';
import { stainlessConductivity, steelConductivity } from '../../physics/steel.js';
import { steelExpansion, steelModulus } from '../../physics/steelStrength.js';
import type { HeldPit } from '../events/heldPit.js';
import { panelsOf, type Panel } from './panels.js';
import { faceTemperature, hottestPlate, stationOfFace } from './plateTemperatures.js';

/** A hand's push on the middle of a panel, 50 lb, and a pull on a door's corner, 20 lb [N]. */
const PUSH = 50 * 4.4482216152605;
const PULL = 20 * 4.4482216152605;

/** Years after which nobody counts what scale has left. */
export const MOST_YEARS = 1000;
/** Where the standard counts elongation from [K]. */
const COLD = 293.15;
/**
 * Free convection on a plate in still gas [W/(m2 K)]; it only sets how far an edge's cold reaches (estimate, spread
 * 3-10).
 */
const CONVECTION = 5;
/** How far off the heat of steel under coals may be, either way [K] (estimate). */
export const COALS_SPREAD = 100;
/** Emissivity of steel that is painted, rusted or sooted (estimate). */
const EMISSIVITY = 0.92;

/** A flat panel under the full fire, once all has settled. */
export interface PanelState {
  name: string;
  part: PartName;
  /** sides, or a disc's diameter twice [m] */
  a_m: number;
  b_m: number;
  plate_m: number;
  /** its middle, and that over its edge; negative where the edge is the hotter, which keeps it flat */
  middle_K: number;
  overEdge_K: number;
  /** over its edge at which it buckles, free to grow: edges that tilt, edges that don't */
  buckles_K: { supported: number; clamped: number };
  /** the same if a cold frame held its edges and did not give */
  held_K: { supported: number; clamped: number };
  flat: 'yes' | 'may buckle' | 'no';
  /** how far its middle gives under `PUSH` while the target is held [m] */
  push_m: number;
  /** of a door: how far its corner gives under `PULL` [m] */
  corner_m?: number;
}

/** What plate is good for beside heat: does it stay flat, is it stiff, how long does it last. Plain data. */
export interface PlateStudy {
  panels: PanelState[];
  /** the one nearest to buckling, or beyond; null: none is hotter than its edges */
  worst: PanelState | null;
  /** the flat panel that gives most; null: there is none */
  softest: PanelState | null;
  /** the flat door that twists most; null: there is none */
  door: PanelState | null;
  /**
   * steel at its hottest as the model has it, a mean of each plate: while the target is held, and under the full fire
   */
  hottest: { name: string; steel: Steel; hold_K: number; full_K: number };
  /**
   * what the firebox's two faces lose to scale where coals lie against it; null: of stainless, which hardly scales
   * there
   */
  scale: {
    /** coals lie on a grate, and not against the firebox */
    grate: boolean;
    /**
     * of the steel, the design's own estimate or the model's hottest, whichever is hotter; with a grate the model's
     * hottest
     */
    steel_K: number;
    /** in an hour of fire [m] */
    hourly_m: number;
    /** share of its thickness in a year */
    yearly_share: number;
    /**
     * until half its thickness is gone: as scale falls off; the same with steel hotter and cooler by `COALS_SPREAD`; if
     * scale fell off after every cook, and if it stayed on
     */
    halfGone_years: { likely: number; hotter: number; cooler: number; shed: number; kept: number };
    /** strength left at that heat, for a short time */
    strength_share: number;
  } | null;
}

/** A pit that holds its target, and its full fire, looked at for what they do to its plate. */
export function studyPlate({ pit, x, hot }: HeldPit): PlateStudy {
  const panels = panelsOf(pit.design).flatMap((panel) => stateOf(pit, panel, x, hot) ?? []);
  const first = (some: PanelState[], of: (panel: PanelState) => number) =>
    some.reduce<PanelState | null>((best, each) => (best === null || of(each) > of(best) ? each : best), null);
  const hottest = hottestPlate(pit, x, hot);
  return {
    panels,
    worst: first(
      panels.filter(({ overEdge_K }) => overEdge_K > 0),
      ({ overEdge_K, buckles_K }) => overEdge_K / buckles_K.supported,
    ),
    softest: first(panels, ({ push_m }) => push_m),
    door: first(
      panels.filter(({ corner_m }) => corner_m !== undefined),
      ({ corner_m }) => corner_m!,
    ),
    hottest,
    scale: pit.design.firebox.steel === 'carbon' ? scaleOf(pit.design, hottest.hold_K) : null,
  };
}

function scaleOf({ use, firebox }: Design, hottest: number): PlateStudy['scale'] {
  const { cooks, lit, scale, coals } = use;
  // coals lie on the floor, and heat its steel where no grate lifts them off it and nothing lines it
  const { grate } = firebox;
  const { plate, lining } = wallAt(firebox, 'floor');
  const steel = grate || lining ? hottest : Math.max(coals, hottest);
  const rateAt = (T: number) => 2 * scalingRate(T, scale);
  const rate = rateAt(steel);
  const yearly = cooks * lit * rate;
  const half = plate / 2;
  const counted = (years: number) => Math.min(years, MOST_YEARS);
  const lasts = half / yearly > MOST_YEARS;
  return {
    grate: grate !== undefined,
    steel_K: steel,
    hourly_m: lasts ? 0 : 3600 * rate,
    yearly_share: lasts ? 0 : yearly / plate,
    halfGone_years: {
      likely: counted(half / yearly),
      hotter: counted(half / (cooks * lit * rateAt(steel + COALS_SPREAD))),
      cooler: counted(half / (cooks * lit * rateAt(steel - COALS_SPREAD))),
      shed: counted(half / (2 * cooks * scaleLoss(steel, lit))),
      kept: counted((half / (2 * scaleLoss(steel, 1))) ** 2 / (cooks * lit)),
    },
    strength_share: strengthLeft(steel),
  };
}

function stateOf(pit: Pit, panel: Panel, x: Float64Array, hot: Float64Array): PanelState | undefined {
  const { part, name, size, plate, steel } = panel;
  const [middle, cool] = [hot, x].map((state) => faceTemperature(pit, state, panel));
  if (middle === undefined || cool === undefined) return undefined;
  const overEdge = overEdgeOf(pit, panel, hot, middle);
  // while its crystal changes, 750 to 860 °C, carbon steel does not grow: the mean since it was cold stands in for
  // nothing there
  const expansion = Math.max(steelExpansion(steel, middle - overEdge, middle), steelExpansion(steel, COLD, middle));
  const at = (strain: typeof freePanelStrain) => ({
    supported: strain(size, plate, 'supported') / expansion,
    clamped: strain(size, plate, 'clamped') / expansion,
  });
  const buckles = at(freePanelStrain);
  const modulus = steelModulus(steel, cool);
  const sides = 'diameter' in size ? { a: size.diameter, b: size.diameter } : size;
  return {
    name: name === 'door' ? doorLabel(part, panel.which ?? '') : `${part} ${name}`,
    part,
    a_m: sides.a,
    b_m: sides.b,
    plate_m: plate,
    middle_K: middle,
    overEdge_K: overEdge,
    buckles_K: buckles,
    held_K: at(heldPanelStrain),
    flat: overEdge < buckles.supported ? 'yes' : overEdge < buckles.clamped ? 'may buckle' : 'no',
    push_m: pushedPanel(size, plate, PUSH, modulus),
    ...(name === 'door' ? { corner_m: twistedLeaf(sides, plate, PULL, modulus) } : {}),
  };
}

/**
 * Middle of a panel over its edge [K]: by the plates round it, or its rim, and in a firebox by the fire that shines on
 * its middle.
 */
function overEdgeOf(pit: Pit, panel: Panel, hot: Float64Array, middle: number): number {
  const { size, plate, steel, insulated, lap, fire } = panel;
  const conductivity = steel === 'carbon' ? steelConductivity(middle) : stainlessConductivity(middle);
  const face = CONVECTION + EMISSIVITY * blackPowerSlope(middle);
  const coefficient = insulated ? face : 2 * face;
  const across = 'diameter' in size ? size.diameter : Math.min(size.a, size.b);
  const { network, fire: power } = pit.model;
  const shines =
    fire === undefined ? 0 : radiationFall(network.fire.radiantShare * Math.max(0, hot[power]), fire, across);
  const more = pit.design.estimates.insideEmissivity * shines;
  const spot = spotOverEdge({ more, thickness: plate, across, coefficient, conductivity });
  if (lap === undefined) {
    const neighbour = { temperature: aroundOf(pit, panel, hot) ?? middle, thickness: plate };
    const own = { temperature: middle, thickness: plate };
    return spot + middleOverEdge({ panel: own, neighbour }, across, coefficient, conductivity);
  }
  const outdoors = network.outdoors.temperature;
  const rim = { leaf: middle, outdoors, thickness: plate, lap, inside: face, outside: face, conductivity };
  return spot + leafOverRim(rim);
}

/** Plates round a panel, by the edge that each has with it [K]; undefined where none is left. */
function aroundOf(pit: Pit, { part, face, along }: Panel, hot: Float64Array): number | undefined {
  const station = stationOfFace(pit, part, face);
  const edges = along.flatMap(({ face: next, edge }) => {
    const temperature = faceTemperature(pit, hot, { part, face: next, station });
    return temperature === undefined ? [] : [{ temperature, edge }];
  });
  const whole = edges.reduce((sum, { edge }) => sum + edge, 0);
  return whole > 0 ? edges.reduce((sum, { temperature, edge }) => sum + (edge / whole) * temperature, 0) : undefined;
}
