import { geometryOf } from '../../design/geometryOf.js';
import { checkText } from '../../report/text/checkText.js';
import { toJson } from '../../report/json.js';
import { weightOf, weightWarnings } from '../../study/carry/weight.js';
import type { UnitSystem } from '../../units/index.js';
import { version } from '../../version.js';
import { loadDesign } from '../loadDesign.js';
import { openSink, refuseClashes } from '../output.js';

export interface CheckOptions {
  json?: boolean;
  output?: string;
  units: UnitSystem;
}

/** Reads a design and shows it as read, with what its parts come to; exit 3 and every fault when it can't be built. */
export async function run(path: string, options: CheckOptions): Promise<void> {
  refuseClashes(path, { '--output': options.output });
  const loaded = await loadDesign(path);
  const out = openSink(options.output ?? '-');
  const { design, defaults } = loaded;
  const geometry = geometryOf(design);
  const weight = design.trailer || design.loads ? weightOf(design, geometry) : undefined;
  const warnings = [...loaded.warnings, ...(weight ? weightWarnings(weight, design) : [])];
  if (options.json) {
    const tool = { name: 'pitwright', version };
    const ways = loaded.options.map(({ name, changes, also, design: built }) => ({
      name,
      changes: [...changes, ...also],
      design: built,
    }));
    const named = ways.length > 0 ? { options: ways } : {};
    await out.write(toJson({ schema: 1, tool, design, defaults, warnings, geometry, weight, ...named }));
  } else {
    const checked = { design, defaults, warnings, geometry, weight, options: loaded.options };
    await out.write(checkText(checked, options.units));
  }
}
