import type { Design } from '../../design/design.js';
import { version } from '../../version.js';
import type { ComparisonSpread } from './compareSpread.js';
import { cookLength, costsOf, currencyOf, paybackOf, type Payback } from '../costs.js';
import { measuresOf, type Measure } from './measures.js';
import { shortfallOf, type Shortfall } from '../estimate/shortfall.js';
import { studyOption, type OptionStudy, type StudySettings } from './studyOption.js';
import { sameTime } from './told.js';
import { findingsOf, type Finding } from './findings.js';
import { verdictOf } from './verdict.js';

/** A design to compare, and how it came about. */
export interface Option {
  /** short, for a column's head; unique in a comparison */
  label: string;
  /** fields of the design file and what stands in them instead; empty for a design as drawn */
  changes: { path: string; value: string }[];
  design: Design;
}

/** An option's number beside the baseline's. */
export interface Difference {
  key: string;
  /** null where the number does not exist */
  baseline: number | null;
  value: number | null;
  /**
   * value less baseline, and that as a share of the baseline; null where one of them is missing. No share of a
   * temperature, of a share or of nothing
   */
  difference: number | null;
  share: number | null;
  /** both numbers exist, and what they differ by is too small to be told from none */
  none: boolean;
}

/** An option with its differences from the baseline. */
export interface ComparedOption extends OptionStudy {
  label: string;
  changes: Option['changes'];
  /** where it never reaches the target, or never soaks: what it fails at; null: it does both, as far as was computed */
  shortfall: Shortfall | null;
  differences: Difference[];
  /**
   * when the wood it saves has paid for what it costs more than the baseline; null: of the baseline, or where a price
   * is lacking
   */
  payback: Payback | null;
}

/** What is done to every option, and by what their costs are told. */
export interface ComparisonSettings extends StudySettings {
  /** how long the fire is tended in a cook, once the steel has soaked: the baseline's, or a usual length [s] */
  cook_s: number;
  /** of all prices, and that of steel in the baseline [1/kg]; absent: there are none */
  currency?: string;
  steelPrice?: number;
}

/** What `compare` finds. */
export interface Comparison {
  schema: 1;
  tool: { name: 'pitwright'; version: string };
  settings: ComparisonSettings;
  /** label of the option that the others are held against */
  baseline: string;
  options: ComparedOption[];
  /** what each option but the baseline buys and costs, as keys of differences */
  findings: Finding[];
  /** a line each: first every option that never reaches the target, then what each option buys and costs */
  verdict: string;
  /** how sure the differences are, where that was asked for */
  spread?: ComparisonSpread;
}

/** Estimate every option, follow every event in it, and hold all of them against one. */
export function compare(options: readonly Option[], settings: StudySettings, baseline = 0): Comparison {
  return assemble(
    options,
    options.map(({ design }) => studyOption(design, settings)),
    settings,
    baseline,
  );
}

/** The comparison of studies that are done, wherever they were done. @param baseline index of the baseline */
export function assemble(
  options: readonly Option[],
  studies: readonly OptionStudy[],
  given: StudySettings,
  baseline = 0,
): Comparison {
  const designs = studies.map(({ result }) => result.design);
  const settings = { ...given, ...costSettings(designs, designs[baseline]) };
  const costs = costsOf(studies, settings.cook_s);
  const measures = measuresOf(studies, settings);
  const compared = options.map(({ label, changes }, i): ComparedOption => ({
    label,
    changes,
    ...studies[i],
    shortfall: shortfallOf(studies[i].result),
    differences: measures.map((measure) => differenceIn(measure, studies, { baseline, option: i })),
    payback: i === baseline ? null : paybackOf(costs, studies[i], studies[baseline]),
  }));
  const comparison: Comparison = {
    schema: 1,
    tool: { name: 'pitwright', version },
    settings,
    baseline: options[baseline].label,
    options: compared,
    findings: [],
    verdict: '',
  };
  comparison.findings = findingsOf(comparison);
  return { ...comparison, verdict: verdictOf(comparison) };
}

function costSettings(designs: Design[], baseline: Design): Omit<ComparisonSettings, keyof StudySettings> {
  const currency = currencyOf(designs);
  const steelPrice = baseline.prices?.steel;
  return {
    cook_s: cookLength(baseline),
    ...(currency === undefined ? {} : { currency }),
    ...(steelPrice === undefined ? {} : { steelPrice }),
  };
}

/** What can't be a percentage of itself. */
const NO_SHARE: ReadonlySet<Measure['kind']> = new Set(['temperature', 'share', 'plate']);

/**
 * An option's number beside the baseline's. Times count as the same where they read the same beside those of all
 * options.
 */
function differenceIn(
  measure: Measure,
  studies: readonly OptionStudy[],
  { baseline, option }: { baseline: number; option: number },
): Difference {
  const values = studies.map((study) => finite(measure.of(study)));
  const [from, to] = [values[baseline], values[option]];
  if (from === null || to === null) {
    return { key: measure.key, baseline: from, value: to, difference: null, share: null, none: false };
  }
  const difference = to - from;
  const times = measure.kind === 'time' ? values.filter((value) => value !== null) : null;
  return {
    key: measure.key,
    baseline: from,
    value: to,
    difference,
    share: from === 0 || NO_SHARE.has(measure.kind) ? null : difference / Math.abs(from),
    none: Math.abs(difference) <= measure.none(from) || (times !== null && sameTime(from, to, times)),
  };
}

/** What is infinite is no number to compare. */
function finite(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}
