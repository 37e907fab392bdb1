import { stringify } from 'yaml';
import { rangeOf } from '../../words/quantityWords.js';
import { plainText } from '../../words/plainText.js';
import { COMFORT, LIMIT, type LimitKey, type Margin } from '../../study/size/limits.js';
import type { AsDrawn, SizeChoice, SizeResult } from '../../study/size/size.js';
import { format, type UnitSystem } from '../../units/index.js';
import { CAUTIONS } from '../../words/cautions.js';
import { sayIn } from '../../words/quantity.js';
import { restsOn } from '../../words/restsOn.js';
import { table, textTable, type TableData } from './table.js';
import { bullet, heading, note, paragraph } from './paragraphs.js';

const INDENT = { indent: '  ' };

/** Intakes, throat and stack from stock, as text for a builder, at most 98 columns wide but for names. */
export function sizeText(result: SizeResult, system: UnitSystem): string {
  const { design, wanted, tool, warnings, choices, chosen } = result;
  const say = sayIn(system);
  const fire = `${say('power', wanted.fullFire_W)}, held at ${say('temperature', wanted.target_K)}`;
  const best = choices[0];
  const sections = [
    heading(`${plainText(design.name)}: intakes, throat and stack for ${fire}`, tool),
    ...measured(restsOn(design, system)),
    ...(warnings.length > 0
      ? [`WARNINGS\n${warnings.map(({ where, message }) => bullet(plainText(`${where}: ${message}`, 600))).join('\n')}`]
      : []),
    chosen === null ? notChosen(result) : chosenText(result, choices[chosen], system),
    ...(best ? [marginsText(result, best, system)] : []),
    ...(choices.length > 0 ? [choicesText(result, system)] : []),
    ...(best ? [weatherText(result, best, system)] : []),
    ...(result.curves ? [ventText(result, system)] : []),
    rulesText(result),
    paragraph(CAUTIONS),
  ];
  return `${sections.join('\n\n')}\n`;
}

function measured(text: string | null): string[] {
  return text === null ? [] : [paragraph(text)];
}

const ventsName = ({ intakes: { kind, count }, fields }: SizeChoice): string => {
  const { diameter, width, height } = fields.firebox.intakes[0] as Record<string, string>;
  return `${count} ${kind} ${diameter ?? `${width} x ${height}`}`;
};

function chosenText(result: SizeResult, choice: SizeChoice, system: UnitSystem): string {
  const { wanted } = result;
  const { fields, intakes } = choice;
  return [
    `CHOSEN: ${choiceWords(result, choice, system)}`,
    note(
      `The fire that holds then runs clean with the intakes ${percent(intakes.holdOpening!)} open. Of ${wanted.candidates} ` +
        `candidates on ${wanted.stacksTried} stacks, ${wanted.within} keep within every limit; those with ` +
        `${percent(COMFORT)} in hand everywhere come first, the lightest stack before the others.`,
    ),
    '  In the design file, with the rest of each part as it is:',
    ...fieldLines(fields).map((line) => `    ${line}`),
  ].join('\n');
}

/** A choice in a line: vents, throat and stack. */
export function choiceWords({ design }: SizeResult, choice: SizeChoice, system: UnitSystem): string {
  const { stack, throat } = choice;
  const each = design.stacks.length > 1 ? ' each' : '';
  const area = format('area', throat.area_m2, system);
  return `${ventsName(choice)}; throat ${area}; ${stack.name}, ${format('length', stack.height_m, system)} high${each}`;
}

/** The fields of a choice as lines of YAML. */
export function fieldLines({ firebox, throat, stacks }: SizeChoice['fields']): string[] {
  const flow = (value: unknown) => stringify(value, { collectionStyle: 'flow', lineWidth: 0 }).trim();
  return ['firebox:', `  intakes: ${flow(firebox.intakes)}`, `throat: ${flow(throat)}`, `stacks: ${flow(stacks)}`];
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
  backDraft: 'set the intakes lower and the stack higher',
};

