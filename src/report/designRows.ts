import type { Design } from '../design/design.js';
import { unknownInputsOf } from '../design/unknownInputs.js';
import { rowAt } from '../design/fields.js';
import { valuesInUse } from '../design/fitted.js';
import { plainText } from '../words/plainText.js';
import type { Say } from '../words/quantity.js';

interface DesignRow {
  /** path in the design file, as `firebox.intakes[0].centre` */
  path: string;
  /** the value as read, printed */
  value: string;
  isDefault: boolean;
  /** the value is what a measured cook told */
  isFitted: boolean;
}

/**
 * Every input of a design as it was read, in the order of the file format, with the defaults that were taken marked.
 */
export function designRows(design: Design, defaults: string[], say: Say): DesignRow[] {
  const taken = new Set(defaults);
  const { fitted, prices, size, ...drawn } = design;
  const { currency, ...priced } = prices ?? { currency: '' };
  const used = fitted ? valuesInUse(fitted).values.map((value) => value.path) : [];
  const settled = new Set(
    unknownInputsOf(design)
      .filter(({ path }) => used.includes(path))
      .flatMap(({ targets }) => targets.map(({ path }) => path)),
  );
  return walk({ ...drawn, fire: fireAsGiven(drawn.fire), prices: priced, size: askedSize(size) }, '').map(
    ({ path, value }) => ({
      path: plainText(path),
      value: print(path, value, say, currency),
      isDefault: taken.has(path) || [...taken].some((each) => path.startsWith(`${each}.`)),
      isFitted: settled.has(path),
    }),
  );
}

/** A fire that the file does not give has no number before it is solved. */
function fireAsGiven({ heatOf, heat, ...fire }: Design['fire']): object {
  return { heat: heatOf === undefined ? heat : 'all that this box can burn', ...fire };
}

/** What is on hand by its names, as the file lists it. */
function askedSize(size: Design['size']): object | undefined {
  return size && { ...size, onHand: size.onHand?.map(({ name }) => name) };
}

function walk(value: unknown, path: string): { path: string; value: string | number }[] {
  if (Array.isArray(value)) return value.flatMap((item, index) => walk(item, `${path}[${index}]`));
  if (value !== null && typeof value === 'object') {
    return Object.entries(asWritten(value)).flatMap(([key, item]) => walk(item, path ? `${path}.${key}` : key));
  }
  if (typeof value !== 'string' && typeof value !== 'number') return [];
  return [{ path, value }];
}

/** A round part is written by its diameter, and read into equal width and height. */
function asWritten(part: object): object {
  const { shape, width, height, ...rest } = part as { shape?: string; width?: number; height?: number };
  return shape === 'round' && width === height ? { shape, diameter: width, ...rest } : part;
}

function print(path: string, value: string | number, say: Say, currency: string): string {
  if (typeof value === 'string') return plainText(value) || '-';
  const row = rowAt(path);
  if (!row || row.print?.bare) return String(Number(value.toPrecision(4)));
  return say(row.range.kind, value, { ...row.print, currency });
}
