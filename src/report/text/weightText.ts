import type { Design } from '../../design/design.js';
import type { WeightResult } from '../../study/carry/weight.js';
import type { UnitSystem } from '../../units/index.js';
import { towingData, towingWords, trailerData, TRAILER_NOTE, weightItemsData } from '../carryData.js';
import { textTable } from './table.js';
import { note } from './paragraphs.js';

/** Weights, centre of gravity and what a trailer carries, as a section of a text. */
export function weightText(weight: WeightResult, design: Design, system: UnitSystem): string {
  const mark = design.trailer ? "the trailer's mark" : "the firebox's outer end";
  return [
    `WEIGHT AND ${design.trailer ? 'TRAILER' : 'BALANCE'}, positions from ${mark}`,
    textTable(weightItemsData(weight, system)),
    ...(weight.trailer ? [textTable(trailerData(weight, design, system))] : []),
    ...(weight.towing ? [textTable(towingData(weight.towing, system)), note(towingWords(weight.towing))] : []),
    note(TRAILER_NOTE),
  ].join('\n');
}
