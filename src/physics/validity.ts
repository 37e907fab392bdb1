/**
 * Published ranges of the relations, so that a study can say when it leaned on one outside them. The functions
 * themselves answer everywhere, since a solver must be able to pass through.
 */
export interface Validity {
  /** what is limited, as the relation names it */
  quantity: string;
  low: number;
  high: number;
  unit: string;
  source: string;
}

const INFINITE = Number.POSITIVE_INFINITY;

/** The range that each relation was published for, and where. */
export const VALIDITY = {
  nusseltHorizontalCylinder: {
    quantity: 'Rayleigh number on the diameter',
    low: 0,
    high: 1e12,
    unit: '-',
    source: 'Churchill & Chu (1975), Int. J. Heat Mass Transfer 18, 1049',
  },
  nusseltVerticalPlate: {
    quantity: 'Rayleigh number on the height',
    low: 0.1,
    high: 1e12,
    unit: '-',
    source: 'Churchill & Chu (1975), Int. J. Heat Mass Transfer 18, 1323',
  },
  nusseltPlateUp: {
    quantity: 'Rayleigh number on area over perimeter',
    low: 1e4,
    high: 1e11,
    unit: '-',
    source: 'McAdams (1954), Heat Transmission, 3rd ed.',
  },
  nusseltPlateDown: {
    quantity: 'Rayleigh number on area over perimeter',
    low: 1e4,
    high: 1e9,
    unit: '-',
    source: 'Radziemska & Lewandowski (2001), Applied Energy 68, 347',
  },
  nusseltFlatPlate: {
    quantity: 'Reynolds number on the length',
    low: 0,
    high: 1e8,
    unit: '-',
    source: 'Incropera et al. (2007), 6th ed., eq. 7.30 and 7.38',
  },
  nusseltCrossCylinder: {
    quantity: 'Reynolds number times Prandtl number',
    low: 0.2,
    high: INFINITE,
    unit: '-',
    source: 'Churchill & Bernstein (1977), J. Heat Transfer 99, 300',
  },
  nusseltPipe: {
    quantity: 'Reynolds number on the hydraulic diameter',
    low: 0,
    high: 1e6,
    unit: '-',
    source: 'Gnielinski (2013), Int. J. Heat Mass Transfer 63, 134',
  },
  ceilingJet: {
    quantity: 'height of the flames over that of the roof',
    low: 0,
    high: 1,
    unit: '-',
    source: 'Alpert (1972), Fire Technology 8, 181, for fires whose flames stay below the ceiling',
  },
  gasEmissivity: {
    quantity: 'gas temperature',
    low: 400,
    high: 2400,
    unit: 'K',
    source: 'Leckner (1972), Combustion and Flame 19, 33',
  },
  airProperties: {
    quantity: 'temperature',
    low: 250,
    high: 1300,
    unit: 'K',
    source: 'Incropera et al. (2007), 6th ed., Table A.4, and the fit to it',
  },
  steel: {
    quantity: 'temperature',
    low: 293.15,
    high: 1473.15,
    unit: 'K',
    source: 'EN 1993-1-2:2005, 3.4.1 and Annex C',
  },
} as const satisfies Record<string, Validity>;

/** A relation whose range is watched. */
export type RelationName = keyof typeof VALIDITY;

/**
 * Whether a value lies outside a relation's published range.
 * @param name relation
 * @param value in the unit of its entry
 * @returns the entry it leaves, or undefined inside
 * @example outsideValidity('gasEmissivity', 350)?.low // 400 K
 * Reference: each entry has its own.
 */
export function outsideValidity(name: RelationName, value: number): Validity | undefined {
  const entry = VALIDITY[name];
  return value < entry.low || value > entry.high ? entry : undefined;
}
