/** The library: what another program may import. */
export type * from './design/design.js';
export type * from './design/fitted.js';
export type * from './design/geometry.js';
export type * from './fit/log/log.js';
export type * from './fit/fitResult.js';
export type * from './study/estimate/result.js';
export { formatFault, formatFaults, type DesignFault, type DesignWarning } from './design/faults.js';
export { geometryOf } from './design/geometryOf.js';
export { designJsonSchema } from './design/jsonSchema.js';
export { readDesign, readDesignAnyUnit, type ReadOptions, type ReadResult } from './design/read.js';
export type { NamedFile } from './design/readFitted.js';
export { starterDesign } from './design/starter.js';
export { LOG_COLUMNS, type LogColumnRow } from './design/logColumns.js';
export { parseVariation, type Variation } from './design/vary.js';
export {
  formatLogFaults,
  readLog,
  readLogAnyUnit,
  type LogFault,
  type LogOptions,
  type LogResult,
} from './fit/log/readLog.js';
export { fit, type FitInput, type FitOptions } from './fit/fit.js';
export { runLog, type LogRun, type LogRunOptions } from './fit/logRun.js';
export { seededRandom } from './study/spread/random.js';
export { fitUnknownsOf, unknownsOf, type Unknown } from './study/spread/unknowns.js';
export { coldSmoke, type ColdSmoke, type ColdSmokeOptions } from './study/events/coldSmoke.js';
export {
  compare,
  type ComparedOption,
  type Comparison,
  type Difference,
  type Option,
} from './study/compare/compare.js';
export { followCook, type CookResult } from './study/events/cook.js';
export { estimate, type EstimateCost, type EstimateOptions } from './study/estimate/estimate.js';
export { optionsOf, type OptionRead } from './study/compare/options.js';
export { studyOption, USUAL_SETTINGS, type OptionStudy, type StudySettings } from './study/compare/studyOption.js';
export type { Shortfall, ShortfallCode } from './study/estimate/shortfall.js';
export type { Finding } from './study/compare/findings.js';
export { verdictOf } from './study/compare/verdict.js';
export { compareText } from './report/text/compareText.js';
export { curvesCsv } from './report/csv.js';
export { toJson } from './report/json.js';
export { estimateText } from './report/text/estimateText.js';
export { inWords, type Amount, type Told } from './units/index.js';
export { version } from './version.js';
