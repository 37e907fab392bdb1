/** Does it draw? In one word, and why. */
import { held } from '../study/quantities.js';
import type { EstimateResult, Warning } from '../study/estimate/result.js';
import type { UnitSystem } from '../units/index.js';
import { NEXT_TO_NONE, sayAlone, sayQuantity } from './quantity.js';
import { rankOf } from './warningRank.js';

interface Draws {
  answer: 'yes' | 'barely' | 'no';
  /** a short clause: two lines of a phone, where no name of the design's makes it longer */
  why: string;
}

/** What keeps a pit from drawing, gravest first; a function where the words depend on the place. */
const NO: Readonly<Record<string, (warning: Warning) => string>> = {
  'no-air-path': () => 'next to no air gets to the fire',
  'no-steady-draft': () => 'the draft never settles',
  'back-draft': ({ where }) => `gas runs backwards through the ${where}`,
  'draft-tips-over': () => 'the draft tips over while it warms up',
};

/** What leaves it drawing, but not well. */
const BARELY: Readonly<Record<string, (warning: Warning) => string>> = {
  'fire-limited-by-air': ({ fire }) => `too little air for ${fire === 'hold fire' ? 'that fire' : 'its full fire'}`,
  'draft-swings': () => 'the draft swings to and fro',
  'chokes-at-first': () => 'lit cold, it chokes before it draws',
  'little-air': () => 'so little air that wood burns dirty',
  'door-gap-smoke': ({ where }) => `smoke leaves by the ${where}`,
};

/** Do door gaps leak smoke while it holds? */
export function gapsSmoke(warnings: readonly Warning[]): boolean {
  return warnings.some(({ code, fire }) => code === 'door-gap-smoke' && fire === 'hold fire');
}

/** Yes, barely or no, from what its states and warnings say. */
export function drawsOf({ steady, assumed, warnings }: EstimateResult, system: UnitSystem): Draws {
  const state = steady ?? assumed;
  const no = first(warnings, NO);
  if (no !== undefined) return { answer: 'no', why: no };
  if (!state) return { answer: 'no', why: 'nothing burns in it' };
  const barely = first(
    warnings.filter((warning) => warning.code !== 'door-gap-smoke' || rankOf(warning) === 'harm'),
    BARELY,
  );
  if (barely !== undefined) return { answer: 'barely', why: barely };
  const { stackBase_Pa } = state.draft;
  const outwards = 'gas pushes outwards under the stack';
  if (stackBase_Pa < 0 && gapsSmoke(warnings)) return { answer: 'barely', why: outwards };
  if (stackBase_Pa < 0) return { answer: 'yes', why: `${outwards}, and none leaks` };
  const say = sayAlone(system);
  const air = `${sayQuantity(say, held('excessAirRatio'), state.excessAirRatio)} times the air it needs`;
  const draft =
    stackBase_Pa < NEXT_TO_NONE
      ? 'next to no draft under the stack'
      : sayQuantity(say, held('stackBase_Pa'), stackBase_Pa);
  return { answer: 'yes', why: `${draft}, ${air}` };
}

const IT: Readonly<Record<Draws['answer'], string>> = {
  yes: 'It draws',
  barely: 'It barely draws',
  no: 'It does not draw',
};

/** `It draws: 0.0031 in H2O, 9.0 times the air it needs.` */
export function drawsSentence(result: EstimateResult, system: UnitSystem): string {
  const { answer, why } = drawsOf(result, system);
  return `${IT[answer]}: ${why}.`;
}

function first(
  warnings: readonly Warning[],
  words: Readonly<Record<string, (warning: Warning) => string>>,
): string | undefined {
  for (const [code, say] of Object.entries(words)) {
    const found = warnings.find((each) => each.code === code);
    if (found) return say(found);
  }
  return undefined;
}
