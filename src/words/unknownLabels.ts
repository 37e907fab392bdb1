import { rowAt } from '../design/fields.js';

/** An unknown of a design as a builder says it, by its path in the design file. */
export function unknownLabel(path: string): string {
  return rowAt(path)?.unknown?.label ?? path;
}
