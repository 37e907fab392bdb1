import type { CookResult } from '../../study/events/cook.js';
import { version } from '../../version.js';
import { apart } from '../apart.js';
import { exit, Stop } from '../exit.js';
import { loadDesign } from '../loadDesign.js';
import { refuseClashes, refuseMixture } from '../output.js';
import { openOutputs, writeOutputs, type OutputOptions } from '../outputs.js';
import { progress, tellWarnings } from '../stderr.js';

/** The day that a design's cook block describes, followed from lighting to the last warmth. */
export async function run(path: string, options: OutputOptions): Promise<void> {
  refuseClashes(path, { '--output': options.output, '--csv': options.csv });
  refuseMixture(options);
  const { design, warnings } = await loadDesign(path);
  if (!design.cook) {
    throw new Stop(
      exit.wrongInput,
      `${path === '-' ? 'standard input' : path}: the design has no cook to follow. Add one, such as\n` +
        'cook:\n  load: [{ name: brisket, mass: 14 lb, area: 2.5 ft^2, start: 40 °F }]\n  tend: 8 h',
    );
  }
  const outputs = openOutputs(options);

  tellWarnings(warnings);
  progress('computing');
  const cook = await apart<CookResult | null>({ kind: 'cook', design });
  if (!cook) {
    throw new Stop(
      exit.notPhysical,
      "this cook can't be followed: the pit does not reach its target, or its draft keeps tipping from one way of flowing " +
        "to another. 'pitwright estimate' says which and why.",
    );
  }
  await writeOutputs(outputs, options, {
    json: () => ({ schema: 1, tool: { name: 'pitwright', version }, design, warnings, cook }),
    text: async (units) => (await import('../../report/text/cookText.js')).cookText(design, cook, units),
    csv: async (units) => (await import('../../report/text/cookText.js')).cookCsv(cook, units),
    charts: async () => (await import('../../charts/cookChart.js')).cookCharts(cook, design),
  });
}
