import { describe, expect, it } from 'vitest';
import type { Design, Prices } from '../../src/design/design.js';
import {
  cookLength,
  costRows,
  costsOf,
  paybackNumber,
  paybackOf,
  unpriced,
  type Payback,
} from '../../src/study/costs.js';
import type { EstimateResult } from '../../src/study/estimate/result.js';
import { sampleDesign, sampleResult } from '../support/sampleResult.js';

const PRICES: Prices = { currency: '$', steel: 2, insulation: 10, wood: 0.5 };
const HOUR = 3600;

interface Pit {
  /** weight [kg], wood to soaked [kg] and wood an hour [kg/h] */
  steel: number;
  soaked: number | null;
  hourly: number;
  prices?: Prices;
  wrapped?: boolean;
  cook?: number;
}

/** A result with round numbers in the places that costs look at. */
function pit({ steel, soaked, hourly, prices = PRICES, wrapped = false, cook }: Pit): { result: EstimateResult } {
  const [stack] = sampleDesign.stacks;
  const insulation = { material: 'ceramic fibre', thickness: 0.05, skin: 0 } as Design['firebox']['insulation'];
  const design: Design = {
    ...sampleDesign,
    prices,
    stacks: [{ ...stack, diameter: 0.2, height: 1, ...(wrapped ? { insulation } : {}) }],
    ...(cook === undefined ? {} : { cook: { tend: cook } as Design['cook'] }),
  };
  const { geometry, warmUp, steady } = sampleResult;
  return {
    result: {
      ...sampleResult,
      design,
      geometry: { ...geometry, totalSteelMass_kg: steel },
      warmUp: { ...warmUp!, woodToSoaked_kg: soaked },
      steady: { ...steady!, wood_kg_per_s: hourly / HOUR },
    },
  };
}

const drawn = pit({ steel: 300, soaked: 2, hourly: 2 });
/** Round to what the sums below are worked out to. */
const near = ({ extra, saved, ...cooks }: Payback) => ({
  extra: Math.round(extra * 1e6) / 1e6,
  saved: Math.round(saved * 1e6) / 1e6,
  ...cooks,
});
const payback = (option: { result: EstimateResult }, cook_s = 8 * HOUR) => {
  const found = paybackOf(costsOf([drawn, option], cook_s), option, drawn);
  return found && near(found);
};

describe('what a pit costs', () => {
  it('is its steel, its insulation by the area that it covers, and wood until soaked and for the hours after', () => {
    const wrapped = pit({ steel: 300, soaked: 2, hourly: 2, wrapped: true });
    const costs = costsOf([wrapped], 8 * HOUR);
    // 300 kg at $2; a tube 0.2 m across and 1 m long is 0.6283 m2, at $10
    expect(costs.materials.map(({ of }) => of(wrapped))).toEqual([600, expect.closeTo(6.283185, 6)]);
    expect(costs.build.of(wrapped)).toBeCloseTo(606.283185, 6);
    // 2 kg, then 8 h of 2 kg: 18 kg at $0.50
    expect(costs.cookWood.of(wrapped)).toBeCloseTo(18, 9);
    expect(costs.cook.of(wrapped)).toBeCloseTo(9, 9);
    expect(costs.cook.at).toBe('8 h');
  });

  it('has no sum where it is of steel alone', () => {
    expect(costRows(costsOf([drawn], HOUR)).map(({ key }) => key)).toEqual(['steelCost', 'cookWood_kg', 'cookCost']);
    const wrapped = pit({ steel: 300, soaked: 2, hourly: 2, wrapped: true });
    expect(costRows(costsOf([drawn, wrapped], HOUR)).map(({ key }) => key)).toContain('buildCost');
  });

  it('is not known where something that it is made of has no price', () => {
    const wrapped = pit({
      steel: 300,
      soaked: 2,
      hourly: 1,
      wrapped: true,
      prices: { currency: '$', steel: 2, wood: 1 },
    });
    const costs = costsOf([drawn, wrapped], HOUR);
    expect(unpriced(wrapped)).toEqual(['insulation']);
    expect(costs.build.of(wrapped)).toBeNull();
    expect(paybackOf(costs, wrapped, drawn)).toBeNull();
  });

  it('takes the hours of the design’s cook, else a usual length', () => {
    expect(cookLength(pit({ steel: 1, soaked: 1, hourly: 1 }).result.design)).toBe(8 * HOUR);
    expect(cookLength(pit({ steel: 1, soaked: 1, hourly: 1, cook: 5 * HOUR }).result.design)).toBe(5 * HOUR);
  });
});

describe('an option is paid back', () => {
  // as drawn: 300 kg of steel, $600; 2 + 8 x 2 = 18 kg of wood a cook, $9
  it('once the wood it saves has paid for what it costs more', () => {
    // 350 kg, $100 more; 2 + 8 x 1.5 = 14 kg, $2 less: 50 cooks
    expect(payback(pit({ steel: 350, soaked: 2, hourly: 1.5 }))).toEqual({
      extra: 100,
      saved: 2,
      cooks: 50,
      usedUp: null,
    });
    // in cooks of 4 h it saves 2 kg, $1: 100 cooks
    expect(payback(pit({ steel: 350, soaked: 2, hourly: 1.5 }), 4 * HOUR)).toMatchObject({ saved: 1, cooks: 100 });
    // $30 more, $2 less: the 15th cook pays the rest; $31 more: the 16th
    expect(payback(pit({ steel: 315, soaked: 2, hourly: 1.5 }))).toMatchObject({ cooks: 15 });
    expect(payback(pit({ steel: 315.5, soaked: 2, hourly: 1.5 }))).toMatchObject({ cooks: 16 });
  });

  it('never, where it saves none', () => {
    // 400 kg, $200 more; 3 + 16 = 19 kg, $0.50 more
    const heavier = pit({ steel: 400, soaked: 3, hourly: 2 });
    expect(payback(heavier)).toEqual({ extra: 200, saved: -0.5, cooks: null, usedUp: null });
    expect(paybackNumber(payback(heavier))).toBe(Infinity);
    // 18.1 kg is too near 18 kg to be told from it
    expect(payback(pit({ steel: 400, soaked: 2.1, hourly: 2 }))).toMatchObject({ saved: 0, cooks: null });
  });

  it('at once, where it costs no more', () => {
    // 250 kg, $100 less; 1 + 16 = 17 kg, $0.50 less
    expect(payback(pit({ steel: 250, soaked: 1, hourly: 2 }))).toEqual({
      extra: -100,
      saved: 0.5,
      cooks: 0,
      usedUp: null,
    });
  });

  it('the other way round, where it costs less to build and more to burn', () => {
    // 280 kg, $40 less; 2 + 8 x 2.25 = 20 kg, $1 more: gone after 40 cooks
    const cheap = pit({ steel: 280, soaked: 2, hourly: 2.25 });
    expect(payback(cheap)).toEqual({ extra: -40, saved: -1, cooks: null, usedUp: 40 });
    expect(paybackNumber(payback(cheap))).toBe(-40);
  });

  it('by nothing that could be told, where it costs the same, or never soaks', () => {
    expect(paybackNumber(payback(pit({ steel: 300, soaked: 2, hourly: 2 })))).toBeNull();
    expect(payback(pit({ steel: 350, soaked: null, hourly: 1 }))).toBeNull();
    const prices = { currency: '$', steel: 2 };
    expect(payback(pit({ steel: 350, soaked: 2, hourly: 1, prices }))).toBeNull();
  });
});
