/**
 * Respected correlations that the product does not use. Published examples are worked with them, so they are here to
 * re-run those examples, and to show how far two good relations lie apart on one case (20 % is common). Reynolds and
 * Rayleigh numbers by their size; every result is a mean Nusselt number on the relation's own length.
 */

/**
 * Turbulent pipe flow, 0.023 Re^0.8 Pr^n, n 0.4 when the fluid is heated and 0.3 when cooled.
 * @param Re above 1e4; Pr 0.6-160
 * Reference: Dittus & Boelter (1930), Univ. California Publ. Eng. 2, 443; form of McAdams (1942).
 */
export function nusseltDittusBoelter(Re: number, Pr: number, heated: boolean): number {
  return 0.023 * Math.pow(Re, 0.8) * Math.pow(Pr, heated ? 0.4 : 0.3);
}

/**
 * Turbulent pipe flow, 0.023 Re^0.8 Pr^(1/3).
 * Reference: Colburn (1933), Trans. AIChE 29, 174.
 */
export function nusseltColburn(Re: number, Pr: number): number {
  return 0.023 * Math.pow(Re, 0.8) * Math.cbrt(Pr);
}

/**
 * Turbulent pipe flow, (f/8) Re Pr/[C + 12.7 (f/8)^(1/2) (Pr^(2/3) - 1)], C = 1.07 + 900/Re - 0.63/(1 + 10 Pr).
 * @param friction Darcy friction factor
 * Reference: Petukhov, Kirillov & Popov, as in Petukhov (1970), Adv. Heat Transfer 6, 503.
 */
export function nusseltPetukhov(Re: number, Pr: number, friction: number): number {
  const C = 1.07 + 900 / Re - 0.63 / (1 + 10 * Pr);
  const eighth = friction / 8;
  return (eighth * Re * Pr) / (C + 12.7 * Math.sqrt(eighth) * (Math.pow(Pr, 2 / 3) - 1));
}

/** Laminar pipe flow with a uniform heat flux, fully developed: 48/11. Classical solution. */
export const NUSSELT_LAMINAR_FLUX = 48 / 11;

/**
 * Cylinder in cross flow, C Re^m Pr^n (Pr/Pr_s)^(1/4).
 * @param Re 1-1e6; Pr 0.7-500 at the free stream; PrSurface at the surface
 * Reference: Zukauskas (1972), Adv. Heat Transfer 8, 93, as in Incropera et al. (2007), Table 7.4.
 */
export function nusseltZukauskas(Re: number, Pr: number, PrSurface: number): number {
  const [C, m] = Re < 40 ? [0.75, 0.4] : Re < 1e3 ? [0.51, 0.5] : Re < 2e5 ? [0.26, 0.6] : [0.076, 0.7];
  return C * Math.pow(Re, m) * Math.pow(Pr, Pr <= 10 ? 0.37 : 0.36) * Math.pow(Pr / PrSurface, 0.25);
}

/**
 * Cylinder in cross flow, C Re^n Pr^(1/3), constants by range of Re.
 * @param Re 0.4-4e5
 * Reference: Hilpert (1933); Knudsen & Katz (1958), as in Holman, Heat Transfer, Table 6-2.
 */
export function nusseltHilpert(Re: number, Pr: number): number {
  const [C, n] =
    Re < 4
      ? [0.989, 0.33]
      : Re < 40
        ? [0.911, 0.385]
        : Re < 4000
          ? [0.683, 0.466]
          : Re < 40000
            ? [0.193, 0.618]
            : [0.0266, 0.805];
  return C * Math.pow(Re, n) * Math.cbrt(Pr);
}

/**
 * Flat plate, turbulent, 0.036 Re^0.8 Pr^(1/3).
 * Reference: Kreith & Bohn, Principles of Heat Transfer.
 */
export function nusseltPlateKreith(Re: number, Pr: number): number {
  return 0.036 * Math.pow(Re, 0.8) * Math.cbrt(Pr);
}

/**
 * Flat plate, turbulent, 0.037 Re^0.8 Pr/[1 + 2.443 Re^(-0.1) (Pr^(2/3) - 1)].
 * Reference: Schlichting, Boundary-Layer Theory.
 */
export function nusseltPlateSchlichting(Re: number, Pr: number): number {
  return (0.037 * Math.pow(Re, 0.8) * Pr) / (1 + 2.443 * Math.pow(Re, -0.1) * (Math.pow(Pr, 2 / 3) - 1));
}

/**
 * Flat plate, laminar, 0.6774 Re^(1/2) Pr^(1/3)/[1 + (0.0468/Pr)^(2/3)]^(1/4).
 * Reference: Churchill & Ozoe (1973), J. Heat Transfer 95, 416.
 */
export function nusseltPlateChurchillOzoe(Re: number, Pr: number): number {
  return (0.6774 * Math.sqrt(Re) * Math.cbrt(Pr)) / Math.pow(1 + Math.pow(0.0468 / Pr, 2 / 3), 0.25);
}

/**
 * Horizontal cylinder, free convection, 0.53 Ra^(1/4).
 * @param Ra 1e4-1e9
 * Reference: McAdams (1954), Heat Transmission, 3rd ed.
 */
export function nusseltCylinderMcAdams(Ra: number): number {
  return 0.53 * Math.sqrt(Math.sqrt(Math.abs(Ra)));
}

/**
 * Hot plate facing up, turbulent branch alone, 0.15 Ra^(1/3).
 * Reference: McAdams (1954), Heat Transmission, 3rd ed.
 */
export function nusseltPlateUpMcAdams(Ra: number): number {
  return 0.15 * Math.cbrt(Math.abs(Ra));
}

/**
 * Hot plate facing down, 0.27 Ra^(1/4).
 * @param Ra 1e5-1e10
 * Reference: McAdams (1954), Heat Transmission, 3rd ed.
 */
export function nusseltPlateDownMcAdams(Ra: number): number {
  return 0.27 * Math.sqrt(Math.sqrt(Math.abs(Ra)));
}
