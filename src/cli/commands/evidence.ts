import { join } from 'node:path';
import { visibleName } from '../../words/plainText.js';
import type { Evidence, gatherEvidence, runCaseFile } from '../../verify/evidence.js';
import { isFailure } from '../../verify/runCases.js';
import { listChecks } from '../../verify/registry.js';
import type { CaseFault } from '../../verify/readCases.js';
import { evidenceJson, outcomesJson } from '../../report/evidence/evidenceJson.js';
import { evidencePictures } from '../../report/evidence/evidencePictures.js';
import { evidenceReport } from '../../report/evidence/evidenceReport.js';
import { evidenceSummary, formatCaseFaults, outcomesText } from '../../report/evidence/evidenceText.js';
import { apart } from '../apart.js';
import { drawCharts } from '../drawCharts.js';
import { exit, Stop } from '../exit.js';
import { CASES, readText } from '../input.js';
import { openFolder, openSink, refuseClashes, type Sink } from '../output.js';
import { inRepository, readReference, referenceFolder } from '../referenceFiles.js';
import { progress, tell } from '../stderr.js';

/** Which cases are run, and where their outcome goes. */
export interface EvidenceOptions {
  json?: boolean;
  output?: string;
  charts?: string;
  cases?: string;
  list?: boolean;
  /** renew the report in the repository; whole evidence only */
  renew?: boolean;
}

const PLOTS = 'plots';

/**
 * Runs the published cases and the measured fires, or somebody's own cases; not 0 when a row misses without a reason.
 */
export async function run(options: EvidenceOptions): Promise<void> {
  refuseClashes(options.cases ?? '-', { '--output': options.output }, 'case file');
  if (options.list) return openSink(options.output ?? '-').write(listChecks());
  if (options.cases !== undefined) return runOwn(options.cases, options);

  const folder = referenceFolder();
  if (options.renew && !inRepository(folder)) {
    throw new Stop(exit.wrongUsage, '--renew writes into a clone of the repository; leave it out, or use -o FILE.');
  }
  if (options.charts !== undefined) openFolder(options.charts);
  const out = options.renew && options.output === undefined ? undefined : openSink(options.output ?? '-');
  progress('running every case and the measured fires');
  const files = readReference(folder);
  const gathered = await apart<ReturnType<typeof gatherEvidence>>({ kind: 'evidence', files });
  if ('faults' in gathered) throw faulty(gathered.faults);
  const { evidence } = gathered;
  await out?.write(options.json ? evidenceJson(evidence) : evidenceReport(evidence));
  if (options.charts !== undefined) await draw(evidence, options.charts);
  if (options.renew) await renew(evidence, folder);
  if (!evidence.passed) throw new Stop(exit.ourFault, failure(evidence));
}

async function runOwn(path: string, { json, output }: EvidenceOptions): Promise<void> {
  const { text, fileName } = await readText(path, CASES);
  const out = openSink(output ?? '-');
  const file = { file: fileName, text };
  const result = await apart<ReturnType<typeof runCaseFile>>({ kind: 'cases', file });
  if ('faults' in result) throw faulty(result.faults);
  await out.write(json ? outcomesJson(result.outcomes) : outcomesText(result.outcomes));
  const missed = result.outcomes.filter(isFailure).length;
  if (missed > 0) throw new Stop(exit.ourFault, `${missed} of ${result.outcomes.length} cases missed.`);
}

function faulty(faults: readonly CaseFault[]): Stop {
  const what = faults.length === 1 ? 'one fault' : `${faults.length} faults`;
  return new Stop(exit.wrongInput, `${what} in the cases\n${formatCaseFaults(faults)}`);
}

async function draw(evidence: Evidence, folder: string): Promise<void> {
  const names = await drawCharts(evidencePictures(evidence.validation), folder);
  tell(`charts in ${visibleName(folder)}: ${names.join(', ')}`);
}

/** REPORT.md, report.json and the pictures, beside the case files. */
async function renew(evidence: Evidence, folder: string): Promise<void> {
  const sinks: [Sink, string][] = [
    [
      openSink(join(folder, 'REPORT.md')),
      evidenceReport(evidence, {
        pictures: evidencePictures(evidence.validation).map(({ file, about }) => ({
          file: `${PLOTS}/${file}.png`,
          about,
        })),
      }),
    ],
    [openSink(join(folder, 'report.json')), evidenceJson(evidence)],
  ];
  for (const [sink, content] of sinks) await sink.write(content);
  openFolder(join(folder, PLOTS));
  await drawCharts(evidencePictures(evidence.validation), join(folder, PLOTS));
  await openSink('-').write(evidenceSummary(evidence));
}

function failure({ outcomes, steps }: Evidence): string {
  const missed = outcomes.filter(isFailure).length;
  const unmet = steps.filter((study) => !study.met).length;
  const parts = [
    ...(missed > 0 ? [`${missed} cases missed without a listed reason, or are listed but don't miss`] : []),
    ...(unmet > 0 ? [`${unmet} step studies don't hold`] : []),
  ];
  return `the evidence fails: ${parts.join('; ')}.`;
}
