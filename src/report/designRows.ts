import type { Design } from '../design/design.js';
import { estimateFieldsOf } from '../design/estimateFields.js';
import { valuesInUse } from '../design/fitted.js';
import type { Kind } from '../units/index.js';
import { plainText } from '../words/plainText.js';
import type { Say } from '../words/quantity.js';

export interface DesignRow {
  /** path in the design file, as `firebox.intakes[0].centre` */
  path: string;
  /** the value as read, printed */
  value: string;
  isDefault: boolean;
  /** the value is what a measured cook told */
  isFitted: boolean;
}

type Printed = { kind: Kind; digits?: number; shop?: string; si?: string };

/** How the fields of a design are printed, by the name of the field; the same name means the same kind everywhere. */
const BY_NAME: Record<string, Printed> = {
  air: { kind: 'temperature' },
  wind: { kind: 'speed' },
  altitude: { kind: 'length', shop: 'ft', si: 'm' },
  humidity: { kind: 'share' },
  surroundings: { kind: 'temperature' },
  sun: { kind: 'heatFlux' },
  rain: { kind: 'share' },
  moisture: { kind: 'share' },
  carbon: { kind: 'share' },
  hydrogen: { kind: 'share' },
  oxygen: { kind: 'share' },
  nitrogen: { kind: 'share' },
  ash: { kind: 'share' },
  rise: { kind: 'time' },
  soot: { kind: 'perLength', digits: 2 },
  target: { kind: 'temperature' },
  every: { kind: 'time' },
  flame: { kind: 'time' },
  charcoal: { kind: 'share' },
  glow: { kind: 'time' },
  soak: { kind: 'time' },
  loading: { kind: 'time' },
  tend: { kind: 'time' },
  dieDown: { kind: 'time' },
  band: { kind: 'temperatureDifference' },
  accuracy: { kind: 'temperatureDifference' },
  start: { kind: 'temperature' },
  at: { kind: 'time' },
  lasts: { kind: 'time' },
  width: { kind: 'length' },
  height: { kind: 'length' },
  length: { kind: 'length' },
  depth: { kind: 'length' },
  diameter: { kind: 'length' },
  centre: { kind: 'length' },
  base: { kind: 'length' },
  lap: { kind: 'length' },
  thickness: { kind: 'length' },
  plate: { kind: 'plate' },
  wall: { kind: 'plate' },
  skin: { kind: 'plate' },
  area: { kind: 'area' },
  doorGap: { kind: 'area' },
  turn: { kind: 'area' },
  open: { kind: 'share' },
  damper: { kind: 'share' },
  mass: { kind: 'mass' },
  standoff: { kind: 'length' },
  coil: { kind: 'length' },
  pitch: { kind: 'length' },
  sees: { kind: 'share' },
  balance: { kind: 'length' },
  axle: { kind: 'length' },
  hitch: { kind: 'length' },
  offset: { kind: 'length' },
  position: { kind: 'length' },
  axleRating: { kind: 'mass' },
  hitchRating: { kind: 'mass' },
  roughness: { kind: 'length', digits: 2, shop: 'in', si: 'mm' },
};

/** `heat` is heat per weight of a wood and heat per hour of a fire. */
const BY_PATH: Record<string, Printed> = {
  'wood.heat': { kind: 'energyPerMass' },
  'fire.heat': { kind: 'power' },
};

/** Every input of a design as it was read, in the order of the file format, with the defaults that were taken marked. */
export function designRows(design: Design, defaults: string[], say: Say): DesignRow[] {
  const taken = new Set(defaults);
  const { fitted, ...drawn } = design;
  const used = fitted ? valuesInUse(fitted).values.map((value) => value.path) : [];
  const settled = new Set(
    estimateFieldsOf(design)
      .filter(({ path }) => used.includes(path))
      .flatMap(({ targets }) => targets.map(({ path }) => path)),
  );
  return walk(drawn, '').map(({ path, key, value }) => ({
    path: plainText(path),
    value: print(path, key, value, say),
    isDefault: taken.has(path) || [...taken].some((each) => path.startsWith(`${each}.`)),
    isFitted: settled.has(path),
  }));
}

function walk(value: unknown, path: string): { path: string; key: string; value: string | number }[] {
  if (Array.isArray(value)) return value.flatMap((item, index) => walk(item, `${path}[${index}]`));
  if (value !== null && typeof value === 'object') {
    return Object.entries(asWritten(value)).flatMap(([key, item]) => walk(item, path ? `${path}.${key}` : key));
  }
  if (typeof value !== 'string' && typeof value !== 'number') return [];
  return [{ path, key: /[^.[\]]+(?=(?:\[\d+\])?$)/.exec(path)?.[0] ?? path, value }];
}

/** A round part is written by its diameter, and read into equal width and height. */
function asWritten(part: object): object {
  const { shape, width, height, ...rest } = part as { shape?: string; width?: number; height?: number };
  return shape === 'round' && width === height ? { shape, diameter: width, ...rest } : part;
}

function print(path: string, key: string, value: string | number, say: Say): string {
  if (typeof value === 'string') return plainText(value) || '-';
  const printed = BY_PATH[path] ?? BY_NAME[key];
  if (!printed) return String(Number(value.toPrecision(4)));
  const { kind, ...options } = printed;
  return say(kind, value, options);
}
