import type { EstimateResult, Warning } from '../../study/estimate/result.js';
import { toJson } from '../../report/json.js';
import type { UnitSystem } from '../../units/index.js';
import { apart } from '../apart.js';
import type { PictureFormat } from '../drawCharts.js';
import { exit, Stop } from '../exit.js';
import { loadDesign } from '../loadDesign.js';
import { openFolder, openSink, refuseClashes, refuseMixture, standardOutput } from '../output.js';
import type { SpreadOptions } from '../spread.js';
import { progress } from '../stderr.js';

export interface EstimateOptions extends SpreadOptions {
  json?: boolean;
  output?: string;
  csv?: string;
  charts?: string;
  format?: PictureFormat;
  units: UnitSystem;
}

/** The main job: one design in; text or JSON, curves and charts out. */
export async function run(path: string, options: EstimateOptions): Promise<void> {
  refuseClashes(path, { '--output': options.output, '--csv': options.csv });
  refuseMixture(options);
  const { design, warnings } = await loadDesign(path);
  if (options.charts !== undefined) openFolder(options.charts);
  const out = openSink(options.output ?? '-');
  const csv = options.csv === undefined ? undefined : openSink(options.csv);

  progress('computing');
  const solved = await apart<EstimateResult>({ kind: 'estimate', design });
  const result: EstimateResult = { ...solved, warnings: [...warnings, ...solved.warnings] };
  if (options.spread !== undefined) {
    const { spreadOf } = await import('../spread.js');
    result.spread = await spreadOf(solved, { ...options, spread: options.spread });
  }

  // `--csv -` asks for the curves on standard output, in place of the text
  if (options.json) {
    await out.write(toJson(result));
  } else if (csv !== standardOutput || out !== standardOutput) {
    await out.write((await import('../../report/text/estimateText.js')).estimateText(result, options.units));
  }
  if (csv) await csv.write((await import('../../report/csv.js')).curvesCsv(result, options.units));
  if (options.charts !== undefined) {
    const { estimateCharts } = await import('../../charts/estimateCharts.js');
    const { drawInto } = await import('../drawCharts.js');
    await drawInto(options.charts, estimateCharts(result), options.format);
  }
  sayWhatCannotBe(result);
}

/** The numbers that exist are out; what physics can't give is told by the exit code and in words. */
export function sayWhatCannotBe({ steady, assumed, warnings }: EstimateResult): void {
  const lines = (told: Warning[]) => told.map(({ where, message }) => `\n  - ${where}: ${message}`).join('');
  if (!assumed) throw new Stop(exit.notPhysical, `this design can't burn its fire${lines(warnings)}`);
  if (!steady) throw new Stop(exit.notPhysical, `no fire holds the target in this design${lines(warnings)}`);
  const broken = warnings.filter(({ code }) => code === 'draft-tips-over');
  if (broken.length > 0) throw new Stop(exit.notPhysical, `the warm-up can't be followed to its end${lines(broken)}`);
}
