import { lengthOf, plainText } from '../../words/plainText.js';
import { gaugeLabel } from '../../words/labels.js';
import { baselineOf } from '../../study/compare/baseline.js';
import type { Comparison } from '../../study/compare/compare.js';
import { NO_DIFFERENCE } from '../../study/quantities.js';
import { placeAlone } from '../../words/warningPlace.js';
import { gatherWarnings } from '../../words/warningRank.js';
import { whereWords } from '../../words/warningWords.js';
import { BACK_WITHIN } from '../../study/events/disturb.js';
import type { Warning } from '../../study/estimate/result.js';
import { LATE } from '../../study/events/swing.js';
import { unpriced } from '../../study/costs.js';
import { verdictLines } from '../../study/compare/verdict.js';
import { format, formatTime, inWords, type UnitSystem } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import type { Design } from '../../design/design.js';
import { rangeOf } from '../../design/fields.js';
import { CAUTIONS, SOAKED_MEANS } from '../../words/cautions.js';
import { carryBeside } from '../carryData.js';
import { compareRows, isSame, rowHead, sameWords, tellingOfRow, type CompareRow } from '../compareRows.js';
import { GROUP_WORDS } from '../../words/quantityWords.js';
import { compareSpreadText } from './compareSpreadText.js';
import { plateCook } from '../../words/plateCook.js';
import { plateNotes } from '../../words/plateWords.js';
import { sayIn } from '../../words/quantity.js';
import { restsOnEach } from '../../words/restsOn.js';
import { table } from './table.js';
import { bullet, heading, paragraph, WIDTH } from './paragraphs.js';

/** Longest label that stands whole over a column. */
const LONGEST_LABEL = 22;

/** A comparison as plain text: what each option buys and costs, one table, what was done to every option. */
export function compareText(comparison: Comparison, system: UnitSystem): string {
  const { tool } = comparison;
  const sections = [
    heading(title(comparison), tool),
    [...verdictLines(comparison, system).map(({ text }) => text), plateCook(comparison, system)]
      .filter((line) => line !== '')
      .map((line) => paragraph(plainText(line, 2000)))
      .join('\n'),
    ...measuredCooks(comparison, system),
    ...warnings(comparison),
    ...optionList(comparison),
    ...carryText(comparison, system),
    ...tables(comparison, system),
    ...compareSpreadText(comparison, system),
    ...plateText(comparison, system),
    `WHAT WAS DONE TO EVERY OPTION\n${events(comparison, system)}`,
    paragraph(CAUTIONS),
  ];
  return `${sections.join('\n\n')}\n`;
}

function title({ options }: Comparison): string {
  const names = [...new Set(options.map(({ result }) => plainText(result.design.name)))].filter((name) => name !== '');
  return `${names.slice(0, 3).join(', ')}${names.length > 3 ? ' ...' : ''}: ${options.length} ${options.length === 1 ? 'option' : 'options'}`;
}

/** What measured cooks the options rest on; nothing where none does. */
function measuredCooks({ options }: Comparison, system: UnitSystem): string[] {
  const told = restsOnEach(options, system);
  return told.length > 0 ? [told.map(paragraph).join('\n')] : [];
}

/**
 * Warnings of one kind and place once, under whichever fire, in the words and numbers of the first option that has it.
 */
function warnings({ options }: Comparison): string[] {
  const told = gatherWarnings(options, placeAlone);
  if (told.length === 0) return [];
  const all = options.flatMap(({ result }) => result.warnings);
  const lines = told.map(({ code, where, fire, message, labels: [first, ...others] }) => {
    const isHolding = (each: Warning) => each.fire === 'hold fire' && each.where === where;
    const also = where !== '' && fire !== 'hold fire' && all.some((each) => each.code === code && isHolding(each));
    const more = [
      ...(also ? ['also while holding'] : []),
      ...(others.length > 0
        ? [`likewise, with numbers of their own: ${others.map((each) => plainText(each)).join(', ')}`]
        : []),
    ];
    const whoseDesign = options.find(({ label }) => label === first)!.result.design;
    const whose = options.length > 1 ? `${plainText(first)}: ` : '';
    return bullet(
      `${whose}${whereWords({ where, fire }, whoseDesign)}: ${plainText(inWords(message), 600)}${more.length > 0 ? ` (${more.join('; ')})` : ''}`,
    );
  });
  return [`WARNINGS\n${lines.join('\n')}`];
}

