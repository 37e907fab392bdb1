/**
 * Text to SI and SI to shop units: the only place where an inch or a °F exists.
 *
 * Reading: `parseQuantity(kind, text)`. Writing: `format(kind, si, system)` and `formatBoth(kind, si)`; the text report, the
 * charts and the page print through them alone, so that a number looks the same everywhere. See `units/format.ts`.
 */
export { gaugeNumbers, gaugeThickness, type GaugeTable } from './units/gauges.js';
export { findUnit, KIND_NAMES, UNITS, unitsThatFit, type Kind, type UnitRow } from './units/kinds.js';
export { editDistance, nearestName } from './units/nearest.js';
export { readNumber, tidyText } from './units/numbers.js';
export { parseQuantity, type OtherUnits, type ParseOptions, type Quantity } from './units/parse.js';
export { PIPES, type PipeSize } from './units/pipe.js';
export {
  convert,
  format,
  formatBoth,
  formatPlate,
  unitOf,
  type FormatOptions,
  type UnitSystem,
} from './units/format.js';
