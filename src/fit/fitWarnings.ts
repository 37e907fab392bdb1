import type { Warning } from '../study/estimate/result.js';
import type { FitInput } from './fit.js';
import type { CookLog } from './log/log.js';
import { convert, format } from '../units/index.js';
import { listed } from '../units/listed.js';
import type { Design } from '../design/design.js';
import type { FittedChannel, FittedCook, FitResult } from './fitResult.js';
import type { Posterior } from './posterior.js';
import { median } from 'simple-statistics';
import { robustSpread } from './residuals.js';
import type { Suspicion } from './suspects.js';
import { checkWood, type WoodCheck } from './woodCheck.js';

/** Errors this many times the readings' own noise are more than noise; where they also hang together, less will do. */
const MORE_THAN_NOISE = { alone: 1.5, together: 1.15 };
/** Noise does not hang together over more readings than this. */
const STRUCTURE = 4;
/**
 * An estimate that is not fitted and would go this far, in standard deviations of its spread and of the knowledge of
 * it.
 */
const WANTED = { far: 0.5, sure: 3 };
/** A probe this many standard deviations of what it may be off is worth a word. */
const FAR_OFF = 2;

interface Told {
  design: Design;
  /** estimates that tell and are not fitted */
  held: readonly string[];
  inputs: readonly FitInput[];
  converged: boolean;
  accuracy: number;
  suspicion: Suspicion;
  quality: FitResult['quality'];
}

/** Notes of a log that speak against the whole of it. */
const AGAINST = ['running-total', 'air-unit', 'colder-than-air', 'copied-probe'];
/** Predicted worse by less than this share of the readings' own noise, or of the error itself, is chance. */
const CHANCE = { noise: 0.1, error: 0.01 };

/** Whether a fit predicts what was held back worse than the design's own estimates do. */
export function predictsWorse({ heldBack_K, heldBackBefore_K, noise_K }: FitResult['quality']): boolean {
  if (heldBack_K === null || heldBackBefore_K === null) return false;
  return heldBack_K - heldBackBefore_K > Math.max(CHANCE.noise * noise_K, CHANCE.error * heldBackBefore_K);
}

/** What whoever uses a fit should know of it. */
export function fitWarnings(
  { parameters, wanted }: Posterior,
  cooks: readonly FittedCook[],
  { design, held, inputs, converged, accuracy, suspicion, quality }: Told,
): Warning[] {
  const warnings: Warning[] = [];
  if (!converged) {
    warnings.push(
      warn('fit-not-settled', 'fit', 'the estimates were still moving when the fit was ended: take them for rough'),
    );
  }
  if (predictsWorse(quality)) {
    warnings.push({
      ...warn(
        'predicts-worse',
        'fit',
        "it predicts the part held back worse than the design's own estimates do: what it found is no gain, and other cooks would be predicted worse too",
      ),
      value: quality.heldBack_K,
      limits: { low: 0, high: quality.heldBackBefore_K!, unit: 'K' },
    });
  }
  warnings.push(...suspected(suspicion));
  for (const each of parameters) {
    if (each.atEdge) {
      const limits = { ...each.spread, unit: each.unit };
      warnings.push({
        ...warn(
          'at-edge-of-spread',
          each.path,
          'the log pushes it to the end of what it may be: something else in this cook is not as the model has it (wood weighed, vents, a probe, wind), and this estimate makes up for it',
        ),
        value: each.value,
        limits,
      });
    }
  }
  const others = wanted.filter(({ step, deviation }) => Math.abs(step) > Math.max(WANTED.far, WANTED.sure * deviation));
  if (others.length > 0) {
    const names = others.map(({ path, step }) => `${path} (${step > 0 ? 'more' : 'less'})`).join(', ');
    warnings.push(
      warn(
        'moves-what-is-not-fitted',
        'fit',
        `the log would rather move ${names}: what is fitted makes up for it. Fit that too (--free), or see whether something in the log explains it`,
      ),
    );
  }
  // which of two that are torn took the blame is chance; beside a liar a held estimate shows as the others' offset
  const neighbours = suspicion.liar !== null && held.length > 0;
  inputs.forEach(({ log }, l) => {
    const cook = cooks[l];
    const blameless = neighbours ? cook.channels.map(({ header }) => header) : suspicion.torn;
    if (!log.wood && !log.fire) {
      warnings.push(
        warn(
          'no-fire-in-log',
          log.name,
          "the log tells no wood and no fire, so that the design's assumed fire is taken to burn from its first row on: log each piece of wood, and the fit is worth more",
        ),
      );
    }
    if (cook.from_s > 0) {
      warnings.push(
        warn(
          'hot-start',
          log.name,
          'the pit was hot at the first row, and is taken as settled there; the first hour is left out of the fit',
        ),
      );
    }
    warnings.push(
      ...log.notes
        .filter(({ code }) => AGAINST.includes(code))
        .map(({ code, where, message }) => warn(code, where, message)),
      ...ofWood(design, log),
    );
    warnings.push(...structureOf(cook), ...cook.channels.flatMap((channel) => offsetOf(channel, accuracy, blameless)));
  });
  return warnings;
}

