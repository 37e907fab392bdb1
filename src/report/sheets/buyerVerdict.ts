import { gaugeLabel } from '../../words/labels.js';
import { shortLabel } from './shortLabel.js';
import { baselineOf } from '../../study/compare/baseline.js';
import type { ComparedOption, Comparison } from '../../study/compare/compare.js';
import { paybackNumber } from '../../study/costs.js';
import { cooksText } from '../../study/compare/told.js';
import { shortfallWords, type ShortfallCode } from '../../study/estimate/shortfall.js';
import { format, formatTime, type UnitSystem } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { capital } from '../../words/plainText.js';
import { flatnessWords } from '../../words/plateWords.js';
import { compareRows, tellingOfRow, type CompareRow } from '../compareRows.js';

/** What decides, and how the two ends of it are said. */
const DECIDES = [
  { key: 'hold.wood_kg_per_s', same: 'wood to hold', least: 'least wood to hold', most: 'most' },
  { key: 'soaked_s', same: 'time to soak', least: 'soaked soonest', most: 'last' },
  { key: 'swing.thermometer_K', same: 'swing under splits', least: 'smallest swing under splits', most: 'largest' },
];

/**
 * What a buyer reads first, from the numbers alone: every option that never reaches the target or never soaks; then for
 * one design what it takes, for several which is best and worst at what decides, and what hardly differs.
 *
 * @param alone no sheets lie behind that it could point to
 * @param system that its numbers are told in
 */
export function buyerVerdict(comparison: Comparison, alone = false, system: UnitSystem = 'shop'): string {
  if (comparison.options.length === 1) return single(baselineOf(comparison), alone, system);
  const short = shortSentences(comparison, system);
  const rows = compareRows(comparison);
  const clauses = DECIDES.flatMap(({ key, same, least, most }) => {
    const row = rows.find(({ measure }) => measure.key === key);
    return row ? clause(row, comparison, { same, least, most, system }) : [];
  });
  const text = clauses.length === 0 ? [] : [capital(`${clauses.join('; ')}.`)];
  const flat = flatnessWords(comparison, (label) => shortLabel(label, comparison));
  return [...short, ...text, ...(flat === '' ? [] : [flat]), ...paidBack(comparison)].join(' ');
}

/** When each option has paid back in wood what it costs more to build, in a sentence. */
function paidBack(comparison: Comparison): string[] {
  const { options, baseline, settings } = comparison;
  const told = options.flatMap(({ label, payback }) => {
    const cooks = paybackNumber(payback);
    return cooks === null ? [] : [{ name: shortLabel(label, comparison), cooks }];
  });
  const names = (which: (cooks: number) => boolean) => told.filter(({ cooks }) => which(cooks)).map(({ name }) => name);
  const [at, never] = [names((cooks) => cooks === 0), names((cooks) => cooks === Infinity)];
  const clauses = [
    ...told
      .filter(({ cooks }) => cooks > 0 && cooks < Infinity)
      .map(({ name, cooks }) => `${name} has paid for itself in wood after about ${cooksText(cooks)} cooks`),
    ...(at.length > 0 ? [`${listed(at)} ${at.length > 1 ? 'cost' : 'costs'} no more from the first cook on`] : []),
    ...(never.length > 0
      ? [`${listed(never)} never ${never.length > 1 ? 'pay for themselves' : 'pays for itself'} in wood`]
      : []),
    ...told
      .filter(({ cooks }) => cooks < 0)
      .map(({ name, cooks }) => `what ${name} saves at first is burned after about ${cooksText(-cooks)} cooks`),
  ];
  if (clauses.length === 0) return [];
  const against = shortLabel(baseline, comparison);
  return [`Against ${against}, with cooks of ${formatTime(settings.cook_s)}: ${clauses.join('; ')}.`];
}

