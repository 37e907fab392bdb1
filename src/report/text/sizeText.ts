import { plainText } from '../../words/plainText.js';
import type { SizeChoice, SizeResult } from '../../study/size/size.js';
import { format, inWords, type UnitSystem } from '../../units/index.js';
import { CAUTIONS } from '../../words/cautions.js';
import { sayIn } from '../../words/quantity.js';
import { restsOn } from '../../words/restsOn.js';
import { constraintLines } from './sizeCosts.js';
import { heightLines } from './sizeHeights.js';
import { THROAT_BY, throatData } from './sizeThroats.js';
import { INDENT, table, textTable } from './table.js';
import { ventCurveData, ventNote } from '../ventData.js';
import { bullet, heading, note, paragraph } from './paragraphs.js';
import { drawnText, chosenText, choiceWords, notChosen } from './sizeAnswer.js';
import { percent, marginsText } from './sizeLimits.js';
import { choicesText } from './sizeChoices.js';

/**
 * Intakes, throat and stack from stock, as text for a builder, at most 98 columns wide but for names: the answer, what
 * is asked for and its cost, limits and the first choices; in full every table.
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
      ? [
          `WARNINGS\n${warnings.map(({ where, message }) => bullet(plainText(`${where}: ${inWords(message)}`, 600))).join('\n')}`,
        ]
      : []),
    ...(best ? [marginsText(result, best, system, full)] : []),
    ...(choices.length > 0 ? [choicesText(result, system, full)] : []),
    ...(best && (full || best.checks.weather.some(({ works }) => !works)) ? [weatherText(result, best, system)] : []),
    ...(full && result.throats.length > 0 ? [throatText(result, system)] : []),
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

function throatText(result: SizeResult, system: UnitSystem): string {
  return [
    'THE THROAT, in the pit as drawn while a clean fire holds it',
    textTable(throatData(result, system)),
    note(`${THROAT_BY}.`),
  ].join('\n');
}

function ventText({ curves, design }: SizeResult, system: UnitSystem): string {
  return [
    'THE VENTS in use: where the thermometer settles, with wood enough on the bed',
    textTable(ventCurveData(curves!.vents, design, system)),
    note(ventNote(curves!.vents)),
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
