/** What a run of cases came to, for a terminal. */
import type { CaseFault } from '../../verify/readCases.js';
import { describeOutcome, type Outcome } from '../../verify/runCases.js';
import { countOutcomes, type Evidence } from '../../verify/evidence.js';
import { figure, ratio } from './evidenceMarkdown.js';
import { table } from '../text/table.js';

/** A line a fault, as a compiler prints them. */
export function formatCaseFaults(faults: readonly CaseFault[]): string {
  return faults
    .map(({ file, line, id, field, message }) => `${file}:${line}: ${[id, field].filter(Boolean).join(' ')} ${message}`)
    .join('\n');
}

/** Somebody's cases: every row with its error, then the misses in words. */
export function outcomesText(outcomes: readonly Outcome[]): string {
  const counts = countOutcomes(outcomes);
  const rows = outcomes.map(({ case: each, computed, error, status }) => [
    each.id,
    each.check,
    each.expected.text,
    figure(computed, 5),
    figure(error, 3),
    each.unit,
    each.tolerance.text,
    status,
  ]);
  const head = ['case', 'check', 'expected', 'computed', 'error', 'unit', 'tolerance', 'result'];
  const misses = outcomes.filter(({ status }) => status === 'miss').map(describeOutcome);
  return [
    table(head, rows, { align: ['left', 'left', 'right', 'right', 'right', 'left', 'left', 'left'] }),
    '',
    ...misses,
    ...(misses.length > 0 ? [''] : []),
    `${counts.cases} case${counts.cases === 1 ? '' : 's'}: ${counts.within} within, ${counts.miss} missed, ${counts.information} for information`,
    '',
  ].join('\n');
}

/** The whole evidence in a few lines. */
export function evidenceSummary({ counts, steps, validation, passed, outcomes }: Evidence): string {
  const failures = outcomes.filter(({ status }) => status === 'miss' || status === 'stale').map(describeOutcome);
  const unmet = steps.filter((study) => !study.met).map((study) => `${study.name}: ${study.demand} does not hold`);
  const rows = validation.quantities.map(({ experiment, quantity, statistics: s }) => [
    experiment,
    quantity,
    s ? String(s.n) : '0',
    s ? ratio(s.bias ?? s.meanRatio) : '-',
    s ? `${(100 * s.modelDeviation).toFixed(0)} %` : '-',
  ]);
  return [
    `verification: ${counts.cases} cases, ${counts.within} within, ${counts.explained} missed with the reason found, ${counts.miss + counts.stale} failed, ${counts.information} for information; ${steps.length - unmet.length} of ${steps.length} step studies hold`,
    'validation, computed over measured:',
    table(['experiment', 'quantity', 'rows', 'bias', 'scatter'], rows, {
      align: ['left', 'left', 'right', 'right', 'right'],
      indent: '  ',
    }),
    ...failures,
    ...unmet,
    passed ? 'passed' : 'FAILED',
    '',
  ].join('\n');
}
