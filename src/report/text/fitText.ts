import { plainText } from '../../words/plainText.js';
import { rangeOf } from '../../words/quantityWords.js';
import { unknownLabel } from '../../words/unknownLabels.js';
import type { FitResult, FittedChannel, FittedParameter } from '../../fit/fitResult.js';
import { convert, format, inWords, unitOf, type UnitSystem } from '../../units/index.js';
import { CAUTIONS } from '../../words/cautions.js';
import { balanceWords } from '../../words/balanceWords.js';
import { sayUnknown } from '../../words/unknownValue.js';
import { sayIn } from '../../words/quantity.js';
import { table } from './table.js';
import { bullet, note, paragraph, section } from './paragraphs.js';

/** Correlations from here on are called out: one of the two can't be told without the other. */
const CLOSE = 0.7;
/** Below this two estimates have little to do with each other. */
const WORTH_SAYING = 0.2;

/** A fit in words and tables: how good it is, what each estimate became, how far each probe was off. */
export function fitText(result: FitResult, system: UnitSystem): string {
  const names = result.cooks.map(({ name }) => plainText(name)).join(', ');
  const sections = [
    `${plainText(result.design.name)}: fitted to ${names}\n${paragraph(
      `${result.tool.name} ${result.tool.version}: what one pit told in ${result.cooks.length > 1 ? 'these cooks' : 'this cook'}, no more: other weather, wood and hands move it`,
    )}`,
    ...doubts(result),
    paragraph(qualitySentence(result, system)),
    section('WHAT THE LOG TELLS', parameterTable(result, system), ...aboutParameters(result)),
    ...(result.parameters.length > 1
      ? [section('HOW THEY GO TOGETHER (correlation; all of it is in the JSON)', ...correlationText(result))]
      : []),
    section(
      'HOW FAR EACH PROBE IS OFF (root mean square)',
      probeTable(result, system),
      note(
        "Noise is the readings' own, from their neighbours. Offset is how far the probe itself seems to read off all the time, " +
          `against the others and the model; it is taken off in 'fitted', and so is a lag of the logger of ${lags(result)}.`,
      ),
    ),
  ];
  if (result.warnings.length > 0) {
    sections.push(
      section(
        'WARNINGS',
        ...result.warnings.map(({ where, message }) => bullet(`${plainText(where)}: ${inWords(message)}`)),
      ),
    );
  }
  const notes = result.cooks.flatMap((cook) => cook.notes.map((each) => ({ ...each, name: cook.name })));
  if (notes.length > 0) {
    sections.push(
      section(
        'ABOUT THE LOG',
        ...notes.map(({ where, message, line, name }) =>
          bullet(
            `${plainText(`${result.cooks.length > 1 ? `${name}, ` : ''}${where}`)}${line === null ? '' : ` (line ${line})`}: ${plainText(message, 600)}`,
          ),
        ),
      ),
    );
  }
  sections.push(note(`Balance: over all ${result.runs} runs ${balanceWords(result.balance)}.`), paragraph(CAUTIONS));
  return `${sections.join('\n\n')}\n`;
}

/** Warnings that make the whole fit doubtful, and how each is named in front of everything else. */
const DOUBTS: Record<string, (where: string[]) => string> = {
  'predicts-worse': () => "it predicts worse than the design's own estimates do",
  'at-edge-of-spread': (where) =>
    `${where.length > 1 ? `${where.length} estimates run to the ends of what they may be` : `${where[0]} runs to the end of what it may be`}: ` +
    'the log may be of another pit, or something in it is not as it was',
  'more-wood-than-burns': () => 'the log has more wood than this pit can burn',
  'less-wood-than-it-took': () => 'the log has less wood than its heat took',
  'running-total': ([header]) => `${header} looks like a running total`,
  'air-unit': ([header]) => `the unit of ${header} looks wrong`,
  'colder-than-air': () => 'the probes begin colder than outdoors',
  'copied-probe': (where) => `${where.join(', ')} is a copy of another column`,
  'probe-reads-off': (where) =>
    `${where.join(', ')} ${where.length > 1 ? 'read' : 'reads'} far off and ${where.length > 1 ? 'are' : 'is'} left out`,
  'probes-swapped': ([headers]) => `${headers} seem to have changed places`,
  'fire-does-not-fit': () => 'its wood and its heat do not go together',
  'probes-disagree': ([headers]) => `${headers} can't all be right`,
};

