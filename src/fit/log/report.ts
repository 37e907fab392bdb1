/** What reading a log has to say: faults that stop it, and notes on what was left out or looked odd. */
import { formatFaults, shortened, type DesignFault, type FaultCode } from '../../design/faults.js';
import type { LogNote } from './log.js';

/** As a design's fault; `path` is the column's header, empty for the file as a whole. */
export type LogFault = DesignFault;

/** All faults of a log as one report, one line each. */
export const formatLogFaults: (faults: readonly LogFault[]) => string = formatFaults;

/** Faults told at most; nobody mends more in one go. */
const MOST_FAULTS = 50;

/** What would break a line, or hide or turn what follows it, in a text that quotes a cell. */
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]+/g;

interface FaultAt {
  code: FaultCode;
  /** 1-based; without one the fault is about the file */
  line?: number;
  column?: number;
  header?: string;
  value?: string | null;
  message: string;
  allowed?: string;
  nearest?: string;
}

/** Faults and notes of one log, as they are found. */
export class Report {
  readonly faults: LogFault[] = [];
  readonly notes: LogNote[] = [];

  constructor(private readonly file: string) {}

  fault(what: FaultAt): void {
    if (this.faults.length >= MOST_FAULTS) return;
    this.faults.push({
      code: what.code,
      file: this.file,
      line: what.line ?? 1,
      column: what.column ?? 1,
      path: shortened(what.header ?? ''),
      value: what.value == null ? null : shortened(what.value),
      message: what.message,
      allowed: what.allowed ?? null,
      nearest: what.nearest === undefined ? null : shortened(what.nearest),
    });
  }

  note(note: LogNote): void {
    if (note.count > 0) this.notes.push({ ...note, message: note.message.replace(CONTROL, ' ') });
  }

  get broken(): boolean {
    return this.faults.length > 0;
  }
}

/** `1 row`, `3 rows`, `1,200 readings`. */
export function counted(count: number, one: string): string {
  return `${String(count).replace(/\B(?=(\d{3})+$)/g, ',')} ${one}${count === 1 ? '' : 's'}`;
}
