/**
 * Free and forced convection together, (a^3 + b^3)^(1/3), for coefficients or for Nusselt numbers on one length.
 * @param free, forced both [W/(m2 K)], or both [-]; not negative
 * @returns in the same unit
 * @example mixedConvection(3, 4) // 4.498 W/(m2 K)
 * Reference: Churchill (1977), AIChE J. 23, 10, for flows that aid each other; taken here for any direction.
 */
export function mixedConvection(free: number, forced: number): number {
  return Math.cbrt(free * free * free + forced * forced * forced);
}
