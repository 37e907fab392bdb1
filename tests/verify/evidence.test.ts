import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { gatherEvidence, readAllCases, type Evidence } from '../../src/verify/evidence.js';
import { evidenceJson, outcomesJson } from '../../src/report/evidence/evidenceJson.js';
import { evidencePictures } from '../../src/report/evidence/evidencePictures.js';
import { evidenceReport } from '../../src/report/evidence/evidenceReport.js';
import { formatCaseFaults, outcomesText } from '../../src/report/evidence/evidenceText.js';
import { describeOutcome, isFailure } from '../../src/verify/runCases.js';
import { readReference, reference } from './referenceFiles.js';
import { expectValidated } from './validated.js';

const files = reference();
const { evidence } = gatherEvidence(files) as { evidence: Evidence };
const report = (of: Evidence) =>
  evidenceReport(of, {
    pictures: evidencePictures(of.validation).map(({ file, about }) => ({ file: `plots/${file}.png`, about })),
  });

describe('a row of the case files', () => {
  test.each(evidence.outcomes.map((outcome) => [outcome.case.id, outcome.case.source, outcome] as const))(
    '%s [%s]',
    (_, __, outcome) => expect(isFailure(outcome), describeOutcome(outcome)).toBe(false),
  );
});

expectValidated(evidence.validation);

describe('the evidence', () => {
  test('passes, with every row of every file run', () => {
    expect(evidence.passed).toBe(true);
    expect(evidence.counts).toMatchObject({ miss: 0, stale: 0 });
    const written = files.cases.reduce((sum, { text }) => sum + text.trim().split(/\r?\n/).length - 1, 0);
    expect(evidence.counts.cases).toBe(written);
    const { within, explained, information } = evidence.counts;
    expect(within + explained + information).toBe(written);
  });

  test('is in the repository as it is made now: `npm run verify` renews it', () => {
    expect(readReference('REPORT.md')).toBe(report(evidence));
    expect(readReference('report.json')).toBe(evidenceJson(evidence));
  });

  test('is what the page for builders says', () => {
    const page = readFileSync(new URL('../../reference/MODEL.md', import.meta.url), 'utf8').replace(/\s+/g, ' ');
    const { quantities, mechanisms, flowsWithinFifth: near } = evidence.validation;
    const bias = (experiment: string, quantity: string) =>
      quantities
        .find((each) => each.experiment.includes(experiment) && each.quantity.startsWith(quantity))!
        .statistics!.bias!.toFixed(2);
    const [base] = mechanisms;
    const door = mechanisms.find(({ name }) => name.startsWith('nothing radiates out'))!;
    for (const said of [
      `${bias('vent', 'flow out')} out, ${bias('vent', 'flow in')} in; within 20 % on ${near.outflow} and ${near.inflow} |`,
      `${Math.abs(base.neutral!).toFixed(2)} of the opening too low |`,
      `| gas above ambient, upper layer | ${bias('vent', 'gas rise, upper')} |`,
      `steel ${base.steelAt300!.toFixed(2)} at 5 min, ${base.steelAt1200!.toFixed(2)} at 20 min, by area`,
      `| the same, gas | ${bias('bare', 'gas rise, mean')} |`,
      `| the same, ceiling; lower wall | ${bias('bare', 'steel rise, ceiling')}; ${bias('bare', 'steel rise, lower')} |`,
      `| plate thermometers inside it | ${bias('bare', 'plate thermometers')} |`,
      `| corridor behind a burn room, far end: upper gas | ${bias('corridor', 'gas rise, upper')} (`,
      `${bias('wool', 'plate thermometers')}; ${door.woolProbes!.toFixed(2)} with nothing out of its doorway`,
    ]) {
      expect(page).toContain(said);
    }
  });

  test('holds its step studies: third order, and a pit that tolerance does not move', () => {
    expect(evidence.steps.map((study) => study.met)).toEqual(evidence.steps.map(() => true));
    const orders = evidence.steps.flatMap(({ order }) => (order === null ? [] : [order]));
    expect(orders).toHaveLength(3);
    for (const order of orders) expect(order).toBeGreaterThan(2.7);
  });

  test('an id that stands in two files is a fault of the second', () => {
    const [first] = files.cases;
    const { faults } = readAllCases([first, { ...first, file: 'copy.csv' }]);
    expect(faults.length).toBeGreaterThan(10);
    expect(formatCaseFaults(faults)).toMatch(/^copy\.csv:2: \S+ id '\S+' stands in cases-air\.csv already/);
  });

  test('shows every miss and every measured row', () => {
    const text = report(evidence);
    for (const { case: each, status, reason } of evidence.outcomes) {
      expect(text).toContain(`\`${each.id}\``);
      if (status === 'explained') expect(text).toContain(reason.replaceAll('|', '\\|'));
    }
    for (const { rows } of evidence.validation.quantities)
      for (const { id } of rows) expect(text).toContain(`\`${id}\``);
    expect(text).toContain('published, memory');
  });

  test('as JSON has the two lists of the result format, apart', () => {
    const tree = JSON.parse(evidenceJson(evidence));
    expect(tree.verification).toHaveLength(evidence.counts.cases);
    expect(tree.verification[0]).toMatchObject({
      case: expect.any(String),
      within: expect.any(Boolean),
      source: expect.any(String),
    });
    expect(tree.validation.map((each: { quantity: string }) => each.quantity)).toContain('flow out');
    expect(tree.validation[0].rows[0].ratio).toBeCloseTo(
      tree.validation[0].rows[0].computed / tree.validation[0].rows[0].measured,
      4,
    );
  });

  test("somebody's cases are told row by row, with the misses in words", () => {
    const some = evidence.outcomes.filter(({ status }) => status !== 'explained').slice(0, 3);
    const missed = [{ ...some[0], status: 'miss' as const }, ...some.slice(1)];
    expect(outcomesText(missed)).toMatch(/miss: expected[^]*3 cases: 2 within, 1 missed/);
    expect(JSON.parse(outcomesJson(missed)).verification[0].within).toBe(false);
  });
});
