/**
 * Exchange of grey surfaces that see each other, and gas between walls of another temperature. Heat is positive out of
 * the first.
 */
import { gasEmissivity } from '../../physics/gasRadiation.js';
import { netGreyFlux } from '../../physics/radiation.js';

/** One surface of an exchange. */
interface GreySurface {
  /** [m2], or [m] per length of a long body */
  area: number;
  /** 0..1, above 0 */
  emissivity: number;
}

/**
 * Two grey surfaces that see each other and nothing else: sigma (T1^4 - T2^4) over the sum of the surface resistances
 * (1 - eps)/(eps A) and the space resistance 1/(A1 F12).
 * @param first, second with temperatures [K]; a black aperture is a surface of emissivity 1
 * @param viewFactor from the first to the second [-]
 * @returns [W], or [W/m] when areas are per length
 * Reference: Incropera et al. (2007), 6th ed., eq. 13.18.
 */
export function twoSurfaceExchange(
  first: GreySurface & { temperature: number },
  second: GreySurface & { temperature: number },
  viewFactor: number,
): number {
  const resistance = surfaceResistance(first) + 1 / (first.area * viewFactor) + surfaceResistance(second);
  return netGreyFlux(1, first.temperature, second.temperature) / resistance;
}

function surfaceResistance({ area, emissivity }: GreySurface): number {
  return (1 - emissivity) / (emissivity * area);
}

/** A shield between two surfaces: its area (both faces alike) and the emissivity of each face. */
interface Shield {
  area: number;
  /** of the face towards the first surface, and of that towards the second */
  emissivities: [number, number];
}

/**
 * Two surfaces, the first enclosed by or parallel to the second, with shields between, each seen wholly by the next.
 * @param shields from the first surface outwards; none gives the plain exchange with view factor 1
 * @returns [W], or [W/m] when areas are per length
 * Reference: Incropera et al. (2007), 6th ed., eq. 13.28.
 */
export function shieldedExchange(
  first: GreySurface & { temperature: number },
  second: GreySurface & { temperature: number },
  shields: readonly Shield[],
): number {
  let resistance = surfaceResistance(first) + 1 / first.area + surfaceResistance(second);
  for (const { area, emissivities } of shields) {
    resistance += 1 / area;
    for (const emissivity of emissivities) resistance += surfaceResistance({ area, emissivity });
  }
  return netGreyFlux(1, first.temperature, second.temperature) / resistance;
}

/**
 * Absorptivity of the gas for radiation from a surface of another temperature, by Hottel's rule: the emissivity at the
 * surface's temperature and a path scaled by Ts/Tg, times (Tg/Ts)^n; n is 0.65 for CO2 and 0.45 for water vapour,
 * weighted here by their pressures. The pit's own network takes absorptivity equal to emissivity (Kirchhoff, grey gas);
 * this shows what that leaves out when walls are much colder than the gas.
 * @param T gas temperature [K]; surface temperature of the source [K]; partial pressures [atm]; beam [m]; pressure
 * [atm]
 * @returns [-]; 0 with no radiating gas
 * Reference: Hottel (1954) in McAdams, Heat Transmission, 3rd ed., ch. 4; the weighting is ours.
 */
export function gasAbsorptivity(
  T: number,
  surface: number,
  pCO2atm: number,
  pH2Oatm: number,
  beam: number,
  pressure = 1,
): number {
  const total = pCO2atm + pH2Oatm;
  if (!(total > 0)) return 0;
  const exponent = (0.65 * pCO2atm + 0.45 * pH2Oatm) / total;
  return gasEmissivity(surface, pCO2atm, pH2Oatm, (beam * surface) / T, pressure) * Math.pow(T / surface, exponent);
}
