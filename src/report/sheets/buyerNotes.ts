/** What stands at the foot of the buyer's sheet: what was assumed, and how sure it is. */
import { gaugeLabel } from '../../words/labels.js';
import { capital, plainText } from '../../words/plainText.js';
import type { EstimateResult } from '../../study/estimate/result.js';
import { format, type UnitSystem } from '../../units/index.js';
import { restsOn } from '../../words/restsOn.js';
import { windWords } from '../../words/windWords.js';
import { headlineOf, headlineText, rangeText, wordsOf } from '../../words/quantityWords.js';

/** Fire, wood and weather that the numbers stand on. */
export function assumedText(result: EstimateResult, system: UnitSystem): string {
  const { design } = result;
  const { site, wood, fire } = design;
  const reached = result.warmUp?.gauge_s != null;
  return [
    reached
      ? `A full fire of ${format('power', fire.heat, system)} until the ${gaugeLabel(design.gauge)} reads ` +
        `${format('temperature', fire.target, system)}, then just what holds it.`
      : `A full fire of ${format('power', fire.heat, system)} throughout.`,
    `${capital(plainText(wood.kind, 30))} at ${format('share', wood.moisture)} moisture.`,
    `Outdoors ${format('temperature', site.air, system)}, ${format('length', site.altitude, system, { unit: system === 'si' ? 'm' : 'ft' })} up` +
      `${site.sun > 0 ? ', in the sun' : ''}${site.rain > 0 ? ', in rain' : ''}.`,
    `Wind ${windWords(design, (kind, si) => format(kind, si, system))}.`,
  ].join(' ');
}

const SURE = ['gauge_s', 'soaked_s', 'hold.wood_kg_per_s'];

/** How far the numbers may be off, and what they were checked against. */
export function sureText(
  { design, spread, estimates }: EstimateResult,
  alone: boolean,
  several: boolean,
  system: UnitSystem,
): string {
  const measured = restsOn(design, system, true);
  const known =
    (measured === null ? '' : `${measured} `) +
    'Heat and air add up, and the physics is checked against published examples and measured room fires; no wood-fired pit with ' +
    'open measurements was found to check a whole one against.';
  if (!spread) {
    return (
      `${estimates.length} things no handbook settles, such as the share of the fire's heat that leaves as radiation, are estimates ` +
      `with a spread${alone ? '' : ', listed behind'}. ${known}`
    );
  }
  const told = SURE.flatMap((key) => {
    const number = spread.numbers.find((each) => each.key === key);
    if (!number || number.p10 === null) return [];
    const quantity = headlineOf(key, design);
    const middle = headlineText(quantity, number.p50, system);
    return [`${wordsOf(quantity, 'alone')} ${middle} (${rangeText(number, design, system)})`];
  });
  return (
    `The middle of ${spread.cases} cases, with ${estimates.length} estimates drawn from their spreads, and what 8 of 10 lie in: ` +
    `${told.join('; ')}. ${several ? 'Options are held against each other with every estimate at its likeliest. ' : ''}${known}`
  );
}
