import { shownState } from './drawingView.js';
import { drawsOf } from '../words/draws.js';
import { sayAlone, sayQuantity, type Say } from '../words/quantity.js';
import { rangeOf } from '../words/quantityWords.js';
import { MISSING } from '../study/compare/told.js';
import { gaugeReading } from '../study/estimate/gauge.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { held, ofResult, type Quantity } from '../study/quantities.js';
import type { Design } from '../design/design.js';
import type { Spread } from '../study/spread/uncertainty.js';
import type { UnitSystem } from '../units/index.js';
import { element, part, setText } from './dom.js';
import { cookLine } from '../words/cookLine.js';
import { isCooked, spreadOf, toldOf, type Option } from './option.js';

/** One thing that a builder asks, its answer, and what stands under it. */
interface Cell {
  term: string;
  value: string;
  /** how sure it is, or why */
  under: string[];
  tone?: 'well' | 'badly';
}

const CELLS = ['soaked', 'wood', 'grate', 'draws'] as const;
type CellName = (typeof CELLS)[number];

interface Shown {
  term: HTMLElement;
  value: HTMLElement;
  /** the value once more, in the line that stays in sight on a phone */
  glance: HTMLElement;
  under: HTMLElement[];
  root: HTMLElement;
}

/** What the line that stays in sight on a phone calls them. */
const SHORT: Record<CellName, string> = { soaked: 'Soaked', wood: 'Wood', grate: 'Grate', draws: 'Draws' };

/**
 * The answer: when it is soaked, what it burns, what the food gets, whether it draws. Its cells stay where they are.
 */
export class AnswerView {
  private readonly cells: Record<CellName, Shown>;
  private readonly cook = element('dd', {});

  constructor(root: HTMLElement) {
    const made = CELLS.map((name) => {
      const term = element('dt', {});
      const value = element('dd', { class: 'big' });
      const under = [element('dd', { class: 'under' }), element('dd', { class: 'under' })];
      const cell = element('div', { id: `answer-${name}` }, term, value, ...under);
      root.append(cell);
      const glance = element('b', {});
      part('glance').append(element('div', {}, SHORT[name], glance));
      return [name, { term, value, glance, under, root: cell }] as [CellName, Shown];
    });
    this.cells = Object.fromEntries(made) as Record<CellName, Shown>;
    root.append(element('div', { id: 'answer-cook' }, element('dt', { class: 'unseen' }, 'With a cook'), this.cook));
  }

  show(option: Option, system: UnitSystem): void {
    const { full, result, design } = option;
    setText(this.cook, cookLine(toldOf(option, true), system));
    this.cook.classList.toggle('waiting', !isCooked(option));
    const cells = answerOf(design, result, full, spreadOf(option), system);
    for (const name of CELLS) {
      const { term, value, under, tone } = cells[name];
      const own = this.cells[name];
      setText(own.term, term);
      setText(own.value, value);
      setText(own.glance, value);
      own.under.forEach((line, i) => setText(line, under[i] ?? ''));
      for (const root of [own.root, own.glance]) root.dataset.tone = tone ?? '';
    }
  }
}

/**
 * The answer in four cells.
 *
 * @param result newest steady states
 * @param full newest result with a warm-up
 * @param spread of its numbers; none: not there yet
 */
export function answerOf(
  design: Design,
  result: EstimateResult | null,
  full: EstimateResult | null,
  spread?: Spread,
  system: UnitSystem = 'shop',
): Record<CellName, Cell> {
  const say = sayAlone(system);
  const steady = result?.steady ?? null;
  const [soaked, wood] = [ofResult('soaked_s'), held('wood_kg_per_s')];
  const sure = (quantity: Quantity, value: number) => sureOf(quantity, value, spread, say);
  const draws = result && drawsOf(result, system);
  return {
    soaked: {
      term: 'Steel soaked after',
      ...(full?.warmUp?.soaked_s == null
        ? { value: full === null ? MISSING : 'never', under: rangeLines(soaked, spread, say) }
        : sure(soaked, full.warmUp.soaked_s)),
      ...(full && full.warmUp?.soaked_s == null ? { tone: 'badly' } : {}),
    },
    wood: {
      term: 'Wood to hold it',
      ...(steady
        ? sure(wood, steady.wood_kg_per_s)
        : { value: result ? 'no fire does' : MISSING, under: rangeLines(wood, spread, say) }),
      ...(result && !shownState(result)?.holds ? { tone: 'badly' } : {}),
    },
    grate: foodCell(design, result, spread, say),
    draws: {
      term: 'Does it draw?',
      value: draws ? draws.answer : MISSING,
      under: [draws?.why ?? ''],
      ...(draws ? { tone: draws.answer === 'yes' ? 'well' : 'badly' } : {}),
    },
  };
}

/** A number as it stands, or the middle of its spread and what it is with every estimate at its likeliest. */
function sureOf(
  quantity: Quantity,
  value: number,
  spread: Spread | undefined,
  say: Say,
): Pick<Cell, 'value' | 'under'> {
  const middle = middleOf(quantity, spread);
  const [range] = rangeLines(quantity, spread, say);
  const likeliest = sayQuantity(say, quantity, value);
  return middle == null
    ? { value: likeliest, under: [range, spread ? 'middle never' : ''] }
    : { value: sayQuantity(say, quantity, middle), under: [range, `likeliest ${likeliest}`] };
}

const middleOf = ({ key }: Quantity, spread: Spread | undefined): number | null | undefined =>
  spread?.numbers.find((each) => each.key === key)?.p50;

/** `8 in 10: 70 to 110 min`, and the middle. */
function rangeLines(quantity: Quantity, spread: Spread | undefined, say: Say): string[] {
  if (!spread) return ['8 in 10: …', ''];
  const range = spread.numbers.find(({ key }) => key === quantity.key);
  const none = quantity.missing === 'never' ? 'never' : 'no fire';
  const text = (value: number | null) => (value === null ? none : sayQuantity(say, quantity, value));
  if (!range || range.p10 === null) return [`8 in 10: ${none}`, ''];
  return [`8 in 10: ${rangeOf(text(range.p10), text(range.p90))}`, `middle ${text(range.p50)}`];
}

/** What food gets: the grate, or the rack, beside the cook's thermometer, and how even it is. */
function foodCell(
  { gauge, chamber }: Design,
  result: EstimateResult | null,
  spread: Spread | undefined,
  say: Say,
): Cell {
  const term = chamber ? 'Grate' : 'Racks';
  const shown = result && shownState(result);
  if (!shown) return { term, value: MISSING, under: [] };
  const { state: steady, holds } = shown;
  const of = { result: { ...result, steady } };
  const grate = held('grate_K').of(of);
  const racks = steady.places.filter(({ kind }) => kind === 'rack').map(({ thermometer_K }) => thermometer_K);
  const lid = gaugeReading(steady, gauge);
  const even = held('endToEnd_K');
  const apart = middleOf(even, spread) ?? even.of(of);
  const temperature = (value: number | null) => say('temperature', value);
  const value =
    grate !== null
      ? temperature(grate)
      : racks.length > 0
        ? rangeOf(temperature(Math.min(...racks)), temperature(Math.max(...racks)))
        : temperature(lid);
  return {
    term,
    value,
    under: [
      `lid ${temperature(lid)}${holds ? '' : ' under the full fire'}`,
      ...(apart === null ? [] : [`${say('temperatureDifference', apart, { digits: 2 })} end to end`]),
    ],
  };
}
