/** What a thread of the pool runs: cases of a study, named by kind, from and to. Bundled as a file of its own. */
import { runSpreadCases, type SpreadCase, type SpreadPlan } from '../study/uncertainty.js';

export interface SpreadJob {
  kind: 'spread';
  plan: SpreadPlan;
}

export type Job = SpreadJob;

/** Cases `from` to `to` (excluded) of a job. */
export interface Slice {
  job: Job;
  from: number;
  to: number;
}

export default function run({ job, from, to }: Slice): SpreadCase[] {
  return runSpreadCases(job.plan, from, to);
}
