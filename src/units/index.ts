/**
 * Text to SI and SI to shop units: the only place where an inch or a °F exists.
 *
 * Reading: `parseQuantity(kind, text)`. Writing: `format(kind, si, system)` and `formatBoth(kind, si)`; the text
 * report, the charts and the page print through them alone, so that a number looks the same everywhere. See
 * `units/format.ts`.
 */
import type { OtherUnits } from './parse.js';

export { gaugeNumbers, gaugeThickness, type GaugeTable } from './gauges.js';
export { findUnit, KIND_NAMES, PLAIN_KINDS, siIn, UNITS, unitsThatFit, type Kind, type UnitRow } from './kinds.js';
export { editDistance, nearestName } from './nearest.js';
export { readNumber, settle, withDecimalPoint } from './numbers.js';
export { parseQuantity, type OtherUnits } from './parse.js';
export { PIPES } from './pipe.js';
export { withCurrency } from './price.js';
export {
  convert,
  format,
  formatBoth,
  formatPlate,
  formatTime,
  inchText,
  timeStep,
  unitOf,
  type FormatOptions,
  type UnitSystem,
} from './format.js';

export { amount, inWords, told, type Amount, type Told } from './told.js';

/** Converter for legal units outside the trade's table; loads mathjs, so call it only when a file needs it. */
export async function loadOtherUnits(): Promise<OtherUnits> {
  return (await import('./mathUnits.js')).mathUnits;
}
