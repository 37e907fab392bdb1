/** What the page and its workers say to each other: plain data both ways. */
import type { Scene } from '../draw/scene.js';
import type { Design } from '../design/design.js';
import type { Sheet } from '../report/sheets/blocks.js';
import type { OptionStudy } from '../study/compare/studyOption.js';
import type { UnitChoice } from '../units/choice.js';
import type { UnitSystem } from '../units/index.js';
import type { Further } from '../study/estimate/estimate.js';
import type { EstimateResult } from '../study/estimate/result.js';
import type { Spread, SpreadCase } from '../study/spread/uncertainty.js';

/** A design for a worker to estimate. */
export interface SolveRequest {
  /** counts up; a reply names the request it answers */
  id: number;
  option: number;
  design: Design;
  steadyOnly: boolean;
}

/** What a worker found, beside the request that it answers. */
export interface SolveReply {
  id: number;
  option: number;
  /** null when the solver itself broke: our fault, told in `fault` */
  result: EstimateResult | null;
  steadyOnly: boolean;
  fault: string | null;
  /** time computed [ms] */
  took: number;
}

/**
 * What is worked out beside the answer, of the `round` that it was asked for in:
 *
 * - step: a design with another plate, quickly, or with its events
 * - cook: what a cook makes of the design: from the match, splits, and where asked for its vents from shut to open
 * - spread: some cases of a spread study; the last of them come back with what all say
 */
export type AsideRequest = { round: number } & (
  | { kind: 'step'; step: string; design: Design; events: boolean }
  | { kind: 'cook'; design: Design; vented: boolean }
  | { kind: 'spread'; base: EstimateResult; cases: SpreadCase[] }
);

/** What comes later than the answer: a step of plate, the cook's day, the spread. */
export type AsideReply = { round: number } & (
  | { kind: 'step'; step: string; study: OptionStudy; events: boolean }
  | { kind: 'cook'; found: Further; vented: boolean }
  | { kind: 'spread'; cases: SpreadCase[]; spread: Spread | null }
  | { kind: 'fault' }
);

/** An option with all that a picture of it needs. */
export interface PicturedOption {
  label: string;
  result: EstimateResult;
}

/** A step of plate and what was worked out of it. */
export interface StudiedStep {
  id: string;
  label: string;
  instead: string;
  study: OptionStudy;
}

/** Charts that the page can show. */
export type ChartId = 'thermometer' | 'steel' | 'gas' | 'vents' | 'loss' | 'draft' | 'options';

/** A chart's curves as they lie in its picture, for a hairline and its values. Lengths in pixels of the picture. */
export interface Plot {
  left: number;
  right: number;
  top: number;
  bottom: number;
  /**
   * where the names of the curves begin that stand under the plot, for a file: beside the picture they stand on
   * switches; null: none
   */
  names: number | null;
  /** what a place along the bottom means: its value at both ends, or the name of each place and where it lies */
  across: { from: number; to: number; what: 'time' | 'share'; unit: string } | { names: string[]; x: number[] };
  /** what is read of the curves */
  kind: 'temperature' | 'pressure';
  curves: PlotCurve[];
}

/** A curve as it was drawn, for its switch and the hairline [px]. */
export interface PlotCurve {
  label: string;
  colour: string;
  dash: number[];
  hidden: boolean;
  /**
   * height in the picture and SI value, at each place: of a named one, or every STEP pixels from the left; null: no
   * curve there
   */
  at: ([y: number, si: number] | null)[];
}

/** What the worker of pictures is asked to draw or to put into words. */
export type PictureRequest =
  | {
      kind: 'chart';
      chart: ChartId;
      result: EstimateResult;
      options: PicturedOption[];
      width: number;
      units: UnitChoice;
      /** names of the curves that are switched off */
      hidden: string[];
    }
  | { kind: 'steps'; round: number; base: OptionStudy; steps: StudiedStep[]; system: UnitSystem }
  | { kind: 'sheet'; options: PicturedOption[]; system: UnitSystem };

/** What it gives back; `took` in ms. */
export type PictureReply =
  | { kind: 'chart'; chart: ChartId; scene: Scene | null; plot: Plot | null; caption: string; took: number }
  | { kind: 'steps'; round: number; lines: { step: string; text: string }[]; took: number }
  | { kind: 'sheet'; sheet: Sheet; took: number }
  | { kind: 'fault'; fault: string; took: number };

/** The reply to a request of one kind. */
export type Pictured<Kind> = Extract<PictureReply, { kind: Kind }>;
