import { expect } from 'vitest';
import { readDesign } from '../../../src/design/read.js';
import { coldSmoke } from '../../../src/study/events/coldSmoke.js';
import { studyOption } from '../../../src/study/compare/studyOption.js';
import { randomDesign } from '../../design/randomDesign.js';

/** Seeds whose designs hold their target, so that there are events to follow; one of each layout at least. */
export const SEEDS = [0, 2, 3, 21, 36, 42, 44, 45];

/** None throws, none gives what is no number, heat and air add up. */
export function followEvents(seed: number): void {
  const { design, faults } = readDesign(JSON.stringify(randomDesign(seed)), { fileName: `random ${seed}` });
  expect(faults).toBeUndefined();
  const option = studyOption(design!);
  const cold = coldSmoke(design!);
  const odd: string[] = [];
  JSON.stringify([option, cold], (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) odd.push(key);
    return value;
  });
  expect(odd).toEqual([]);
  const { studies, result } = option;
  expect(studies).not.toBeNull();
  for (const name of ['door', 'gust', 'shower', 'swing', 'coolDown'] as const) {
    const study = studies![name];
    if (study === null) {
      expect(result.warnings.map(({ code }) => code)).toContain('event-not-followed');
      continue;
    }
    expect(study.energyError).toBeLessThan(1e-3);
    expect(study.massError_kg_per_s).toBeLessThan(1e-9);
  }
}
