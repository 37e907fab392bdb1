import type { EstimateResult, Warning } from '../../study/estimate/result.js';
import { warningWords } from '../../words/warningWords.js';
import { apart } from '../apart.js';
import { exit, Stop } from '../exit.js';
import { loadDesign } from '../loadDesign.js';
import { refuseClashes, refuseMixture } from '../output.js';
import { openOutputs, writeOutputs, type OutputOptions } from '../outputs.js';
import type { SpreadOptions } from '../spread.js';
import { progress } from '../stderr.js';

/** How much of an estimate is told, where to and in which units. */
export interface EstimateOptions extends SpreadOptions, OutputOptions {
  full?: boolean;
}

/** The main job: one design in; text or JSON, curves and charts out. */
export async function run(path: string, options: EstimateOptions): Promise<void> {
  refuseClashes(path, { '--output': options.output, '--csv': options.csv });
  refuseMixture(options);
  const made = makeReady(path, options);
  const vented = options.full === true || options.charts !== undefined;
  const solved = await apart<EstimateResult>(made.then(({ design }) => ({ kind: 'estimate', design, vented })));
  const { warnings, outputs } = await made;
  const result: EstimateResult = { ...solved, warnings: [...warnings, ...solved.warnings] };
  if (options.spread !== undefined) {
    const { spreadOf } = await import('../spread.js');
    result.spread = await spreadOf(solved, { ...options, spread: options.spread });
  }

  await writeOutputs(outputs, options, {
    json: () => result,
    text: async (units) =>
      (await import('../../report/text/estimateText.js')).estimateText(result, units, { full: options.full ?? false }),
    csv: async (units) => (await import('../../report/csv.js')).curvesCsv(result, units),
    charts: async () => (await import('../../charts/estimateCharts.js')).estimateCharts(result),
  });
  sayWhatCannotBe(result);
}

/** The design as read, and what is written to opened. */
async function makeReady(path: string, options: OutputOptions) {
  const read = await loadDesign(path);
  const outputs = openOutputs(options);
  progress('computing');
  return { ...read, outputs };
}

/** The numbers that exist are out; what physics can't give is told by the exit code and in words. */
export function sayWhatCannotBe({ design, steady, assumed, warnings }: EstimateResult): void {
  const lines = (told: Warning[]) =>
    warningWords(told, design)
      .map(({ where, message }) => `\n  - ${where}: ${message}`)
      .join('');
  if (!assumed) throw new Stop(exit.notPhysical, `this design can't burn its fire${lines(warnings)}`);
  if (!steady) throw new Stop(exit.notPhysical, `no fire holds the target in this design${lines(warnings)}`);
  const broken = warnings.filter(({ code }) => code === 'draft-tips-over');
  if (broken.length > 0) throw new Stop(exit.notPhysical, `the warm-up can't be followed to its end${lines(broken)}`);
}
