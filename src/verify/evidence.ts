/**
 * Everything that speaks for or against the numbers: cases, step halving, measured fires. Pure: texts in, results out.
 */
import { version } from '../version.js';
import { BASE } from './validation/assumptions.js';
import { readMeasured } from './validation/measured.js';
import { STEEL_ROOM_COLUMNS, steelRoom } from './validation/steelRoom.js';
import { runValidation, type MeasuredTables, type Validation } from './validation/validation.js';
import { readCases, type Case, type CaseFault } from './readCases.js';
import { readMisses } from './misses.js';
import { REGISTRY } from './registry.js';
import { isFailure, runCases, type Outcome, type Status } from './runCases.js';
import { stepStudies, type StepStudy } from './stepHalving.js';

/** A file's text and the name that faults carry. */
export interface NamedText {
  file: string;
  text: string;
}

/** All files that the evidence is made of. */
export interface EvidenceFiles extends MeasuredTables {
  /** in the order of the report */
  cases: readonly NamedText[];
  misses: NamedText;
}

/** What running every case, step study and measured room came to. */
export interface Evidence {
  schema: 1;
  tool: { name: 'pitwright'; version: string };
  /** false when an unexplained miss, a stale explanation or an unmet step study stands in it */
  passed: boolean;
  counts: Record<Status, number> & { cases: number; memory: number };
  outcomes: Outcome[];
  steps: StepStudy[];
  validation: Validation;
}

/** How many cases came to what. */
export function countOutcomes(outcomes: readonly Outcome[]): Evidence['counts'] {
  const of = (status: Status) => outcomes.filter((each) => each.status === status).length;
  return {
    cases: outcomes.length,
    within: of('within'),
    miss: of('miss'),
    explained: of('explained'),
    stale: of('stale'),
    information: of('information'),
    memory: outcomes.filter((each) => each.case.known === 'memory').length,
  };
}

/** Cases of several files; an id may stand only once in all of them. */
export function readAllCases(files: readonly NamedText[]): { cases: Case[]; faults: CaseFault[] } {
  const cases: Case[] = [];
  const faults: CaseFault[] = [];
  const seen = new Map<string, string>();
  for (const { file, text } of files) {
    const read = readCases(text, file, REGISTRY);
    faults.push(...read.faults);
    for (const each of read.cases) {
      const first = seen.get(each.id);
      const { id, line } = each;
      if (first) faults.push({ file, line, id, field: 'id', message: `'${id}' stands in ${first} already` });
      seen.set(id, file);
      cases.push(each);
    }
  }
  return { cases, faults };
}

/** Somebody's cases alone. */
export function runCaseFile(file: NamedText): { outcomes: Outcome[] } | { faults: CaseFault[] } {
  const { cases, faults } = readAllCases([file]);
  return faults.length > 0 ? { faults } : { outcomes: runCases(cases, REGISTRY) };
}

/** @returns faults of the files instead, when they have any */
export function gatherEvidence(files: EvidenceFiles): { evidence: Evidence } | { faults: CaseFault[] } {
  const { cases, faults } = readAllCases(files.cases);
  const listed = readMisses(files.misses.text, files.misses.file, new Set(cases.map((each) => each.id)));
  const measured = runValidation(files);
  const all = [...faults, ...listed.faults, ...('faults' in measured ? measured.faults : [])];
  if (all.length > 0 || 'faults' in measured) return { faults: all };
  const outcomes = runCases(cases, REGISTRY, listed.misses);
  const { rows } = readMeasured(files.steelRoom.text, files.steelRoom.file, STEEL_ROOM_COLUMNS);
  const steps = stepStudies(
    steelRoom(
      rows.find((row) => row.text('test') === 'C1')!,
      BASE,
    ),
  );
  return {
    evidence: {
      schema: 1,
      tool: { name: 'pitwright', version },
      passed: !outcomes.some(isFailure) && steps.every((study) => study.met),
      counts: countOutcomes(outcomes),
      outcomes,
      steps,
      validation: measured.validation,
    },
  };
}
