/** Sizes beside each other, best first. */
import { plainText } from '../../words/plainText.js';
import { LIMIT, type LimitKey } from '../../study/size/limits.js';
import type { SizeChoice, SizeResult } from '../../study/size/size.js';
import { format, type UnitSystem } from '../../units/index.js';
import { textTable, type TableData } from './table.js';
import { note } from './paragraphs.js';
import { THROAT_BY } from './sizeThroats.js';
import { ventsName } from './sizeAnswer.js';
import { percent, marginText } from './sizeLimits.js';

const RANKED_BY =
  'what keeps within every limit, works in more of the weather and has more in hand, a quarter being enough; then what the wind moves least and ' +
  'what burns less wood, a tenth counting alike in each; then the lighter stack';

const COLUMNS =
  "'hold': intakes open while holding. 'wind': air with wind on the intakes over that with them in its lee. Then wood to hold, and " +
  "the least that is in hand. '3/4': works in three of the four kinds of other weather.";

/** What the choices are ranked by, and what the columns of their table are. */
export function rankedBy({ choices }: SizeResult): string {
  const throat = choices.some((each) => !each.throat.kept) ? `${THROAT_BY}. ` : '';
  return `${throat}Ranked by ${RANKED_BY}. ${COLUMNS}`;
}

/** Choices that a short answer shows. */
const FIRST = 5;

/** The table of choices, best first; in full or the first few. */
export function choicesText(result: SizeResult, system: UnitSystem, full: boolean): string {
  const data = choicesData(result, system);
  const rows = full ? data.rows : data.rows.slice(0, FIRST);
  const head =
    rows.length < data.rows.length
      ? `CHOICES, the first ${FIRST} of ${data.rows.length} that were solved in full`
      : 'CHOICES, each solved in full, best first';
  return [head, textTable({ ...data, rows }), note(rankedBy(result))].join('\n');
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
    return works === checks.weather.length ? '' : `, ${works}/${checks.weather.length}`;
  };
  const wood = (value: number) => format('massFlow', value, system, { digits: 2 });
  return {
    head: ['', 'intakes', 'throat', 'stack', 'high', 'hold', 'wind', wood(1).replace(/^\S+ /, ''), 'in hand'],
    align: ['right', 'left', 'right', 'left', 'right', 'right', 'right', 'right', 'left'],
    rows: choices.map((choice, i) => [
      `${i + 1}`,
      ventsName(choice),
      format('area', choice.throat.area_m2, system),
      plainText(choice.stack.name),
      format('length', choice.stack.height_m, system),
      choice.intakes.holdOpening === null ? '-' : percent(choice.intakes.holdOpening),
      choice.weighed.windSwing === null ? '-' : choice.weighed.windSwing.toFixed(1),
      choice.weighed.wood_kg_per_s === null ? '-' : wood(choice.weighed.wood_kg_per_s).replace(/ .*/, ''),
      `${least(choice)}${weather(choice)}`,
    ]),
  };
}

const SHORT: Partial<Record<LimitKey, string>> = {
  air: 'air',
  heat: 'heat',
  holdOpening: 'vents',
  stackSpeed: 'stack',
  holdStackSpeed: 'stack',
  intakeSpeed: 'intakes',
  throatSpeed: 'throat',
  draft: 'draft',
  smoke: 'smoke',
  gapSmoke: 'smoke',
  backDraft: 'back-draft',
};
