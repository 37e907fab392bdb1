/** A profile of gas temperature over a height, reduced to two layers as trees of thermocouples are. */
export interface TwoLayers {
  /** of the join between them above the floor [m] */
  height: number;
  lower: number;
  upper: number;
}

/**
 * Two layers that hold the same integrals of T and of 1/T over the height as the profile, the lower one as warm as the
 * profile is lowest down: z = Tl (I1 I2 - H^2) / (I1 + I2 Tl^2 - 2 Tl H). Of one temperature: all upper layer.
 *
 * @param temperatures of slices of equal height, lowest first [K]
 * @param height of all of them [m]
 * Reference: Janssens & Tran (1992), Journal of Fire Sciences 10, 528 (volume and page from memory).
 */
export function twoLayers(temperatures: readonly number[], height: number): TwoLayers {
  const each = height / temperatures.length;
  const [lower] = temperatures;
  const integral = temperatures.reduce((sum, T) => sum + T * each, 0);
  const inverse = temperatures.reduce((sum, T) => sum + each / T, 0);
  const apart = integral + inverse * lower * lower - 2 * lower * height;
  const join = apart > 1e-6 ? (lower * (integral * inverse - height * height)) / apart : 0;
  return { height: join, lower, upper: (integral - join * lower) / (height - join) };
}
