import { coldSmoke } from '../events/coldSmoke.js';
import type { Design } from '../../design/design.js';
import { coolDown, type CoolDown } from '../events/coolDown.js';
import { followCook, type CookResult } from '../events/cook.js';
import { disturb, type Disturbance } from '../events/disturb.js';
import { doorwayOf, openDoor, type Doorway } from '../events/door.js';
import { estimate } from '../estimate/estimate.js';
import { holdPit } from '../events/heldPit.js';
import type { EstimateResult, Warning } from '../estimate/result.js';
import { studyPlate, type PlateStudy } from '../plate/plateStudy.js';
import { splitWarnings } from '../events/splitWarnings.js';
import { splitSwing, type Swing } from '../events/swing.js';
import { turnWeather } from '../events/weather.js';

/** What is done to every option, in SI. */
export interface StudySettings {
  /** how long the door stands open [s] */
  door_s: number;
  /** a gust: wind speed [m/s] and how long it blows [s] */
  gust: { wind: number; lasts: number };
  /** a shower: wet share of the upward-facing outside and how long it falls [s] */
  shower: { rain: number; lasts: number };
}

/** A door for a minute; a 20 mph gust for 10 minutes; rain on all that faces up for 20 minutes. */
export const USUAL_SETTINGS: StudySettings = {
  door_s: 60,
  gust: { wind: 20 * 0.44704, lasts: 600 },
  shower: { rain: 1, lasts: 1200 },
};

/** What events do to a pit that holds its target; null where the gas found no state to settle in. */
export interface EventStudies {
  doorway: Doorway;
  door: Disturbance | null;
  gust: Disturbance | null;
  shower: Disturbance | null;
  swing: Swing | null;
  plate: PlateStudy;
  coolDown: CoolDown | null;
  /** the design's cook, where it has one */
  cook: CookResult | null;
}

/** Everything that a comparison knows of one design. Plain data, so that it can come from another thread. */
export interface OptionStudy {
  result: EstimateResult;
  /** null: no fire holds the target, so that no event can be followed */
  studies: EventStudies | null;
}

/** The estimate of a design and what events do to it. Pure: the same design and settings give the same numbers. */
export function studyOption(design: Design, settings: StudySettings = USUAL_SETTINGS): OptionStudy {
  const result = estimate(design);
  if (design.upright) result.coldSmoke = coldSmoke(design);
  const held = result.steady && holdPit(design);
  if (!held) return { result, studies: null };
  const studies: EventStudies = {
    doorway: doorwayOf(design),
    door: disturb(held, openDoor(design), settings.door_s),
    gust: disturb(held, turnWeather({ wind: settings.gust.wind }), settings.gust.lasts),
    shower: disturb(held, turnWeather({ rain: settings.shower.rain }), settings.shower.lasts),
    swing: splitSwing(held),
    coolDown: coolDown(held),
    plate: studyPlate(held),
    cook: design.cook ? followCook(design) : null,
  };
  result.warnings.push(...missing(studies, design), ...splitWarnings(studies.swing));
  return { result, studies };
}

const WORDS = {
  door: 'open door',
  gust: 'gust',
  shower: 'shower',
  swing: 'splits',
  coolDown: 'cool-down',
  cook: 'cook',
} as const satisfies Partial<Record<keyof EventStudies, string>>;

function missing(studies: EventStudies, design: Design): Warning[] {
  const names = (Object.keys(WORDS) as (keyof typeof WORDS)[]).filter((name) => name !== 'cook' || design.cook);
  return names
    .filter((name) => studies[name] === null)
    .map((name) => ({
      code: 'event-not-followed',
      message:
        'the draft keeps tipping from one way of flowing to another, so that this could not be followed: give the pit a clear way through',
      where: WORDS[name],
      value: null,
      limits: null,
    }));
}
