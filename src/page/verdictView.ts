import { plainText, plainTexts, tied } from '../words/plainText.js';
import type { Design } from '../design/design.js';
import { carrySentences } from '../report/carryData.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { headline } from '../words/headline.js';
import { shortfallOf, shortfallWords } from '../study/estimate/shortfall.js';
import { warningWords } from '../words/warningWords.js';
import { element, part, setText } from './dom.js';
import type { UnitSystem } from '../units/index.js';
import { systemOf } from '../units/choice.js';
import { isCooked, toldOf, type Option } from './option.js';
import { type Workbench } from './workbench.js';

/** The design's name over the page, with shop and job. */
export function showTitle({ name, shop, job }: Design): void {
  setText(part('title'), plainText(name, 80) || 'A pit without a name');
  setText(part('job'), plainTexts([shop, job], 60).join(', '));
}

/**
 * Every option that never reaches the target, then the command's own sentences, and the warnings under them, gravest
 * first.
 */
export function showVerdict(option: Option, { options, units }: Pick<Workbench, 'options' | 'units'>): void {
  const system = systemOf(units);
  const { broken } = option;
  const full = toldOf(option);
  if (broken !== null) {
    const words = `Our fault, not yours: ${plainText(broken, 200)}. The numbers are those of the design before.`;
    part('sentences').replaceChildren(element('p', {}, words));
    return;
  }
  if (!full) return;
  // what a cook makes of it comes later; until then that of the design before keeps its place, faint
  const told = (result: EstimateResult) => [...headline(result, system), ...carrySentences(result, system)];
  const sentences = told(toldOf(option, true)!);
  const known = new Set(told(full).map(timeAlone));
  part('sentences').replaceChildren(
    ...shortOptions(options, system).map((sentence) => element('p', { class: 'short' }, tied(sentence))),
    ...sentences.map((sentence) =>
      element('p', { class: known.has(timeAlone(sentence)) ? '' : 'waiting' }, tied(sentence)),
    ),
  );
  part('sentences').dataset.cook = isCooked(option) ? 'known' : 'awaited';
  part('warnings').replaceChildren(
    ...warningWords(full.warnings, full.design, units).map(({ where, message, rank }) =>
      element('li', { class: `rank-${rank}` }, element('strong', {}, `${where}: `), tied(message)),
    ),
  );
}

/** A time is the same with or without what tells it from that of a cook. */
function timeAlone(sentence: string): string {
  return sentence.replace(' at the earliest', '');
}

/**
 * A sentence for each option that falls short of its target; nothing where one design stands alone and says it itself.
 */
function shortOptions(options: readonly Option[], system: UnitSystem = 'shop'): string[] {
  if (options.length < 2) return [];
  return options.flatMap(({ label, full }) => {
    const shortfall = full && shortfallOf(full);
    return shortfall ? [`${plainText(label, 40) || 'An option'} ${shortfallWords(shortfall, full, system)}.`] : [];
  });
}

/** For a listener: what is wrong with what was typed, then the verdict, and how many warnings there are. */
export function announcement(option: Option, { options, units }: Pick<Workbench, 'options' | 'units'>): string {
  const system = systemOf(units);
  const { refused } = option;
  const full = toldOf(option);
  const wrong = [...refused.values()].map(({ control, message }) => `${control.label}: ${message}.`);
  const count = full ? warningWords(full.warnings, full.design).length : 0;
  const warnings = count === 0 ? [] : [`${count} ${count === 1 ? 'warning' : 'warnings'}.`];
  return [...wrong, ...shortOptions(options, system), ...(full ? headline(full, system) : []), ...warnings].join(' ');
}
