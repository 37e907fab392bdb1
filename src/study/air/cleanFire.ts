/**
 * Air over what the wood needs at which a cook's small fire burns clean (estimate 2.5, spread 1.8 to 3.5): the intakes
 * count as set right for holding when the fire that holds gets this much.
 */
export const CLEAN_FIRE = { ratio: 2.5, low: 1.8, high: 3.5 } as const;
