/**
 * Sheet gauges. A gauge number means another thickness in stainless than in carbon steel, so the steel must be known.
 *
 * Carbon: US manufacturers' standard gauge for sheet steel (41.82 lb/ft2 per inch). Rows 4, 5, 6, 15, 17, 19, 21 and 23
 * were filled in from memory, the rest seen in print. Stainless: US standard gauge as used for stainless sheet, from
 * memory. Thicknesses in inches.
 */
export type GaugeTable = 'carbon' | 'stainless';

const INCHES: Readonly<Record<GaugeTable, Readonly<Record<number, number>>>> = {
  carbon: {
    3: 0.2391,
    4: 0.2242,
    5: 0.2092,
    6: 0.1943,
    7: 0.1793,
    8: 0.1644,
    9: 0.1495,
    10: 0.1345,
    11: 0.1196,
    12: 0.1046,
    13: 0.0897,
    14: 0.0747,
    15: 0.0673,
    16: 0.0598,
    17: 0.0538,
    18: 0.0478,
    19: 0.0418,
    20: 0.0359,
    21: 0.0329,
    22: 0.0299,
    23: 0.0269,
    24: 0.0239,
  },
  stainless: {
    7: 0.1875,
    8: 0.1719,
    9: 0.1563,
    10: 0.1406,
    11: 0.125,
    12: 0.1094,
    13: 0.0938,
    14: 0.0781,
    16: 0.0625,
    18: 0.05,
    20: 0.0375,
    22: 0.0313,
    24: 0.025,
  },
};

/** Thickness of a gauge [m], or undefined when the table has no such gauge. */
export function gaugeThickness(gauge: number, table: GaugeTable = 'carbon'): number | undefined {
  const inches = INCHES[table][gauge];
  return inches === undefined ? undefined : inches * 0.0254;
}

/** Gauge numbers of a table, thickest first. */
export function gaugeNumbers(table: GaugeTable = 'carbon'): number[] {
  return Object.keys(INCHES[table]).map(Number);
}
