/** What is warned of the target: never read, fallen back from, reached by a hair. */
import { gaugeReading } from './gauge.js';
import type { Design } from '../../design/design.js';
import { amount, formatTime, told, type Amount, type Told } from '../../units/index.js';
import type { SteadyState, WarmUp, Warning } from './result.js';
import type { WarmUpRun } from './warmUp.js';

/** A fire is only just large enough where holding the target takes more than this share of it. */
const JUST_ENOUGH = 0.9;
/** Fires as near to each other as this share are the same. */
const SAME = 1e-6;

const fahrenheit = (kelvin: number) => amount('temperature', kelvin);

/** Why the target is not reached, or the pit not soaked, in words: fire, air or loss. */
export function targetWarning(
  design: Design,
  assumed: SteadyState,
  steady: SteadyState | null,
  reached: number,
  run: WarmUpRun | null,
): Warning[] {
  const target = fahrenheit(design.fire.target);
  const low = { low: design.fire.target, unit: 'K' };
  const own = gaugeReading(assumed, design.gauge)!;
  const first = run && run.first;
  if (!steady && !first) {
    const why = assumed.limitedByAir
      ? 'air limits the fire: give it more intake, throat or stack'
      : 'no fire that the air allows is large enough against what the pit loses: more air, or insulation';
    const short = reached < design.fire.target;
    const message = short
      ? told`${target} on the thermometer is out of reach; the most it gets to is ${fahrenheit(reached)}; ${why}`
      : told`the fire of ${amount('power', assumed.fire_W)} brings the thermometer only to ${fahrenheit(own)}, and no fire holds ${target}: a larger one tips the draft over to another way of flowing, on which it reads ${fahrenheit(reached)}. Give the gas one clear way`;
    return [{ code: 'target-not-reached', message, where: design.gauge, value: short ? reached : own, limits: low }];
  }
  if (run && !run.finished) return [];
  if (run && run.warmUp.soaked_s !== null) return fallsShort(design, assumed, steady);
  if (!first && own <= design.fire.target) {
    return [
      {
        code: 'target-not-reached',
        message: told`the fire of ${amount('power', assumed.fire_W)} brings the thermometer only to ${fahrenheit(own)}, not to ${target}: ${assumed.limitedByAir ? 'air limits it; open up' : design.fire.heatOf === 'air' ? 'its vents let no larger one burn clean; open up, or cut larger intakes' : 'it takes a larger fire'}`,
        where: design.gauge,
        value: own,
        limits: low,
      },
    ];
  }
  if (!run) return [];
  if (run.warmUp.gauge_s === null) {
    const { thermometer_K, fire_W } = run.warmUp.series;
    const reads = thermometer_K[thermometer_K.length - 1];
    const then = first
      ? `kept burning, it reads that after ${formatTime(first.time)}, too late for a cook: it takes a larger fire, a clearer way for the gas, or less that takes up heat`
      : told`by then ${amount('power', fire_W[fire_W.length - 1])} burn, and the draft has not settled, so that the state given for the full fire may never come about; give the fire more air and the gas one clear way`;
    return [
      {
        code: 'target-not-reached',
        message: told`lit cold, the pit brings the thermometer only to ${fahrenheit(reads)} within 24 hours, not to ${target}: ${then}`,
        where: design.gauge,
        value: reads,
        limits: low,
      },
    ];
  }
  return [
    {
      code: 'not-soaked-in-a-day',
      message: told`the pit has not soaked within 24 hours of this fire: ${slow(assumed, steady, target)}`,
      where: design.gauge,
      value: null,
      limits: { high: 86400, unit: 's' },
    },
  ];
}

/**
 * The fire that holds is more than what burns of the full one in the end: gas goes another way there than when the
 * target was read.
 */
function fallsShort({ fire }: Design, assumed: SteadyState, steady: SteadyState | null): Warning[] {
  if (!steady || steady.fire_W <= assumed.fire_W * (1 + SAME)) return [];
  const [full, holds] = [assumed, steady].map(({ fire_W }) => amount('power', fire_W));
  return [
    {
      code: 'full-fire-falls-off',
      message: told`kept on, it burns only ${full} in the end, less than the ${holds} that hold ${fahrenheit(fire.target)}: gas comes to go another way, on which the fire gets less air. Turn it down once the thermometer reads its target, and give the gas one clear way`,
      where: 'full fire',
      value: assumed.fire_W,
      limits: { low: steady.fire_W, unit: 'W' },
    },
  ];
}

function slow(assumed: SteadyState, steady: SteadyState | null, target: Amount): Told {
  if (steady && steady.fire_W > JUST_ENOUGH * assumed.fireAsked_W)
    return told`it is only just large enough for ${target}`;
  return told`once it has read ${target} it never settles, for the draft keeps turning with the fire or something in it takes up heat for longer`;
}

/** Below its target by no more than this the thermometer counts as holding it [K]. */
const HOLDS = 0.5;

/** The thermometer has read its target and falls below it again, whatever the cook burns. */
export function fallsBack({ gauge_s, series }: WarmUp, { gauge, fire: { target } }: Design): Warning[] {
  if (gauge_s === null) return [];
  const { time_s, thermometer_K } = series;
  let lowest = -1;
  for (let i = 0; i < time_s.length; i++) {
    if (time_s[i] < gauge_s || thermometer_K[i] >= target - HOLDS) continue;
    if (lowest < 0 || thermometer_K[i] < thermometer_K[lowest]) lowest = i;
  }
  if (lowest < 0) return [];
  const value = thermometer_K[lowest];
  return [
    {
      code: 'draft-swings',
      message: told`${fahrenheit(value)} is what the thermometer falls back to after ${formatTime(time_s[lowest])}, with a fire that tries to hold it: the draft tips from one way of flowing to another, or less fire lets the thermometer read more at first. Give the pit a clear way through: throat, stack and intakes large enough, stack top well above the intakes`,
      where: gauge,
      value,
      limits: { low: target, unit: 'K' },
    },
  ];
}
