/** The answer of size in words: the drawing as it stands, what is chosen, or why nothing is. */
import { stringify } from 'yaml';
import { capital, plainText } from '../../words/plainText.js';
import { LIMIT, type LimitKey } from '../../study/size/limits.js';
import type { SizeChoice, SizeResult } from '../../study/size/size.js';
import { format, type UnitSystem } from '../../units/index.js';
import { against, constraintWords, inMoney } from './sizeCosts.js';
import { listed } from '../../units/listed.js';
import { throatWords } from './sizeThroats.js';
import { bullet, note, paragraph } from './paragraphs.js';
import { outWords, percent } from './sizeLimits.js';

/** Intakes of a choice as a shop says them: 3 disc 2 in. */
export const ventsName = ({ intakes: { kind, count, kept }, fields }: SizeChoice): string => {
  if (kept) return 'intakes as drawn';
  const { diameter, width, height } = fields.firebox.intakes[0] as Record<string, string>;
  return `${count} ${kind} ${diameter ?? `${width} x ${height}`}`;
};

/** The design as drawn: good as it stands, or what is wrong with it. */
export function drawnWords(result: SizeResult, system: UnitSystem): string {
  const { asDrawn } = result;
  if (asDrawn.good) {
    return 'The drawing as it stands is good: it keeps within every limit and works in cold, wind and heat. Nothing has to change.';
  }
  const { margins, missed, checks, failed } = asDrawn;
  const out = margins.filter(({ key, margin }) => margin < 0 && !LIMIT[key].told);
  const fails = checks.weather.filter(({ works }) => !works).map(({ words, why }) => ({ words, why: why.join(', ') }));
  const weatherOf = (why: string) => fails.filter((each) => each.why === why).map(({ words }) => words);
  return `The drawing as it stands: ${[
    ...out.map((each) => outWords(each, system)),
    ...failed,
    ...[...new Set(fails.map(({ why }) => why))].map((why) => `${why} in other weather (${weatherOf(why).join('; ')})`),
    ...missed.map((key) => `not ${constraintWords(result, key, system)}`),
  ].join('; ')}.`;
}

/** How the vents and the stack of the drawing do. */
export function drawnText(result: SizeResult, system: UnitSystem): string {
  return paragraph(plainText(drawnWords(result, system), 900));
}

/** The choice from stock, what it does against the drawing, and the fields to write. */
export function chosenText(result: SizeResult, choice: SizeChoice, system: UnitSystem): string {
  const { fields, intakes, weighed } = choice;
  const held = `it holds with the intakes ${percent(intakes.holdOpening!)} open and ${format('massFlow', weighed.wood_kg_per_s!, system, { digits: 3 })} of wood`;
  const tells = [
    `${held}; its stack ends ${format('length', weighed.overLid_m, system)} over the lid.`,
    ...againstDrawing(result, choice, system),
    ...throatWords(result, choice, system),
  ].join(' ');
  return [
    `${result.asDrawn.good ? 'THE BEST OF ALL, to compare' : 'CHOSEN'}: ${choiceWords(result, choice, system)}`,
    note(capital(tells)),
    '  In the design file, with the rest of each part as it is:',
    ...fieldLines(fields, choice).map((line) => `    ${line}`),
  ].join('\n');
}

/** What a choice buys and costs against the drawing, in a sentence; none where it does neither. */
export function againstDrawing(result: SizeResult, choice: SizeChoice, system: UnitSystem): string[] {
  const { design, asDrawn, payback } = result;
  const { costs, saves } = against(
    { ...choice, height_m: choice.stack.height_m },
    { ...asDrawn, height_m: design.stacks[0].height },
    system,
  );
  const versus = [
    ...(saves.length > 0 ? [`buys ${listed(saves)}`] : []),
    ...(costs.length > 0 ? [`costs ${listed(costs)}`] : []),
  ];
  const money = inMoney(choice, asDrawn, payback, result, system);
  return versus.length > 0 ? [`Against the drawing it ${versus.join(', and ')}${money}.`] : [];
}

