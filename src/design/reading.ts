/** Walks a raw tree field by field, collecting faults, defaults and warnings. Absent or faulty numbers read as NaN. */
import { amount, format, parseQuantity, told, type GaugeTable, type OtherUnits } from '../units/index.js';
import { shortened, type DesignFault, type DesignWarning, type FaultCode } from './faults.js';
import { MOST_WALL, PLATE, type Range } from './ranges.js';
import { pathText, type Path } from './path.js';
import type { Source } from './source.js';

type Tree = Readonly<Record<string, unknown>>;

/** What is wrong with a field, before its place in the file is looked up. */
export interface FaultDetail {
  code?: FaultCode;
  message: string;
  allowed?: string;
  nearest?: string;
  /** one of the right form */
  example?: string;
  /** where one of several fields is missing, all that would do */
  lacks?: readonly Path[];
  /** point at the field's name instead of its value */
  atKey?: boolean;
  /** value to print instead of the one written */
  value?: string | null;
}

/** Faults told at most; nobody mends more in one go. */
const MOST_FAULTS = 200;

/** One reading of a file: its raw tree, and what was found wrong, left out or odd in it. */
export class Reading {
  readonly faults: DesignFault[] = [];
  private readonly faulty = new Set<string>();
  private readonly lacks = new Map<string, readonly string[]>();
  readonly defaults: string[] = [];
  readonly warnings: DesignWarning[] = [];

  constructor(
    private readonly source: Source,
    private readonly file: string,
    readonly otherUnits?: OtherUnits,
  ) {
    this.faults.push(...source.faults.slice(0, MOST_FAULTS));
    for (const fault of this.faults) this.faulty.add(fault.path);
  }

  fault(path: Path, detail: FaultDetail): void {
    const text = pathText(path);
    const explained = this.source.explained.get(text);
    if (explained === 'all' || (explained === 'value' && !detail.atKey)) return;
    this.faulty.add(text);
    if (this.faults.length >= MOST_FAULTS) return;
    if (detail.lacks) this.lacks.set(text, detail.lacks.map(pathText));
    const place = detail.atKey ? this.source.keyPlace(path) : this.source.place(path);
    this.faults.push({
      code: detail.code ?? 'cannot-be-built',
      file: this.file,
      line: place.line,
      column: place.column,
      path: text,
      value: detail.value === undefined ? (detail.atKey ? null : place.written) : detail.value,
      message: detail.message,
      allowed: detail.allowed ?? null,
      nearest: detail.nearest ?? null,
      ...(detail.example === undefined ? {} : { example: detail.example }),
    });
  }

  /**
   * Faults in the order of the file. A field that is missing because its name is misspelt is one slip, told at the
   * name.
   */
  told(): DesignFault[] {
    const meant = new Set(
      this.faults.flatMap(({ code, path, nearest }) => {
        if (code !== 'unknown-key' || nearest === null) return [];
        return [nearest.includes('.') ? nearest : path.slice(0, path.lastIndexOf('.') + 1) + nearest];
      }),
    );
    const echo = ({ code, path }: DesignFault) =>
      code === 'missing' && (this.lacks.get(path) ?? [path]).some((each) => meant.has(each));
    return this.faults.filter((each) => !echo(each)).sort((a, b) => a.line - b.line || a.column - b.column);
  }

  /** A more telling fault in place of the one the field has. */
  replace(path: Path, detail: FaultDetail): void {
    const text = pathText(path);
    const at = this.faults.findIndex((fault) => fault.path === text && fault.code === 'out-of-range');
    if (at >= 0) this.faults.splice(at, 1);
    this.fault(path, detail);
  }

  /** Names a default that was taken. */
  defaulted(path: Path): void {
    this.defaults.push(pathText(path));
  }

  /** A field that is told without being a default. */
  undefaulted(path: Path): void {
    const text = pathText(path);
    this.defaults.splice(0, this.defaults.length, ...this.defaults.filter((each) => each !== text));
  }

  /** Tells which table a gauge was read from, where it is not the usual one. */
  stainlessGauge(path: Path, written: string, { si, pipe }: QuantityRead): void {
    this.warnings.push({
      code: 'stainless-gauge',
      message: told`'${shortened(written)}' is read as a gauge of stainless sheet, ${amount('length', pipe?.wall ?? si)}: it is another thickness in carbon steel`,
      where: pathText(path),
      value: pipe?.wall ?? si,
      limits: null,
    });
  }

  hasFault(path: Path): boolean {
    const text = pathText(path);
    return this.source.explained.has(text) || this.faulty.has(text);
  }

  root(): Fields {
    return new Fields(this, [], this.source.tree);
  }

  /** The block at a path. */
  at(path: Path): Fields {
    let raw: unknown = this.source.tree;
    for (const part of path)
      raw = typeof raw === 'object' && raw !== null ? (raw as Record<string, unknown>)[part] : undefined;
    return new Fields(this, path, raw);
  }
}

/** A quantity as read, in SI, and whether a pipe's name or a weight of wood stood for it. */
export interface QuantityRead {
  si: number;
  pipe?: { nominal: number; wall?: number };
  wood?: true;
}

/** One block of the file. A block that is absent or of the wrong type has no fields. */
export class Fields {
  private readonly tree: Tree;
  readonly present: boolean;
  /** which table a gauge is read from: that of the steel named in the block, or in the one around it */
  private readonly gauges: GaugeTable;
  /** its keys are places of a list */
  private numbered = false;

  constructor(
    readonly reading: Reading,
    readonly path: Path,
    raw: unknown,
    gauges: GaugeTable = 'carbon',
  ) {
    this.present = typeof raw === 'object' && raw !== null && !Array.isArray(raw);
    this.tree = this.present ? (raw as Tree) : {};
    const own = this.tree.skinSteel ?? this.tree.steel;
    this.gauges = own === 'carbon' || own === 'stainless' ? own : gauges;
  }

