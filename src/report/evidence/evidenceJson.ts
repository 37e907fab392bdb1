/**
 * The evidence as JSON: one entry a case, and one a measured quantity with its rows; rounded, so that it is the same
 * everywhere.
 */
import type { Evidence } from '../../verify/evidence.js';
import type { Outcome } from '../../verify/runCases.js';
import { toJson } from '../json.js';

const DIGITS = 5;

/** Every number of a tree to a few significant digits. */
function rounded(value: unknown): unknown {
  if (typeof value === 'number') return Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) : null;
  if (Array.isArray(value)) return value.map(rounded);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, rounded(item)]));
}

function outcomeTree({ case: each, computed, error, status, reason }: Outcome) {
  return {
    case: each.id,
    file: each.file,
    quantity: each.quantity,
    check: each.check,
    expected: each.expected.text,
    unit: each.unit,
    computed,
    error,
    tolerance: each.tolerance.text,
    within: status === 'information' ? null : status === 'within' || status === 'stale',
    status,
    reason,
    kind: each.kind,
    known: each.known,
    source: each.source,
  };
}

/** All of the evidence as JSON, rounded so that it is the same on every machine. */
export function evidenceJson({ outcomes, validation, steps, ...rest }: Evidence): string {
  const { quantities, mechanisms, ...others } = validation;
  return toJson(
    rounded({
      ...rest,
      verification: outcomes.map(outcomeTree),
      stepStudies: steps,
      validation: quantities.map(({ rows, ...quantity }) => ({
        ...quantity,
        rows: rows.map((row) => ({ ...row, time_s: undefined, ratio: row.computed / row.measured })),
      })),
      mechanisms: mechanisms.map((each) => ({ ...each, key: undefined })),
      ...others,
    }),
  );
}

/** What cases of one's own came to, as JSON. */
export function outcomesJson(outcomes: readonly Outcome[]): string {
  return toJson(rounded({ schema: 1, verification: outcomes.map(outcomeTree) }));
}
