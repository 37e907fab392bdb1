import type { NamedChart } from '../charts/estimateCharts.js';
import { toJson } from '../report/json.js';
import type { UnitSystem } from '../units/index.js';
import type { PictureFormat } from './drawCharts.js';
import { openFolder, openSink, standardOutput, type Sink } from './output.js';

/** The forms in which a result is asked for. */
export interface OutputOptions {
  json?: boolean;
  output?: string;
  csv?: string;
  charts?: string;
  format?: PictureFormat;
  units: UnitSystem;
}

interface Outputs {
  out: Sink;
  csv?: Sink;
}

/** Opens all that is to be written, the folder of charts first: no long run ends at a file that can't be had. */
export function openOutputs({ output, csv, charts }: OutputOptions): Outputs {
  if (charts !== undefined) openFolder(charts);
  const out = openSink(output ?? '-');
  return csv === undefined ? { out } : { out, csv: openSink(csv) };
}

/** How each form is made; the code that makes it is loaded when it is asked for. */
interface Forms {
  json: () => unknown;
  text: (units: UnitSystem) => Promise<string>;
  csv?: (units: UnitSystem) => Promise<string>;
  charts?: () => Promise<NamedChart[]>;
}

/** Writes a result in every form asked for. `--csv -` asks for the table on standard output, in place of the text. */
export async function writeOutputs({ out, csv }: Outputs, options: OutputOptions, forms: Forms): Promise<void> {
  const { json, charts, format, units } = options;
  if (json) await out.write(toJson(forms.json()));
  else if (csv !== standardOutput || out !== standardOutput) await out.write(await forms.text(units));
  if (csv && forms.csv) await csv.write(await forms.csv(units));
  if (charts === undefined || !forms.charts) return;
  const { drawInto } = await import('./drawCharts.js');
  await drawInto(charts, await forms.charts(), format);
}
