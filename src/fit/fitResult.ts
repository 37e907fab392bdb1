import type { Design, StationName } from '../design/design.js';
import type { Fitted } from '../design/fitted.js';
import type { LogNote, Measured } from './log/log.js';
import type { Warning } from '../study/estimate/result.js';

/** What a fit found of one estimate. SI. */
export interface FittedParameter {
  /** as in the table of estimates */
  path: string;
  unit: string;
  /** what the design had, and the ends of its spread */
  before: number;
  spread: { low: number; high: number };
  /** the likeliest, and its 90 % interval with what is not fitted somewhere in its spread */
  value: number;
  low: number;
  high: number;
  /** the interval if all that is not fitted were just as the design has it */
  alone: { low: number; high: number };
  /** share of the spread that the log left: 1 where it tells nothing */
  left: number;
  /** the log tells something of it */
  told: boolean;
  /** it stands at an end of its spread */
  atEdge: boolean;
}

/** Root mean square errors of the computed readings [K]; null: no readings there. */
export interface FitErrors {
  before: number | null;
  after: number | null;
}

/** One probe of one log: how far it was off, and its curves. */
export interface FittedChannel {
  header: string;
  station: StationName;
  /** the grate, rack or thermometer of the design that it is, where it is no station's dial */
  spot?: string;
  measured: Measured;
  /** not believed, and so neither fitted nor counted in the quality; `probe-reads-off` says why */
  leftOut: boolean;
  /** readings that were fitted, and held back */
  fittedReadings: number;
  heldReadings: number;
  fitted: FitErrors;
  heldBack: FitErrors;
  /** the readings' own noise, from their neighbours [K] */
  noise_K: number;
  /**
   * how far the probe itself is found to read off, with its standard deviation; where it is left out, as it came out
   * [K]
   */
  offset_K: number;
  offsetDeviation_K: number;
  /** how long errors hang together, and the usual time between the readings that were fitted [s] */
  lasts_s: number;
  spacing_s: number;
  curves: {
    time_s: number[];
    measured_K: number[];
    /** with the design's own estimates */
    before_K: number[];
    /** fitted, as this probe would read it */
    after_K: number[];
    /** half width of the band in which nine of ten readings should lie [K] */
    band_K: number[];
  };
}

/** One log beside what was computed of it, before and after the fit. */
export interface FittedCook {
  name: string;
  hash: string;
  length_s: number;
  /** end of the fitted part; readings after it were held back [s] */
  fittedTo_s: number;
  /** readings before it were left out: the pit began hot [s] */
  from_s: number;
  channels: FittedChannel[];
  /** how far the logger is found to lag, with its standard deviation [s] */
  lag_s: number;
  lagDeviation_s: number;
  fire: { time_s: number[]; fire_W: number[] };
  notes: LogNote[];
}

/** What `fit` finds: estimates with their intervals, and how well they predict. */
export interface FitResult {
  schema: 1;
  tool: { name: 'pitwright'; version: string };
  /** as it was before the fit */
  design: Design;
  parameters: FittedParameter[];
  /** estimates that move what the probes read and were not fitted, but held as the design has them */
  held: string[];
  /** of the parameters with each other, a row each */
  correlation: number[][];
  cooks: FittedCook[];
  /** root mean square over all probes [K]; the part held back is what the fit is judged by */
  quality: {
    heldBack_K: number | null;
    heldBackBefore_K: number | null;
    fitted_K: number;
    before_K: number;
    noise_K: number;
  };
  warnings: Warning[];
  /** what any design can name */
  fitted: Fitted;
  runs: number;
  balance: { energyError: number; massError_kg_per_s: number };
}
