import type { Design } from '../../design/design.js';
import type { UnknownUsed } from './result.js';
import { unknownsOf } from '../spread/unknowns.js';

/** The inputs that no correlation settles, as this design uses them, each with its spread. */
export function unknownsUsed(design: Design): UnknownUsed[] {
  return unknownsOf(design).map(({ path, value, low, high, unit, distribution, source, fitted }) => ({
    path,
    value,
    low,
    high,
    unit,
    distribution,
    source,
    ...(fitted ? { fitted } : {}),
  }));
}
