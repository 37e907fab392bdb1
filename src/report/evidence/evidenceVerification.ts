/** The half of the evidence report that asks whether the mathematics is right. */
import type { Outcome, Status } from '../../verify/runCases.js';
import type { StepStudy } from '../../verify/stepHalving.js';
import { figure, markdownTable, type Sources } from './evidenceMarkdown.js';

const SAID: Readonly<Record<Status, string>> = {
  within: 'within',
  miss: '**MISS**',
  explained: '**miss**, explained',
  stale: '**listed as a miss, but within**',
  information: 'information',
};

const HEAD = ['case', 'quantity', 'expected', 'computed', 'error', 'tolerance', 'result', 'kind', 'source'];
const NUMBERS = [2, 3, 4];

function unitOf({ unit }: Outcome['case']): string {
  return unit === '-' || unit === '' ? '' : ` ${unit}`;
}

function outcomeCells(outcome: Outcome, sources: Sources): string[] {
  const { case: each, computed, error, status } = outcome;
  const memory = each.known === 'memory' ? ', memory' : '';
  return [
    `\`${each.id}\``,
    each.quantity,
    `${each.expected.text}${unitOf(each)}`,
    figure(computed, 5),
    figure(error, 3),
    each.tolerance.text,
    SAID[status],
    `${each.kind}${memory}`,
    sources.cite(each.source),
  ];
}

/** Cases of one file after another. */
export function caseTables(outcomes: readonly Outcome[], sources: Sources): string {
  const files = [...new Set(outcomes.map((each) => each.case.file))];
  return files
    .map((file) => {
      const own = outcomes.filter((each) => each.case.file === file);
      return `#### ${file}\n\n${markdownTable(
        HEAD,
        own.map((each) => outcomeCells(each, sources)),
        NUMBERS,
      )}`;
    })
    .join('\n\n');
}

/** Every miss with its reason, and why a figure is only information. */
export function missTable(outcomes: readonly Outcome[]): string {
  const misses = outcomes.filter(({ status }) => status !== 'within' && status !== 'information');
  if (misses.length === 0) return 'None.';
  return markdownTable(
    ['case', 'expected', 'computed', 'tolerance', 'reason found'],
    misses.map(({ case: each, computed, reason }) => [
      `\`${each.id}\``,
      `${each.expected.text}${unitOf(each)}`,
      figure(computed, 5),
      each.tolerance.text,
      reason || '**none: this fails the run**',
    ]),
    [1, 2],
  );
}

/** Cases that are shown and not judged, each with the reason. */
export function informationTable(outcomes: readonly Outcome[]): string {
  const rows = outcomes.filter(({ status }) => status === 'information');
  return markdownTable(
    ['case', 'printed', 'computed', 'why it is not judged'],
    rows.map(({ case: each, computed, reason }) => [
      `\`${each.id}\``,
      `${each.expected.text}${unitOf(each)}`,
      figure(computed, 5),
      reason,
    ]),
    [1, 2],
  );
}

/** Values as steps and cells are made finer, and the order of their errors. */
export function stepTable(steps: readonly StepStudy[]): string {
  return markdownTable(
    ['study', 'against', 'values as it is refined', 'errors', 'order', 'must hold', 'holds'],
    steps.map((study) => [
      study.name,
      `${figure(study.against, 6)} ${study.unit} (${study.source})`,
      study.rows.map(({ steps: count, value }) => `${count} ${study.refined}: ${figure(value, 6)}`).join('; '),
      study.rows.map(({ error }) => figure(error, 2)).join('; '),
      study.order === null ? '-' : study.order.toFixed(1),
      study.demand,
      study.met ? 'yes' : '**NO**',
    ]),
    [4],
  );
}
