/** The library: what another program may import. */
export type * from './design/design.js';
export type * from './design/geometry.js';
export type * from './study/result.js';
export { formatFault, formatFaults, type DesignFault, type DesignWarning } from './design/faults.js';
export { geometryOf } from './design/geometryOf.js';
export { designJsonSchema } from './design/jsonSchema.js';
export { readDesign, readDesignAnyUnit, type ReadOptions, type ReadResult } from './design/read.js';
export { starterDesign } from './design/starter.js';
export { estimate, type EstimateCost, type EstimateOptions } from './study/estimate.js';
export { curvesCsv } from './report/csv.js';
export { toJson } from './report/json.js';
export { estimateText } from './report/text.js';
export { version } from './version.js';
