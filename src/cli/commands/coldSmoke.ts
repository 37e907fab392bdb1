import { rangeOf } from '../../design/fields.js';
import { range, type Range } from '../../design/ranges.js';
import type { ColdSmoke } from '../../study/events/coldSmoke.js';
import { parseQuantity } from '../../units/index.js';
import { version } from '../../version.js';
import { apart } from '../apart.js';
import { exit, Stop } from '../exit.js';
import { loadDesign } from '../loadDesign.js';
import { refuseClashes } from '../output.js';
import { openOutputs, writeOutputs, type OutputOptions } from '../outputs.js';
import { progress, tellWarnings } from '../stderr.js';

/** Limits of a cold smoke as typed, with their units. */
export interface ColdSmokeOptions extends OutputOptions {
  ceiling?: string;
  least?: string;
  air?: string;
}

/**
 * Whether a pit can smoke cold on its site's day: the smallest steady fire, and what the thermometers read under it.
 */
export async function run(path: string, options: ColdSmokeOptions): Promise<void> {
  refuseClashes(path, { '--output': options.output });
  const loaded = await loadDesign(path);
  const { wood } = loaded.design;
  const air = quantity('--air', options.air, rangeOf('site.air'));
  const ceiling = quantity('--ceiling', options.ceiling, range('temperature', '40 °F', '200 °F'));
  const least = quantity('--least', options.least, range('power', '50 W', '50 kW'), wood.heat);
  const design = air === undefined ? loaded.design : onADayOf(loaded.design, air);
  const outputs = openOutputs(options);
  tellWarnings(loaded.warnings);
  progress('computing');
  const cold = await apart<ColdSmoke>({ kind: 'coldSmoke', design, options: { ceiling, least } });
  const { warnings } = loaded;
  await writeOutputs(outputs, options, {
    json: () => ({ schema: 1, tool: { name: 'pitwright', version }, design, warnings, coldSmoke: cold }),
    text: async (units) => (await import('../../report/text/coldSmokeText.js')).coldSmokeText(design, cold, units),
  });
}

/** Surroundings that had the air's temperature go with it. */
function onADayOf<T extends { site: { air: number; surroundings: number } }>(design: T, air: number): T {
  const { site } = design;
  const surroundings = site.surroundings === site.air ? air : site.surroundings;
  return { ...design, site: { ...site, air, surroundings } };
}

function quantity(option: string, written: string | undefined, allowed: Range, woodHeat = 1): number | undefined {
  if (written === undefined) return undefined;
  const { kind, min, max, low, high } = allowed;
  const read = parseQuantity(kind, written);
  if (!read.ok) throw new Stop(exit.wrongUsage, `${option} '${written}' ${read.problem}; allowed: ${read.allowed}.`);
  const si = read.wood ? read.si * woodHeat : read.si;
  if (!(si >= min && si <= max)) {
    throw new Stop(exit.wrongUsage, `${option} '${written}' is out of range; allowed: ${low} to ${high}.`);
  }
  return si;
}