  has(key: string): boolean {
    return Object.hasOwn(this.tree, key) && this.tree[key] !== undefined && this.tree[key] !== null;
  }

  child(key: string): Fields {
    return new Fields(this.reading, [...this.path, key], this.raw(key), this.gauges);
  }

  list(key: string): Fields[] {
    const items = this.raw(key);
    return Array.isArray(items)
      ? items.map((item: unknown, i) => new Fields(this.reading, [...this.path, key, i], item))
      : [];
  }

  /** Numbers of a list, NaN where one is faulty. */
  numbers(key: string, range: Range): number[] {
    const items = this.raw(key);
    if (!Array.isArray(items)) return [];
    const own = new Fields(this.reading, [...this.path, key], { ...items }, this.gauges);
    own.numbered = true;
    return items.map((_, i) => own.required(String(i), range));
  }

  fault(key: string, detail: FaultDetail): void {
    this.reading.fault([...this.path, this.numbered ? Number(key) : key], detail);
  }

  /** The field as it stands in the file, unread; undefined where it is absent or empty. */
  raw(key: string): unknown {
    return this.has(key) ? this.tree[key] : undefined;
  }

  /** Names a default that was taken. */
  defaulted(key: string): void {
    this.reading.defaulted([...this.path, key]);
  }

  text(key: string, otherwise: string): string {
    const raw = this.raw(key);
    return typeof raw === 'string' ? raw : otherwise;
  }

  /** All of a block's entries that are text. */
  texts(): Record<string, string> {
    const entries = Object.entries(this.tree).filter(
      (entry): entry is [string, string] => typeof entry[1] === 'string',
    );
    return Object.fromEntries(entries);
  }

  /** Yes or no, written as true or false. */
  flag(key: string, otherwise: boolean): boolean {
    const raw = this.raw(key);
    return typeof raw === 'boolean' ? raw : otherwise;
  }

  /** The quantity as read, undefined when absent or faulty; its fault is recorded. */
  read(key: string, range: Range, { pipe = false }: { pipe?: boolean } = {}): QuantityRead | undefined {
    const raw = this.raw(key);
    if (typeof raw !== 'string' && typeof raw !== 'number') return undefined;
    const { otherUnits } = this.reading;
    const quantity = parseQuantity(range.kind, raw, { gauges: this.gauges, pipes: pipe, otherUnits });
    if (!quantity.ok) {
      // a bare length gets the unit that its field is usually given in: inches for a pit, not for a mountain
      const bare = quantity.code === 'no-unit' && range.kind === 'length';
      const nearest = bare ? `${raw} ${range.low.replace(/^[-\d./ ]+/, '')}` : quantity.nearest;
      this.fault(key, {
        code: quantity.code,
        message: quantity.problem,
        allowed: quantity.code === 'no-unit' ? quantity.allowed : `${quantity.allowed}; ${range.low} to ${range.high}`,
        nearest: nearest === undefined ? undefined : shortened(nearest),
      });
      return undefined;
    }
    if (quantity.wood) return quantity;
    if (quantity.gauge === 'stainless') this.reading.stainlessGauge([...this.path, key], String(raw), quantity);
    if (quantity.pipe && !this.pipeCanBe(key, quantity.si, quantity.pipe.wall)) return undefined;
    // A plate out of range is kept: whether it is thicker than half its part says more than the range does.
    return this.within(key, range, quantity.si, raw) || range.kind === 'plate' ? quantity : undefined;
  }

  /** A pipe's own wall obeys the limits of plate, and leaves a bore. */
  private pipeCanBe(key: string, diameter: number, wall: number | undefined): boolean {
    const { min, max, low, high } = PLATE;
    if (wall === undefined || (wall >= min && wall <= max && 2 * wall < MOST_WALL * diameter)) return true;
    this.fault(key, {
      code: 'out-of-range',
      message: `names a pipe whose wall is too ${wall < min ? 'thin' : 'thick'}`,
      allowed: `a wall of ${low} to ${high}, and less than ${format('length', (MOST_WALL / 2) * diameter)} here`,
    });
    return false;
  }

  /** Refuses what lies outside the accepted range. */
  within(key: string, range: Range, si: number, raw?: unknown): boolean {
    const { min, max, low, high, kind } = range;
    const slack = 1e-9 * Math.max(Math.abs(min), Math.abs(max));
    if (si >= min - slack && si <= max + slack) return true;
    const percent = kind === 'share' && typeof raw === 'number' && raw > 1 && raw / 100 <= max;
    this.fault(key, {
      code: 'out-of-range',
      message: si < min ? 'is too small' : 'is too large',
      allowed: `${low} to ${high}`,
      nearest: percent ? `${raw} %` : typeof raw === 'string' ? otherMark(raw, si, { min, max }) : undefined,
    });
    return false;
  }

  /** SI value; NaN when absent or faulty. */
  required(key: string, range: Range, takes?: { pipe?: boolean }): number {
    return this.read(key, range, takes)?.si ?? NaN;
  }
}

/**
 * The same number with comma for point or point for comma, where it is out of range by the thousand between the two.
 */
function otherMark(raw: string, si: number, { min, max }: { min: number; max: number }): string | undefined {
  const match = /^\s*[1-9]\d{0,2}([.,])\d{3}(?![\d.,])/.exec(raw);
  if (!match) return undefined;
  const [other, meant] = match[1] === ',' ? ['.', si / 1000] : [',', si * 1000];
  return meant >= min && meant <= max ? raw.trim().replace(match[1], other) : undefined;
}
