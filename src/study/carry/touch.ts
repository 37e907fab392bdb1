import type { Design, Handle, StationName } from '../../design/design.js';
import { stationsOf } from '../../design/sense.js';
import { stainlessConductivity, steelConductivity } from '../../physics/steel.js';
import { airConductivity, airKinematicViscosity, airPrandtl } from '../../physics/air.js';
import { standardPressure } from '../../physics/atmosphere.js';
import { burnThreshold, longestContact } from '../../physics/burn.js';
import { rodProfile, rodTemperature } from '../../physics/rod.js';
import { nusseltHorizontalCylinder, rayleigh } from '../../physics/freeConvection.js';
import { blackPower } from '../../physics/radiation.js';
import type { EstimateResult, SteadyState } from '../estimate/result.js';

/** Holds that are judged [s]: a touch, and long enough to pull a door open. */
export const HOLDS = [1, 10] as const;

/** How a surface does against the threshold of a hold. */
interface TouchVerdict {
  hold_s: number;
  threshold_K: number;
  /** the surface is at or above it */
  burns: boolean;
}

/** A surface against the thresholds of each hold. */
export interface Touched {
  temperature_K: number;
  verdicts: TouchVerdict[];
  /** longest hold below the threshold [s]; null: longer than any that the standard has */
  longest_s: number | null;
}

/** A handle under one fire. */
interface HandleState {
  /** of the plate that it is fixed to, its hottest place at that station */
  base_K: number;
  /** where the hand begins, the hottest place it touches, and at the tip or the middle of a bow */
  hand: Touched;
  tip_K: number;
  /** heat that runs into it [W] */
  heat_W: number;
}

/** A handle under either fire; null: there is no such state. */
export interface HandResult {
  name: string;
  station: StationName;
  hold: HandleState | null;
  full: HandleState | null;
}

interface SurfaceResult {
  station: StationName;
  hold: Touched | null;
  full: Touched | null;
}

/** What bare hands find, on handles and elsewhere. */
export interface HandsResult {
  handles: HandResult[];
  /** the hottest outside at each station */
  surfaces: SurfaceResult[];
  /** what the thresholds are, and how well known */
  standard: string;
}

const STANDARD =
  'burn thresholds of bare metal, lower edge, ISO 13732-1:2006; 0.5 s as quoted elsewhere, the others from memory';

/** Bare hands on handles and on the outside of the pit; null where the design names no handles. */
export function handsOf(design: Design, { steady, assumed }: EstimateResult): HandsResult | null {
  if (!design.handles) return null;
  const state = steady ?? assumed;
  return {
    handles: design.handles.map((handle) => {
      const station = stationOf(design, handle, state);
      const at = (of: SteadyState | null) => {
        const found = of?.stations.find(({ name }) => name === station);
        return found ? handleState(design, handle, found.outside_K) : null;
      };
      return { name: handle.name, station, hold: at(steady), full: at(assumed) };
    }),
    surfaces: (state?.stations ?? [])
      .filter(({ outside_K }) => Number.isFinite(outside_K))
      .map(({ name }) => {
        const at = (of: SteadyState | null) => {
          const found = of?.stations.find((each) => each.name === name);
          return found ? touched(found.outside_K) : null;
        };
        return { station: name, hold: at(steady), full: at(assumed) };
      }),
    standard: STANDARD,
  };
}

/** The handle's station, or the hottest of its part. */
function stationOf(design: Design, { part, station }: Handle, state: SteadyState | null): StationName {
  if (station) return station;
  const own = stationsOf(design, part);
  const outside = (name: StationName) => state?.stations.find((each) => each.name === name)?.outside_K ?? -Infinity;
  return own.reduce((hottest, each) => (outside(each) > outside(hottest) ? each : hottest));
}

/** What a bare hand finds on metal of a temperature. */
export function touched(temperature: number): Touched {
  const longest = longestContact(temperature);
  return {
    temperature_K: temperature,
    verdicts: HOLDS.map((hold) => {
      const threshold = burnThreshold(hold);
      return { hold_s: hold, threshold_K: threshold, burns: temperature >= threshold };
    }),
    longest_s: Number.isFinite(longest) ? longest : null,
  };
}

/**
 * Temperature along a handle on a plate, in still air: conduction along it against free convection (Churchill & Chu
 * 1975, horizontal cylinder) and radiation, of which the share that the hot plate takes of its view comes from the
 * plate.
 *
 * A coil is a wire as long as its turns, unwound; of the wire's surface only as much counts as the coil's envelope has,
 * since turns see each other. Still air and the plate's hottest place make it a bad case; a wind cools the handle.
 *
 * @param base temperature of the plate [K]
 */
export function handleState(design: Design, handle: Handle, base: number): HandleState {
  const { diameter, length, ends, standoff, emissivity, sees, material } = handle;
  const air = design.site.air;
  const around = design.site.surroundings;
  const pressure = standardPressure(design.site.altitude);
  const winding = windingOf(handle);
  const convection = (temperature: number) => {
    const film = 0.5 * (temperature + air);
    const pr = airPrandtl(film);
    const ra = rayleigh(temperature - air, film, diameter, airKinematicViscosity(film, pressure), pr);
    return (airConductivity(film) / diameter) * nusseltHorizontalCylinder(ra, pr);
  };
  const seen = sees * blackPower(base) + (1 - sees) * blackPower(around);
  const loss = (temperature: number) =>
    convection(temperature) * (temperature - air) + emissivity * (blackPower(temperature) - seen);
  // a bow's middle passes no heat; a knob's open tip counts as a little more length
  const reach = ends === 2 ? 0.5 * length : length + (handle.kind === 'rod' ? 0.25 * diameter : 0);
  const profile = rodProfile({
    length: reach * winding.path,
    section: 0.25 * Math.PI * diameter ** 2,
    perimeter: Math.PI * diameter * winding.exposed,
    base,
    conductivity: material === 'carbon' ? steelConductivity : stainlessConductivity,
    loss,
  });
  const tip = profile.temperature[profile.temperature.length - 1];
  const start = rodTemperature(profile, standoff * winding.path);
  return {
    base_K: base,
    hand: touched(Math.max(start, tip)),
    tip_K: tip,
    heat_W: ends * profile.heat,
  };
}

/** Length of wire for each length of a handle's axis, and the share of the wire's surface that sees outdoors. */
export function windingOf({ kind, diameter, coil, pitch }: Handle): { path: number; exposed: number } {
  if (kind === 'rod' || coil === undefined || pitch === undefined) return { path: 1, exposed: 1 };
  const path = Math.hypot(Math.PI * (coil - diameter), pitch) / pitch;
  return { path, exposed: Math.min(1, coil / (diameter * path)) };
}
