import type { Refinement } from '../../study/estimate/refine.js';
import { apart } from '../apart.js';
import { loadDesign } from '../loadDesign.js';
import { refuseClashes } from '../output.js';
import { openOutputs, writeOutputs, type OutputOptions } from '../outputs.js';
import { progress, tellWarnings } from '../stderr.js';

/** The same design with more cells and with tighter time steps: what its numbers owe to how they are computed. */
export async function run(path: string, options: OutputOptions): Promise<void> {
  refuseClashes(path, { '--output': options.output });
  const { design, warnings } = await loadDesign(path);
  const outputs = openOutputs(options);
  tellWarnings(warnings);
  progress('computing the same design eight times');
  const study = await apart<Refinement>({ kind: 'refine', design });
  await writeOutputs(outputs, options, {
    json: () => ({ ...study, fitted: design.fitted }),
    text: async (units) => (await import('../../report/text/refineText.js')).refineText(design, study, units),
  });
}
