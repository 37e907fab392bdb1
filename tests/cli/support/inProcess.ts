import { geometryOf } from '../../../src/design/geometryOf.js';
import { readDesign } from '../../../src/design/read.js';
import { curvesCsv } from '../../../src/report/csv.js';
import { checkText } from '../../../src/report/text/checkText.js';
import { estimateText } from '../../../src/report/text/estimateText.js';
import { weightOf, weightWarnings } from '../../../src/study/carry/weight.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { cooked } from '../../../src/study/events/cooked.js';

/** What `estimate --full`, `estimate --csv -` and `check` print of a design; tests of both hold the command to that. */
export interface Told {
  full: string;
  csv: string;
  check: string;
}

const known = new Map<string, Told>();

/** The command's own texts made in this process, once for all tests of a worker: a process of its own takes ten times as long. */
export function toldOf(text: string): Told {
  const told = known.get(text) ?? tell(text);
  known.set(text, told);
  return told;
}

function tell(text: string): Told {
  const read = readDesign(text, { fileName: 'pit.yaml' });
  if (read.faults) throw new Error(JSON.stringify(read.faults));
  const { design, warnings } = read;
  const geometry = geometryOf(design);
  const weight = design.trailer || design.loads ? weightOf(design, geometry) : undefined;
  const heavy = weight ? weightWarnings(weight, design) : [];
  const solved = estimate(design, { further: (solution) => cooked(solution, true) });
  const result = { ...solved, warnings: [...warnings, ...solved.warnings] };
  return {
    full: estimateText(result, 'shop', { full: true }),
    csv: curvesCsv(result, 'shop'),
    check: checkText({ ...read, warnings: [...warnings, ...heavy], geometry, weight }, 'shop'),
  };
}