/** A fit that leaves more than this [K], and so many times the readings' own noise, has not found the pit. */
const NOT_FOLLOWED = { least_K: 10, noise: 3 };

/** What speaks against a fit, in one sentence before its numbers; nothing where nothing does. */
function doubts({ warnings, cooks, quality }: FitResult): string[] {
  const leftOut = cooks.flatMap(({ channels }) => channels.filter((each) => each.leftOut).map(({ header }) => header));
  const words = Object.entries(DOUBTS).flatMap(([code, say]) => {
    const those = warnings.filter((each) => each.code === code).map(({ where }) => where);
    const where = [...new Set(code === 'probe-reads-off' ? leftOut : those)];
    return where.length > 0 ? [say(where.map((each) => plainText(each)))] : [];
  });
  if (quality.fitted_K > Math.max(NOT_FOLLOWED.least_K, NOT_FOLLOWED.noise * quality.noise_K)) {
    words.push('even fitted, the pit does not follow this log: it may be of another pit');
  }
  return words.length > 0
    ? [paragraph(`DOUBTFUL: ${words.join('; ')}. See the warnings below before you use it.`)]
    : [];
}

function lags({ cooks }: FitResult): string {
  return cooks
    .map(({ lag_s, lagDeviation_s }) => `${lag_s.toFixed(0)} ± ${Math.max(1, lagDeviation_s).toFixed(0)} s`)
    .join(', ');
}

function qualitySentence({ quality, cooks }: FitResult, system: UnitSystem): string {
  const say = sayIn(system);
  const off = (kelvin: number | null) => say('temperatureDifference', kelvin, { digits: 2 });
  const { heldBack_K, heldBackBefore_K, fitted_K, before_K, noise_K } = quality;
  const noise = `The readings' own noise is ${off(noise_K)}.`;
  if (heldBack_K === null) {
    return (
      `No part was held back, so that how good this fit is can't be told: where it was fitted it is off by ${off(fitted_K)}, ` +
      `before by ${off(before_K)}. ${noise} Hold a part back (--hold-back 30%) to know.`
    );
  }
  const span = cooks
    .map(({ fittedTo_s, length_s }) => `${say('time', fittedTo_s)} to ${say('time', length_s)}`)
    .join(', ');
  return (
    `On the part that was not fitted (${span}) it is off by ${off(heldBack_K)}; with the design's own estimates by ` +
    `${off(heldBackBefore_K)}. ${noise} On the part that was fitted: ${off(fitted_K)}, before ${off(before_K)}.`
  );
}

function parameterTable({ parameters }: FitResult, system: UnitSystem): string {
  const say = (each: FittedParameter, value: number) => sayUnknown(value, each, system);
  return table(
    ['', 'field', 'was', 'is', '90 % interval', 'spread left'],
    parameters.map((each, k) => [
      String(k + 1),
      each.path,
      say(each, each.before),
      say(each, each.value),
      rangeOf(say(each, each.low), say(each, each.high)),
      `${Math.round(100 * each.left)} %`,
    ]),
    { indent: '  ', align: ['left', 'left', 'right', 'right', 'right', 'right'] },
  );
}