/** What hands find, what a trailer carries and whether it smokes cold, where the options have that. */
function carryText({ options, baseline }: Comparison, system: UnitSystem): string[] {
  const named = options.map(({ label, result }) => ({
    label: label === baseline ? plainText(label) : `with ${plainText(label)}`,
    result,
  }));
  const told = carryBeside(named, system);
  return told.length > 0 ? [`HANDS, TRAILER, COLD SMOKE\n${told.map(bullet).join('\n')}`] : [];
}

/** What each option changes. */
function optionList({ options, baseline }: Comparison): string[] {
  const lines = options.map(({ label, changes, result }) => {
    const what =
      changes.length > 0
        ? changes.map(({ path, value }) => plainText(`${path}=${value}`, 200)).join('; ')
        : `${plainText(result.design.name)}, as drawn`;
    return bullet(`${plainText(label)}${label === baseline ? ' (baseline)' : ''}: ${what}`);
  });
  return [`OPTIONS\n${lines.join('\n')}`];
}

/**
 * As many options a table as fit its width, the baseline first in each; of several tables, what is the same in all of
 * them last.
 */
function tables(comparison: Comparison, system: UnitSystem): string[] {
  const rows = compareRows(comparison);
  const base = comparison.options.findIndex(({ label }) => label === comparison.baseline);
  const others = comparison.options.map((_, i) => i).filter((i) => i !== base);
  const [differing, alike] = [false, true].map((same) => rows.filter((row) => isSame(row, others, system) === same));
  for (let each = Math.max(1, others.length); each >= 1; each--) {
    const one = each >= others.length;
    const blocks: string[] = [];
    for (let at = 0; at === 0 || at < others.length; at += each) {
      blocks.push(block(comparison, one ? rows : differing, base, others.slice(at, at + each), system));
    }
    const widest = Math.max(...blocks.flatMap((text) => text.split('\n').map(lengthOf)));
    if (widest > WIDTH && each > 1) continue;
    return one ? blocks : [...blocks, ...sameText('The same in all', alike, base, comparison, system)];
  }
  return [];
}

/** What is the same, told with its number; nothing where nothing is. */
function sameText(
  head: string,
  rows: readonly CompareRow[],
  base: number,
  { settings }: Comparison,
  system: UnitSystem,
): string[] {
  return rows.length > 0 ? [paragraph(`${head}: ${sameWords(rows, base, system, settings.currency ?? '')}.`)] : [];
}

function block(comparison: Comparison, rows: CompareRow[], base: number, others: number[], system: UnitSystem): string {
  const { options, settings } = comparison;
  const currency = settings.currency ?? '';
  const head = (i: number) => plainText(options[i].label, LONGEST_LABEL);
  const lines: string[][] = [];
  let group = '';
  const there = rows.filter(({ cells }) => [base, ...others].some((i) => cells[i].value !== null));
  const told = there.filter((row) => !isSame(row, others, system));
  for (const row of told) {
    const { measure, cells } = row;
    if (measure.group !== group) lines.push([GROUP_WORDS[measure.group]]);
    group = measure.group;
    const telling = tellingOfRow(row, system, currency);
    lines.push([
      `  ${rowHead(row, telling)}`,
      telling.number(cells[base].value),
      ...others.flatMap((i) => [
        telling.number(cells[i].value),
        telling.difference(cells[i]),
        telling.percent(cells[i]),
      ]),
    ]);
  }
  const same = there.filter((row) => !told.includes(row));
  return [
    table(['', head(base), ...others.flatMap((i) => [head(i), '', ''])], lines),
    ...sameText('The same', same, base, comparison, system),
  ].join('\n');
}

/** Whether plate stays flat and how long it lasts; nothing where no fire holds the target. */
function plateText(comparison: Comparison, system: UnitSystem): string[] {
  const notes = plateNotes(comparison, sayIn(system));
  return notes.length > 0
    ? [`PLATE: FLAT, STIFF, LASTING\n${notes.map((each) => bullet(plainText(each, 2000))).join('\n')}`]
    : [];
}

