import type { Design, Site } from '../../design/design.js';
import { rangeOf } from '../../design/fields.js';
import { windAtPit } from '../../design/windAtPit.js';
import { LIMIT } from './limits.js';
import { fullFire, holdFire, type AirState } from '../air/states.js';

/** A day on which a choice should still work. */
interface Weather {
  key: 'cold' | 'windOnIntake' | 'intakeInLee' | 'hotStill';
  words: string;
  site: Site;
}

/** How a choice does on such a day. */
export interface WeatherCheck {
  key: Weather['key'];
  words: string;
  works: boolean;
  /** why not; empty where it works */
  why: string[];
  full: AirState | null;
  hold: AirState | null;
}

const COLD = 266.48; // 20 °F
const COLDER = 15;
const HOT = 310.93; // 100 °F
const WIND = 6.7056; // 15 mph
/** Air as heavy as that of a mild day [kg/m3], for what such wind does at the least. */
const AIR = 1.2;
/** Pressure coefficients of a wall in the wind, of one in its lee, and of an open stack top (estimates). */
const PRESSURE = { windward: 0.3, lee: -0.3, top: -0.4 } as const;

/** A cold day, wind from both sides, and a hot day without any: all else as the design has it. */
export function weathersOf(design: Design): Weather[] {
  const { site } = design;
  const at = (change: Partial<Site>): Site => {
    const air = change.air ?? site.air;
    const surroundings = site.surroundings === site.air ? air : site.surroundings;
    return { ...site, surroundings, ...change };
  };
  const cold = Math.max(rangeOf('site.air').min, Math.min(COLD, site.air - COLDER));
  const windy = { wind: Math.max(WIND, windAtPit(design)), windAt: 'pit' } as const;
  return [
    { key: 'cold', words: 'a cold day', site: at({ air: cold }) },
    {
      key: 'windOnIntake',
      words: 'wind on the intakes',
      site: at({ ...windy, windPressure: { intake: PRESSURE.windward, stack: PRESSURE.top } }),
    },
    {
      key: 'intakeInLee',
      words: 'wind from behind, intakes in its lee',
      site: at({ ...windy, windPressure: { intake: PRESSURE.lee, stack: PRESSURE.top } }),
    },
    {
      key: 'hotStill',
      words: 'a hot day without wind',
      site: at({ air: Math.max(HOT, site.air), wind: 0, windPressure: { intake: 0, stack: 0 } }),
    },
  ];
}

/**
 * What such wind adds to the draft from the intakes to the top of the stack, on the intakes and with them in its lee
 * [Pa].
 */
export function windOn(design: Design): { intake: number; lee: number } {
  const pressure = 0.5 * AIR * Math.max(WIND, windAtPit(design)) ** 2;
  return { intake: (PRESSURE.windward - PRESSURE.top) * pressure, lee: (PRESSURE.lee - PRESSURE.top) * pressure };
}

/**
 * A sized design on such a day: does the full fire get its air and hold the target, and does all flow the right way?
 */
export function checkWeather(design: Design, { key, words, site }: Weather): WeatherCheck {
  const there = { ...design, site };
  const full = fullFire(there);
  const hold = full && (holdFire(there, full.solved)?.state ?? null);
  const why = [
    ...(full ? [] : ['the draft never settles']),
    ...(full && full.state.letInRatio < LIMIT.air.low! ? ['too little air'] : []),
    ...(full && !hold ? ['no fire holds the target'] : []),
    ...(full && hold && hold.fire_W > full.state.fireAsked_W ? ['full fire too small'] : []),
    ...[...new Set([...(full?.state.backwards ?? []), ...(hold?.backwards ?? [])])].map(
      (name) => `the ${name} flows backwards`,
    ),
  ];
  return { key, words, works: why.length === 0, why, full: full?.state ?? null, hold };
}
