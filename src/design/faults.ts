import { format, type Told } from '../units/index.js';
/** What is wrong with a design file: where, what was written, what is allowed, and the nearest right name. */

export type FaultCode =
  | 'unreadable' // not text, too large, empty, too deep
  | 'syntax'
  | 'duplicate-key'
  | 'comma-in-braces'
  | 'unknown-key'
  | 'missing'
  | 'wrong-type'
  | 'unknown-name'
  | 'no-unit'
  | 'unknown-unit'
  | 'not-a-quantity'
  | 'not-finite'
  | 'out-of-range'
  | 'cannot-be-built'
  | 'no-change'; // an option that is the design as drawn

/** One thing that is wrong with a file, and where. */
export interface DesignFault {
  code: FaultCode;
  file: string;
  /** 1-based */
  line: number;
  column: number;
  /** field path, as `firebox.intakes[0].diameter`; empty for the file as a whole */
  path: string;
  /** as written, shortened; null where nothing was written */
  value: string | null;
  /** one clause: what is wrong */
  message: string;
  allowed: string | null;
  nearest: string | null;
  /** one of the right form, where it has a wrong one */
  example?: string;
}

/** What is wrong, where no file was read. */
export type PlacelessFault = Pick<
  DesignFault,
  'code' | 'path' | 'value' | 'message' | 'allowed' | 'nearest' | 'example'
>;

/** Something that is allowed and that the builder should know. Same shape as a result's warnings. */
export interface DesignWarning {
  code: string;
  message: Told;
  where: string;
  value: number | null;
  limits: { low?: number; high?: number; unit: string; source?: string } | null;
}

/** Raw text on one line, without control characters, at most 60 characters. */
export function shortened(text: string): string {
  const line = text
    .slice(0, 400)
    .replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]+/g, ' ')
    .replace(/ +/g, ' ')
    .trim();
  return line.length > 60 ? `${line.slice(0, 57)}...` : line;
}

/**
 * One fault as one line.
 *
 * @example pit.yaml:12:10: firebox.plate: '0.25' has no unit; allowed: a plate thickness in in, ga, ft, mm, cm, m; did you mean '0.25 in'?
 */
export function formatFault(fault: DesignFault): string {
  return `${fault.file}:${fault.line}:${fault.column}: ${formatPlaceless(fault)}`;
}

/** One fault as one line, without its place in a file. */
export function formatPlaceless({ path, value, message, allowed, nearest, example }: PlacelessFault): string {
  const what = [path && `${path}:`, value !== null && `'${value}'`, message].filter(Boolean).join(' ');
  const only = allowed === null ? '' : `; allowed: ${allowed}`;
  const meant = nearest === null ? '' : `; did you mean '${nearest}'?`;
  const such = example === undefined ? '' : `; for example ${example}`;
  return `${what}${only}${meant}${such}`;
}

/** All faults of a file as one report, one line each, in the order of the file. */
export function formatFaults(faults: readonly DesignFault[]): string {
  return faults.map(formatFault).join('\n');
}

/** A name in quotation marks, cut to one line. */
export const quoted = (name: string): string => `'${shortened(name)}'`;

/** A length as a fault says it. */
export const length = (si: number): string => format('length', si);
