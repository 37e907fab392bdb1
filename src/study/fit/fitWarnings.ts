import type { Warning } from '../result.js';
import type { FitInput } from './fit.js';
import type { FittedChannel, FittedCook } from './fitResult.js';
import type { Posterior } from './posterior.js';

/** Errors this many times the readings' own noise are more than noise; where they also hang together, less will do. */
const MORE_THAN_NOISE = { alone: 1.5, together: 1.15 };
/** Noise does not hang together over more readings than this. */
const STRUCTURE = 4;
/** An estimate that is not fitted and would go this far, in standard deviations of its spread and of the knowledge of it. */
const WANTED = { far: 0.5, sure: 3 };
/** A probe this many standard deviations of what it may be off is worth a word. */
const FAR_OFF = 2;

/** What whoever uses a fit should know of it. */
export function fitWarnings(
  { parameters, wanted }: Posterior,
  cooks: readonly FittedCook[],
  { inputs, converged, accuracy }: { inputs: readonly FitInput[]; converged: boolean; accuracy: number },
): Warning[] {
  const warnings: Warning[] = [];
  if (!converged) {
    warnings.push(
      warn('fit-not-settled', 'fit', 'the estimates were still moving when the fit was ended: take them for rough'),
    );
  }
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
  inputs.forEach(({ log }, l) => {
    const cook = cooks[l];
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
    warnings.push(...structureOf(cook), ...cook.channels.flatMap((channel) => offsetOf(channel, accuracy)));
  });
  return warnings;
}

/** Does a fit leave over more than the logger's own noise? All probes in one word. */
function structureOf({ name, channels }: FittedCook): Warning[] {
  const told = channels.flatMap((channel) => {
    const { fitted, noise_K, lasts_s, spacing_s, header } = channel;
    if (fitted.after === null) return [];
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

function offsetOf({ header, offset_K }: FittedChannel, accuracy: number): Warning[] {
  if (Math.abs(offset_K) <= FAR_OFF * accuracy) return [];
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
