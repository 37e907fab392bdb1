/**
 * What a fire's plume takes in, as a share of that of a free one: by a wall or in a corner it is half or a quarter of a
 * fire two or four times as large. Heskestad's plume goes by the cube root of the heat, so that the shares are
 * 2^(1/3)/2 and 4^(1/3)/4.
 * Reference: NIST TN 1889v1, on fires by walls and in corners.
 */
export const MIRRORED = {
  free: 1,
  'by a wall': Math.cbrt(2) / 2,
  'in a corner': Math.cbrt(4) / 4,
} as const;
