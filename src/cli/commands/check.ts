import { geometryOf } from '../../design/geometryOf.js';
import { checkText } from '../../report/text/checkText.js';
import { weightOf, weightWarnings } from '../../study/carry/weight.js';
import { version } from '../../version.js';
import { loadDesign } from '../loadDesign.js';
import { refuseClashes } from '../output.js';
import { openOutputs, writeOutputs, type OutputOptions } from '../outputs.js';

/** Reads a design and shows it as read, with what its parts come to; exit 3 and every fault when it can't be built. */
export async function run(path: string, options: OutputOptions): Promise<void> {
  refuseClashes(path, { '--output': options.output });
  const loaded = await loadDesign(path);
  const outputs = openOutputs(options);
  const { design, defaults } = loaded;
  const geometry = geometryOf(design);
  const weight = design.trailer || design.loads ? weightOf(design, geometry) : undefined;
  const warnings = [...loaded.warnings, ...(weight ? weightWarnings(weight, design) : [])];
  const checked = { design, defaults, warnings, geometry, weight };
  const ways = loaded.options.map(({ name, changes, also, design: built }) => ({
    name,
    changes: [...changes, ...also],
    design: built,
  }));
  const named = ways.length > 0 ? { options: ways } : {};
  await writeOutputs(outputs, options, {
    json: () => ({ schema: 1, tool: { name: 'pitwright', version }, ...checked, ...named }),
    text: async (units) => checkText({ ...checked, options: loaded.options }, units),
  });
}
