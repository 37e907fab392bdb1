/** Keeping the books of a stream between zones: mass, heat and fuel, and how they change with an unknown. */
import type { Model } from './model.js';
import { FUEL_ROW, MASS_ROW } from './rows.js';

/** Take mass [kg/s], heat [W] and fuel [kg/s] from one place of `out`, three a layer, to another. */
export function shift(out: Float64Array, from: number, to: number, mass: number, heat: number, fuel: number): void {
  out[from] -= mass;
  out[from + 1] -= heat;
  out[from + 2] -= fuel;
  out[to] += mass;
  out[to + 1] += heat;
  out[to + 2] += fuel;
}

/**
 * Enter into the matrix of `fillSlopes` how a stream from one zone to another changes with an unknown, per unit of it.
 */
export function enter(
  { size: n, gas, fuel, pressure }: Model,
  m: Float64Array,
  from: number,
  to: number,
  unknown: number,
  mass: number,
  heat: number,
  share: number,
): void {
  m[(gas + from) * n + unknown] += heat;
  m[(gas + to) * n + unknown] -= heat;
  m[(fuel + from) * n + unknown] += share * FUEL_ROW;
  m[(fuel + to) * n + unknown] -= share * FUEL_ROW;
  m[(pressure + from) * n + unknown] += mass * MASS_ROW;
  m[(pressure + to) * n + unknown] -= mass * MASS_ROW;
}
