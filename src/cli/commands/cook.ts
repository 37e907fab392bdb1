import { toJson } from '../../report/json.js';
import type { CookResult } from '../../study/events/cook.js';
import type { UnitSystem } from '../../units/index.js';
import { version } from '../../version.js';
import { apart } from '../apart.js';
import { exit, Stop } from '../exit.js';
import { loadDesign } from '../loadDesign.js';
import { openFolder, openSink, refuseClashes, refuseMixture, standardOutput } from '../output.js';
import { progress, tellWarnings } from '../stderr.js';

export interface CookOptions {
  json?: boolean;
  output?: string;
  csv?: string;
  charts?: string;
  units: UnitSystem;
}

/** The day that a design's cook block describes, followed from lighting to the last warmth. */
export async function run(path: string, options: CookOptions): Promise<void> {
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
  if (options.charts !== undefined) openFolder(options.charts);
  const out = openSink(options.output ?? '-');
  const csv = options.csv === undefined ? undefined : openSink(options.csv);

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
  if (options.json) {
    await out.write(toJson({ schema: 1, tool: { name: 'pitwright', version }, design, warnings, cook }));
  } else if (csv !== standardOutput || out !== standardOutput) {
    await out.write((await import('../../report/text/cookText.js')).cookText(design, cook, options.units));
  }
  if (csv) await csv.write((await import('../../report/text/cookText.js')).cookCsv(cook, options.units));
  if (options.charts !== undefined) {
    const { cookCharts } = await import('../../charts/cookChart.js');
    const { drawInto } = await import('../drawCharts.js');
    await drawInto(options.charts, cookCharts(cook, design));
  }
}
