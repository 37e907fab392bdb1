import { refineText } from '../../report/text/refineText.js';
import { toJson } from '../../report/json.js';
import type { Refinement } from '../../study/estimate/refine.js';
import type { UnitSystem } from '../../units/index.js';
import { apart } from '../apart.js';
import { loadDesign } from '../loadDesign.js';
import { openSink, refuseClashes } from '../output.js';
import { progress, tellWarnings } from '../stderr.js';

export interface RefineOptions {
  json?: boolean;
  output?: string;
  units: UnitSystem;
}

/** The same design with more cells and with tighter time steps: what its numbers owe to how they are computed. */
export async function run(path: string, options: RefineOptions): Promise<void> {
  refuseClashes(path, { '--output': options.output });
  const { design, warnings } = await loadDesign(path);
  const out = openSink(options.output ?? '-');
  tellWarnings(warnings);
  progress('computing the same design eight times');
  const study = await apart<Refinement>({ kind: 'refine', design });
  await out.write(
    options.json ? toJson({ ...study, fitted: design.fitted }) : refineText(design, study, options.units),
  );
}
