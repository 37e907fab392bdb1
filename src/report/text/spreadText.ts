import { headlineOf, headlineText, rangeText, wordsOf } from '../../words/quantityWords.js';
import { unknownLabel } from '../../words/unknownLabels.js';
import { fittedTogether } from '../../study/spread/correlate.js';
import type { EstimateResult } from '../../study/estimate/result.js';
import type { UnitSystem } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { table } from './table.js';

const INDENT = { indent: '  ' };
/** Numbers whose causes are told, and how many of each. */
const TOLD = ['gauge_s', 'soaked_s', 'hold.wood_kg_per_s', 'hold.endToEnd_K', 'hold.stackBase_Pa'];
const CAUSES = 3;
/** A cause below this share is not worth a line. */
const LEAST = 0.05;

/** Each headline number beside the range that eight cases of ten lie in. */
export function spreadTable({ design, spread }: EstimateResult, system: UnitSystem): string {
  return table(
    ['', 'estimate', 'middle case', '8 of 10 cases'],
    spread!.numbers.map((each) => {
      const quantity = headlineOf(each.key, design);
      return [
        wordsOf(quantity, 'alone'),
        headlineText(quantity, each.estimate, system),
        headlineText(quantity, each.p50, system),
        rangeText(each, design, system),
      ];
    }),
    INDENT,
  );
}

/** How many cases lack a number; null when all have all. */
export function missingText({ design, spread }: EstimateResult): string | null {
  const some = spread!.numbers.filter(({ missing }) => missing > 0);
  if (some.length === 0) return null;
  const told = some.filter(({ key }) => TOLD.includes(key) || key === 'full.thermometer_K');
  const counts = [...new Set(told.map(({ missing }) => missing))];
  const lacking = (count: number) =>
    told.filter(({ missing }) => missing === count).map(({ key }) => `'${wordsOf(headlineOf(key, design), 'alone')}'`);
  return counts.map((count) => `Missing in ${count} of ${spread!.cases} cases: ${listed(lacking(count))}.`).join(' ');
}

/** What the shares of the causes add up to. */
export function sharesText({ design }: EstimateResult): string {
  return fittedTogether([design])
    ? 'each as if it moved alone: what was fitted to a log moves together, so that they need not come to 100 %'
    : 'about 100 % together';
}

/** The unknowns that move the main numbers most, with what each does; null: too few cases to tell. */
export function causesText({ design, spread }: EstimateResult, system: UnitSystem): string | null {
  const groups = TOLD.flatMap((key) => {
    const number = spread!.numbers.find((each) => each.key === key);
    const causes = (number?.causes ?? []).filter(({ share }) => share >= LEAST).slice(0, CAUSES);
    if (causes.length === 0) return [];
    const quantity = headlineOf(key, design);
    const rows = causes.map(({ path, share, atLow, atHigh }) => [
      `${Math.round(100 * share)} %`,
      unknownLabel(path),
      `${headlineText(quantity, atLow, system)} -> ${headlineText(quantity, atHigh, system)}`,
    ]);
    return [
      `  ${wordsOf(quantity, 'alone')}\n${table(['', '', ''], rows, { indent: '    ', align: ['right', 'left', 'left'] })}`,
    ];
  });
  return groups.length > 0 ? groups.join('\n') : null;
}
