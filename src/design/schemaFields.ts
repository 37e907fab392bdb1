/** How a quantity and a plain number stand in the schema: as text or number, described with the range the reader accepts. */
import * as z from 'zod';
import { RANGES, type RangeName } from './ranges.js';

const EXAMPLES: Partial<Record<RangeName, string[]>> = {
  air: ['70 °F'],
  fireHeat: ['70,000 BTU/h', '20 kW', '10 lb wood/h'],
  plate: ['1/4 in', '3/16 in', '11 ga', '6 mm'],
  section: ['24 in', '20 in pipe, standard wall', '610 mm'],
  stackDiameter: ['6 in', '6 in pipe, standard wall'],
  openingArea: ['90 in^2'],
};

/** A quantity as text, described with what it holds, its default and its accepted range. */
export function quantity(name: RangeName, description: string): z.ZodString {
  const { low, high } = RANGES[name];
  const examples = EXAMPLES[name];
  return z
    .string()
    .meta({ description: `${description} Accepted: ${low} to ${high}.`, ...(examples ? { examples } : {}) });
}

/** A share or factor: a plain number or a percentage. */
export function plain(name: RangeName, description: string): z.ZodUnion<readonly [z.ZodNumber, z.ZodString]> {
  const { low, high } = RANGES[name];
  return z.union([z.number(), z.string()]).meta({ description: `${description} Accepted: ${low} to ${high}.` });
}