/** A choice in a line: vents, throat and stack. */
export function choiceWords({ design }: SizeResult, choice: SizeChoice, system: UnitSystem): string {
  const { stack, throat } = choice;
  const each = design.stacks.length > 1 ? ' each' : '';
  const area = format('area', throat.area_m2, system);
  const name = `${plainText(stack.name)}, ${format('length', stack.height_m, system)} high${each}`;
  return `${ventsName(choice)}; throat ${area}${throat.kept ? ' as drawn' : ''}; ${name}`;
}

/** The fields of a choice as lines of YAML, what stays as drawn left out; all where no choice is given. */
function fieldLines(
  { firebox, throat, stacks }: SizeChoice['fields'],
  kept?: Pick<SizeChoice, 'throat' | 'stack'>,
): string[] {
  const flow = (value: unknown) => stringify(value, { collectionStyle: 'flow', lineWidth: 0 }).trim();
  return [
    'firebox:',
    `  intakes: ${flow(firebox.intakes)}`,
    ...(kept?.throat.kept ? [] : [`throat: ${flow(throat)}`]),
    ...(kept?.stack.kept ? [] : [`stacks: ${flow(stacks)}`]),
  ];
}

/** Why nothing from stock will do. */
export function notChosen(result: SizeResult): string {
  return [
    'NOTHING FROM STOCK KEEPS WITHIN EVERY LIMIT',
    ...whyNothingFits(result).map((text) => bullet(plainText(text, 600))),
    ...(result.choices.length > 0 ? [note('What comes nearest is shown below.')] : []),
  ].join('\n');
}

const RULED_OUT: Record<string, string> = {
  air: 'give the full fire too little air however large the intakes',
  heat: 'need more than the full fire to hold the target',
  stackSpeed: 'are too wide: the gas hardly moves in them',
  holdOpening: 'leave no opening at which the fire that holds burns with the air of a clean one',
  draft: 'never settle into a draft',
  vents: 'match no vents from stock that fit the firebox face',
};

const REMEDIES: Partial<Record<LimitKey, string>> = {
  air: 'plan a smaller full fire',
  heat: 'plan a larger full fire, or insulate',
  holdOpening:
    'the full fire and the one that holds are far apart, or door gaps feed the small one: close the firebox door better, ' +
    'plan a smaller full fire, or allow the small one more air (--clean-air)',
  stackSpeed: 'plan another full fire, or less wind on the intakes',
  intakeSpeed: 'let larger vents onto the firebox, or plan less wind on them',
  throatSpeed: 'let parts overlap more, so that a larger throat fits',
  smoke: 'close the door gaps, or let the stack begin higher',
  draft: 'take a taller or wider stack, or plan a smaller full fire',
  gapSmoke: 'close the door gaps, or let the stack begin higher',
  backDraft: 'set the intakes lower and the stack higher',
  soaks: 'plan a larger full fire, or insulate',
  splits: 'lay on smaller splits',
};

/** What stands in the way when nothing fits, a clause a line, each with what would mend it. */
export function whyNothingFits({ design, wanted, choices }: SizeResult): string[] {
  const ashDoor = (design.firebox.ashDoor?.open ?? 0) > 0 ? 'shut the ash door while it holds, ' : '';
  const ruled = Object.entries(wanted.ruledOut)
    .sort((a, b) => b[1] - a[1])
    .map(([by, count]) => {
      const remedy = by === 'holdOpening' ? ashDoor + REMEDIES[by] : REMEDIES[by as LimitKey];
      return `${count} of ${wanted.stacksTried} stacks ${RULED_OUT[by] ?? by}${remedy ? `: ${remedy}` : ''}`;
    });
  if (wanted.stacksTried === 0) {
    const where = design.size?.onHand ? 'No tube on hand' : 'No tube from stock';
    return [
      `${where} is long enough for where the stack has to end, and at most half as wide as the part that it stands on: ask less of its height, or list more`,
    ];
  }
  const [nearest] = choices;
  const missed = (nearest?.margins ?? [])
    .filter(({ margin }) => margin < 0)
    .map((margin) => {
      const remedy = REMEDIES[margin.key];
      return `nearest, ${nearest.stack.name}: ${outWords(margin, 'shop')}${remedy ? `: ${remedy}` : ''}`;
    });
  return [...missed, ...(nearest?.failed ?? []).map((why) => `nearest, ${nearest.stack.name}: ${why}`), ...ruled];
}
