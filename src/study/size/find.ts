import type { Design } from '../../design/design.js';
import type { DesignWarning } from '../../design/faults.js';
import type { Tree } from '../../design/vary.js';
import type { EstimateResult } from '../estimate/result.js';
import { variantsOf, variantTries } from './constraints.js';
import { estimateWide, judgeFully, withEstimate, type FullJudgement } from './judge.js';
import type { SizeSettings } from './limits.js';
import { surveyStack, type StackSurvey } from './search.js';
import { bestThroat, throatTries, type ThroatTry } from './throat.js';
import { sizeResult, toEstimate, writeOut, type SizeResult } from './size.js';

/** The kinds of work that finding a size takes, in plain data, so that threads can share them. */
interface SizeRuns {
  throats: (design: Design, settings: SizeSettings) => Promise<ThroatTry[]>;
  survey: (design: Design, settings: SizeSettings, tries: number) => Promise<StackSurvey[]>;
  judge: (sized: { design: Design; guess: number }[], settings: SizeSettings) => Promise<FullJudgement[]>;
  estimate: (designs: Design[]) => Promise<EstimateResult[]>;
}

interface SizeInput {
  /** with its full fire known */
  design: Design;
  warnings: DesignWarning[];
  /** of the file, with that fire in it */
  tree: Tree;
  settings: SizeSettings;
}

/** Of the tries of a design those from and to (excluded). */
export function surveyTries(design: Design, settings: SizeSettings, from = 0, to?: number): StackSurvey[] {
  const variants = variantsOf(design);
  return variantTries(design)
    .slice(from, to)
    .map((each) => surveyStack(variants[each.of].design, each, settings));
}

/** All in this thread. */
const HERE: SizeRuns = {
  throats: async (design, settings) => throatTries(design, settings),
  survey: async (design, settings) => surveyTries(design, settings),
  judge: async (sized, settings) => sized.map(({ design, guess }) => judgeFully(design, guess, settings)),
  estimate: async (designs) => designs.map(estimateWide),
};

/**
 * Intakes, throat and stack for a design, under what it asks for.
 *
 * @param between waited for now and then, so that whoever waits can do something else meanwhile
 */
export async function findSizes(
  { design, warnings, tree, settings: asked }: SizeInput,
  { throats: tryThroats, survey, judge, estimate }: SizeRuns = HERE,
  between?: () => Promise<void>,
): Promise<SizeResult> {
  const throats = await tryThroats(design, asked);
  const settings = { ...asked, throat: bestThroat(throats) };
  const tries = variantTries(design);
  const surveys = await survey(design, settings, tries.length);
  const shelf = await writeOut(tree, design, { tries, surveys }, between);
  const sized = [...shelf.written.map((each) => ({ design: each.design, guess: each.guess })), { design, guess: 0.3 }];
  const judgements = await judge(sized, settings);
  const drawn = sized.length - 1;
  // what comes first is estimated as a builder would, until what comes first has been
  for (let next = [drawn, ...toEstimate(shelf, judgements)]; next.length > 0; next = toEstimate(shelf, judgements)) {
    const estimated = await estimate(next.map((i) => sized[i].design));
    next.forEach((i, at) => (judgements[i] = withEstimate(judgements[i], estimated[at])));
  }
  const asDrawn = judgements[drawn];
  return sizeResult({ design, warnings, tree, settings, throats, tries, surveys, ...shelf, judgements, asDrawn });
}
