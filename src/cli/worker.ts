/** What a thread of the pool runs: cases of a job, from and to. Bundled as a file of its own. */
import type { Design } from '../design/design.js';
import { runComparisonCases, type ComparisonPlan } from '../study/compareSpread.js';
import { judgeFully } from '../study/size/judge.js';
import type { SizeSettings } from '../study/size/limits.js';
import { stackTries, surveyStack } from '../study/size/search.js';
import { runSpreadCases, type SpreadPlan } from '../study/uncertainty.js';
import { answerBatch, type BatchTask } from './batchLine.js';
import type { Line } from './lines.js';

/** Jobs in plain data, so that they can be sent to a thread. */
export type Job =
  | { kind: 'spread'; plan: SpreadPlan }
  | { kind: 'compareSpread'; plan: ComparisonPlan }
  | { kind: 'surveyStacks'; design: Design; settings: SizeSettings }
  | { kind: 'judgeSizes'; sized: { design: Design; guess: number }[]; settings: SizeSettings }
  | { kind: 'batch'; records: Line[]; task: BatchTask; room: SharedArrayBuffer };

/** Cases `from` to `to` (excluded) of a job. */
export interface Slice {
  job: Job;
  from: number;
  to: number;
}

export default async function run({ job, from, to }: Slice): Promise<unknown[]> {
  switch (job.kind) {
    case 'spread':
      return runSpreadCases(job.plan, from, to);
    case 'compareSpread':
      return runComparisonCases(job.plan, from, to);
    case 'surveyStacks':
      return stackTries(job.design)
        .slice(from, to)
        .map((each) => surveyStack(job.design, each, job.settings));
    case 'judgeSizes':
      return job.sized.slice(from, to).map(({ design, guess }) => judgeFully(design, guess, job.settings));
    case 'batch':
      return [await answerBatch(job.records.slice(from, to), job.task, job.room)];
  }
}
