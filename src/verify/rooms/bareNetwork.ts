/** A network with nothing in it but what the outdoors are, to be filled by a check. */
import type { Network, Zone } from '../../network/types.js';
import { dryAir } from '../../physics/gasMixture.js';
import { STEM } from '../../physics/thermometer.js';
import { heaterFire } from './burner.js';

/** A network with outdoors and nothing else. */
export function bareNetwork(outdoors: { temperature: number; pressure: number; wind: number }): Network {
  return {
    zones: [],
    openings: [],
    nodes: [],
    faces: [],
    links: [],
    gaps: [],
    columns: [],
    windows: [],
    fire: heaterFire(0),
    outdoors: { ...outdoors, surroundings: outdoors.temperature, sun: 0, rain: 0, air: dryAir, humidityRatio: 0 },
    innerConvection: 1,
    levelConvection: 1,
    outsideConvection: 1,
    entrainment: 1,
    downflow: 1,
    stems: [],
    gauge: 0,
    stem: { diameter: STEM.diameter, emissivity: STEM.emissivity, fill: 1 },
  };
}

/** A zone whose walls don't matter. */
export function bareZone(name: string, size: { floor: number; roof: number; section: number }): Zone {
  const { floor, roof, section } = size;
  const height = roof - floor;
  return {
    name,
    part: name,
    floor,
    centre: (floor + roof) / 2,
    roof,
    volume: section * height,
    section,
    length: height,
    hydraulicDiameter: 1,
    beamLength: 1,
    soot: 0,
  };
}
