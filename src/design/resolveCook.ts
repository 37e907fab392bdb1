/** What happens over time: splits on the fire, and a cook's day. */
import type { Cook, CookEvent, Food, Splits } from './design.js';
import type { Fields } from './reading.js';
import { STATIONS } from './stations.js';

export function resolveSplits(splits: Fields): Splits {
  return {
    every: splits.optional('every', 'splitEvery', '45 min'),
    flame: splits.optional('flame', 'splitTime', '15 min'),
    charcoal: splits.optional('charcoal', 'charcoal', 0.3),
    glow: splits.optional('glow', 'splitTime', '45 min'),
  };
}

export function resolveCook(cook: Fields): Cook {
  const load = cook.list('load').map(resolveFood);
  return {
    soak: cook.optional('soak', 'cookTime', '0 min'),
    load,
    loading: cook.optional('loading', 'doorTime', load.length > 0 ? '60 s' : '0 s'),
    tend: cook.required('tend', 'cookTime'),
    events: cook.list('events').map(resolveEvent),
    dieDown: cook.optional('dieDown', 'cookTime', '1 h'),
    band: cook.optional('band', 'band', '15 °F'),
  };
}

function resolveFood(food: Fields): Food {
  const station = STATIONS.find((each) => each === food.text('station', ''));
  return {
    name: food.text('name', ''),
    mass: food.required('mass', 'contentMass'),
    area: food.required('area', 'contentArea'),
    start: food.optional('start', 'foodStart', '40 °F'),
    ...(station ? { station } : {}),
  };
}

function resolveEvent(event: Fields): CookEvent {
  return {
    at: event.required('at', 'cookTime'),
    lasts: event.required('lasts', 'weatherTime'),
    door: event.flag('door', false),
    ...(event.has('wind') ? { wind: event.required('wind', 'wind') } : {}),
    ...(event.has('rain') ? { rain: event.required('rain', 'rain') } : {}),
  };
}