/** Does a fit leave over more than the logger's own noise? All probes in one word. */
function structureOf({ name, channels }: FittedCook): Warning[] {
  const told = channels.flatMap((channel) => {
    const { fitted, noise_K, lasts_s, spacing_s, header } = channel;
    if (fitted.after === null || channel.leftOut) return [];
    const lasting = lasts_s > STRUCTURE * spacing_s;
    const times = fitted.after / noise_K;
    if (times < (lasting ? MORE_THAN_NOISE.together : MORE_THAN_NOISE.alone)) return [];
    const degrees = (kelvin: number) => (1.8 * kelvin).toPrecision(2);
    const minutes = Math.max(1, Math.round(lasts_s / 60));
    const words = `${header} ${degrees(fitted.after)} against ${degrees(noise_K)} °F of noise, for about ${minutes} min at a time`;
    return [{ words, after: fitted.after }];
  });
  if (told.length === 0) return [];
  return [
    {
      ...warn(
        'more-than-noise',
        name,
        `this cook holds something that the model does not (how the splits burned, a vent or wood not logged, layers, gusts). Left over: ${told.map(({ words }) => words).join('; ')}`,
      ),
      value: Math.max(...told.map(({ after }) => after)),
    },
  ];
}

/** What can't be right, where no single probe is to blame. */
function suspected({ torn, swapped, fire }: Suspicion): Warning[] {
  if (swapped) {
    const words = [...swapped].map(([header, under]) => `${under} reads as ${header} should`).join(', ');
    const message = `${words}: so put, the log agrees with the pit. Look which probe sat where`;
    return [warn('probes-swapped', [...swapped.keys()].join(', '), message)];
  }
  if (fire !== null) {
    const message = `the probes read as if the fire were about ${fire.toPrecision(2)} times what the wood of this log gives: wood in another unit (a kilogram is 2.2 lb), wood not logged, or a log of another pit`;
    return [{ ...warn('fire-does-not-fit', 'fit', message), value: fire }];
  }
  if (torn.length === 0) return [];
  const message = `${listed(torn)} can't both be right: without either of them the rest of the log agrees with the pit, and it can't be told which one is off. Check them in boiling water, and where they sit`;
  return [warn('probes-disagree', torn.join(', '), message)];
}

/** Wood that no fire could have burned, or that could not have made the heat. */
function ofWood(design: Design, log: CookLog): Warning[] {
  const check = checkWood(design, log);
  if (!check) return [];
  const { laid_kg, most_kg, least_kg } = check;
  const say = (mass: number) => format('mass', mass);
  const limits = { low: least_kg, high: most_kg, unit: 'kg' };
  if (laid_kg > most_kg) {
    const message = `${moreThanBurns(check)}. A running total, or a wrong unit?`;
    return [{ ...warn('more-wood-than-burns', log.name, message), value: laid_kg, limits }];
  }
  if (laid_kg >= least_kg) return [];
  const message = `the log has ${say(laid_kg)} of wood in all; what its probes read took at least ${say(least_kg)}. A wrong unit, or wood that was not logged?`;
  return [{ ...warn('less-wood-than-it-took', log.name, message), value: laid_kg, limits }];
}

/** How its wood goes beyond what a pit can burn, in words. */
export function moreThanBurns({ laid_kg, most_kg }: WoodCheck): string {
  return `its wood adds up to ${format('mass', laid_kg)}, more than this pit can burn in the time with all the air its vents let in (${format('mass', most_kg)}, counted generously)`;
}

/** In what way a probe is off that was left out: its unit, by the same all the time, or neither. */
function wayOff({ curves, offset_K }: FittedChannel): string {
  const { measured_K, after_K } = curves;
  const left = (read: (kelvin: number) => number) => measured_K.map((value, i) => read(value) - after_K[i]);
  const size = (values: number[]) => median(values.map(Math.abs));
  const now = size(left((value) => value));
  const celsius = size(left((value) => 1.8 * value - 459.67 + 273.15));
  const fahrenheit = size(left((value) => (value - 273.15 + 459.67) / 1.8));
  if (celsius < UNIT * now && celsius < fahrenheit) return ', as a reading in °C does under a header in °F';
  if (fahrenheit < UNIT * now) return ', as a reading in °F does under a header in °C';
  const spread = robustSpread(left((value) => value - offset_K));
  return spread < UNIT * now ? ', all the time' : ', more at some times than at others';
}

/** Another reading of a probe explains it where it leaves less than this share. */
const UNIT = 0.3;

function offsetOf(channel: FittedChannel, accuracy: number, blameless: readonly string[]): Warning[] {
  const { header, offset_K, leftOut } = channel;
  if (leftOut) {
    const by = convert('temperatureDifference', Math.abs(offset_K), 'shop').toPrecision(2);
    const message = `against the others and the model this probe reads about ${Number(by)} °F ${offset_K > 0 ? 'high' : 'low'}${wayOff(channel)}: it is not believed and left out of the fit. Check it in boiling water, its header's unit, and where it sits`;
    return [
      {
        ...warn('probe-reads-off', header, message),
        value: offset_K,
        limits: { low: -FAR_OFF * accuracy, high: FAR_OFF * accuracy, unit: 'K' },
      },
    ];
  }
  if (Math.abs(offset_K) <= FAR_OFF * accuracy || blameless.includes(header)) return [];
  const side = offset_K > 0 ? 'high' : 'low';
  return [
    {
      ...warn(
        'probe-reads-off',
        header,
        `against the others and the model this probe reads ${Math.abs(1.8 * offset_K).toPrecision(2)} °F ${side}: check it in boiling water, and where it sits`,
      ),
      value: offset_K,
      limits: { low: -FAR_OFF * accuracy, high: FAR_OFF * accuracy, unit: 'K' },
    },
  ];
}

function warn(code: string, where: string, message: string): Warning {
  return { code, where, message, value: null, limits: null };
}
