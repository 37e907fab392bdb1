/** What a cook feels of plate, in a sentence: the truth where that is next to nothing. */
import { baselineOf } from '../study/compare/baseline.js';
import type { Comparison } from '../study/compare/compare.js';
import { tellingFor } from '../study/compare/verdict.js';
import { LATE } from '../study/events/swing.js';
import { ofResult, type Quantity } from '../study/quantities.js';
import { format, type UnitSystem } from '../units/index.js';
import { listed } from '../units/listed.js';

/** What he feels, the baseline's number first, and from what share or how many kelvins on he tells two of it apart. */
const FELT: readonly { quantity: Quantity; told: (numbers: string) => string; share?: number; kelvin?: number }[] = [
  { quantity: ofResult('swing.thermometer_K'), told: (numbers) => `the thermometer swings ${numbers}`, share: 0.05 },
  {
    quantity: ofResult('swing.late_K'),
    told: (numbers) => `a split ${format('time', LATE)} late leaves it at ${numbers}`,
    kelvin: 10,
  },
  { quantity: ofResult('door.recovery_s'), told: (numbers) => `the door is made up for after ${numbers}`, share: 0.05 },
];

/** Do options differ in plate and nothing else? */
function plateAlone({ options }: Comparison): boolean {
  const others = options.map(({ changes }) =>
    changes.flatMap(({ path, value }) => (/(?:^|\.)plate$/.test(path) ? [] : [`${path}=${value}`])).join(),
  );
  return options.some(({ changes }) => changes.length > 0) && others.every((each) => each === others[0]);
}

/** Under one and the same cook; empty where the options differ in more than plate, or nobody followed one. */
export function plateCook(comparison: Comparison, system: UnitSystem): string {
  const { options } = comparison;
  if (options.length < 2 || !plateAlone(comparison)) return '';
  const base = baselineOf(comparison);
  const ordered = [base, ...options.filter((option) => option !== base)];
  let apart = false;
  const clauses = FELT.flatMap(({ quantity, told, share, kelvin }) => {
    const cells = ordered.flatMap(({ differences }) => differences.find(({ key }) => key === quantity.key) ?? []);
    if (cells.length < ordered.length || cells.some(({ value }) => value === null)) return [];
    apart ||= cells.some(
      (cell) =>
        !cell.none &&
        (Math.abs(cell.share ?? 0) >= (share ?? Infinity) || Math.abs(cell.difference ?? 0) >= (kelvin ?? Infinity)),
    );
    const numbers = cells.map(({ value }) => tellingFor(comparison, quantity, system).quantity(value));
    return [told(cells.every(({ none }) => none) ? `${numbers[0]} in all` : listed(numbers))];
  });
  if (clauses.length === 0) return '';
  const names = listed(ordered.map(({ label }) => label));
  return `A cook ${apart ? 'feels the plate' : 'hardly tells them apart'} (${names}): ${clauses.join('; ')}.`;
}
