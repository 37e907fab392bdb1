import { gaugeLabel, grateWords } from './labels.js';
import type { Design } from '../design/design.js';
import { gaugeReading } from '../study/estimate/gauge.js';
import type { EstimateResult, SteadyState, Warning } from '../study/estimate/result.js';
import type { UnitSystem } from '../units/index.js';
import { listed } from '../units/listed.js';
import { gapsSmoke } from './draws.js';
import { NEXT_TO_NONE, sayAlone, sayQuantity } from './quantity.js';
import { restsOn } from './restsOn.js';
import { rangeOf, rangeText, wordsOf } from './quantityWords.js';
import { LATE, sinks } from '../study/events/swing.js';
import { held, inAnyState } from '../study/quantities.js';

/**
 * What a builder asks, answered in sentences: how long to temperature, what it takes to stay there, how it draws.
 * Nothing is rounded up or left out where the answer is 'never'. Last, what measured cook it rests on, if any.
 */
export function headline(result: EstimateResult, system: UnitSystem): string[] {
  const { design, steady, assumed, warmUp, warnings } = result;
  const say = sayAlone(system);
  const target = say('temperature', design.fire.target);
  const gauge = `the ${gaugeLabel(design.gauge)}`;
  const sentences: string[] = [];
  /** a number; where its spread was studied its middle, and how sure it is */
  const told = (key: string, text: (value: number) => string, value: number) => {
    const number = result.spread?.numbers.find((each) => each.key === key);
    return number ? `${text(number.p50 ?? value)} (8 of 10 cases: ${rangeText(number, design, system)})` : text(value);
  };
  const time = (value: number) => say('time', value);

  if (assumed) {
    const fire = `${say('power', assumed.fire_W)} or ${say('massFlow', assumed.wood_kg_per_s)} of wood`;
    const from = `Under the full fire, ${fire}${fireWords(design)},`;
    if (warmUp?.gauge_s != null) {
      const soaked =
        warmUp.soaked_s == null
          ? 'The pit is not soaked within the time computed.'
          : `The steel is soaked after ${told('soaked_s', time, warmUp.soaked_s)} and ` +
            `${told('woodToSoaked_kg', (value) => `${say('mass', value)} of wood`, warmUp.woodToSoaked_kg!)}.`;
      sentences.push(
        `${from} ${gauge} first reads ${target} after ${told('gauge_s', (value) => `${time(value)}${result.lit ? '' : ' at the earliest'}`, warmUp.gauge_s)}. ${soaked}`,
      );
    } else {
      const reading = gaugeReading(assumed, design.gauge);
      const settles = say('temperature', reading);
      const tips = warnings.some(({ code }) => code === 'draft-tips-over');
      const far = tips
        ? `would settle at ${settles}, but its way to ${target} could not be followed; the warnings say why`
        : `has not read ${target} within 24 hours of being lit; the warnings say what becomes of it`;
      sentences.push(
        reading !== null && reading > design.fire.target
          ? `${from} ${gauge} ${far}.`
          : `${from} ${gauge} never reads ${target}: it settles at ${settles}.`,
      );
    }
  } else {
    sentences.push(
      `This pit can't burn the fire it is given (${say('power', design.fire.heat)}); the warnings say why.`,
    );
  }

  if (steady) {
    const wood = told('hold.wood_kg_per_s', (value) => `${say('massFlow', value)} of wood`, steady.wood_kg_per_s);
    const hold = `${wood}: ${told('hold.fire_W', (value) => say('power', value), steady.fire_W)}`;
    sentences.push(
      takesMore(result)
        ? `Holding ${target} there would take ${hold}, more than ${design.fire.heatOf === 'air' ? 'burns clean' : 'that fire gives'}.`
        : `Holding ${target} there takes ${hold}, which is what the pit loses.`,
    );
    const cooking = cookingWords(steady, design.gauge, system, told);
    if (cooking !== '') sentences.push(`Meanwhile ${cooking}.`);
    sentences.push(...litWords(result, system), ...splitWords(result, system), ...ventWords(result, system));
    sentences.push(draftWords(steady, warnings, system, told));
  } else {
    sentences.push(`No fire holds ${target} at ${gauge}; the warnings say why.`);
  }
  const measured = restsOn(design, system);
  if (measured !== null) sentences.push(measured);
  return sentences;
}

/** Does holding a target that the full fire never gets to take more than that? */
function takesMore({ assumed, steady, warmUp }: EstimateResult): boolean {
  return assumed !== null && steady !== null && warmUp?.gauge_s == null && steady.fire_W > assumed.fire_W;
}

