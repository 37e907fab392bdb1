import { bedOf } from '../design/bed.js';
import type { Design, PartName, StationName } from '../design/design.js';
import { fireGrateOf } from '../design/fireGrate.js';
import type { Geometry } from '../design/geometry.js';
import { windAtPit } from '../design/windAtPit.js';
import { humidityRatio, standardPressure } from '../physics/atmosphere.js';
import { jetShape } from '../physics/ceilingJet.js';
import { hydraulicDiameter } from '../physics/forcedConvection.js';
import { dryAir } from '../physics/gasMixture.js';
import { meanBeamLength } from '../physics/gasRadiation.js';
import { coaxialDisks } from '../physics/viewFactor.js';
import { STEM } from '../physics/thermometer.js';
import { combustionYields, HEAT_PER_OXYGEN, stoichiometricAir } from '../physics/wood.js';
import { cellAtHeight, type BuiltPit } from './cells.js';
import { fireZones } from './fireViews.js';
import { addContents } from './contents.js';
import { addGatherWalls } from './stackOpenings.js';
import { addOpenings } from './openings.js';
import { addChamber, addPart, addStack } from './parts.js';
import { addStems } from './places.js';
import { addSharedPlates } from './sharedPlates.js';
import { OUTDOORS, type Network, type NetworkFire } from './types.js';

/** How finely a part is cut up. Stations that are read stay the same; more cells only refine between them. */
export interface Resolution {
  /** cells along the chamber, a multiple of 3 */
  chamber: number;
  /** level slices of the chamber */
  levels: number;
  /** cells over the upright's height, a multiple of 2 */
  upright: number;
  /** cells along a stack */
  stack: number;
  /** level slices of the firebox's gas; 1: mixed */
  firebox: number;
}

/** Into how many cells and layers a pit is cut unless told otherwise. */
export const DEFAULT_RESOLUTION: Resolution = { chamber: 3, levels: 5, upright: 4, stack: 1, firebox: 1 };

/**
 * Zones, openings, plates and fire of a design.
 *
 * @param design as read, SI
 * @param geometry of the same design
 * @param resolution how finely the parts are cut
 */
export function buildNetwork(
  design: Design,
  geometry: Geometry,
  resolution: Resolution = DEFAULT_RESOLUTION,
): BuiltPit {
  const network: Network = {
    zones: [],
    openings: [],
    nodes: [],
    faces: [],
    links: [],
    gaps: [],
    fire: fireOf(design),
    outdoors: outdoorsOf(design),
    columns: [],
    windows: [],
    innerConvection: design.innerConvection,
    levelConvection: design.estimates.levelConvection,
    outsideConvection: design.estimates.outsideConvection,
    entrainment: design.estimates.entrainment,
    downflow: design.estimates.downflow,
    stems: [],
    gauge: 0,
    stem: { diameter: STEM.diameter, emissivity: STEM.emissivity, fill: design.estimates.stemFill },
  };
  const part = (name: PartName) => geometry.parts.find((p) => p.name === name);
  const firebox = addPart(network, design, part('firebox')!, design.firebox, ['firebox'], design.fire.soot, {
    count: 1,
    plates: resolution.firebox > 1 ? resolution.firebox : resolution.levels,
    layered: resolution.firebox > 1,
  });
  const fire = fireAt(design, firebox);
  network.fire.zone = cellAtHeight(network, firebox.zones, fire.at);
  if (resolution.firebox > 1) network.fire.plume = { ...fire, bending: 1 };
  const built: BuiltPit = { network, firebox, stacks: [] };
  if (design.chamber) {
    addChamber(built, design, design.chamber, part('chamber')!, {
      count: resolution.chamber,
      levels: resolution.levels,
    });
  }
  if (design.upright) {
    const names: StationName[] = ['uprightLower', 'uprightUpper'];
    built.upright = addPart(network, design, part('upright')!, design.upright, names, 0, {
      count: resolution.upright,
      plates: 1,
      layered: true,
    });
  }
  design.stacks.forEach((stack, i) => {
    built.stacks.push(addStack(network, design, stack, geometry, i, resolution.stack));
  });
  addSharedPlates(built, design, geometry);
  addGatherWalls(built, design, geometry);
  network.fire.roof = struckRoof(built, design);
  addContents(built, design);
  finishZones(network);
  addOpenings(built, design, geometry);
  network.fire.throatArea = design.throat.area;
  network.fire.seen = throughThroat(built, design);
  addWindows(network);
  addStems(built, design);
  return built;
}

function fireOf(design: Design): NetworkFire {
  const { wood, fire, estimates } = design;
  const made = combustionYields(wood.composition, wood.moisture);
  const gas = made.CO2 + made.H2O + made.N2 + made.O2;
  return {
    zone: 0,
    radiantShare: fire.radiant,
    throatArea: 0,
    seen: [],
    outArea: 0,
    heatValue: wood.heat,
    gasPerFuel: gas,
    gasComposition: { CO2: made.CO2 / gas, H2O: made.H2O / gas, N2: made.N2 / gas, O2: made.O2 / gas },
    heatPerOxygen: HEAT_PER_OXYGEN,
    oxygenUse: estimates.oxygenUse,
    airPerFuel: stoichiometricAir(wood.composition) * (1 - wood.moisture),
  };
}

