import type { Design, PartName, StationName } from '../design/design.js';
import type { Geometry } from '../design/geometry.js';
import { windAtPit } from '../design/windAtPit.js';
import { humidityRatio, standardPressure } from '../physics/atmosphere.js';
import { hydraulicDiameter } from '../physics/forcedConvection.js';
import { dryAir } from '../physics/gasMixture.js';
import { meanBeamLength } from '../physics/gasRadiation.js';
import { STEM } from '../physics/thermometer.js';
import { combustionYields, HEAT_PER_OXYGEN, stoichiometricAir } from '../physics/wood.js';
import type { BuiltPit } from './cells.js';
import { addContents } from './contents.js';
import { addOpenings } from './openings.js';
import { addChamber, addPart, addStack } from './parts.js';
import { addSharedPlates } from './sharedPlates.js';
import { OUTDOORS, type Network, type NetworkFire } from './types.js';

/** How finely a part is cut up. Stations that are read stay the same; more cells only refine between them. */
export interface Resolution {
  /** cells along the chamber, a multiple of 3 */
  chamber: number;
  /** cells over the upright's height, a multiple of 2 */
  upright: number;
  /** cells along a stack */
  stack: number;
}

export const DEFAULT_RESOLUTION: Resolution = { chamber: 3, upright: 2, stack: 1 };

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
    fire: fireOf(design),
    outdoors: outdoorsOf(design),
    innerConvection: design.innerConvection,
    stems: [],
    gauge: 0,
    stem: { diameter: STEM.diameter, emissivity: STEM.emissivity, fill: design.estimates.stemFill },
  };
  const part = (name: PartName) => geometry.parts.find((p) => p.name === name);
  const firebox = addPart(network, design, part('firebox')!, design.firebox, 1, ['firebox'], design.fire.soot);
  const built: BuiltPit = { network, firebox, stacks: [] };
  if (design.chamber) addChamber(built, design, design.chamber, part('chamber')!, resolution.chamber);
  if (design.upright) {
    const names: StationName[] = ['uprightLower', 'uprightUpper'];
    built.upright = addPart(network, design, part('upright')!, design.upright, resolution.upright, names, 0);
  }
  design.stacks.forEach((stack, i) => {
    built.stacks.push(addStack(network, design, stack, geometry, i, resolution.stack));
  });
  addSharedPlates(built, design, geometry);
  addContents(built, design);
  finishZones(network);
  addOpenings(built, design, geometry);
  const throatZone = network.openings.find((o) => o.role === 'throat')!.to;
  network.fire.throatZone = throatZone;
  network.fire.throatArea = design.throat.area;
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
    throatZone: OUTDOORS,
    throatArea: 0,
    heatValue: wood.heat,
    gasPerFuel: gas,
    gasComposition: { CO2: made.CO2 / gas, H2O: made.H2O / gas, N2: made.N2 / gas, O2: made.O2 / gas },
    heatPerOxygen: HEAT_PER_OXYGEN,
    oxygenUse: estimates.oxygenUse,
    airPerFuel: stoichiometricAir(wood.composition) * (1 - wood.moisture),
  };
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

/** Hydraulic diameter and mean beam length of every zone, from the faces that bound it. */
export function finishZones(network: Network): void {
  network.zones.forEach((zone, index) => {
    const area = network.faces.reduce((sum, f) => sum + (f.zone === index ? f.area : 0), 0);
    zone.hydraulicDiameter = hydraulicDiameter(zone.volume, area);
    zone.beamLength = meanBeamLength(zone.volume, area);
  });
}

/** A thermometer stem at every station: in the middle cell of those that share it. */
function addStems(built: BuiltPit, design: Design): void {
  const { network } = built;
  const stations = [...new Set(network.zones.map((z) => z.station).filter((s): s is string => s !== undefined))];
  for (const station of stations) {
    const zones = network.zones.flatMap((z, i) => (z.station === station ? [i] : []));
    network.stems.push({ zone: zones[(zones.length - 1) >> 1], station });
  }
  network.gauge = network.stems.findIndex((s) => s.station === design.gauge);
  if (network.gauge < 0) throw new RangeError(`the design has no station '${design.gauge}' for its gauge`);
}
