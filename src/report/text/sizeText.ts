import { stringify } from 'yaml';
import { rangeOf } from '../../words/quantityWords.js';
import { capital, plainText } from '../../words/plainText.js';
import { COUNTED, LIMIT, limitOf, type LimitKey, type Margin } from '../../study/size/limits.js';
import type { SizeChoice, SizeResult } from '../../study/size/size.js';
import { format, type UnitSystem } from '../../units/index.js';
import { CAUTIONS } from '../../words/cautions.js';
import { sayIn } from '../../words/quantity.js';
import { restsOn } from '../../words/restsOn.js';
import { against, constraintLines, constraintWords } from './sizeCosts.js';
import { listed } from '../../units/listed.js';
import { heightLines } from './sizeHeights.js';
import { table, textTable, type TableData } from './table.js';
import { bullet, heading, note, paragraph } from './paragraphs.js';

const INDENT = { indent: '  ' };

/**
 * Intakes, throat and stack from stock, as text for a builder, at most 98 columns wide but for names: the answer, what is asked for
 * and its cost, limits and the first choices; in full every table.
 */
export function sizeText(result: SizeResult, system: UnitSystem, { full = false } = {}): string {
  const { design, wanted, tool, warnings, choices, chosen } = result;
  const say = sayIn(system);
  const fire = `${say('power', wanted.fullFire_W)}, held at ${say('temperature', wanted.target_K)}`;
  const best = choices[0];
  const asked = constraintLines(result, (choice) => choiceWords(result, choice, system), system);
  const sections = [
    heading(`${plainText(design.name)}: intakes, throat and stack for ${fire}`, tool),
    ...measured(restsOn(design, system)),
    drawnText(result, system),
    chosen === null ? notChosen(result) : chosenText(result, choices[chosen], system),
    ...(asked.length > 0 ? [['WHAT IS ASKED FOR, and what it costs', ...asked.map(bullet)].join('\n')] : []),
    ...heightsText(result, system),
    ...(warnings.length > 0
      ? [`WARNINGS\n${warnings.map(({ where, message }) => bullet(plainText(`${where}: ${message}`, 600))).join('\n')}`]
      : []),
    ...(best ? [marginsText(result, best, system, full)] : []),
    ...(choices.length > 0 ? [choicesText(result, system, full)] : []),
    ...(best && (full || best.checks.weather.some(({ works }) => !works)) ? [weatherText(result, best, system)] : []),
    ...(result.curves && full ? [ventText(result, system)] : []),
    ...(full ? [rulesText(result)] : []),
    ...(full ? [] : [note('--full adds every limit and choice, other weather, the vents in use and rules of thumb.')]),
    paragraph(CAUTIONS),
  ];
  return `${sections.join('\n\n')}\n`;
}

function heightsText({ heights }: SizeResult, system: UnitSystem): string[] {
  const lines = heightLines(heights, system);
  return lines.length > 0
    ? [['OTHER HEIGHTS, against this size while it holds with a clean fire', ...lines.map(bullet)].join('\n')]
    : [];
}

function measured(text: string | null): string[] {
  return text === null ? [] : [paragraph(text)];
}

const ventsName = ({ intakes: { kind, count, kept }, fields }: SizeChoice): string => {
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
  const fails = checks.weather.filter(({ works }) => !works).map(({ words, why }) => `in ${words}: ${why.join(', ')}`);
  return `The drawing as it stands: ${[
    ...out.map(
      ({ key, value }) => `${LIMIT[key].words} ${valueText(key, value, system)}, wanted ${bandText(key, system)}`,
    ),
    ...failed,
    ...fails,
    ...missed.map((key) => `not ${constraintWords(result, key, system)}`),
  ].join('; ')}.`;
}

function drawnText(result: SizeResult, system: UnitSystem): string {
  return paragraph(plainText(drawnWords(result, system), 900));
}

