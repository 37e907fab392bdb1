/**
 * Radiation inside a zone full of gas: every surface exchanges with the gas, and with all surfaces together through one
 * surface node (the point where the resistances of all of them meet), whose black power balances what they give and
 * take. For clear gas this is the exact answer of an enclosure in which every surface sees each in proportion to its
 * area, as inside a sphere; elsewhere it is the well-stirred picture of a furnace. Two plates that see each other and
 * nothing else exchange up to twice as much.
 */

/**
 * Conductance from a surface to the surface node of its zone, A/[(1 - eps)/eps + 1/(1 - eps_gas)]: resistance of the
 * surface, then of the way there, of which the gas lets the share 1 - eps_gas through.
 * @param area [m2]
 * @param emissivity of the surface [-]; above 0, to 1
 * @param gasEmissivity of the gas [-]; 0 (clear) to below 1
 * @returns [m2]; times a difference of black powers it is a heat flow [W]
 * @example surfaceConductance(2, 0.5, 0) // 1 m2
 * Reference: surface and space resistances of Incropera et al. (2007), 6th ed., section 13.3; the one node in place of
 * view factors is ours.
 */
export function surfaceConductance(area: number, emissivity: number, gasEmissivity: number): number {
  return area / ((1 - emissivity) / emissivity + 1 / (1 - gasEmissivity));
}

/**
 * Share of the black difference that gas and a grey wall exchange, eps_gas (eps + 1)/2; the gas absorbs as it emits.
 * Exact for a black wall; for a single grey one 1.4 % below the exact answer at eps 0.95 and eps_gas 0.2.
 * @param gasEmissivity of the gas [-]; 0-1
 * @param emissivity of the wall [-]; published above 0.8
 * @returns [-]; times a difference of black powers it is a flux [W/m2]
 * @example gasWallFactor(0.2, 0.9) // 0.19
 * Reference: Hottel, as in Incropera et al. (2007), 6th ed., section 13.5.
 */
export function gasWallFactor(gasEmissivity: number, emissivity: number): number {
  return gasEmissivity * 0.5 * (emissivity + 1);
}
