/** What a thread of the pool runs: cases of a job, from and to. Bundled as a file of its own. */
import type { Design } from '../design/design.js';
import type { ComparisonPlan } from '../study/compare/compareSpread.js';
import { estimate } from '../study/estimate/estimate.js';
import { cooked } from '../study/events/cooked.js';
import type { StudySettings } from '../study/compare/studyOption.js';
import type { EvidenceFiles, NamedText } from '../verify/evidence.js';
import type { ColdSmokeOptions } from '../study/events/coldSmoke.js';
import type { FitInput, FitOptions } from '../fit/fit.js';
import type { FitResult } from '../fit/fitResult.js';
import type { SizeSettings } from '../study/size/limits.js';
import type { SpreadPlan } from '../study/spread/uncertainty.js';
import type { BatchTask } from './batchLine.js';
import type { Line } from './lines.js';

/** Jobs in plain data, so that they can be sent to a thread. */
export type Job =
  | { kind: 'estimate'; design: Design; vented: boolean }
  | { kind: 'studies'; designs: Design[]; settings: StudySettings }
  | { kind: 'cook'; design: Design }
  | { kind: 'coldSmoke'; design: Design; options: ColdSmokeOptions }
  | { kind: 'refine'; design: Design }
  /** `runs` names the channel that hears how many are done: a thread's own words wait until it has nothing to do */
  | { kind: 'fit'; design: Design; inputs: FitInput[]; options: Omit<FitOptions, 'onRun'>; runs: string }
  | { kind: 'evidence'; files: EvidenceFiles }
  | { kind: 'cases'; file: NamedText }
  | { kind: 'spread'; plan: SpreadPlan }
  | { kind: 'compareSpread'; plan: ComparisonPlan }
  | { kind: 'throats'; design: Design; settings: SizeSettings }
  | { kind: 'surveyStacks'; design: Design; settings: SizeSettings }
  | { kind: 'estimateSizes'; designs: Design[] }
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
    case 'estimate':
      return [estimate(job.design, { further: (solution) => cooked(solution, job.vented) })];
    // what not all need is loaded when asked for: reading it takes as long as an estimate does once the engine is warm
    case 'studies': {
      const { studyOption } = await import('../study/compare/studyOption.js');
      return job.designs.slice(from, to).map((design) => studyOption(design, job.settings));
    }
    case 'cook':
      return [(await import('../study/events/cook.js')).followCook(job.design)];
    case 'coldSmoke':
      return [(await import('../study/events/coldSmoke.js')).coldSmoke(job.design, job.options)];
    case 'refine':
      return [(await import('../study/estimate/refine.js')).refine(job.design)];
    case 'fit':
      return [await fitTelling(job)];
    case 'evidence':
      return [(await import('../verify/evidence.js')).gatherEvidence(job.files)];
    case 'cases':
      return [(await import('../verify/evidence.js')).runCaseFile(job.file)];
    case 'spread':
      return (await import('../study/spread/uncertainty.js')).runSpreadCases(job.plan, from, to);
    case 'compareSpread':
      return (await import('../study/compare/compareSpread.js')).runComparisonCases(job.plan, from, to);
    case 'throats':
      return (await import('../study/size/throat.js')).throatTries(job.design, job.settings);
    case 'surveyStacks':
      return (await import('../study/size/find.js')).surveyTries(job.design, job.settings, from, to);
    case 'estimateSizes': {
      const { estimateWide } = await import('../study/size/judge.js');
      return job.designs.slice(from, to).map(estimateWide);
    }
    case 'judgeSizes': {
      const { judgeFully } = await import('../study/size/judge.js');
      return job.sized.slice(from, to).map(({ design, guess }) => judgeFully(design, guess, job.settings));
    }
    case 'batch':
      return [await (await import('./batchLine.js')).answerBatch(job.records.slice(from, to), job.task, job.room)];
  }
}

async function fitTelling({ design, inputs, options, runs }: Job & { kind: 'fit' }): Promise<FitResult | null> {
  const { fit } = await import('../fit/fit.js');
  const channel = new BroadcastChannel(runs);
  try {
    return fit(design, inputs, { ...options, onRun: (done) => channel.postMessage(done) });
  } finally {
    channel.close();
  }
}