/** What the choices are ranked by. */
export const RANKED_BY =
  'what keeps within every limit, works in more of the weather and has a quarter in hand; then what the wind moves least and ' +
  'what burns less wood, where a tenth counts alike; then the lighter stack';

function chosenText(result: SizeResult, choice: SizeChoice, system: UnitSystem): string {
  const { fields, intakes, weighed } = choice;
  const { design, asDrawn } = result;
  const { costs, saves } = against(
    { ...choice, height_m: choice.stack.height_m },
    { ...asDrawn, height_m: design.stacks[0].height },
    system,
  );
  const versus = [
    ...(saves.length > 0 ? [`buys ${listed(saves)}`] : []),
    ...(costs.length > 0 ? [`costs ${listed(costs)}`] : []),
  ];
  const held = `it holds with the intakes ${percent(intakes.holdOpening!)} open and ${format('massFlow', weighed.wood_kg_per_s!, system, { digits: 3 })} of wood`;
  const tells = [
    `${held}; its stack ends ${format('length', weighed.overLid_m, system)} over the lid.`,
    ...(versus.length > 0 ? [`Against the drawing it ${versus.join(', and ')}.`] : []),
  ].join(' ');
  return [
    `${result.asDrawn.good ? 'THE BEST OF ALL, to compare' : 'CHOSEN'}: ${choiceWords(result, choice, system)}`,
    note(capital(tells)),
    '  In the design file, with the rest of each part as it is:',
    ...fieldLines(fields, choice).map((line) => `    ${line}`),
  ].join('\n');
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
export function fieldLines(
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

function notChosen(result: SizeResult): string {
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
    .map(({ key, value }) => {
      const remedy = REMEDIES[key];
      return `nearest, ${nearest.stack.name}: ${LIMIT[key].words} ${valueText(key, value, 'shop')}, wanted ${bandText(key, 'shop')}${remedy ? `: ${remedy}` : ''}`;
    });
  return [...missed, ...(nearest?.failed ?? []).map((why) => `nearest, ${nearest.stack.name}: ${why}`), ...ruled];
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function valueText(key: LimitKey, value: number, system: UnitSystem): string {
  if (LIMIT[key].unit === 'm/s') return speed(value, system);
  if (key === 'holdOpening') return percent(value);
  if (key === 'smoke' || key === 'gapSmoke') return `${Number((100 * value).toPrecision(2))} %`;
  if (key === 'draft') return format('pressure', value, system, { digits: 2 });
  if (LIMIT[key].high === 0) return value === 0 ? 'none' : String(value);
  return value.toPrecision(3);
}

function speed(value: number, system: UnitSystem): string {
  return format('speed', value, system, { digits: 2, ...(system === 'shop' ? { unit: 'ft/s' } : {}) });
}

function bandText(key: LimitKey, system: UnitSystem): string {
  const { low, high } = LIMIT[key];
  if (high === 0) return 'none';
  if (low === 0) return 'above zero';
  if (low !== undefined && high !== undefined) {
    return rangeOf(valueText(key, low, system), valueText(key, high, system));
  }
  return low !== undefined ? `at least ${valueText(key, low, system)}` : `at most ${valueText(key, high!, system)}`;
}

function marginText({ key, margin }: Margin): string {
  const { low, high, told } = LIMIT[key];
  if (low === 0 || high === 0) return margin >= 0 ? 'in' : told ? 'told' : 'OUT';
  return margin < 0 ? `OUT ${percent(Math.min(-margin, 9.99))}` : percent(Math.min(margin, 9.99));
}

/** What an estimate warns of and has no number of its own, where all of it is well: one row. */
const ALL_ELSE = 'what else an estimate warns of';

function marginsText(
  { asDrawn, wanted, chosen }: SizeResult,
  choice: SizeChoice,
  system: UnitSystem,
  full: boolean,
): string {
  const of = (margins: readonly Margin[], key: LimitKey) => margins.find((each) => each.key === key);
  const cells = (margin: Margin | undefined) =>
    margin ? [bareDraft(valueText(margin.key, margin.value, system)), marginText(margin)] : ['-', ''];
  const sources = wanted.limits.map(({ source }) => source);
  const draftUnit = format('pressure', 1, system).replace(/^\S+ /, '');
  const bareDraft = (text: string) => text.replace(` ${draftUnit}`, '');
  const rows = wanted.limits.map(({ key, words }) => ({
    key,
    sized: of(choice.margins, key),
    cells: [
      key === 'draft' ? `${words}, ${draftUnit}` : words,
      bandText(key, system),
      ...cells(of(choice.margins, key)),
      ...cells(of(asDrawn.margins, key)),
    ],
  }));
  const clean = (key: LimitKey) =>
    COUNTED.includes(key) && [choice, asDrawn].every(({ margins }) => (of(margins, key)?.margin ?? 0) >= 0);
  const shown = full ? rows : rows.filter(({ key }) => !clean(key));
  const rest = shown.length < rows.length ? [[ALL_ELSE, 'none', 'none', 'in', 'none', 'in']] : [];
  return [
    `LIMITS of the ${chosen === null ? 'nearest' : 'chosen'} size, beside the design as drawn; the share of the limit that is in hand`,
    table(['', 'wanted', 'size', 'margin', 'as drawn', 'margin'], [...shown.map((row) => row.cells), ...rest], INDENT),
    ...asDrawn.failed.map((why) => note(`As drawn: ${why}.`)),
    ...toldLines(choice),
    note(
      `Limits are ${sources.includes('common practice, no source') ? 'common practice without a source, or our estimates' : 'estimates'}. ` +
        `'Holding' means with air for ${wanted.cleanAir.ratio} times what the wood needs (estimate, ` +
        `${wanted.cleanAir.low} to ${wanted.cleanAir.high}; --clean-air changes it). 'Just lit' is gas over steel still cold.`,
    ),
  ].join('\n');
}

/** What no size mends, as an estimate of the choice warns of it. */
function toldLines({ warned }: SizeChoice): string[] {
  const told = (warned ?? []).filter(({ code }) => LIMIT[limitOf(code)].told);
  return told.map(({ where, message }) => note(`No size mends this: ${plainText(`${where}: ${message}`, 600)}.`));
}

/** What the columns of the choices are. */
export const COLUMNS =
  "'hold': intakes open while holding. 'wind': air with wind on the intakes over that with them in its lee. Then wood to hold, and " +
  'steel of the stack.';

/** Choices that a short answer shows. */
const FIRST = 5;

function choicesText(result: SizeResult, system: UnitSystem, full: boolean): string {
  const data = choicesData(result, system);
  const rows = full ? data.rows : data.rows.slice(0, FIRST);
  const head =
    rows.length < data.rows.length
      ? `CHOICES, the first ${FIRST} of ${data.rows.length} that were solved in full`
      : 'CHOICES, each solved in full, best first';
  return [head, textTable({ ...data, rows }), note(`Ranked by ${RANKED_BY}. ${COLUMNS}`)].join('\n');
}

/** The choices as a table, best first. */
export function choicesData({ choices }: SizeResult, system: UnitSystem): TableData {
  const least = ({ margins, failed }: SizeChoice) => {
    if (failed.length > 0) return 'not solved';
    const deciding = margins.filter(({ key }) => !LIMIT[key].told);
    const worst = deciding.reduce((a, b) => (b.margin < a.margin ? b : a));
    return `${marginText(worst)} ${SHORT[worst.key] ?? LIMIT[worst.key].words}`;
  };
  const weather = ({ checks }: SizeChoice) => {
    const works = checks.weather.filter((each) => each.works).length;
    return works === checks.weather.length ? '' : `, ${works} of ${checks.weather.length} weathers`;
  };
  const told = (kind: 'massFlow' | 'mass', value: number) => format(kind, value, system, { digits: 2 });
  const bare = (kind: 'massFlow' | 'mass', value: number | null) =>
    value === null ? '-' : told(kind, value).replace(/ .*/, '');
  const unitOf = (kind: 'massFlow' | 'mass') => told(kind, 1).replace(/^\S+ /, '');
  return {
    head: [
      '',
      'intakes',
      'throat',
      'stack',
      'high',
      'hold',
      'wind',
      unitOf('massFlow'),
      unitOf('mass'),
      'least margin',
    ],
    align: ['right', 'left', 'right', 'left', 'right', 'right', 'right', 'right', 'right', 'left'],
    rows: choices.map((choice, i) => [
      `${i + 1}`,
      ventsName(choice),
      format('area', choice.throat.area_m2, system),
      plainText(choice.stack.name),
      format('length', choice.stack.height_m, system),
      choice.intakes.holdOpening === null ? '-' : percent(choice.intakes.holdOpening),
      choice.weighed.windSwing === null ? '-' : `x ${choice.weighed.windSwing.toFixed(1)}`,
      bare('massFlow', choice.weighed.wood_kg_per_s),
      bare('mass', choice.weighed.stack_kg),
      `${least(choice)}${weather(choice)}`,
    ]),
  };
}

const SHORT: Partial<Record<LimitKey, string>> = {
  air: 'air',
  heat: 'heat',
  holdOpening: 'opening',
  stackSpeed: 'stack',
  holdStackSpeed: 'slow stack',
  intakeSpeed: 'intakes',
  throatSpeed: 'throat',
  draft: 'draft',
  smoke: 'smoke',
  gapSmoke: 'smoke',
  backDraft: 'back-draft',
};

function weatherText({ chosen }: SizeResult, choice: SizeChoice, system: UnitSystem): string {
  return [
    `OTHER WEATHER with the ${chosen === null ? 'nearest' : 'chosen'} size`,
    table(
      ['', 'air, times', 'reaches', 'holds it', ''],
      choice.checks.weather.map(({ words, full, hold, works, why }) => [
        words,
        full ? full.excessAirRatio.toPrecision(2) : '-',
        format('temperature', full?.reading_K ?? null, system),
        format('power', hold?.fire_W ?? null, system),
        works ? 'works' : why.join(', '),
      ]),
      { ...INDENT, align: ['left', 'right', 'right', 'right', 'left'] },
    ),
    note(
      'Intakes wide open: air under the full fire over what it needs, and where that fire settles; the fire that holds. Wind ' +
        'pressure on intakes and stack top is by coefficients that are estimates; real gusts turn.',
    ),
  ].join('\n');
}

/** Openings that the text lists. */
const LISTED = new Set([0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.7, 1]);

function ventText({ curves, wanted }: SizeResult, system: UnitSystem): string {
  const { vents } = curves!;
  const kelvin = (value: number | null) => format('temperature', value, system);
  return [
    'THE VENTS in use: where the thermometer settles, with wood enough on the bed',
    table(
      ['intakes open', 'thermometer', 'between', 'fire'],
      vents.open.flatMap((open, i) =>
        LISTED.has(open)
          ? [
              [
                percent(open),
                kelvin(vents.thermometer_K[i]),
                `${kelvin(vents.leanest_K[i])} and ${kelvin(vents.richest_K[i])}`,
                format('power', vents.fire_W[i], system),
              ],
            ]
          : [],
      ),
      { ...INDENT, align: ['right', 'right', 'right', 'right'] },
    ),
    note(
      `The bed burns what the air allows at ${wanted.cleanAir.ratio} times the air the wood needs (between: ` +
        `${wanted.cleanAir.high} and ${wanted.cleanAir.low} times), up to the full fire.`,
    ),
  ].join('\n');
}

function rulesText({ rules }: SizeResult): string {
  return [
    'RULES OF THUMB beside it (common practice, no source); they decide nothing here',
    table(
      ['', 'this size', 'said in the trade'],
      rules.map(({ words, value, said }) => [words, percent(value), said]),
      { ...INDENT, align: ['left', 'right', 'left'] },
    ),
  ].join('\n');
}
