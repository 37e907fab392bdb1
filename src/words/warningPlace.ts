/** Where a warning holds, taken apart: the one place that knows how `where` is put together. */

interface WarningPlace {
  /** part, opening, door, station or field; empty: the pit as a whole */
  place: string;
  /** under which fire; null: it is no matter of one */
  fire: 'assumed fire' | 'hold fire' | null;
}

const UNDER = /^(?:(.*), )?(assumed fire|hold fire)$/s;

/** @example warningPlace('throat, hold fire') gives { place: 'throat', fire: 'hold fire' } */
export function warningPlace({ where }: { where: string }): WarningPlace {
  const [, place = '', fire] = UNDER.exec(where) ?? [null, where, null];
  return { place, fire: fire as WarningPlace['fire'] };
}

/** What counts as one place under whichever fire; of the pit as a whole each fire is told by itself. */
export function placeAlone(warning: { where: string }): string {
  const { place } = warningPlace(warning);
  return place === '' ? warning.where : place;
}
