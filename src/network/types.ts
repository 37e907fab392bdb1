/**
 * What the solver is given: zones of gas, openings between them, plates (nodes) with faces and conduction links.
 * Nothing of a design's vocabulary beyond labels reaches it, so that a room with a fire in it is described the same way
 * as a pit. SI throughout; heights above the ground.
 */
import type { JetShape } from '../physics/ceilingJet.js';
import type { Composition } from '../physics/gasMixture.js';
import type { ConductivityTable } from '../physics/insulation.js';
import type { Steel } from '../physics/steel.js';

/** Index that stands for outdoors in place of a zone's. */
export const OUTDOORS = -1;

/** A body of well-mixed gas. */
export interface Zone {
  name: string;
  /** part the zone belongs to, for summing losses: firebox | chamber | upright | stack */
  part: string;
  /** station that reports it; several fine zones may share one */
  station?: string;
  /** it lies under a reverse-flow plate or a row of plates */
  under?: true;
  /** heights of its floor, middle and roof [m] */
  floor: number;
  centre: number;
  roof: number;
  volume: number;
  /** cross-section that the through-flow sees [m2] */
  section: number;
  /** length along the flow [m], for entrance effects */
  length: number;
  /** 4 V / A [m] and 3.6 V / A [m] with A all surfaces that bound the gas */
  hydraulicDiameter: number;
  beamLength: number;
  /** soot absorption coefficient [1/m] */
  soot: number;
  /**
   * Gas flows through it as through a pipe, cooling on its way: its temperature is the mean, and it leaves colder, by
   * every opening, or where it passes on to the next cell along the part.
   */
  plug?: 'out' | 'along';
}

type OpeningRole = 'intake' | 'throat' | 'passage' | 'stackEntry' | 'stackExit' | 'gap' | 'doorway';

/** Joins two zones, or a zone (from) and outdoors (to = OUTDOORS). Positive flow runs from -> to. */
export interface NetworkOpening {
  name: string;
  /** the gap of which it is the piece at its zone's station: its name is this one's and the station's */
  gap?: string;
  role: OpeningRole;
  from: number;
  to: number;
  area: number;
  discharge: number;
  /** height of its middle [m] */
  centre: number;
  /** vertical extent [m]; 0: one height, one direction. Above 0 both directions at once are possible */
  extent: number;
  /** horizontal opening (in a floor): exchanges by itself when the gas above is the denser */
  level?: boolean;
  /** nothing hides its two sides from each other: they radiate through it */
  sees?: boolean;
  /** full section between two cells along a part */
  inner?: boolean;
  /** gas may go either way through it, along the part from the fire and back, or up and down: it has no wrong way */
  eitherWay?: 'along' | 'up';
  /** width of the stream [m], where it enters a part that is cut by height: hot gas rises in it as a plume and mixes */
  jet?: number;
  /** stack: fixed loss coefficients (bends, cap, exit, damper), and friction length, bore and roughness [m] */
  stack?: { loss: number; length: number; bore: number; roughness: number };
  /** wind pressure coefficient on the outdoor side */
  windPressure: number;
}

/** Where on its part a plate stands. */
export type PlatePlace = 'roof' | 'upperSide' | 'lowerSide' | 'floor';

/**
 * 'constant': one specific heat; 'table': a specific heat that changes with temperature, as the node's `heat` has it
 */
export type NodeMaterial = Steel | 'constant' | 'table';

/** A lumped body with a heat capacity: a steel patch, a slice of insulation, a skin, a rack, food. */
export interface ThermalNode {
  name: string;
  /** of steel: the plate, skin, stack or rack that it is a piece of, as a builder calls it; absent: not told by itself */
  body?: string;
  part: string;
  /** kg */
  mass: number;
  material: NodeMaterial;
  /** J/(kg K), for 'constant' */
  specificHeat: number;
  /** the same against temperature, for 'table' */
  heat?: ConductivityTable;
  /** plate thickness for the Biot number [m]; 0: none reported */
  thickness: number;
  /** station whose steel temperature it belongs to; undefined: none */
  station?: string;
  /** of a plate to outdoors the mean of its two sides, of a lining its hot face; 0: of anything else [m2] */
  area: number;
  /** where on its part it stands, of outside plates, and the face that it is a piece of, of what covers them too */
  place?: PlatePlace;
  face?: string;
  /** of a plate between two parts: zones that a lining hides it from */
  hiddenFrom?: number[];
  /** of a lining's slice that gas and fire see: the plate behind it */
  lines?: number;
}

/** Which law of free convection a face follows. */
export type FaceShape = 'horizontalCylinder' | 'verticalCylinder' | 'vertical' | 'up' | 'down';

