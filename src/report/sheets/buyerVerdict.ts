import { gaugeLabel } from '../../charts/labels.js';
import { shortLabel } from './shortLabel.js';
import { baselineOf, type ComparedOption, type Comparison } from '../../study/compare.js';
import { format } from '../../units.js';
import { compareRows, unitText, valueText, type CompareRow } from '../compareRows.js';

/** What decides, and how the two ends of it are said. */
const DECIDES = [
  { key: 'hold.wood_kg_per_s', same: 'wood to hold', least: 'least wood to hold', most: 'most' },
  { key: 'soaked_s', same: 'time to soak', least: 'soaked soonest', most: 'last' },
  { key: 'swing.thermometer_K', same: 'swing under splits', least: 'smallest swing under splits', most: 'largest' },
];

/**
 * One plain sentence from the numbers alone: for one design what it takes, for several which is best and worst at what decides,
 * and what hardly differs.
 *
 * @param alone no sheets lie behind that it could point to
 */
export function buyerVerdict(comparison: Comparison, alone = false): string {
  if (comparison.options.length === 1) return single(baselineOf(comparison), alone);
  const held = comparison.options.filter(({ result }) => result.steady);
  const target = format('temperature', baselineOf(comparison).result.design.fire.target);
  if (held.length < 2) {
    const able = held.length === 0 ? 'None of these' : `Only ${shortLabel(held[0].label, comparison)}`;
    return `${able} can hold ${target} with the fire and air it gets.`;
  }
  const rows = compareRows(comparison);
  const clauses = DECIDES.flatMap(({ key, same, least, most }) => {
    const row = rows.find(({ measure }) => measure.key === key);
    return row ? [clause(row, comparison, { same, least, most })] : [];
  });
  const failing = comparison.options
    .filter(({ result }) => !result.steady)
    .map(({ label }) => shortLabel(label, comparison));
  if (failing.length > 0) clauses.push(`${failing.join(' and ')} can't hold ${target}`);
  const text = `${clauses.join('; ')}.`;
  return text[0].toUpperCase() + text.slice(1);
}

function clause(
  { measure, cells }: CompareRow,
  comparison: Comparison,
  said: { same: string; least: string; most: string },
): string {
  const { options } = comparison;
  const there = cells.flatMap(({ value }, i) =>
    value === null ? [] : [{ value, label: shortLabel(options[i].label, comparison) }],
  );
  const sorted = [...there].sort((a, b) => a.value - b.value);
  const [low, high] = [sorted[0], sorted[sorted.length - 1]];
  const [from, to] = [low, high].map(
    ({ value }) => `${valueText(measure, value, 'shop')} ${unitText(measure, 'shop')}`,
  );
  if (high.value - low.value <= measure.none(low.value) || from === to)
    return `${said.same} is the same in all (${from})`;
  if (high.value - low.value < 0.05 * Math.abs(low.value)) return `${said.same} hardly differs (${from} to ${to})`;
  return `${said.least} with ${low.label} (${from}), ${said.most} with ${high.label} (${to})`;
}

function single({ result }: ComparedOption, alone: boolean): string {
  const { design, steady, assumed, warmUp } = result;
  const target = format('temperature', design.fire.target);
  const fire = format('power', design.fire.heat);
  if (!assumed) return `This pit can't burn a fire of ${fire}${alone ? '' : ': the warnings behind say why'}.`;
  const reads =
    warmUp?.gauge_s == null
      ? `With a fire of ${fire} the ${gaugeLabel(design.gauge)} never reads ${target}`
      : `With a fire of ${fire} the ${gaugeLabel(design.gauge)} reads ${target} after ${format('time', warmUp.gauge_s)} at the earliest` +
        (warmUp.soaked_s === null ? '' : `, the steel is soaked after ${format('time', warmUp.soaked_s)}`);
  const holds = steady
    ? `holding it then takes ${format('massFlow', steady.wood_kg_per_s)} of wood`
    : 'and no fire that the air allows holds it';
  return `${reads}${steady ? ', and ' : ', '}${holds}.`;
}