/** Where the full fire comes from, when the design gives none. */
function fireWords({ fire }: Design): string {
  if (fire.heatOf === undefined) return '';
  return fire.heatOf === 'air'
    ? ' (all that its vents as drawn let burn clean)'
    : ' (all that a bed in this box burns; an estimate, between half and twice of it)';
}

/** How a cook brings it to temperature. */
function litWords(result: EstimateResult, system: UnitSystem): string[] {
  const { design, lit } = result;
  const say = sayAlone(system);
  if (!lit) {
    if (!isNeverLit(result)) return [];
    const target = say('temperature', design.fire.target);
    return [
      `Lit and fed by a cook, never with more burning than the full fire, it does not come to ${target}: that takes a larger one.`,
    ];
  }
  const coals = `${say('mass', lit.coals_kg, { digits: 2 })} of charcoal`;
  const wood = lit.splits === 0 ? '' : ` and ${say('mass', lit.wood_kg, { digits: 2 })} of splits`;
  return [`Lit with ${coals}${wood} it reads ${say('temperature', design.fire.target)} after ${litTime(lit, system)}.`];
}

/**
 * Does a full fire bring a pit to its target and a cook not? Splits burn up and down, and at most as much as the full
 * fire. Not told where the fire itself or the air is too little, which is said already.
 */
export function isNeverLit({ design, warmUp, lit, splits }: EstimateResult): boolean {
  return lit === null && warmUp?.gauge_s != null && !(splits && sinks(splits, design.fire));
}

/**
 * `19 min (5.8 to 27 min)`: when it reads its target from the match, and as soon and as late as it may; an end that
 * prints alike is not said.
 */
export function litTime(
  { reads_s, soonest_s, latest_s }: NonNullable<EstimateResult['lit']>,
  system: UnitSystem,
): string {
  const time = (seconds: number) => sayAlone(system)('time', seconds, { digits: 2 });
  const [reads, soonest] = [time(reads_s), time(soonest_s)];
  if (latest_s === null) return `${reads} (${soonest === reads ? '' : `${soonest}, `}or never)`;
  const latest = time(latest_s);
  if (soonest === reads && latest === reads) return reads;
  if (soonest === reads) return `${reads} (${latest} at the latest)`;
  return `${reads} (${latest === reads ? `${soonest} at the soonest` : rangeOf(soonest, latest)})`;
}

/** How it swings under splits. */
function splitWords(result: EstimateResult, system: UnitSystem): string[] {
  const { design, splits } = result;
  if (!splits || splits.wood_kg === null) return [];
  const say = sayAlone(system);
  const { fire, gauge } = design;
  const degrees = (kelvin: number) => say('temperature', kelvin);
  const split = `${say('mass', splits.wood_kg, { digits: 2 })} of splits`;
  const every = `every ${say('time', splits.period_s, { digits: 2 })}`;
  const vents = splits.open === null ? '' : `, the intakes ${say('share', splits.open, { digits: 2 })} open,`;
  const line = fire.target + fire.cook.line;
  const span = `${degrees(splits.lowest_K)} to ${degrees(splits.highest_K)}`;
  if (sinks(splits, fire)) {
    return [
      `On ${split}${vents} its bed gets too little air: once the ${gaugeLabel(gauge)} has fallen to ${degrees(line)} it goes on to ${degrees(splits.lowest_K)} and does not come back.`,
    ];
  }
  if (splits.highest_K < line) {
    return [`On ${split}${vents} the ${gaugeLabel(gauge)} never gets back to ${degrees(line)}: it stays from ${span}.`];
  }
  const who = isNeverLit(result) ? 'Once there, a cook who' : `A cook who${burnsMore(result)}`;
  const fed =
    fire.splits.every === undefined
      ? `${who} lays on ${split} ${say('time', fire.cook.late)} after it has fallen to ${degrees(line)}${vents} does so ${every}, and`
      : `On ${split} ${every}${vents}`;
  const forgotten =
    splits.late_K === null ? '' : `; one forgotten for ${say('time', LATE)} leaves it at ${degrees(splits.late_K)}`;
  return [`${fed} the ${gaugeLabel(gauge)} goes from ${span}${forgotten}.`, ...splitRanges(result, system)];
}

/** What a cook has to do beside laying on wood where the full fire holds the target nowhere. */
function burnsMore(result: EstimateResult): string {
  if (!takesMore(result)) return '';
  return result.design.fire.heatOf === 'air' ? ' lets it burn dirtier than that and' : ' burns more than that and';
}

/** How sure that is, where it was studied. */
function splitRanges({ design, spread }: EstimateResult, system: UnitSystem): string[] {
  const range = (key: string) => {
    const number = spread?.numbers.find((each) => each.key === key);
    return number ? rangeText(number, design, system) : null;
  };
  const [every, lowest, highest, wood] = ['period_s', 'lowest_K', 'highest_K', 'wood_kg_per_s'].map((key) =>
    range(`swing.${key}`),
  );
  if (every === null) return [];
  return [
    `In 8 of 10 cases one is laid on every ${every}, ${wood} of them, the lowest reading is ${lowest} and the highest ${highest}.`,
  ];
}