/** One option in full; several by name, one sentence for those that fail alike: the warnings have their numbers. */
function shortSentences(comparison: Comparison, system: UnitSystem): string[] {
  const short = comparison.options.flatMap(({ label, shortfall, result }) =>
    shortfall ? [{ label: shortLabel(label, comparison), shortfall, result }] : [],
  );
  if (short.length === 1) {
    return short.map(({ label, shortfall, result }) => `${label} ${shortfallWords(shortfall, result, system)}.`);
  }
  const target = format('temperature', baselineOf(comparison).result.design.fire.target, system);
  return SHORTLY.flatMap(({ codes, says }) => {
    const labels = short.filter(({ shortfall }) => codes.includes(shortfall.code)).map(({ label }) => label);
    if (labels.length === 0) return [];
    const names = labels.length === comparison.options.length ? 'All of these' : labels.join(', ');
    return [`${names}: ${says(target)}.`];
  });
}

/** What several options fail at, gravest first. */
const SHORTLY: { codes: ShortfallCode[]; says: (target: string) => string }[] = [
  { codes: ['no-fire', 'not-held'], says: (target) => `no fire that the air allows holds ${target}` },
  { codes: ['not-reached'], says: (target) => `the full fire never brings it to ${target}` },
  { codes: ['not-followed'], says: (target) => `its way to ${target} could not be followed` },
  { codes: ['not-soaked'], says: () => 'never soaked within the time computed' },
];

/** Nothing where fewer than two options have the number. */
function clause(
  row: CompareRow,
  comparison: Comparison,
  said: { same: string; least: string; most: string; system: UnitSystem },
): string[] {
  const { options } = comparison;
  const { measure, cells } = row;
  const telling = tellingOfRow(row, said.system);
  const there = cells.flatMap(({ value }, i) =>
    value === null ? [] : [{ value, label: shortLabel(options[i].label, comparison) }],
  );
  if (there.length < 2) return [];
  const sorted = [...there].sort((a, b) => a.value - b.value);
  const [low, high] = [sorted[0], sorted[sorted.length - 1]];
  const [from, to] = [low, high].map(({ value }) => telling.quantity(value));
  const all = there.length === options.length ? 'in all' : `in the ${there.length} that have it`;
  const apart = high.value - low.value;
  if (apart <= measure.none(low.value) || telling.alike(low.value, high.value)) {
    // as the table of what is the same has it
    const drawn = cells[options.indexOf(baselineOf(comparison))].value;
    return [`${said.same} is the same ${all} (${telling.quantity(drawn ?? low.value)})`];
  }
  if (apart < 0.05 * Math.abs(low.value)) return [`${said.same} hardly differs (${from} to ${to})`];
  return [`${said.least} with ${low.label} (${from}), ${said.most} with ${high.label} (${to})`];
}

function single({ result, shortfall }: ComparedOption, alone: boolean, system: UnitSystem): string {
  const { design, steady, warmUp, spread } = result;
  /** the middle of its spread, where that was studied */
  const middle = (key: string, value: number) => spread?.numbers.find((each) => each.key === key)?.p50 ?? value;
  const target = format('temperature', design.fire.target, system);
  const fire = format('power', design.fire.heat, system);
  const reads =
    warmUp?.gauge_s == null
      ? ''
      : `With a fire of ${fire} the ${gaugeLabel(design.gauge)} reads ${target} after ${format('time', middle('gauge_s', warmUp.gauge_s))} at the earliest` +
        (warmUp.soaked_s === null
          ? ''
          : `, the steel is soaked after ${format('time', middle('soaked_s', warmUp.soaked_s))}`);
  const wood = steady
    ? `holding it then takes ${format('massFlow', middle('hold.wood_kg_per_s', steady.wood_kg_per_s), system)} of wood`
    : '';
  if (!shortfall) return `${[reads, wood].filter((text) => text !== '').join(', and ')}.`;
  const words = shortfallWords(shortfall, result, system, !alone);
  return `This pit ${words}.${shortfall.code === 'not-soaked' ? ` ${capital(wood)}.` : ''}`;
}
