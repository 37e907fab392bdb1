/** Findings in sentences. */
import { withCurrency, type UnitSystem } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { baselineOf } from './baseline.js';
import type { ComparedOption, Comparison } from './compare.js';
import { findingsOf, sizeOf, WEIGHED, type Finding } from './findings.js';
import { paybackClause } from './paybackWords.js';
import { turnedOpenings } from '../estimate/otherState.js';
import { shortfallWords } from '../estimate/shortfall.js';
import { tellingOf, type Row, type Telling } from './told.js';

/**
 * What a builder needs to hear first: a line for every option that never reaches the target or never soaks, the
 * baseline among them; then what each option buys and costs against the baseline, a line each, from the numbers alone.
 *
 * @param system units of the numbers in it
 */
export function verdictOf(comparison: Comparison, system: UnitSystem = 'shop'): string {
  return verdictLines(comparison, system)
    .map(({ text }) => text)
    .join('\n');
}

/** A line of a verdict. */
interface VerdictLine {
  /** of the option that it weighs up; empty: it is a remark on the comparison */
  label: string;
  text: string;
}

/** The lines of a verdict, none of them broken. */
export function verdictLines(comparison: Comparison, system: UnitSystem = 'shop'): VerdictLine[] {
  const { options } = comparison;
  const short = shortfallLines(comparison, system);
  if (options.length < 2) return [...short, { label: '', text: 'Nothing to compare: there is one option.' }];
  const findings = findingsOf(comparison).flatMap((finding) =>
    sentence(finding, comparison, system).map((text) => ({ label: finding.label, text })),
  );
  return [...short, ...otherWays(comparison), ...findings];
}

/**
 * A line for every option in which gas goes another way than in the baseline while it holds its target: no like is
 * compared with like.
 */
function otherWays(comparison: Comparison): VerdictLine[] {
  const base = baselineOf(comparison);
  return comparison.options.flatMap(({ label, result: { steady } }) => {
    const turned = steady && base.result.steady ? turnedOpenings(base.result.steady, steady) : [];
    if (turned.length === 0) return [];
    const through = listed(
      turned.map((name) => `the ${name}`),
      3,
    );
    const text = `In ${label} gas goes the other way through ${through} than in ${base.label}: what differs may come of that.`;
    return [{ label: '', text }];
  });
}

/** A line for every option that falls short of the target, worst first. */
export function shortfallLines({ options }: Comparison, system: UnitSystem): VerdictLine[] {
  const short = options.flatMap(({ label, shortfall, result }) => (shortfall ? [{ label, shortfall, result }] : []));
  return short
    .sort((a, b) => SEVERITY.indexOf(a.shortfall.code) - SEVERITY.indexOf(b.shortfall.code))
    .map(({ label, shortfall, result }) => ({
      label,
      text: `${label} ${shortfallWords(shortfall, result, system)}.`,
    }));
}

const SEVERITY = ['no-fire', 'not-held', 'not-reached', 'not-followed', 'not-soaked'];

/** How the numbers of a measure are told in a comparison: to the digits of its table. */
export function tellingFor(
  { options, settings }: Comparison,
  quantity: Row & { key: string },
  system: UnitSystem,
  missing?: string,
): Telling {
  const pairs = options.flatMap(({ differences }) => differences.find((each) => each.key === quantity.key) ?? []);
  return tellingOf(quantity, pairs, system, settings.currency, missing);
}

/** Things that decide: nobody repeats more. */
const DECIDING = 3;
/** Told even where it stays as it is: what the choice does not change is half of it. */
const ALWAYS = 'hold.wood_kg_per_s';

/** Of what an option buys and costs the things that decide, at least one of either; in each the largest first. */
function decisive(
  { buys, costs }: Finding,
  weightOf: (key: string) => { matter: string; weight: number },
): Pick<Finding, 'buys' | 'costs'> {
  const ranked = (keys: string[]) => {
    const sorted = [...keys].sort((a, b) => weightOf(b).weight - weightOf(a).weight);
    return sorted.filter((key, i) => sorted.findIndex((each) => weightOf(each).matter === weightOf(key).matter) === i);
  };
  const [bought, cost] = [ranked(buys), ranked(costs)];
  const first = [...bought.slice(0, 1), ...cost.slice(0, 1)];
  const rest = ranked([...bought.slice(1), ...cost.slice(1)]).slice(0, DECIDING - first.length);
  const told = new Set([...first, ...rest]);
  return { buys: bought.filter((key) => told.has(key)), costs: cost.filter((key) => told.has(key)) };
}

