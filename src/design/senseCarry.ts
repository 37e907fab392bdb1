/** Can a hand reach it and a trailer carry it: handles on parts that are there, an axle off its hitch. */
import { length } from './faults.js';
import type { Design, Handle, PartName, StationName } from './design.js';
import type { Reading } from './reading.js';
import type { Path } from './path.js';

/** Least distance of an axle from the coupler [m]: 1 ft; nearer, no lever is left (common practice, no source). */
const LEAST_LEVER = 0.3048;

export function checkCarry(design: Design, stationsOf: (part: PartName) => StationName[], reading: Reading): void {
  design.handles?.forEach((handle, i) => checkHandle(design, handle, stationsOf, ['handles', i], reading));
  const { trailer } = design;
  if (trailer && Math.abs(trailer.axle - trailer.hitch) < LEAST_LEVER) {
    reading.fault(['trailer', 'axle'], {
      message: `is ${length(Math.abs(trailer.axle - trailer.hitch))} from the hitch`,
      allowed: `at least ${length(LEAST_LEVER)}: all positions are along the trailer, from one mark`,
    });
  }
}

function checkHandle(
  design: Design,
  handle: Handle,
  stationsOf: (part: PartName) => StationName[],
  path: Path,
  reading: Reading,
): void {
  const { part, station, diameter, coil, pitch, standoff, length: long, ends } = handle;
  if (!design[part]) {
    reading.fault([...path, 'part'], { code: 'unknown-name', message: 'names a part this pit lacks' });
    return;
  }
  const stations = stationsOf(part);
  if (station && !stations.includes(station)) {
    reading.fault([...path, 'station'], {
      code: 'unknown-name',
      message: `is no station of the ${part}`,
      allowed: stations.join(', '),
    });
  }
  const reach = long / ends;
  if (standoff >= reach) {
    reading.fault([...path, 'standoff'], {
      message: 'leaves no handle to hold',
      allowed: `less than ${length(reach)}`,
      value: reading.at(path).has('standoff') ? undefined : null,
    });
  }
  if (coil !== undefined && coil < 2 * diameter) {
    reading.fault([...path, 'coil'], {
      message: 'is narrower than two of its wires',
      allowed: `at least ${length(2 * diameter)}`,
    });
  }
  if (pitch !== undefined && pitch < diameter) {
    reading.fault([...path, 'pitch'], {
      message: 'is less than the wire is thick',
      allowed: `at least ${length(diameter)}`,
    });
  }
}
