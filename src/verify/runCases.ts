/** Runs cases and judges them. Pure: cases in, outcomes out, in the order given. */
import type { Check } from './check.js';
import { judge } from './expectation.js';
import type { Case } from './readCases.js';

/** What a case came to. */
export type Status =
  | 'within'
  /** outside its tolerance and not explained: a failure */
  | 'miss'
  /** outside its tolerance, with the reason written down */
  | 'explained'
  /** shown, neither passed nor failed */
  | 'information'
  /** said to miss, but it does not (any more): a failure of the list */
  | 'stale';

/** A case and what the tool makes of it. */
export interface Outcome {
  case: Case;
  /** in the unit of the case; null when the tool has nothing to compute or could not */
  computed: number | null;
  /** computed less expected (the nearest edge of a range), in the unit of the case */
  error: number | null;
  status: Status;
  /** why it misses, why it is only information, or what the check threw; '' otherwise */
  reason: string;
}

/** Reasons of rows that are known to miss, by case id. */
export type Misses = ReadonlyMap<string, string>;

/** Runs cases, each by its check, and judges what they come to. */
export function runCases(
  cases: readonly Case[],
  registry: ReadonlyMap<string, Check>,
  misses: Misses = new Map(),
): Outcome[] {
  return cases.map((each) => runCase(each, registry, misses.get(each.id)));
}

function runCase(each: Case, registry: ReadonlyMap<string, Check>, known: string | undefined): Outcome {
  const { tolerance, expected, scale } = each;
  const information = tolerance.type === 'information' ? tolerance.reason : undefined;
  const check = registry.get(each.check);
  if (!check) return { case: each, computed: null, error: null, status: 'information', reason: information ?? '' };
  let computed: number;
  try {
    computed = (check.run(each.inputs) - scale.offset) / scale.factor;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { case: each, computed: null, error: null, status: 'miss', reason: error.message };
  }
  if (!Number.isFinite(computed)) {
    return { case: each, computed: null, error: null, status: 'miss', reason: `${each.check} gave ${computed}` };
  }
  const { error, within } = judge(computed, expected, tolerance);
  if (information !== undefined) return { case: each, computed, error, status: 'information', reason: information };
  if (within)
    return { case: each, computed, error, status: known === undefined ? 'within' : 'stale', reason: known ?? '' };
  return { case: each, computed, error, status: known === undefined ? 'miss' : 'explained', reason: known ?? '' };
}

/** True when the outcome must fail a run: an unexplained miss, or a listed miss that no longer misses. */
export function isFailure({ status }: Outcome): boolean {
  return status === 'miss' || status === 'stale';
}

/** One line that says what missed, by how much, and whose value it was. */
export function describeOutcome({ case: each, computed, error, status, reason }: Outcome): string {
  const unit = each.unit === '' || each.unit === '-' ? '' : ` ${each.unit}`;
  const value = computed === null ? 'nothing' : `${short(computed)}${unit}`;
  const off = error === null ? '' : ` (off by ${short(error)}${unit}, tolerance ${each.tolerance.text})`;
  const why = reason ? `: ${reason}` : '';
  return `${each.id} ${status}: expected ${each.expected.text}${unit}, computed ${value}${off}${why} [${each.source}]`;
}

function short(value: number): string {
  return String(Number(value.toPrecision(5)));
}
