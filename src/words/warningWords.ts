/** Warnings as they are told: those of one kind in one, gravest first, places and fires in words. */
import type { Design } from '../design/design.js';
import { rowAt } from '../design/fields.js';
import { stepsOf } from '../design/path.js';
import { faceWords } from '../design/plates.js';
import type { Warning } from '../study/estimate/result.js';
import { inWords, type UnitSystem } from '../units/index.js';
import { gaugeLabel } from './labels.js';
import { plainText } from './plainText.js';
import { byRank, rankOf, type WarningRank } from './warningRank.js';

interface ToldWarning {
  code: string;
  rank: WarningRank;
  where: string;
  message: string;
}

/**
 * In the words and numbers of the worst of each kind, with the places of the others behind it.
 *
 * @param units that the numbers are told in
 */
export function warningWords(
  warnings: readonly Warning[],
  design: Design,
  units: UnitSystem | 'both' = 'both',
): ToldWarning[] {
  const kinds = new Map<string, Warning[]>();
  for (const each of warnings) kinds.set(each.code, [...(kinds.get(each.code) ?? []), each]);
  return [...kinds.values()]
    .map((kind) => {
      const [worst] = [...kind].sort((a, b) => byRank(rankOf(a), rankOf(b)) || beyond(b) - beyond(a));
      const also = alsoAt(kind, worst, design);
      return {
        code: worst.code,
        rank: rankOf(worst),
        where: whereWords(worst, design),
        message: `${plainText(inWords(worst.message, units), 600)}${also === '' ? '' : ` (also ${also})`}`,
      };
    })
    .sort((a, b) => byRank(a.rank, b.rank));
}

/** How far beyond its limit a warning's number is, as a ratio. */
function beyond({ value, limits }: Warning): number {
  if (value === null || limits === null) return 0;
  if (limits.high !== undefined && value > limits.high) return limits.high > 0 ? value / limits.high : Infinity;
  return limits.low !== undefined && value < limits.low && value > 0 ? limits.low / value : 0;
}

const FIRES = {
  'assumed fire': 'under the full fire',
  'hold fire': 'while holding',
};

/** A path into a design file: names joined by points, some with an index. */
const FIELD = /^[a-z]\w*(?:\[\d+\])?(?:\.[a-z]\w*(?:\[\d+\])?)+$/;

/** A face as the network names it. */
const FACE = /\b(?:fireEnd|farEnd|stackEnd)\b/g;

/** Where and when a warning holds; a place in a design file is told in words. */
export function whereWords({ where, fire }: Pick<Warning, 'where' | 'fire'>, design: Design): string {
  const words = [placeWords(where, design), ...(fire ? [FIRES[fire]] : [])];
  return words.filter((each) => each !== '').join(', ');
}

function placeWords(place: string, design: Design): string {
  if (place === design.gauge) return plainText(gaugeLabel(place));
  return plainText(FIELD.test(place) ? fieldWords(place) : place.replace(FACE, (face) => faceWords(face)));
}

/**
 * A field by its path, as a builder says it.
 *
 * @example fieldWords('chamber.thermometers[0].stem') gives 'stem of thermometer 1 of the chamber'
 */
function fieldWords(path: string): string {
  const label = rowAt(path)?.unknown?.label;
  if (label !== undefined) return label;
  const words: string[] = [];
  for (const step of stepsOf(path)) {
    if (typeof step === 'number') words.push(`${words.pop()!.replace(/s$/, '')} ${step + 1}`);
    else words.push(step.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`));
  }
  return words.reduceRight((inner, part) => `${inner} of ${/\d$/.test(part) ? '' : 'the '}${part}`);
}

/** Under what other fires, and where else, there is a warning of a kind. */
function alsoAt(kind: readonly Warning[], worst: Warning, design: Design): string {
  const own = placeWords(worst.where, design);
  const others = kind
    .filter((each) => each !== worst)
    .map(({ where, fire }) => ({ place: placeWords(where, design), fire }));
  const here = others.flatMap(({ place, fire }) => (place === own && fire && fire !== worst.fire ? [FIRES[fire]] : []));
  const elsewhere = others.flatMap(({ place }) => (place === own ? [] : [place]));
  return [...new Set([...here, ...elsewhere])].join('; ');
}
