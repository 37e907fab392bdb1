/**
 * Woods: what they are made of, dry, and how heavy they are.
 *
 * Composition: Gottlieb, in Babcock & Wilcox, Steam: Its Generation and Use, Table 41. Other woods take the generic
 * analysis C 50, H 6, O 43.5 %, rest ash: woods differ little. Densities: wood-density tables, air dry (secondary), +-8
 * %.
 *
 * Net heat: every wood takes 19.0 MJ/kg dry (AIEL, Wood Fuels Handbook, table of net heat against moisture). Gottlieb
 * also prints heats per species (8316 Btu/lb for oak to 9153 for pine), headed dry, while the text beside them speaks
 * of air-dry wood; with the basis unsettled they would move a result by 5 % either way on a guess, so they are kept
 * here for the record (`printedHeat`) and not used. A builder who has a measured heat gives `wood.heat`.
 */
import type { WoodComposition } from '../../physics/wood.js';

interface WoodRow {
  /** mass fractions of dry wood */
  composition: WoodComposition;
  /** Gottlieb's printed heat [J/kg], basis unsettled, not used */
  printedHeat?: number;
  /** air-dry density [kg/m3] */
  density?: number;
  source: string;
}

const BTU_PER_LB = 2326;
const LB_PER_FT3 = 16.01846337396;
const GOTTLIEB = 'Gottlieb, in Babcock & Wilcox, Steam: Its Generation and Use, Table 41';
const DENSITY = 'density: wood-density tables, air dry (secondary)';

const analysed = (
  c: number,
  h: number,
  o: number,
  n: number,
  ash: number,
  btu: number,
  lbPerFt3?: number,
): WoodRow => ({
  composition: { carbon: c / 100, hydrogen: h / 100, oxygen: o / 100, nitrogen: n / 100, ash: ash / 100 },
  printedHeat: btu * BTU_PER_LB,
  ...(lbPerFt3 === undefined ? {} : { density: lbPerFt3 * LB_PER_FT3 }),
  source: lbPerFt3 === undefined ? GOTTLIEB : `${GOTTLIEB}; ${DENSITY}`,
});

const generic = (lbPerFt3?: number): WoodRow => ({
  composition: { carbon: 0.5, hydrogen: 0.06, oxygen: 0.435, nitrogen: 0, ash: 0.005 },
  ...(lbPerFt3 === undefined ? {} : { density: lbPerFt3 * LB_PER_FT3 }),
  source: `generic analysis${lbPerFt3 === undefined ? '' : `; ${DENSITY}`}`,
});

export const WOODS: Readonly<Record<string, WoodRow>> = {
  generic: generic(),
  oak: analysed(50.16, 6.02, 43.36, 0.09, 0.37, 8316),
  'white oak': analysed(50.16, 6.02, 43.36, 0.09, 0.37, 8316, 47.2),
  'red oak': analysed(50.16, 6.02, 43.36, 0.09, 0.37, 8316, 44.2),
  ash: analysed(49.18, 6.27, 43.91, 0.07, 0.57, 8480, 43.4),
  elm: analysed(48.99, 6.2, 44.25, 0.06, 0.5, 8510),
  beech: analysed(49.06, 6.11, 44.17, 0.09, 0.57, 8391, 44.2),
  birch: analysed(48.88, 6.06, 44.67, 0.1, 0.29, 8586),
  fir: analysed(50.36, 5.92, 43.39, 0.05, 0.28, 9063),
  pine: analysed(50.31, 6.2, 43.08, 0.04, 0.37, 9153),
  hickory: generic(50.9),
  pecan: generic(),
  maple: generic(44.2),
  cherry: generic(36.7),
  apple: generic(48.7),
  peach: generic(),
  mesquite: generic(),
  alder: generic(),
};