/** Openings nearer than this are the same to a cook [-]. */
const SAME_OPENING = 0.05;

/** Where the intakes belong while it holds. */
function ventWords({ vents, splits }: EstimateResult, system: UnitSystem): string[] {
  // who turns them himself has been told where they stand
  if (!vents || splits?.open != null || Math.abs(vents.open - vents.drawn) < SAME_OPENING) return [];
  const say = sayAlone(system);
  const share = (open: number) => say('share', open, { digits: 2 });
  const wood = say('massFlow', vents.wood_kg_per_s);
  return [
    `With wood enough on the bed, intakes ${share(vents.open)} open hold it too and burn clean, on ${wood} of wood.`,
  ];
}

/** Where a station of the chamber lies along a grate. */
const ALONG: Readonly<Record<string, string>> = {
  fireEnd: 'at the fire end',
  middle: 'in the middle',
  stackEnd: 'at the stack end',
};

/** What grates and racks read, and what the lid does where the cook steers by another place; empty without any. */
function cookingWords(
  { places, stations, evenness }: SteadyState,
  gauge: string,
  system: UnitSystem,
  told: (key: string, text: (value: number) => string, value: number) => string,
): string {
  const say = sayAlone(system);
  const far = (kelvin: number) => `${say('temperatureDifference', kelvin, { digits: 2 })} apart`;
  const along = (all: readonly { station: string; thermometer_K: number }[]) =>
    listed(all.map((each) => `${say('temperature', each.thermometer_K)} ${ALONG[each.station]}`));
  const dials = stations
    .filter(({ name }) => Object.hasOwn(ALONG, name))
    .map(({ name, thermometer_K }) => ({ station: name, thermometer_K }));
  const steersByLid = Object.hasOwn(ALONG, gauge) || dials.length === 0;
  const names = [...new Set(places.filter(({ kind }) => kind === 'grate').map(({ name }) => name))];
  const grates = names.map((name) => {
    const apart = evenness.grates.find((each) => each.name === name)?.endToEnd_K;
    const own = places.filter((place) => place.kind === 'grate' && place.name === name);
    const even =
      own.length > 1 && apart !== undefined
        ? `, ${names.length > 1 ? far(apart) : told('hold.endToEnd_K', far, apart)}`
        : '';
    return `${grateWords(name)} reads ${along(own)}${even}`;
  });
  const racks = places.filter(({ kind }) => kind === 'rack').map((rack) => say('temperature', rack.thermometer_K));
  return [
    ...(steersByLid ? [] : [`the lid's dials read ${along(dials)}`]),
    ...grates,
    ...(racks.length === 0
      ? []
      : racks.length === 1
        ? [`the rack reads ${racks[0]}`]
        : [`the racks read ${listed(racks)}, lowest first`]),
  ].join('; ');
}

/** Whether it draws, with how much air and how hard. */
function draftWords(
  { draft, air_kg_per_s, excessAirRatio }: SteadyState,
  warnings: readonly Warning[],
  system: UnitSystem,
  told: (key: string, text: (value: number) => string, value: number) => string,
): string {
  const say = sayAlone(system);
  const flow = (value: number) => `${sayQuantity(say, inAnyState('air_kg_per_s'), value)} of air into the firebox`;
  const times = (value: number) => `${sayQuantity(say, inAnyState('excessAirRatio'), value)} times what it needs`;
  const air =
    `${told('hold.air_kg_per_s', flow, air_kg_per_s)}; ` +
    `the fire gets ${told('hold.excessAirRatio', times, excessAirRatio)}`;
  const draws = warnings.some(({ code }) => code === 'back-draft')
    ? `It draws the wrong way, as the warnings say, and gets ${air}`
    : `It draws ${air}`;
  const base = draft.stackBase_Pa;
  const pressure = (value: number) => say('pressure', value, { digits: 2 });
  if (base < 0) {
    const leak = gapsSmoke(warnings)
      ? ', and gaps up there leak smoke'
      : ': a gap up there would leak smoke, and none does';
    return `${draws}; under the stack base gas pushes outwards with ${pressure(-base)}${leak}.`;
  }
  const there = told('hold.stackBase_Pa', pressure, base);
  return base < NEXT_TO_NONE && there === pressure(base)
    ? `${draws}; there is next to no draft at the stack base.`
    : `${draws}; ${wordsOf(held('stackBase_Pa'), 'row')} is ${there}.`;
}
