import { describe, expect, it } from 'vitest';
import type { EstimateResult, PlaceState } from '../../src/study/estimate/result.js';
import { headline, isNeverLit, litTime } from '../../src/words/headline.js';
import type { SpreadNumber } from '../../src/study/spread/uncertainty.js';
import { format } from '../../src/units/index.js';
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

  it('says the middle of what was spread, with what 8 of 10 cases lie in, and in words of its own system', () => {
    const { warmUp } = sampleResult;
    const spread = (key: string, [p10, p50, p90]: (number | null)[]): SpreadNumber => {
      return { key, estimate: 1, p10, p50, p90, missing: 0, causes: [] };
    };
    const numbers = [
      spread('soaked_s', [1800, 2400, 3000]),
      spread(
        'woodToSoaked_kg',
        [1, 2, 3].map((pounds) => pounds * 0.45359237),
      ),
      spread(
        'hold.wood_kg_per_s',
        [4, 5, 6].map((pounds) => (pounds * 0.45359237) / 3600),
      ),
      spread(
        'hold.endToEnd_K',
        [10, 20, 30].map((degrees) => degrees / 1.8),
      ),
      // half of the cases never come to it: what the likeliest estimates give stands
      spread('gauge_s', [600, null, null]),
    ];
    const sure = told({ ...sampleResult, spread: { cases: 10, seed: 1, method: '', numbers, curves: null } });
    expect(sure).toContain(
      'soaked after 40 min (8 of 10 cases: 30 to 50 min) and 2 lb of wood (8 of 10 cases: 1 to 3 lb).',
    );
    expect(sure).toContain('takes 5 lb/h of wood (8 of 10 cases: 4 to 6 lb/h)');
    expect(sure).toMatch(/at the stack end, 20 °F apart \(8 of 10 cases: 10 to 30 °F\)\./);
    expect(sure).toContain(`after ${format('time', warmUp!.gauge_s)} at the earliest (8 of 10 cases: 10 min to never)`);
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
    const outwards = held({ draft: { ...steady.draft, stackBase_Pa: -0.87 } });
    const smoke = {
      code: 'door-gap-smoke',
      message: '',
      where: 'chamber door',
      fire: 'hold fire' as const,
      value: 1,
      limits: null,
    };
    expect(told({ ...outwards, warnings: [smoke] })).toMatch(
      /outwards with 0\.0035 in H2O, and gaps up there leak smoke/,
    );
    expect(told({ ...outwards, warnings: [] })).toMatch(
      /outwards with 0\.0035 in H2O: a gap .* would leak smoke, and none does/,
    );
    expect(told(held({ draft: { ...steady.draft, stackBase_Pa: 0.014 } }))).toContain(
      'next to no draft at the stack base',
    );
    const warnings = [{ code: 'back-draft', message: '', where: 'throat', value: -1, limits: null }];
    expect(told({ ...sampleResult, warnings })).toContain('It draws the wrong way');
  });

  it.each([
    [19, 5.8, 27, '19 min (5.8 to 27 min)'],
    [43.4, 6.3, 43.4, '43 min (6.3 min at the soonest)'],
    [43.4, 6.3, 42.8, '43 min (6.3 min at the soonest)'],
    [43, 43, 82, '43 min (82 min at the latest)'],
    [43, 43, 43.4, '43 min'],
    [43, 6.3, null, '43 min (6.3 min, or never)'],
    [43, 42.9, null, '43 min (or never)'],
  ])('says of %f min from the match, %f to %s: %s', (reads, soonest, latest, words) => {
    const lit = {
      reads_s: 60 * reads,
      soonest_s: 60 * soonest,
      latest_s: latest && 60 * latest,
    } as NonNullable<EstimateResult['lit']>;
    expect(litTime(lit, 'shop')).toBe(words);
  });

  it('says that a cook does not bring it there where a full fire does, and only there', () => {
    const of = (changes: Partial<EstimateResult>) => {
      const result = { ...sampleResult, ...changes };
      expect(/ fed by a cook, .* it does not come to /.test(told(result))).toBe(isNeverLit(result));
      return isNeverLit(result);
    };
    expect(of({ lit: null })).toBe(true);
    expect(of({})).toBe(false);
    expect(of({ lit: null, warmUp: { ...sampleResult.warmUp!, gauge_s: null } })).toBe(false);
  });

  it('says what holds a target that the full fire never gets to, and what a cook has to burn for it', () => {
    const swing = { ...{ wood_kg: 0.9, period_s: 1800, late_K: null, open: null, limitedByAir: false }, lowest_K: kelvin(233), highest_K: kelvin(245) }; // prettier-ignore
    const of = (heatOf: 'air' | undefined, first: number | null) =>
      told({
        ...held({ fire_W: 1.2 * sampleResult.assumed!.fire_W }),
        design: { ...sampleDesign, fire: { ...sampleDesign.fire, heatOf } },
        warmUp: { ...sampleResult.warmUp!, gauge_s: first },
        splits: swing as EstimateResult['splits'],
      });
    expect(of('air', null)).toMatch(
      /would take .*, more than burns clean\. .* who lets it burn dirtier than that and lays/,
    );
    expect(of(undefined, null)).toMatch(
      /would take .*, more than that fire gives\. .* who burns more than that and lays/,
    );
    expect(of(undefined, 600)).toMatch(/ there takes .*, which is what the pit loses\. .* A cook who lays on/);
  });
});
