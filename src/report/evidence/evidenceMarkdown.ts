/** Parts that both halves of the evidence report are set with. */

/** A table: every cell's bars escaped, numbers to the right. */
export function markdownTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
): string {
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll('|', '\\|').replace(/\s+/g, ' ')).join(' | ')} |`;
  const rule = `| ${head.map((_, column) => (right.includes(column) ? '--:' : '---')).join(' | ')} |`;
  return [line(head), rule, ...rows.map(line)].join('\n');
}

/** Significant digits that a report shows: enough to see an error, few enough to be the same on every machine. */
const DIGITS = 4;

/** @example figure(0.00123456) // '0.001235' */
export function figure(value: number | null | undefined, digits = DIGITS): string {
  if (value === null || value === undefined || Number.isNaN(value)) return '-';
  const rounded = Number(value.toPrecision(digits));
  return rounded === 0 ? '0' : String(rounded);
}

/** A ratio or bias, two decimals. */
export function ratio(value: number | null | undefined): string {
  return value === null || value === undefined || !Number.isFinite(value) ? '-' : value.toFixed(2);
}

/** Number of each source in the order of first use. */
export class Sources {
  private readonly numbers = new Map<string, number>();

  cite(source: string): string {
    const known = this.numbers.get(source) ?? this.numbers.size + 1;
    this.numbers.set(source, known);
    return `[${known}]`;
  }

  list(): string {
    return [...this.numbers].map(([source, number]) => `${number}. ${source}`).join('\n');
  }
}
