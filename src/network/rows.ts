/**
 * Factor on the rows of mass (kg/s), which brings them to the size of those of heat (W): pivoting compares like with
 * like.
 */
export const MASS_ROW = 1e5;
/** The same on the rows of fuel. */
export const FUEL_ROW = 1e3;
