import type { Design } from '../../design/design.js';
import type { DesignWarning } from '../../design/faults.js';
import { readSource } from '../../design/source.js';
import type { Tree } from '../../design/vary.js';
import type { FullJudgement } from '../../study/size/judge.js';
import { bestOf, stackTries, type StackSurvey } from '../../study/size/search.js';
import { SHORTLIST, sizeResult, writeOut, type SizeResult } from '../../study/size/size.js';
import { signalsHeard } from '../apart.js';
import { exit, Stop } from '../exit.js';
import { readText } from '../input.js';
import { readLoaded } from '../loadDesign.js';
import { refuseClashes } from '../output.js';
import { openOutputs, writeOutputs, type OutputOptions } from '../outputs.js';
import { defaultWorkers, withPool } from '../pool.js';
import { saying } from '../spread.js';

export interface SizeOptions extends OutputOptions {
  cleanAir: number;
  workers?: number;
}

/** Intakes, throat and stack from stock that carry a design's fire: a table of choices, each solved in full, with margins. */
export async function run(path: string, options: SizeOptions): Promise<void> {
  refuseClashes(path, { '--output': options.output });
  const file = await readText(path);
  const { fileName } = file;
  const { design, warnings, text } = await readLoaded(file.text, fileName);
  const outputs = openOutputs(options);

  const result = await sizesOf({ text, fileName, design, warnings }, options);

  await writeOutputs(outputs, options, {
    json: () => result,
    text: async (units) => (await import('../../report/text/sizeText.js')).sizeText(result, units),
    charts: async () => (await import('../../charts/sizeCharts.js')).sizeCharts(result),
  });
  await sayWhatCannotBe(result);
}

/** The sizes for a design as it was read, on as many threads as are asked for. */
export async function sizesOf(
  {
    text,
    fileName,
    design: given,
    warnings,
  }: { text: string; fileName: string; design: Design; warnings: DesignWarning[] },
  { cleanAir, workers = defaultWorkers() }: Pick<SizeOptions, 'cleanAir' | 'workers'>,
): Promise<SizeResult> {
  const source = readSource(text, fileName);
  if (!('tree' in source)) throw new Error('a design that was read has no tree');
  const { withFullFire } = await import('../../study/air/burnsItsAir.js');
  const design = withFullFire(given);
  const asked = source.tree as Tree;
  const heat = given.fire.heatOf === undefined ? {} : { heat: `${design.fire.heat} W` };
  const tree = { ...asked, fire: { ...(asked.fire as Tree), ...heat } };
  const settings = { cleanAir };
  const tries = stackTries(design).length;
  return withPool(workers, async (run) => {
    const job = { kind: 'surveyStacks', design, settings } as const;
    const surveys = await run<StackSurvey>(job, tries, saying('stacks tried', tries));
    // twice as many as are wanted, since the reader may refuse some
    const written = await writeOut(tree, bestOf(surveys, 2 * SHORTLIST), signalsHeard);
    const drawn = { design, guess: 0.3 };
    const sized = [...written.map((each) => ({ design: each.design, guess: each.guess })), drawn];
    const judged = await run<FullJudgement>({ kind: 'judgeSizes', sized, settings }, sized.length);
    return sizeResult({
      design,
      warnings,
      tree,
      settings,
      surveys,
      written,
      judgements: judged.slice(0, -1),
      asDrawn: judged[judged.length - 1],
    });
  });
}

async function sayWhatCannotBe(result: SizeResult): Promise<void> {
  if (result.chosen !== null) return;
  const { whyNothingFits } = await import('../../report/text/sizeText.js');
  const lines = whyNothingFits(result).map((line) => `\n  - ${line}`);
  throw new Stop(exit.notPhysical, `no size from stock keeps within every limit${lines.join('')}`);
}
