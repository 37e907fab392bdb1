/**
 * What every number of a design file may be, in one table: the reader refuses what lies outside, the JSON Schema describes it,
 * and the tests' random designs are drawn from it.
 *
 * The ranges are wide but sane: they catch a slipped unit or digit, they do not judge a design. They are common practice of
 * the trade with room on both sides, no source. Bounds are inclusive and written as a builder would write them.
 */
import { parseQuantity, type Kind } from '../units/index.js';

export interface Range {
  kind: Kind;
  /** bounds as text, for messages */
  low: string;
  high: string;
  /** bounds in SI */
  min: number;
  max: number;
}

function range(kind: Kind, low: string, high: string): Range {
  const [min, max] = [low, high].map((text) => {
    const read = parseQuantity(kind, text);
    if (!read.ok) throw new Error(`range of ${kind}: '${text}' ${read.problem}`);
    return read.si;
  });
  return { kind, low, high, min, max };
}

export const RANGES = {
  air: range('temperature', '-40 °C', '50 °C'),
  wind: range('speed', '0 m/s', '30 m/s'),
  altitude: range('length', '-400 m', '5000 m'),
  humidity: range('share', '0 %', '100 %'),
  surroundings: range('temperature', '-80 °C', '80 °C'),
  sun: range('heatFlux', '0 W/m2', '1400 W/m2'),
  rain: range('share', '0 %', '100 %'),
  windPressure: range('number', '-2', '2'),

  moisture: range('share', '0 %', '60 %'),
  woodHeat: range('energyPerMass', '4 MJ/kg', '22 MJ/kg'),
  composition: range('share', '0 %', '100 %'),

  fireHeat: range('power', '500 W', '500 kW'),
  rise: range('time', '1 s', '2 h'),
  radiant: range('share', '0', '0.6'),
  soot: range('perLength', '0 per m', '5 per m'),
  target: range('temperature', '100 °F', '700 °F'),
  ceiling: range('temperature', '40 °F', '200 °F'),
  leastFire: range('power', '50 W', '50 kW'),
  splitEvery: range('time', '0 min', '6 h'),
  splitTime: range('time', '1 min', '6 h'),
  charcoal: range('share', '0 %', '90 %'),

  cookTime: range('time', '0 min', '72 h'),
  doorTime: range('time', '0 s', '1 h'),
  weatherTime: range('time', '1 s', '24 h'),
  band: range('temperatureDifference', '1 °F', '100 °F'),
  foodStart: range('temperature', '28 °F', '180 °F'),

  /** width, height or diameter of firebox and chamber */
  section: range('length', '6 in', '6 ft'),
  length: range('length', '6 in', '20 ft'),
  /** width, depth and height of an upright */
  uprightSide: range('length', '6 in', '6 ft'),
  uprightHeight: range('length', '6 in', '10 ft'),
  plate: range('plate', '0.5 mm', '2 in'),
  centre: range('length', '4 in', '15 ft'),
  doorGap: range('area', '0 in^2', '50 in^2'),
  emissivity: range('share', '0.02', '1'),
  doorSide: range('length', '2 in', '10 ft'),
  lap: range('length', '0 in', '4 in'),
  insulation: range('length', '0 in', '12 in'),
  skin: range('plate', '0 mm', '1/4 in'),

  contentMass: range('mass', '0.01 lb', '2000 lb'),
  contentArea: range('area', '1 in^2', '1000 ft^2'),

  handleDiameter: range('length', '1/8 in', '3 in'),
  handleLength: range('length', '1/2 in', '4 ft'),
  standoff: range('length', '0 in', '2 ft'),
  coil: range('length', '1/4 in', '6 in'),
  pitch: range('length', '1/8 in', '6 in'),
  sees: range('share', '0', '0.5'),
  trailerMass: range('mass', '10 lb', '20,000 lb'),
  rating: range('mass', '10 lb', '40,000 lb'),
  loadMass: range('mass', '0.01 lb', '10,000 lb'),
  position: range('length', '-60 ft', '60 ft'),

  ventCount: range('number', '1', '24'),
  ventSide: range('length', '1/4 in', '4 ft'),
  ventArea: range('area', '0.05 in^2', '10 ft^2'),
  open: range('share', '0 %', '100 %'),
  height: range('length', '0 in', '20 ft'),
  discharge: range('number', '0.2', '1'),

  openingArea: range('area', '1 in^2', '25 ft^2'),
  turn: range('area', '1 in^2', '25 ft^2'),
  plateHeight: range('length', '1/2 in', '5 ft'),

  stackDiameter: range('length', '1 in', '2 ft'),
  stackHeight: range('length', '1 in', '30 ft'),
  /** an entry of no loss at all would let infinite flow in */
  entryLoss: range('number', '0.02', '50'),
  loss: range('number', '0', '50'),
  roughness: range('length', '0 mm', '3 mm'),

  innerConvection: range('number', '0.2', '5'),
  oxygenUse: range('share', '0.1', '1'),
  stemFill: range('share', '0.05', '1'),
  entrainment: range('number', '0.05', '10'),
  downflow: range('number', '0', '3'),
  /** of a fitted block: a factor on what a design gives, length of a log, error */
  factor: range('number', '0.02', '50'),
  logTime: range('time', '1 min', '1000 h'),
  logError: range('temperatureDifference', '0 °F', '1000 °F'),

  insideEmissivity: range('share', '0.05', '1'),

  accuracy: range('temperatureDifference', '0 °F', '20 °F'),
} as const satisfies Record<string, Range>;

export type RangeName = keyof typeof RANGES;
