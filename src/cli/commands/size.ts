import type { Design } from '../../design/design.js';
import type { DesignWarning } from '../../design/faults.js';
import { readSource } from '../../design/source.js';
import type { Tree } from '../../design/vary.js';
import type { EstimateResult } from '../../study/estimate/result.js';
import { findSizes } from '../../study/size/find.js';
import type { SizeResult } from '../../study/size/size.js';
import { signalsHeard } from '../apart.js';
import { exit, Stop } from '../exit.js';
import { readText } from '../input.js';
import { readLoaded } from '../loadDesign.js';
import { refuseClashes } from '../output.js';
import { openOutputs, writeOutputs, type OutputOptions } from '../outputs.js';
import { defaultWorkers, withPool } from '../pool.js';
import { saying } from '../spread.js';

/** How clean the fire must burn, and how much of the answer is told. */
export interface SizeOptions extends OutputOptions {
  cleanAir: number;
  full?: boolean;
  workers?: number;
}

/**
 * Intakes, throat and stack from stock that carry a design's fire: a table of choices, each solved in full, with
 * margins.
 */
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
  return withPool(workers, (run) =>
    findSizes(
      { design, warnings, tree, settings: { cleanAir } },
      {
        throats: (of, settings) => run({ kind: 'throats', design: of, settings }, 1),
        survey: (of, settings, tries) =>
          run({ kind: 'surveyStacks', design: of, settings }, tries, saying('stacks tried', tries)),
        judge: (sized, settings) => run({ kind: 'judgeSizes', sized, settings }, sized.length),
        // each by itself: few, and long
        estimate: async (designs) =>
          (
            await Promise.all(designs.map((each) => run<EstimateResult>({ kind: 'estimateSizes', designs: [each] }, 1)))
          ).flat(),
      },
      signalsHeard,
    ),
  );
}

async function sayWhatCannotBe(result: SizeResult): Promise<void> {
  if (result.chosen !== null || result.asDrawn.good) return;
  const { whyNothingFits } = await import('../../report/text/sizeAnswer.js');
  const lines = whyNothingFits(result).map((line) => `\n  - ${line}`);
  throw new Stop(exit.notPhysical, `no size from stock keeps within every limit${lines.join('')}`);
}