/** What stands in the way when nothing fits, a clause a line, each with what would mend it. */
export function whyNothingFits({ wanted, choices }: SizeResult): string[] {
  const ruled = Object.entries(wanted.ruledOut)
    .sort((a, b) => b[1] - a[1])
    .map(([by, count]) => {
      const remedy = REMEDIES[by as LimitKey];
      return `${count} of ${wanted.stacksTried} stacks ${RULED_OUT[by] ?? by}${remedy ? `: ${remedy}` : ''}`;
    });
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
  if (key === 'smoke') return `${Number((100 * value).toPrecision(2))} %`;
  if (key === 'backDraft') return String(value);
  return value.toPrecision(3);
}

function speed(value: number, system: UnitSystem): string {
  return format('speed', value, system, { digits: 2, ...(system === 'shop' ? { unit: 'ft/s' } : {}) });
}

function bandText(key: LimitKey, system: UnitSystem): string {
  const { low, high } = LIMIT[key];
  if (high === 0) return 'none';
  if (low !== undefined && high !== undefined) {
    return rangeOf(valueText(key, low, system), valueText(key, high, system));
  }
  return low !== undefined ? `at least ${valueText(key, low, system)}` : `at most ${valueText(key, high!, system)}`;
}

function marginText({ key, margin }: Margin): string {
  if (key === 'backDraft') return margin < 0 ? 'OUT' : 'in';
  return margin < 0 ? `OUT ${percent(-margin)}` : percent(Math.min(margin, 9.99));
}

function marginsText({ asDrawn, wanted, chosen }: SizeResult, choice: SizeChoice, system: UnitSystem): string {
  const own = (drawn: AsDrawn, key: LimitKey) => drawn.margins.find((each) => each.key === key);
  const cells = (margin: Margin | undefined) =>
    margin ? [valueText(margin.key, margin.value, system), marginText(margin)] : ['-', ''];
  const sources = wanted.limits.map(({ source }) => source);
  return [
    `MARGINS of the ${chosen === null ? 'nearest' : 'chosen'} size, beside the design as drawn; the share of the limit that is in hand`,
    table(
      ['', 'wanted', 'size', 'margin', 'as drawn', 'margin'],
      wanted.limits.map(({ key, words }) => [
        words,
        bandText(key, system),
        ...cells(choice.margins.find((each) => each.key === key)),
        ...cells(own(asDrawn, key)),
      ]),
      INDENT,
    ),
    ...asDrawn.failed.map((why) => note(`As drawn: ${why}.`)),
    note(
      `Limits are ${sources.includes('common practice, no source') ? 'common practice without a source, or our estimates' : 'estimates'}. ` +
        `'Holding' means with air for ${wanted.cleanAir.ratio} times what the wood needs (estimate, ` +
        `${wanted.cleanAir.low} to ${wanted.cleanAir.high}; --clean-air changes it). 'Just lit' is gas over steel still cold.`,
    ),
  ].join('\n');
}

function choicesText(result: SizeResult, system: UnitSystem): string {
  return ['CHOICES from stock, each solved in full, best first', textTable(choicesData(result, system))].join('\n');
}

/** The choices as a table, best first. */
export function choicesData({ choices }: SizeResult, system: UnitSystem): TableData {
  const least = ({ margins, failed }: SizeChoice) => {
    if (failed.length > 0) return 'not solved';
    const worst = margins.reduce((a, b) => (b.margin < a.margin ? b : a));
    return `${marginText(worst)} ${SHORT[worst.key]}`;
  };
  const weather = ({ checks }: SizeChoice) => {
    const works = checks.weather.filter((each) => each.works).length;
    return works === checks.weather.length ? 'works' : `${works} of ${checks.weather.length}`;
  };
  return {
    head: ['', 'intakes', 'throat', 'stack', 'high', 'hold', 'least margin', 'weather'],
    align: ['right', 'left', 'right', 'left', 'right', 'right', 'left', 'left'],
    rows: choices.map((choice, i) => [
      `${i + 1}`,
      ventsName(choice),
      format('area', choice.throat.area_m2, system),
      choice.stack.name,
      format('length', choice.stack.height_m, system),
      choice.intakes.holdOpening === null ? '-' : percent(choice.intakes.holdOpening),
      least(choice),
      weather(choice),
    ]),
  };
}

const SHORT: Record<LimitKey, string> = {
  air: 'air',
  heat: 'heat',
  holdOpening: 'opening',
  stackSpeed: 'stack',
  holdStackSpeed: 'slow stack',
  intakeSpeed: 'intakes',
  throatSpeed: 'throat',
  smoke: 'smoke',
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