/** What each estimate is about, and of which the log says nothing. */
function aboutParameters({ parameters, held }: FitResult): string[] {
  const words = parameters.map(({ path }, k) => `${k + 1}: ${unknownLabel(path)}`).join('; ');
  const silent = parameters.filter(({ told }) => !told).map(({ path }) => path);
  return [
    note(`${words}.`),
    note("'Spread left' is what the log leaves of what an estimate could have been."),
    ...(silent.length > 0
      ? [
          note(
            `The log doesn't tell: ${silent.join(', ')}. ${silent.length > 1 ? 'They stay' : 'It stays'} about where the design had ` +
              `${silent.length > 1 ? 'them' : 'it'}, with most of the spread.`,
          ),
        ]
      : []),
    ...(held.length > 0
      ? [
          note(
            `Held as the design has them: ${held.join(', ')}. Where they are otherwise, these intervals can miss: without --free ` +
              'all are fitted.',
          ),
        ]
      : []),
  ];
}

/** More columns than this don't fit on a line. */
const MOST_COLUMNS = 8;

function correlationText(result: FitResult): string[] {
  if (result.parameters.length > MOST_COLUMNS) return [partnerTable(result)];
  return [correlationTable(result), ...pairs(result)];
}

/** For each estimate those two that it is hardest to tell from. */
function partnerTable({ parameters, correlation }: FitResult): string {
  const partners = (k: number) =>
    correlation[k]
      .map((value, j) => ({ value, j }))
      .filter(({ j, value }) => j !== k && Math.abs(value) >= WORTH_SAYING)
      .sort((a, b) => Math.abs(b.value) - Math.abs(a.value))
      .slice(0, 2)
      .map(({ value, j }) => `${value.toFixed(2)} with ${parameters[j].path}`);
  return table(
    ['', '', 'closest', 'next'],
    parameters.map(({ path }, k) => [String(k + 1), path, ...partners(k)]),
    { indent: '  ', align: ['left', 'left', 'left', 'left'] },
  );
}

function correlationTable({ parameters, correlation }: FitResult): string {
  return table(
    ['', '', ...parameters.map((_, k) => String(k + 1))],
    parameters.map(({ path }, k) => [
      String(k + 1),
      path,
      ...correlation[k].map((value, j) => (j > k ? '' : j === k ? '1' : value.toFixed(2))),
    ]),
    { indent: '  ', align: ['left', 'left', ...parameters.map(() => 'right' as const)] },
  );
}

function pairs({ parameters, correlation }: FitResult): string[] {
  const close = parameters.flatMap(({ path }, k) =>
    parameters
      .slice(0, k)
      .flatMap((other, j) => (Math.abs(correlation[k][j]) >= CLOSE ? [`${other.path} and ${path}`] : [])),
  );
  if (close.length === 0) return [];
  return [note(`Hard to tell apart: ${close.join('; ')}. Together they are surer than each alone.`)];
}

function probeTable({ cooks }: FitResult, system: UnitSystem): string {
  const off = (kelvin: number | null) =>
    kelvin === null ? '' : format('temperatureDifference', kelvin, system, { digits: 2 });
  // a probe's offset is known to a tenth of a degree at best
  const tenth = (kelvin: number) => convert('temperatureDifference', kelvin, system).toFixed(1);
  const offset = ({ offset_K, offsetDeviation_K }: FittedChannel) =>
    `${offset_K < 0 ? '' : '+'}${tenth(offset_K)} ± ${tenth(offsetDeviation_K)} ${unitOf('temperatureDifference', system)}`;
  const several = cooks.length > 1;
  const row = (name: string, channel: FittedChannel) => [
    `${several ? `${plainText(name)}, ` : ''}${plainText(channel.header)}${channel.leftOut ? ' (left out)' : ''}`,
    off(channel.fitted.before),
    off(channel.fitted.after),
    off(channel.heldBack.before),
    off(channel.heldBack.after),
    off(channel.noise_K),
    offset(channel),
  ];
  return table(
    ['', 'before', 'fitted', 'held: before', 'held: fitted', 'noise', 'offset'],
    cooks.flatMap((cook) => cook.channels.map((channel) => row(cook.name, channel))),
    { indent: '  ' },
  );
}
