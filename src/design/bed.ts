/** Share of the firebox's plan that the bed takes where the design has none: estimate, spread a third to all of it. */
const BED_SHARE = 0.5;

/**
 * Heat that wood on a grate releases by its plan in a natural draft [W/m2]: of stoves for cooking 100 to 400 kW/m2 are
 * told, from memory; common practice, no source.
 */
export const BED_RELEASE = { likely: 250e3, high: 450e3 } as const;

/** The fire that it likely makes [W]. */
export function bedHeat(design: Parameters<typeof bedOf>[0]): number {
  return BED_RELEASE.likely * bedOf(design).bedArea;
}

/** Plan of the bed [m2]. */
export function bedOf({ fire, firebox }: { fire: { bed?: number }; firebox: { width: number; length: number } }): {
  bedArea: number;
} {
  return { bedArea: fire.bed ?? BED_SHARE * firebox.width * firebox.length };
}