/** The bed as a round fire of its plan, on its grate or on the floor: how high above the ground, and how wide [m]. */
function fireAt(design: Design, { geometry }: BuiltPit['firebox']): { at: number; across: number } {
  const across = Math.sqrt((4 / Math.PI) * bedOf(design).bedArea);
  return { at: fireGrateOf(design.firebox)?.height ?? geometry.floor, across };
}

/**
 * The firebox's roof over its bed, with what it shares of it with an upright: of a round one the strip along its top.
 */
function struckRoof({ network, firebox }: BuiltPit, design: Design): NetworkFire['roof'] {
  const { nodes, faces } = network;
  const { floor, roof, length, section } = firebox.geometry;
  const { at, across } = fireAt(design, firebox);
  const placeOf = (node: number) => nodes[nodes[node].lines ?? node].place;
  const on = (face: Network['faces'][number]) =>
    firebox.zones.includes(face.zone) && (face.shape === 'up' || placeOf(face.node) === 'roof');
  const struck = faces.flatMap((face, i) => (on(face) ? [i] : []));
  const height = roof - at;
  return { faces: struck, across, height, jet: jetShape({ length, width: section / (roof - floor), height }) };
}

/**
 * Which walls see the fire through the throat: of a chamber those of each cell, as strips of a tube see a disk at its
 * end; of an upright all.
 */
function throughThroat({ network, plenum, chamber, upright }: BuiltPit, { throat }: Design): NetworkFire['seen'] {
  const along = throat.through === 'top' ? undefined : (plenum ?? chamber);
  if (!along) return [{ zones: upright!.zones, share: 1 }];
  const section = along.columns[0].reduce((sum, zone) => sum + network.zones[zone].section, 0);
  const tube = Math.sqrt(section / Math.PI);
  const disk = Math.min(tube, Math.sqrt(throat.area / Math.PI));
  const count = along.columns.length;
  const beyond = (i: number) => (i === 0 ? 1 : coaxialDisks(disk, tube, (i * along.geometry.length) / count));
  return along.columns.map((zones, i) => ({ zones, share: beyond(i) - (i === count - 1 ? 0 : beyond(i + 1)) }));
}

function outdoorsOf(design: Design): Network['outdoors'] {
  const { site } = design;
  const pressure = standardPressure(site.altitude);
  return {
    temperature: site.air,
    pressure,
    wind: windAtPit(design),
    surroundings: site.surroundings,
    sun: site.sun,
    rain: site.rain,
    air: dryAir,
    humidityRatio: humidityRatio({ temperature: site.air, relativeHumidity: site.humidity, pressure }),
  };
}

/**
 * Hydraulic diameter 4 V / A and mean beam length 3.6 V / A of every zone, from the surfaces that bound it. Zones of
 * one column share the hydraulic diameter of their whole section; a level area between two of them bounds the beams of
 * both.
 */
export function finishZones(network: Network): void {
  const wallsOf = (index: number) => network.faces.reduce((sum, f) => sum + (f.zone === index ? f.area : 0), 0);
  const walls = network.zones.map((_, index) => wallsOf(index));
  const level = network.zones.map(() => 0);
  const whole = network.zones.map((_, index) => [index]);
  for (const { zones, areas } of network.columns) {
    zones.forEach((zone, k) => {
      whole[zone] = zones;
      level[zone] += (areas[k] ?? 0) + (areas[k - 1] ?? 0);
    });
  }
  network.zones.forEach((zone, index) => {
    const volume = whole[index].reduce((sum, z) => sum + network.zones[z].volume, 0);
    const area = whole[index].reduce((sum, z) => sum + walls[z], 0);
    zone.hydraulicDiameter = hydraulicDiameter(volume, area);
    zone.beamLength = meanBeamLength(zone.volume, walls[index] + level[index]);
  });
}

/**
 * What sees what through open areas: layers of a column, what stands on both sides of an opening that nothing hides,
 * and gas and walls of the firebox through the throat what its fire shines on, each cell by its share at the throat's
 * height.
 */
export function addWindows(network: Network): void {
  const { windows, columns, openings, fire } = network;
  const own = fireZones(network);
  for (const { zones, areas } of columns) {
    areas.forEach((area, k) => windows.push({ a: zones[k], b: zones[k + 1], area }));
  }
  for (const { role, sees, from, to, area, centre } of openings) {
    if (sees) windows.push({ a: from, b: to, area });
    if (sees && own.includes(from) && to === OUTDOORS) fire.outArea += area;
    if (role !== 'throat') continue;
    for (const { zones, share } of fire.seen) {
      windows.push({ a: from, b: cellAtHeight(network, zones, centre), area: share * area });
    }
  }
}
