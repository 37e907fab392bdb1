import { describe, expect, it } from 'vitest';
import type { EstimateResult, PlaceState } from '../../src/study/estimate/result.js';
import { headline } from '../../src/words/headline.js';
import { sampleDesign, sampleResult } from '../support/sampleResult.js';

const kelvin = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9 + 273.15;
const { steady } = sampleResult;
if (!steady) throw new Error('the sample holds its target');

const told = (result: EstimateResult) => headline(result, 'shop').join(' ');
const held = (changes: Partial<typeof steady>): EstimateResult => ({
  ...sampleResult,
  steady: { ...steady, ...changes },
});

describe('the answer in sentences', () => {
  it('says when it is soaked, the wood, what the grate reads and how even it is, and whether it draws', () => {
    const sentences = headline(sampleResult, 'shop');
    expect(sentences).toHaveLength(4);
    expect(told(sampleResult)).toContain('soaked after 29 min');
    expect(sentences[2]).toMatch(
      /the grate reads 235 °F at the fire end, 227 °F in the middle and 219 °F at the stack end, 16 °F apart\.$/,
    );
    expect(sentences[3]).toMatch(
      /^It draws .* lb\/h of air into the firebox; the fire gets .* times what it needs; .* 0\.0035 in H2O\.$/,
    );
  });

  it('keeps to one system of units', () => {
    expect(told(sampleResult)).not.toMatch(/°C|\bkW\b|\bPa\b|\bkg/);
    expect(headline(sampleResult, 'si').join(' ')).not.toMatch(/°F|BTU|\blb\b|in H2O/);
  });

  it('tells racks from the lowest, and a grate by its name', () => {
    const racks = [210, 232].map((degrees, i): PlaceState => ({
      ...steady.places[0],
      name: `rack ${i + 1}`,
      kind: 'rack',
      part: 'upright',
      station: 'uprightLower',
      thermometer_K: kelvin(degrees),
    }));
    const main = steady.places.map((place) => ({ ...place, name: 'main' }));
    expect(told(held({ places: [...main, ...racks] }))).toMatch(
      /the main grate reads 235 °F .* the racks read 210 °F and 232 °F, lowest first/,
    );
  });

  it('tells the lid too where the cook steers by a grate', () => {
    const result = { ...sampleResult, design: { ...sampleDesign, gauge: 'grate' } };
    expect(told(result)).toMatch(/the lid's dials read \d+ °F at the fire end, 250 °F in the middle and/);
    expect(told(sampleResult)).not.toContain("lid's dials");
  });

  it('says that gas pushes outwards, and that it draws the wrong way', () => {
    expect(told(held({ draft: { ...steady.draft, stackBase_Pa: -0.87 } }))).toMatch(
      /pushes outwards with 0\.0035 in H2O/,
    );
    const warnings = [{ code: 'back-draft', message: '', where: 'throat', value: -1, limits: null }];
    expect(told({ ...sampleResult, warnings })).toContain('It draws the wrong way');
  });
});
