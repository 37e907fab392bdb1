/** Whatever an option is set to, at nothing or at its utmost, no text prints a number that is none. */
import { expect } from 'vitest';
import { geometryOf } from '../../src/design/geometryOf.js';
import { readDesign } from '../../src/design/read.js';
import { curvesCsv } from '../../src/report/csv.js';
import { checkText } from '../../src/report/text/checkText.js';
import { coldSmokeText } from '../../src/report/text/coldSmokeText.js';
import { compareText } from '../../src/report/text/compareText.js';
import { cookCsv, cookText } from '../../src/report/text/cookText.js';
import { estimateText } from '../../src/report/text/estimateText.js';
import { compare } from '../../src/study/compare/compare.js';
import { USUAL_SETTINGS } from '../../src/study/compare/studyOption.js';
import { coldSmoke } from '../../src/study/events/coldSmoke.js';
import { followCook } from '../../src/study/events/cook.js';
import { PLAIN } from '../design/designFiles.js';

const COOK = 'cook: { load: [{ name: brisket, mass: 14 lb, area: 2.5 ft^2 }], tend: 1 h, dieDown: 30 min }\n';
const NO_GAPS = (text: string) => text.replace(/doorGap: .*/g, 'doorGap: 0 in^2');
export const DAMPER = ['wall: 11 ga', 'wall: 11 ga, damper: 0 %'];
const SHUT = ['open: 100 %', 'open: 0 %'];

export const EXTREMES: [string, string[][], ((text: string) => string)?][] = [
  ['damper shut', [DAMPER]],
  ['damper next to shut', [['wall: 11 ga', 'wall: 11 ga, damper: 0.1 %']]],
  ['intakes shut', [SHUT]],
  ['both shut', [DAMPER, SHUT]],
  ['everything shut', [DAMPER, SHUT], NO_GAPS],
  ['damper shut and no gaps', [DAMPER], NO_GAPS],
  ['no gaps', [], NO_GAPS],
  ['still, dry air', [['wind: 5 mph', 'wind: 0 mph\n  humidity: 0 %']]],
  ['storm', [['wind: 5 mph', 'wind: 30 m/s\n  humidity: 100 %\n  rain: 100 %']]],
  ['wind against the draft', [['wind: 5 mph', 'wind: 30 m/s\n  windPressure: { intake: -2, stack: 2 }']]],
  ['bone-dry wood', [['moisture: 20 %', 'moisture: 0 %']]],
  ['wet wood', [['moisture: 20 %', 'moisture: 60 %']]],
  ['no radiation from the fire', [['rise: 10 min', 'rise: 1 s\n  radiant: 0 %\n  soot: 0 per m']]],
  ['no splits', [['rise: 10 min', 'rise: 10 min\n  splits: { every: 0 min, charcoal: 0 % }']]],
  ['rare splits', [['rise: 10 min', 'rise: 2 h\n  splits: { every: 6 h, flame: 1 min, charcoal: 90 %, glow: 6 h }']]],
  ['smallest fire', [['70,000 BTU/h', '500 W']]],
  ['largest fire', [['70,000 BTU/h', '500 kW']]],
];

/** No text or table of a pit so set prints a number that is none. */
export function expectNumbers(_: string, changes: string[][], change: (text: string) => string = (text) => text): void {
  const text = changes.reduce(
    (before, [from, to]) => {
      expect(before).toContain(from);
      return before.replace(from, () => to);
    },
    change(PLAIN + COOK),
  );
  const read = readDesign(text, { fileName: 'pit.yaml' });
  if (read.faults) throw new Error(JSON.stringify(read.faults));
  const { design, defaults, warnings } = read;
  const comparison = compare(
    [PLAIN + COOK, text].map((each, i) => ({
      label: ['plain', 'extreme'][i],
      changes: [],
      design: readDesign(each, { fileName: 'pit.yaml' }).design!,
    })),
    USUAL_SETTINGS,
  );
  const result = comparison.options[1].result;
  const cook = followCook(design);
  const printed = (['shop', 'si'] as const).flatMap((system) => [
    estimateText(result, system),
    estimateText(result, system, { full: true }),
    curvesCsv(result, system),
    checkText({ design, defaults, warnings, geometry: geometryOf(design) }, system),
    coldSmokeText(design, coldSmoke(design), system),
    compareText(comparison, system),
    ...(cook ? [cookText(design, cook, system), cookCsv(cook, system)] : []),
  ]);
  for (const each of printed) expect(each).not.toMatch(/NaN|Infinity|undefined|\bnull\b|\[object|e\+\d\d/);
  for (const { value, limits } of result.warnings) {
    for (const number of [value, limits?.low, limits?.high]) {
      if (typeof number === 'number') expect(Number.isFinite(number)).toBe(true);
    }
    if (limits?.low !== undefined && limits.high !== undefined) expect(limits.low).toBeLessThanOrEqual(limits.high);
  }
}