/** A surface of a node that sees the gas of a zone, or outdoors (zone = OUTDOORS). */
export interface NetworkFace {
  node: number;
  zone: number;
  area: number;
  /** how it stands: 'up' is a roof, 'down' a floor, seen as the plate they are (outside up, outside down) */
  shape: FaceShape;
  /** length in the free-convection relation [m] */
  length: number;
  /** length in the wind relation [m] (outdoors only): cylinder D, vertical plate its height, level plate sqrt(area) */
  windLength: number;
  emissivity: number;
  /** share of the area that stands across the sun, and that is open to rain (outdoors only) */
  sunShare: number;
  /** wet surface of food or water that evaporates (inside only), share of the area */
  wet: number;
  /** the station whose outside it is (outdoors only), where the patch belongs to one, and where on its part */
  station?: string;
  place?: PlatePlace;
}

/** Conduction between two nodes: conductance [W/K] = factor * k(T). */
export interface ThermalLink {
  a: number;
  b: number;
  /** area / distance [m] */
  factor: number;
  /** k(T): steel by formula, or a table */
  conductivity: Steel | ConductivityTable;
}

/** Air between a wall's outside and a heat shield before it. */
export interface AirGap {
  /** nodes of the wall's outside and of the shield */
  wall: number;
  shield: number;
  /** of the wall's outside [m2] */
  area: number;
  /** between the two [m] */
  width: number;
  /** of what it covers [m] */
  height: number;
  /** of a round shell: of the wall's outside [m] */
  radius: number;
  shape: FaceShape;
  /** exchange factor of the two surfaces, on `area` */
  emissivity: number;
  /** open below and above, so that air rises through it */
  open: boolean;
}

/** Zones of one part that stand on each other and share its height; gas of one section, cut level. */
export interface Column {
  /** lowest first, at least two */
  zones: number[];
  /**
   * level area between each zone and the one above it [m2], and width of the walls along which gas sinks through it [m]
   */
  areas: number[];
  edges: number[];
  /**
   * nothing stands between its layers that hides their walls from each other: these exchange through one surface node
   */
  clear?: boolean;
}

/** Two zones that see each other, or a zone and what stands outdoors (b = OUTDOORS), through an open area [m2]. */
export interface Window {
  a: number;
  b: number;
  area: number;
}

/** Where it burns, and where its heat goes. */
export interface NetworkFire {
  zone: number;
  /** share of the heat that leaves the bed as radiation */
  radiantShare: number;
  /**
   * in a column of layers: where its plume begins, above the ground, how wide the fire is [m], and a factor on what it
   * takes in
   */
  plume?: { at: number; across: number; bending: number };
  /**
   * area through which radiation leaves the fire's zone [m2], and groups of zones whose walls it strikes, with their
   * shares
   */
  throatArea: number;
  seen: { zones: number[]; share: number }[];
  /** area through which it leaves for outdoors: vents and an open door [m2] */
  outArea: number;
  /**
   * level faces that its plume strikes, how wide the fire is and how far under them [m], and the shape of the jet along
   * them
   */
  roof?: { faces: number[]; across: number; height: number; jet: JetShape };
  /** net heat [J per kg of fuel as fired] */
  heatValue: number;
  /** gas made per kg of fuel (ash stays) and its composition by mass, oxygen negative: consumed. Adds up to 1 */
  gasPerFuel: number;
  gasComposition: Composition;
  /** heat per kg of oxygen [J/kg] and usable share; share 0: the fire is not limited (a gas burner) */
  heatPerOxygen: number;
  oxygenUse: number;
  /** kg of dry air that burns 1 kg of fuel as fired */
  airPerFuel: number;
}

/**
 * What surrounds the pit: temperatures [K], pressure [Pa], wind [m/s], sun [W/m2], rain as the share of what faces up
 * that it keeps wet.
 */
export interface Outdoors {
  temperature: number;
  pressure: number;
  wind: number;
  surroundings: number;
  sun: number;
  rain: number;
  air: Composition;
  /** water vapour per dry air [kg/kg] */
  humidityRatio: number;
}

/** A thermometer stem, or what one would read: gas and walls of some zones, each by its share. */
export interface NetworkStem {
  parts: { zone: number; share: number }[];
  station: string;
  /** above the ground [m] */
  height: number;
  /**
   * a grate, a rack or a thermometer with a name, not the station's own dial: where on its part [share of its length]
   */
  place?: { name: string; kind: 'grate' | 'rack' | 'thermometer'; part: string; along: number };
}

/** A pit as zones of gas, openings between them, bodies that hold heat and what joins these. */
export interface Network {
  zones: Zone[];
  openings: NetworkOpening[];
  nodes: ThermalNode[];
  faces: NetworkFace[];
  links: ThermalLink[];
  gaps: AirGap[];
  fire: NetworkFire;
  outdoors: Outdoors;
  columns: Column[];
  windows: Window[];
  innerConvection: number;
  /** factors on what outdoor air takes from level plates, and from everything else */
  levelConvection: number;
  outsideConvection: number;
  /** factors on what a hot stream takes in as it rises, and on what sinks along cold walls */
  entrainment: number;
  downflow: number;
  stems: NetworkStem[];
  /** the stem that the cook holds */
  gauge: number;
  stem: { diameter: number; emissivity: number; fill: number };
}
