import { describe, it, expect } from 'vitest';
import { exampleNames } from '../support/examples.js';
import { expectWhole, comparisonOf } from './comparedExample.js';
import { compareText } from '../../src/report/text/compareText.js';

describe('a comparison told', () => {
  it.each(exampleNames)('%s: whole in every form, within 100 columns', (name) => expectWhole(name));

  it('shows options that don’t fit side by side in tables below each other, each with the baseline', async () => {
    const comparison = await comparisonOf(
      'plain-24.yaml',
      'chamber.insulation=none | { material: ceramic fibre, thickness: 1 in, skin: 16 ga } | { material: mineral wool, thickness: 2 in, skin: 16 ga } | { material: ceramic fibre, thickness: 3 in, skin: 16 ga }',
    );
    const text = compareText(comparison, 'shop');
    for (const line of text.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
    expect(text.match(/^ +no insulation/gm)!.length).toBeGreaterThan(1);
  });
});