/** What the fire is fed with, and who minds it. */
function splitsWords({ fire, gauge }: Design, say: ReturnType<typeof sayIn>): string {
  const { splits, cook, target } = fire;
  const thick = `${say('length', splits.thickness)} thick, flaming off within ${say('time', 3 * splits.flame)} and leaving ${say('share', splits.charcoal)} of their heat in coals (estimates)`;
  if (splits.every === 0) return 'Splits: none; the fire burns steadily.';
  const when =
    splits.every === undefined
      ? `the next is laid on ${say('time', cook.late)} after the ${gaugeLabel(gauge)} has fallen to ${say('temperature', target + cook.line)}`
      : `one every ${say('time', splits.every)} by the clock`;
  const size =
    splits.mass === undefined && splits.every === undefined ? ' Of a weight that is done about every half hour.' : '';
  const vents =
    cook.intakes.length === 2
      ? `the intakes turned between ${say('share', cook.intakes[0])} and ${say('share', cook.intakes[1])} by what is read`
      : 'the intakes left as they stand';
  const door = splits.door > 0 ? `, the firebox door open ${say('time', splits.door)} for each` : '';
  return `Splits: ${thick}; ${when}${door}; ${vents}.${size} Readings are those of the ${gaugeLabel(gauge)} once every cycle is like the last, the steel's swing that of its station. Late is one that is laid on ${say('time', LATE)} after it was due.`;
}

function events(comparison: Comparison, system: UnitSystem): string {
  const { settings } = comparison;
  const say = sayIn(system);
  const base = baselineOf(comparison);
  const { design } = base.result;
  const door = base.studies?.doorway;
  const lines = [
    ...priceLines(comparison, system),
    splitsWords(design, say),
    ...(door
      ? [
          `Door: ${door.name === undefined ? 'that' : `'${plainText(door.name)}'`} of the ${door.part}, ${say('length', door.width)} wide and ${say('length', door.height)} high${door.assumed ? ' (a usual size: the design gives none)' : ''}, open ${say('time', settings.door_s)} with the fire as it was. Back: the thermometer, its lag and all, is within ${say('temperatureDifference', BACK_WITHIN)} of the target again, counted from shutting.`,
        ]
      : []),
    SOAKED_MEANS,
    `Gust: ${say('speed', settings.gust.wind)} of wind for ${say('time', settings.gust.lasts)}. Shower: ${format('share', settings.shower.rain)} of all that faces up kept wet for ${say('time', settings.shower.lasts)}. The fire stays as it was meanwhile.`,
    `Fire out: drawn at once, vents as they stand; half down is halfway to outdoors, and the touch limit is ${say('temperature', 333.15)} (ASTM C1055).`,
    `'Same' is a difference of up to ${format('share', NO_DIFFERENCE.share)} in fires, losses and air, ${format('share', NO_DIFFERENCE.timeShare)} (and ${format('time', NO_DIFFERENCE.time)}) in times, ${say('temperatureDifference', NO_DIFFERENCE.temperature)} in temperatures, ${format('share', NO_DIFFERENCE.weight)} in weights: less than can be told from none; so are times that read the same. A difference is that of the two numbers beside it, whose last digit is the same for all of a row.`,
  ];
  return lines.map(bullet).join('\n');
}

/** What costs are made of, and what is not in them. */
function priceLines({ options, baseline, settings }: Comparison, system: UnitSystem): string[] {
  if (settings.currency === undefined) return [];
  const told = options.map((option) => ({ option, text: priceText(option.result.design, system) }));
  const { text } = told.find(({ option }) => option.label === baseline)!;
  const others = told.filter((each) => each.text !== text && each.text !== '');
  const lacking = [...new Set(options.flatMap(unpriced))];
  const { prices } = options[0].result.design;
  return [
    [
      `Prices: ${text === '' ? 'none' : text}${others.map((each) => `; ${plainText(each.option.label)}: ${each.text}`).join('')}.`,
      'Material alone: no work, cut-offs, rod or paint.',
      ...(lacking.length > 0
        ? [`What it costs to build is not told where there is no price of ${listed(lacking)}.`]
        : prices?.wood === undefined
          ? ['With a price of wood it would say when an option is paid back.']
          : []),
    ].join(' '),
    ...(prices?.wood === undefined
      ? []
      : [
          `A cook: the full fire until the steel has soaked, then ${formatTime(settings.cook_s)} of the fire that holds the target (${options.some(({ result }) => result.design.cook) ? "the design's cook" : 'a usual length'}), without food. Paid back: cooks whose saving in wood makes up for what an option costs more to build.`,
        ]),
  ];
}

function priceText({ prices }: Design, system: UnitSystem): string {
  if (!prices) return '';
  const { currency, ...each } = prices;
  return Object.entries(each)
    .map(([name, price]) => `${name} ${format(rangeOf(`prices.${name}`).kind, price, system, { currency })}`)
    .join(', ');
}
