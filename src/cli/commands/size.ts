import type { Design } from '../../design/design.js';
import type { DesignWarning } from '../../design/faults.js';
import { readSource } from '../../design/source.js';
import type { Tree } from '../../design/vary.js';
import { withWarnings, type FullJudgement } from '../../study/size/judge.js';
import type { Warning } from '../../study/estimate/result.js';
import { variantTries } from '../../study/size/constraints.js';
import type { StackSurvey } from '../../study/size/search.js';
import { sizeResult, toEstimate, writeOut, type SizeResult } from '../../study/size/size.js';
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
  full?: boolean;
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
    text: async (units) => (await import('../../report/text/sizeText.js')).sizeText(result, units, options),
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
  const tries = variantTries(design);
  return withPool(workers, async (run) => {
    const job = { kind: 'surveyStacks', design, settings } as const;
    const surveys = await run<StackSurvey>(job, tries.length, saying('stacks tried', tries.length));
    const shelf = await writeOut(tree, design, { tries, surveys }, signalsHeard);
    const sized = [
      ...shelf.written.map((each) => ({ design: each.design, guess: each.guess })),
      { design, guess: 0.3 },
    ];
    const judgements = await run<FullJudgement>({ kind: 'judgeSizes', sized, settings }, sized.length);
    const drawn = sized.length - 1;
    // what comes first is estimated as a builder would, until what comes first has been
    for (let next = [drawn, ...toEstimate(shelf, judgements)]; next.length > 0; next = toEstimate(shelf, judgements)) {
      await Promise.all(
        next.map(async (i) => {
          const [warned] = await run<Warning[]>({ kind: 'warningsOf', designs: [sized[i].design] }, 1);
          judgements[i] = withWarnings(judgements[i], warned);
        }),
      );
    }
    const asDrawn = judgements[drawn];
    return sizeResult({ design, warnings, tree, settings, tries, surveys, ...shelf, judgements, asDrawn });
  });
}

async function sayWhatCannotBe(result: SizeResult): Promise<void> {
  if (result.chosen !== null || result.asDrawn.good) return;
  const { whyNothingFits } = await import('../../report/text/sizeText.js');
  const lines = whyNothingFits(result).map((line) => `\n  - ${line}`);
  throw new Stop(exit.notPhysical, `no size from stock keeps within every limit${lines.join('')}`);
}