/** Nothing where the option can't hold the target: that is said already, and leaves nothing to weigh up. */
function sentence(finding: Finding, comparison: Comparison, system: UnitSystem): string[] {
  const option = comparison.options.find(({ label }) => label === finding.label)!;
  const base = baselineOf(comparison);
  if (!option.result.steady) return [];
  const about = (key: string) => {
    const row = WEIGHED.find((each) => each.quantity.key === key)!;
    const pair = option.differences.find((each) => each.key === key)!;
    return { row, pair, telling: tellingFor(comparison, row.quantity, system, 'never') };
  };
  const paid = paybackClause(option, comparison, system);
  const against = (key: string) => {
    const { row, pair, telling } = about(key);
    const words = pair.value! < pair.baseline! ? 'less' : 'more';
    const cost = key === 'steel_kg' && paid === undefined ? costOf(option, comparison, system) : '';
    return `${row[words]} (${telling.quantity(pair.value)} against ${telling.quantity(pair.baseline)}${cost})`;
  };
  const hardly = (key: string) => {
    const { row, pair, telling } = about(key);
    const by = telling.percent(pair) || withUnit(telling, telling.difference(pair));
    return by === 'same' ? row.same : `${row.same} (${by})`;
  };
  const there = (which: 'value' | 'baseline') => (key: string) => {
    const { row, pair, telling } = about(key);
    return `${row.same} (${telling.quantity(pair[which])})`;
  };
  const names = (keys: string[]) => listed(keys.map((key) => about(key).row.same));
  const { lacks, gains, neither } = finding;
  const { buys, costs } = decisive(finding, (key) => {
    const { row, pair } = about(key);
    return { matter: row.matter, weight: row.counts * sizeOf({ row, difference: pair }) };
  });
  const told = buys.length + costs.length > 0;
  // as long as events have not been followed, no one knows that there is nothing
  const nothing = (verb: string) => (option.studies ? [`${verb} nothing worth naming`] : []);
  const hardlyAny = told ? finding.hardly.filter((key) => key === ALWAYS) : finding.hardly.slice(0, DECIDING);
  const same = finding.same.filter((key) => key === ALWAYS);
  const clauses = [
    ...(lacks.length > 0 ? [`loses what only ${base.label} has: ${listed(lacks.map(there('baseline')))}`] : []),
    ...(gains.length > 0 ? [`has what ${base.label} lacks: ${listed(gains.map(there('value')))}`] : []),
    ...(told
      ? [
          ...(buys.length > 0 ? [`buys ${listed(buys.map(against))}`] : nothing('buys')),
          // money has its own clause
          ...(costs.length > 0 ? [`costs ${listed(costs.map(against))}`] : paid === undefined ? nothing('costs') : []),
        ]
      : []),
    ...(paid === undefined ? [] : [paid]),
    ...(hardlyAny.length > 0 ? [`makes hardly any difference to ${listed(hardlyAny.map(hardly))}`] : []),
    ...(neither.length > 0 ? [`neither of them has ${names(neither)}`] : []),
  ];
  const head = `${finding.label} instead of ${base.label}`;
  if (clauses.length === 0) return [`${head}: no difference in anything a builder weighs up.`];
  if (same.length > 0) clauses.push(`makes no difference to ${names(same)}`);
  return [`${head} ${clauses.join('; ')}.`];
}

function withUnit({ unit }: Telling, text: string): string {
  // a difference of temperatures is told in kelvins
  return text === 'same' || unit === '' ? text : `${text} ${unit === '°C' ? 'K' : unit}`;
}

function costOf({ differences }: ComparedOption, comparison: Comparison, system: UnitSystem): string {
  const cost = differences.find(({ key }) => key === 'steelCost');
  if (cost?.difference == null) return '';
  const text = tellingFor(comparison, { key: 'steelCost', kind: 'money' }, system).difference(cost);
  if (text === 'same') return '';
  const amount = withCurrency(text.slice(1), comparison.settings.currency ?? '');
  return `, ${amount} ${cost.difference < 0 ? 'less' : 'more'}`;
}
