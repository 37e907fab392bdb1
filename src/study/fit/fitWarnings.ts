import type { Warning } from '../result.js';
import type { FitInput } from './fit.js';
import type { FittedChannel, FittedCook, FittedParameter } from './fitResult.js';

/** Errors this many times the readings' own noise are more than noise; where they also hang together, less will do. */
const MORE_THAN_NOISE = { alone: 1.5, together: 1.15 };
/** Noise does not hang together over more readings than this. */
const STRUCTURE = 4;
/** A probe this many standard deviations of what it may be off is worth a word. */
const FAR_OFF = 2;

/** What whoever uses a fit should know of it. */
export function fitWarnings(
  parameters: readonly FittedParameter[],
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
    for (const channel of cook.channels) warnings.push(...structureOf(channel), ...offsetOf(channel, accuracy));
  });
  return warnings;
}

/** Does a fit leave over more than the logger's own noise? */
function structureOf(channel: FittedChannel): Warning[] {
  const { fitted, noise_K, lasts_s, spacing_s, header } = channel;
  if (fitted.after === null) return [];
  const times = fitted.after / noise_K;
  const lasting = lasts_s > STRUCTURE * spacing_s;
  if (times < (lasting ? MORE_THAN_NOISE.together : MORE_THAN_NOISE.alone)) return [];
  const minutes = Math.max(1, Math.round(lasts_s / 60));
  const noise = (1.8 * noise_K).toPrecision(2);
  return [
    {
      ...warn(
        'more-than-noise',
        header,
        `what is left over is ${(1.8 * fitted.after).toPrecision(2)} °F and hangs together over about ${minutes} min, where the readings' own noise is ${noise} °F: this cook holds something that the model does not (layers, a draft of air, how the splits burned, a vent not logged)`,
      ),
      value: fitted.after,
      limits: { high: MORE_THAN_NOISE.together * noise_K, unit: 'K' },
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
